package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.Holder;
import org.fusewright.core.job.Feed;
import org.fusewright.core.job.Job;
import org.fusewright.core.pricing.Stock;
import org.fusewright.core.quantity.Millimetres;
import org.fusewright.core.quantity.Ohms;
import org.fusewright.core.sizing.FeedDemand.Service;
import org.fusewright.core.sizing.FeedPlan.Limb;
import org.fusewright.core.sizing.FeedPlan.Outlet;
import org.fusewright.core.sizing.SpliceChoice.Joint;
import org.fusewright.core.words.Amount;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;
import org.jspecify.annotations.Nullable;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One feed: its main device near the source, the lead from there, and a splice with short leads
 * when it serves more than one cavity (one wire per cavity, common practice).
 *
 * <p>Main device, its holder and the wire are chosen together: the combination of least cost; among
 * equals the smallest rating. The main device carries the feed with at most 80 % of its rating at
 * the temperature around it, is larger than every device behind it (equal is not enough) and holds
 * through the start behind it. The wire goes into its holder, is protected by it, survives a dead
 * short, and loses no more than 2 % (AC 43.13-1B 11-66 b) or half of what the strictest circuit may
 * lose, whichever is less (the half is common practice). A rating or size that the job fixes is
 * kept, and the checks judge it.
 */
final class FeedSizing {

    /** Share of the nominal voltage from source to bus; AC 43.13-1B 11-66 b. */
    static final double SOURCE_TO_BUS_PERCENT = 2;

    private final Loom loom;
    private final Job job;
    private final Stock stock;
    private final FeedDemand demand;
    private final MainLimits limits;
    private final boolean straight;
    private final boolean onlyTrigger;
    private final double mainRouteM;
    private final Millimetres sourceCut;
    private final Millimetres mainCut;
    private final double mayLoseV;

    private FeedSizing(Loom loom, FeedDemand demand) {
        this.loom = loom;
        this.job = loom.job();
        this.stock = loom.stock();
        this.demand = demand;
        this.limits = new MainLimits(loom, demand);
        Service first = demand.services().getFirst();
        this.straight = demand.services().size() == 1;
        this.onlyTrigger = straight && first.isTrigger();
        double lengthM = demand.feed().feed().lengthM();
        this.mainRouteM = onlyTrigger ? 0 : straight ? lengthM + first.routeM() : lengthM;
        this.sourceCut = loom.cut(demand.feed().feed().sourceDistanceM());
        this.mainCut = loom.cut(mainRouteM);
        this.mayLoseV =
                mayLosePercent(demand.strictestDropPercent()) / 100 * job.supply().nominalV();
    }

    /**
     * @param demand with one service at least
     */
    static FeedPlan size(Loom loom, FeedDemand demand) {
        return new FeedSizing(loom, demand).size();
    }

    /** What a feed may lose, as a share of the nominal voltage. */
    static double mayLosePercent(double strictestCircuitPercent) {
        return Math.min(SOURCE_TO_BUS_PERCENT, strictestCircuitPercent / 2);
    }

    /**
     * A main device with its holder and wire on trial.
     *
     * @param micros their cost in millionths of the currency
     */
    private record Trial(Device main, Holder holder, LaidWire wire, long micros) {}

    private FeedPlan size() {
        List<Text> why = new ArrayList<>();
        Trial chosen = choose(why);
        demand.diversity().explained().ifPresent(why::add);
        Limb atMain = atMain(chosen);
        double highestA = FaultCurrent.highestA(job.supply(), new Ohms(atMain.leastOhm()));
        Limb limb = through(chosen, atMain);
        return lay(chosen, limb, highestA, why);
    }

    private Trial choose(List<Text> why) {
        Feed feed = demand.feed().feed();
        Trial chosen = feed.ratingA().isPresent() ? keepRating(why) : chooseFreely(why);
        feed.gauge().ifPresent(size -> why.add(Phrase.of("feed-choice.size-fixed", size.label())));
        return chosen;
    }

    /** The checks judge the rating; the wire is chosen for it as for any other. */
    private Trial keepRating(List<Text> why) {
        Device main = mainCandidates().getFirst();
        Amount named = Amount.rating(main.ratingA());
        why.add(
                limits.findMissed(main)
                        .map(missed -> Phrase.of("feed-choice.fixed-although", named, missed))
                        .orElseGet(() -> Phrase.of("feed-choice.fixed", named)));
        return findCheapest(mainCandidates(), true)
                .or(() -> findCheapest(mainCandidates(), false))
                .orElseGet(
                        () -> {
                            why.add(Phrase.of("feed-choice.fixed-without-wire"));
                            Holder holder = stock.findHolder(main).orElseThrow();
                            return new Trial(main, holder, largestFor(holder), 0);
                        });
    }

    private Trial chooseFreely(List<Text> why) {
        List<Device> suitable = new ArrayList<>();
        for (Device main : mainCandidates()) {
            if (limits.areMetBy(main)) {
                suitable.add(main);
            }
        }
        Optional<Trial> breaking = findCheapest(suitable, true);
        Optional<Trial> best = breaking.or(() -> findCheapest(suitable, false));
        if (best.isEmpty()) {
            return standIn(why);
        }
        if (breaking.isEmpty()) {
            why.add(Phrase.of("feed-choice.none-breaks"));
        }
        why.add(decided(best.get()));
        return best.get();
    }

    /**
     * @param mustBreak whether the device must break what a dead short behind it draws
     */
    private Optional<Trial> findCheapest(List<Device> mains, boolean mustBreak) {
        @Nullable Trial best = null;
        for (Device main : mains) {
            Holder holder = stock.findHolder(main).orElseThrow();
            long fixedMicros = micros(main) + stock.prices().unitPriceMicros(holder.number());
            for (LaidWire wire : mainWires()) {
                long micros = fixedMicros + wireMicros(wire);
                if (best != null && micros >= best.micros()) {
                    continue;
                }
                Trial trial = new Trial(main, holder, wire, micros);
                if (suits(trial, mustBreak)) {
                    best = trial;
                }
            }
        }
        return Optional.ofNullable(best);
    }

    private List<Device> mainCandidates() {
        return loom.kept().mainCandidates(demand.feed().id(), demand.feed().mainDevices());
    }

    private LaidWire[] mainWires() {
        return loom.layFor(demand.feed().id(), "/source", demand.feed().mainWires());
    }

    private long micros(Device main) {
        return stock.prices().unitPriceMicros(main.number());
    }

    private long wireMicros(LaidWire wire) {
        long sourceMicros = loom.micros(wire, sourceCut, 0);
        return onlyTrigger
                ? sourceMicros
                : sourceMicros + loom.micros(wire, mainCut, straight ? 1 : 0);
    }

    /** What the next smaller main device would miss decided. */
    private Text decided(Trial best) {
        Amount chosen = Amount.rating(best.main().ratingA());
        String size = best.wire().wire().size().label();
        @Nullable Device smaller = null;
        for (Device main : mainCandidates()) {
            if (main.ratingA() < best.main().ratingA()
                    && (smaller == null || main.ratingA() > smaller.ratingA())) {
                smaller = main;
            }
        }
        if (smaller == null) {
            return Phrase.of("feed-choice.smallest", chosen, size);
        }
        Amount named = Amount.rating(smaller.ratingA());
        return limits.findMissed(smaller)
                .map(missed -> Phrase.of("feed-choice.smaller-misses", chosen, size, missed))
                .orElseGet(() -> Phrase.of("feed-choice.smaller-dearer", chosen, size, named));
    }

    /** Nothing protects a wire: the first that carries the feed, else the largest. */
    private Trial standIn(List<Text> why) {
        Device main = mainCandidates().getLast();
        for (Device candidate : mainCandidates()) {
            if (limits.areMetBy(candidate) && takesAWire(candidate)) {
                main = candidate;
                break;
            }
        }
        why.clear();
        Amount named = Amount.rating(main.ratingA());
        why.add(
                demand.feed()
                        .feed()
                        .gauge()
                        .map(size -> Phrase.of("feed-choice.none-for-size", size.label(), named))
                        .orElseGet(() -> Phrase.of("feed-choice.none", named)));
        Holder holder = stock.findHolder(main).orElseThrow();
        return new Trial(main, holder, largestFor(holder), 0);
    }

    private boolean takesAWire(Device main) {
        Holder holder = stock.findHolder(main).orElseThrow();
        return goesInto(largestFor(holder), holder);
    }

    private boolean suits(Trial trial, boolean mustBreak) {
        LaidWire wire = trial.wire();
        if (!wire.isProtectedBy(trial.main().ratingA()) || !goesInto(wire, trial.holder())) {
            return false;
        }
        Limb atMain = atMain(trial);
        double highestA = FaultCurrent.highestA(job.supply(), new Ohms(atMain.leastOhm()));
        if (mustBreak && highestA > trial.main().interruptingA()) {
            return false;
        }
        Limb limb = through(trial, atMain);
        TimeCurrentBand band = loom.bandOfMain(trial.main());
        return (limb.dropV() <= mayLoseV || demand.feed().feed().gauge().isPresent())
                && staysCool(trial.main(), wire, highestA)
                && survives(wire, band, highestA, limb.mostOhm(), demand.runningA());
    }

    private boolean staysCool(Device main, LaidWire wire, double highestA) {
        return loom.worstOverload(main, loom.bandOfMain(main), wire, highestA).conductorC()
                <= OverloadProtection.shortTermC(wire);
    }

    private boolean goesInto(LaidWire wire, Holder holder) {
        return holder.accepts(wire.areaMm2()) && (!straight || onlyTrigger || wire.fitsCavity());
    }

    private boolean survives(
            LaidWire wire, TimeCurrentBand band, double highestA, double farOhm, double runningA) {
        double lowestA = FaultCurrent.lowestA(job.supply(), new Ohms(farOhm));
        return band.letThroughA2s(lowestA, highestA)
                <= ShortCircuitWithstand.survivesA2s(wire, runningA);
    }

    /** Nothing is protected: the thickest that still goes into holder and cavity. */
    private LaidWire largestFor(Holder holder) {
        LaidWire[] wires = mainWires();
        for (int i = wires.length - 1; i >= 0; i--) {
            if (goesInto(wires[i], holder)) {
                return wires[i];
            }
        }
        return wires[wires.length - 1];
    }

    private Limb atMain(Trial trial) {
        double batteryOhm = job.supply().batteryResistanceMilliohm() / 1000;
        return new Limb(0, batteryOhm, batteryOhm)
                .plusLead(trial.wire(), demand.feed().feed().sourceDistanceM(), demand.runningA())
                .plusContact(trial.holder().contactMilliohm() / 1000, demand.runningA());
    }

    private Limb through(Trial trial, Limb atMain) {
        return atMain.plusDevice(trial.main().milliohm() / 1000, demand.runningA())
                .plusLead(trial.wire(), mainRouteM, demand.runningA());
    }

    private FeedPlan lay(Trial chosen, Limb limb, double highestA, List<Text> why) {
        String id = demand.feed().id();
        LeadEnd.At atMain = new LeadEnd.At("main device " + id);
        List<LaidLead> leads = new ArrayList<>();
        leads.add(
                loom.lead(
                        id + "/source",
                        LeadRole.FEED,
                        chosen.wire(),
                        demand.feed().feed().sourceDistanceM(),
                        demand.runningA(),
                        new LeadEnd.At("battery"),
                        atMain));
        if (!straight) {
            return spread(chosen, limb, highestA, leads, why);
        }
        Service only = demand.services().getFirst();
        Outlet outlet;
        if (onlyTrigger) {
            LaidWire wire = serviceWire(chosen, highestA, limb, only, triggerWires(only));
            double routeM = demand.feed().feed().lengthM() + only.routeM();
            outlet = new Outlet(only, wire, atMain, routeM, limb);
        } else {
            outlet = new Outlet(only, chosen.wire(), atMain, mainRouteM, limb);
            leads.add(
                    loom.lead(
                            id + "/main",
                            LeadRole.FEED,
                            chosen.wire(),
                            mainRouteM,
                            demand.runningA(),
                            atMain,
                            new LeadEnd.InCavity(only.circuit().id(), CavityRole.FEED)));
        }
        return new FeedPlan(
                demand,
                chosen.main(),
                chosen.holder(),
                chosen.wire(),
                limb,
                highestA,
                List.of(outlet),
                leads,
                List.of(),
                true,
                why);
    }

    private FeedPlan spread(
            Trial chosen, Limb limb, double highestA, List<LaidLead> leads, List<Text> why) {
        String id = demand.feed().id();
        List<Service> services = demand.services();
        LaidWire[] wires = new LaidWire[services.size()];
        double[] areasMm2 = new double[services.size()];
        double restA = 0;
        int pigtail = 0;
        for (int i = 0; i < wires.length; i++) {
            Service service = services.get(i);
            LaidWire[] candidates =
                    service.isTrigger() ? triggerWires(service) : pigtailWires(id, ++pigtail);
            wires[i] = serviceWire(chosen, highestA, limb, service, candidates);
            areasMm2[i] = wires[i].areaMm2();
            restA += services.get(i).currentA();
        }
        List<Joint> chain = loom.splices().arrange(areasMm2, chosen.wire().areaMm2());
        List<SizedSplice> splices = new ArrayList<>(chain.size());
        List<Outlet> outlets = new ArrayList<>(services.size());
        boolean allFit = true;
        leads.add(
                loom.lead(
                        id + "/main",
                        LeadRole.FEED,
                        chosen.wire(),
                        mainRouteM,
                        demand.runningA(),
                        new LeadEnd.At("main device " + id),
                        new LeadEnd.AtSplice(id + "/splice-1")));
        List<LaidLead> links = new ArrayList<>();
        Limb here = limb;
        int pigtails = 0;
        for (int j = 0; j < chain.size(); j++) {
            Joint joint = chain.get(j);
            allFit &= joint.fits();
            LeadEnd.AtSplice at = new LeadEnd.AtSplice(id + "/splice-" + (j + 1));
            splices.add(new SizedSplice(at.splice(), joint.part(), joint.leads()));
            here = here.plusContact(joint.ohm(), Math.min(restA, demand.runningA()));
            for (int i = joint.from(); i < joint.to(); i++) {
                Service service = services.get(i);
                restA -= service.currentA();
                if (service.isTrigger()) {
                    outlets.add(new Outlet(service, wires[i], at, service.routeM(), here));
                    continue;
                }
                double routeM = leadRouteM(service);
                leads.add(
                        loom.lead(
                                id + "/pigtail-" + ++pigtails,
                                LeadRole.PIGTAIL,
                                wires[i],
                                routeM,
                                service.currentA(),
                                at,
                                new LeadEnd.InCavity(service.circuit().id(), CavityRole.FEED)));
                outlets.add(
                        new Outlet(
                                service,
                                wires[i],
                                at,
                                routeM,
                                here.plusLead(wires[i], routeM, service.currentA())));
            }
            if (joint.linksOn()) {
                double passedOnA = Math.max(0, Math.min(restA, demand.runningA()));
                links.add(
                        loom.lead(
                                id + "/link-" + (j + 1),
                                LeadRole.PIGTAIL,
                                chosen.wire(),
                                loom.pigtailM(),
                                passedOnA,
                                at,
                                new LeadEnd.AtSplice(id + "/splice-" + (j + 2))));
                here = here.plusLead(chosen.wire(), loom.pigtailM(), passedOnA);
            }
        }
        leads.addAll(links);
        return new FeedPlan(
                demand,
                chosen.main(),
                chosen.holder(),
                chosen.wire(),
                limb,
                highestA,
                outlets,
                leads,
                splices,
                allFit,
                why);
    }

    private double leadRouteM(Service service) {
        return service.isTrigger() ? service.routeM() : loom.pigtailM() + service.routeM();
    }

    /** The cheapest that the main device protects and that fits a cavity, else the thickest. */
    private LaidWire serviceWire(
            Trial chosen, double highestA, Limb limb, Service service, LaidWire[] candidates) {
        TimeCurrentBand band = loom.bandOfMain(chosen.main());
        double routeM = leadRouteM(service);
        Millimetres cut = loom.cut(routeM);
        @Nullable LaidWire best = null;
        @Nullable LaidWire thickest = null;
        for (LaidWire wire : candidates) {
            if (!wire.fitsCavity() || onlyTrigger && !chosen.holder().accepts(wire.areaMm2())) {
                continue;
            }
            thickest = wire;
            double farOhm = limb.mostOhm() + wire.warmOhm(routeM, service.currentA());
            if ((best == null || loom.micros(wire, cut, 1) < loom.micros(best, cut, 1))
                    && wire.servesCavity(service.currentA())
                    && wire.isProtectedBy(chosen.main().ratingA())
                    && survives(wire, band, highestA, farOhm, service.currentA())) {
                best = wire;
            }
        }
        if (best != null) {
            return best;
        }
        return thickest == null ? candidates[candidates.length - 1] : thickest;
    }

    private LaidWire[] pigtailWires(String id, int pigtail) {
        return loom.keepsWires()
                ? loom.layFor(id, "/pigtail-" + pigtail, demand.feed().wires())
                : loom.layAll(demand.feed().wires());
    }

    private LaidWire[] triggerWires(Service service) {
        return loom.layFor(service.circuit().id(), "/trigger", service.circuit().wires());
    }
}
