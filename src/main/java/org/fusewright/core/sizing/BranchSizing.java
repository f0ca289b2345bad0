package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.Relay;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.job.Job;
import org.fusewright.core.job.RelayUse;
import org.fusewright.core.job.Supply;
import org.fusewright.core.quantity.Ohms;
import org.fusewright.core.sizing.FeedPlan.Limb;
import org.fusewright.core.sizing.FeedPlan.Outlet;
import org.fusewright.core.sizing.Missed.Reason;
import org.fusewright.core.sizing.SpliceChoice.Joint;
import org.jspecify.annotations.Nullable;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Everything behind one device: the leads of the circuit that owns it, and of circuits whose relay
 * contact it feeds as well. One wire per cavity (common practice): what is shared is spliced
 * outside the block.
 */
final class BranchSizing {

    private final Loom loom;
    private final Job job;
    private final CircuitDemand owner;
    private final List<CircuitDemand> borrowers;
    private final Device device;
    private final double carriedA;
    private final Outlets outlets;
    private final Protection protection;
    private final Limb atDevice;
    private long micros;
    private @Nullable Missed missed;

    /**
     * Where each circuit's device, and its relay's trigger, get their current from; by circuit.
     *
     * @param mainDevices of each circuit's feed
     */
    record Outlets(
            Map<String, Outlet> ofDevices,
            Map<String, Outlet> ofTriggers,
            Map<String, Device> mainDevices) {

        /** Rating of the main device before a circuit's own, in amperes. */
        double mainRatingA(String circuit) {
            return mainDevices.get(circuit).ratingA();
        }

        /** Prospective short-circuit current right behind a circuit's device, in amperes. */
        double highestA(String circuit, Supply supply) {
            return FaultCurrent.highestA(
                    supply, new Ohms(ofDevices.get(circuit).limb().leastOhm()));
        }
    }

    /**
     * What came out.
     *
     * @param plans the owner's first, then those of the borrowers in their order
     * @param micros cost of device and leads behind it in millionths of the currency; coil leads,
     *     which no choice changes, left out
     * @param missed the first limit that its leads miss; empty when they keep all
     */
    record Branch(Device device, List<CircuitPlan> plans, long micros, Optional<Missed> missed) {}

    /**
     * @param carriedA running current of all circuits behind the device
     */
    BranchSizing(
            Loom loom,
            CircuitDemand owner,
            List<CircuitDemand> borrowers,
            Device device,
            double carriedA,
            Outlets outlets) {
        this.loom = loom;
        this.job = loom.job();
        this.owner = owner;
        this.borrowers = borrowers;
        this.device = device;
        this.carriedA = carriedA;
        this.outlets = outlets;
        this.protection = new Protection(loom, device, outlets.highestA(owner.id(), job.supply()));
        Outlet outlet = outlets.ofDevices().get(owner.id());
        this.atDevice =
                outlet.limb()
                        .plusContact(outlet.wire().terminalOhm(), carriedA)
                        .plusDevice(device.milliohm() / 1000, carriedA);
    }

    /**
     * Where a circuit's first lead starts.
     *
     * @param limb up to there, without the terminal that the lead itself brings
     * @param joined the wire that a splice there was chosen for
     */
    private record Head(LeadEnd start, Limb limb, Optional<LaidWire> joined) {

        boolean isCavity() {
            return start instanceof LeadEnd.InCavity;
        }
    }

    Branch size() {
        micros = loom.stock().prices().unitPriceMicros(device.number());
        missed = null;
        LeadEnd.InCavity loadSide = new LeadEnd.InCavity(owner.id(), CavityRole.LOAD);
        List<CircuitPlan> plans =
                borrowers.isEmpty()
                        ? List.of(
                                plan(
                                        owner,
                                        new Head(loadSide, atDevice, Optional.empty()),
                                        Extras.NONE))
                        : sizeShared(loadSide);
        return new Branch(device, plans, micros, Optional.ofNullable(missed));
    }

    /** No sizing behind this device costs less. */
    long leastMicros() {
        long least = loom.stock().prices().unitPriceMicros(device.number());
        if (borrowers.isEmpty()) {
            boolean inCavity = true;
            least += new LeadChoice(loom, owner, protection, atDevice, inCavity).leastMicros();
        }
        return least;
    }

    private void count(long leadMicros) {
        micros += leadMicros;
    }

    private void note(Optional<Missed> found) {
        if (missed == null) {
            missed = found.orElse(null);
        }
    }

    /**
     * What a circuit has on top of its own way.
     *
     * @param trunk its trunk, when the splice that it starts from was chosen for it
     */
    private record Extras(
            List<LaidLead> leads,
            List<SizedSplice> splices,
            boolean fit,
            Optional<LeadChoice.Choice> trunk) {

        static final Extras NONE = new Extras(List.of(), List.of(), true, Optional.empty());
    }

    private List<CircuitPlan> sizeShared(LeadEnd.InCavity loadSide) {
        List<CircuitDemand> all = new ArrayList<>(borrowers.size() + 1);
        all.add(owner);
        all.addAll(borrowers);
        LaidWire shareWire = jumperWire(owner, "/share", loom.pigtailM(), carriedA, 1);
        count(loom.micros(shareWire, loom.pigtailM(), 1));
        Limb afterShare =
                atDevice.plusContact(shareWire.terminalOhm(), carriedA)
                        .plusLead(shareWire, loom.pigtailM(), carriedA);
        Optional<LeadChoice.Choice> ownTrunk =
                owner.resolved().relay().isPresent()
                        ? Optional.empty()
                        : Optional.of(trunkBehindShare(afterShare, all.size()));
        LaidWire[] wires = new LaidWire[all.size()];
        for (int i = 0; i < wires.length; i++) {
            CircuitDemand demand = all.get(i);
            wires[i] =
                    demand == owner && ownTrunk.isPresent()
                            ? ownTrunk.get().trunk()
                            : jumperWire(demand, "/jumper", loom.pigtailM(), demand.runningA(), 1);
        }
        return joinShared(loadSide, all, shareWire, wires, afterShare, ownTrunk);
    }

    /** The joints are not chosen yet: as many, and as bad, as there can be. */
    private LeadChoice.Choice trunkBehindShare(Limb afterShare, int outs) {
        Limb worst = afterShare;
        for (int i = 1; i < outs; i++) {
            worst = worst.plusContact(loom.splices().worstOhm(), carriedA);
        }
        return new LeadChoice(loom, owner, protection, worst, false).choose();
    }

    private List<CircuitPlan> joinShared(
            LeadEnd.InCavity loadSide,
            List<CircuitDemand> all,
            LaidWire shareWire,
            LaidWire[] wires,
            Limb afterShare,
            Optional<LeadChoice.Choice> ownTrunk) {
        String id = owner.id();
        double[] areasMm2 = new double[wires.length];
        for (int i = 0; i < wires.length; i++) {
            areasMm2[i] = wires[i].areaMm2();
        }
        List<Joint> chain = loom.splices().arrange(areasMm2, shareWire.areaMm2());
        List<LaidLead> leads = new ArrayList<>();
        leads.add(
                loom.lead(
                        id + "/share",
                        LeadRole.JUMPER,
                        shareWire,
                        loom.pigtailM(),
                        carriedA,
                        loadSide,
                        new LeadEnd.AtSplice(id + "/share-1")));
        List<SizedSplice> splices = new ArrayList<>();
        List<Head> heads = new ArrayList<>();
        boolean fit = true;
        Limb here = afterShare;
        double restA = carriedA;
        for (int j = 0; j < chain.size(); j++) {
            Joint joint = chain.get(j);
            LeadEnd.AtSplice at = new LeadEnd.AtSplice(id + "/share-" + (j + 1));
            splices.add(new SizedSplice(at.splice(), joint.part(), joint.leads()));
            count(joint.micros());
            fit &= joint.fits();
            here = here.plusContact(joint.ohm(), restA);
            for (int i = joint.from(); i < joint.to(); i++) {
                heads.add(new Head(at, here, Optional.of(wires[i])));
                restA -= all.get(i).runningA();
            }
            if (joint.linksOn()) {
                restA = Math.max(0, restA);
                leads.add(
                        loom.lead(
                                id + "/share-link-" + (j + 1),
                                LeadRole.JUMPER,
                                shareWire,
                                loom.pigtailM(),
                                restA,
                                at,
                                new LeadEnd.AtSplice(id + "/share-" + (j + 2))));
                here = here.plusLead(shareWire, loom.pigtailM(), restA);
            }
        }
        List<CircuitPlan> plans = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            Extras extras = i == 0 ? new Extras(leads, splices, fit, ownTrunk) : Extras.NONE;
            plans.add(plan(all.get(i), heads.get(i), extras));
        }
        return plans;
    }

    /** A way through a relay, or past it. */
    private record Way(Optional<LaidWire> jumper, LeadChoice.Choice leads) {}

    private CircuitPlan plan(CircuitDemand demand, Head head, Extras extras) {
        List<LaidLead> leads = new ArrayList<>(extras.leads());
        Way way = chooseWay(demand, head, extras.trunk());
        LeadEnd trunkStart = head.start();
        if (way.jumper().isPresent()) {
            leads.add(
                    loom.lead(
                            demand.id() + "/jumper",
                            LeadRole.JUMPER,
                            way.jumper().get(),
                            jumperM(head),
                            demand.runningA(),
                            head.start(),
                            new LeadEnd.InCavity(demand.id(), CavityRole.RELAY_30)));
            trunkStart = new LeadEnd.InCavity(demand.id(), CavityRole.RELAY_87);
        }
        List<SizedSplice> splices = new ArrayList<>(extras.splices());
        boolean fit = new LoadLeads(loom, demand, way.leads()).lay(trunkStart, leads, splices);
        demand.resolved().circuit().relay().ifPresent(use -> layCoilLeads(demand, use, leads));
        return new CircuitPlan(
                demand,
                device,
                carriedA,
                leads,
                splices,
                extras.fit() && fit,
                way.leads().loads(),
                protection.highestA(),
                way.leads().farOhm(),
                List.of());
    }

    private double jumperM(Head head) {
        return head.isCavity() ? loom.jumperM() : loom.pigtailM();
    }

    /** The jumper to a relay and the leads behind it, chosen together. */
    private Way chooseWay(CircuitDemand demand, Head head, Optional<LeadChoice.Choice> trunk) {
        if (demand.resolved().relay().isEmpty()) {
            LeadChoice leadChoice =
                    new LeadChoice(loom, demand, protection, head.limb(), head.isCavity());
            LeadChoice.Choice choice = trunk.map(leadChoice::keep).orElseGet(leadChoice::choose);
            count(choice.micros());
            note(choice.missed());
            return new Way(Optional.empty(), choice);
        }
        Relay relay = demand.resolved().relay().get();
        double routeM = jumperM(head);
        int cavityEnds = head.isCavity() ? 2 : 1;
        @Nullable Way best = null;
        long bestMicros = Long.MAX_VALUE;
        for (LaidWire jumper : jumperCandidates(demand, head)) {
            long jumperMicros = loom.micros(jumper, routeM, cavityEnds);
            if (jumperMicros >= bestMicros || !isJumper(jumper, routeM, demand.runningA())) {
                continue;
            }
            LeadChoice leadChoice =
                    behindRelay(demand, head.limb(), relay, jumper, routeM, cavityEnds);
            if (jumperMicros + leadChoice.leastMicros() >= bestMicros) {
                continue;
            }
            LeadChoice.Choice choice = leadChoice.choose();
            if (choice.missed().isEmpty() && jumperMicros + choice.micros() < bestMicros) {
                best = new Way(Optional.of(jumper), choice);
                bestMicros = jumperMicros + choice.micros();
            }
        }
        if (best == null) {
            LaidWire jumper =
                    head.joined()
                            .orElseGet(
                                    () ->
                                            jumperWire(
                                                    demand,
                                                    "/jumper",
                                                    routeM,
                                                    demand.runningA(),
                                                    cavityEnds));
            LeadChoice.Choice choice =
                    behindRelay(demand, head.limb(), relay, jumper, routeM, cavityEnds).choose();
            best = new Way(Optional.of(jumper), choice);
            bestMicros = loom.micros(jumper, routeM, cavityEnds) + choice.micros();
            note(choice.missed());
        }
        count(bestMicros);
        return best;
    }

    private LaidWire[] jumperCandidates(CircuitDemand demand, Head head) {
        return head.joined().isPresent()
                ? new LaidWire[] {head.joined().get()}
                : loom.layFor(demand.id(), "/jumper", demand.resolved().wires());
    }

    private LeadChoice behindRelay(
            CircuitDemand demand,
            Limb upToJumper,
            Relay relay,
            LaidWire jumper,
            double routeM,
            int cavityEnds) {
        double runningA = demand.runningA();
        Limb limb =
                upToJumper
                        .plusContact(cavityEnds * jumper.terminalOhm(), runningA)
                        .plusLead(jumper, routeM, runningA)
                        .plusDevice(relay.contactMilliohm() / 1000, runningA);
        return new LeadChoice(loom, demand, protection, limb, true);
    }

    private boolean isJumper(LaidWire wire, double routeM, double currentA) {
        return wire.servesCavity(currentA)
                && protection.missedBy(
                                wire, currentA, atDevice.mostOhm() + wire.warmOhm(routeM, currentA))
                        == null;
    }

    /**
     * The cheapest that the device protects and that fits a cavity, else the thickest that fits.
     */
    private LaidWire jumperWire(
            CircuitDemand demand, String lead, double routeM, double currentA, int cavityEnds) {
        LaidWire[] wires = loom.layFor(demand.id(), lead, demand.resolved().wires());
        @Nullable LaidWire best = null;
        @Nullable LaidWire thickest = null;
        for (LaidWire wire : wires) {
            if (!wire.fitsCavity()) {
                continue;
            }
            thickest = wire;
            if ((best == null
                            || loom.micros(wire, routeM, cavityEnds)
                                    < loom.micros(best, routeM, cavityEnds))
                    && isJumper(wire, routeM, currentA)) {
                best = wire;
            }
        }
        if (best != null) {
            return best;
        }
        LaidWire standIn = thickest == null ? wires[wires.length - 1] : thickest;
        note(Optional.of(missedByJumper(standIn, routeM, currentA)));
        return standIn;
    }

    private Missed missedByJumper(LaidWire wire, double routeM, double currentA) {
        if (!wire.fitsCavity()) {
            return new Missed(Reason.FITS_NO_TERMINAL, wire, 0);
        }
        @Nullable Missed missedBehind =
                protection.missedBy(
                        wire, currentA, atDevice.mostOhm() + wire.warmOhm(routeM, currentA));
        return missedBehind == null
                ? new Missed(Reason.TERMINAL_TOO_WEAK, wire, wire.terminalA())
                : missedBehind;
    }

    /** The choice of the owner's own leads, behind its relay when it has one. */
    LeadChoice trunkChoice(Optional<LaidWire> jumper) {
        Optional<Relay> relay = owner.resolved().relay();
        return jumper.isEmpty() || relay.isEmpty()
                ? new LeadChoice(loom, owner, protection, atDevice, true)
                : behindRelay(owner, atDevice, relay.get(), jumper.get(), loom.jumperM(), 2);
    }

    private void layCoilLeads(CircuitDemand demand, RelayUse use, List<LaidLead> leads) {
        String id = demand.id();
        double coilA = demand.coilA(job.supply());
        LeadEnd.InCavity coil = new LeadEnd.InCavity(id, CavityRole.RELAY_86);
        if (use.isTriggeredByController()) {
            LaidWire wire = coilWire(id, "/trigger", demand.resolved().wires(), coilA);
            LeadEnd from = new LeadEnd.At(RelayUse.CONTROLLER);
            leads.add(
                    loom.lead(
                            id + "/trigger",
                            LeadRole.TRIGGER,
                            wire,
                            use.triggerM(),
                            coilA,
                            from,
                            coil));
        } else {
            Outlet outlet = outlets.ofTriggers().get(id);
            leads.add(
                    loom.lead(
                            id + "/trigger",
                            LeadRole.TRIGGER,
                            outlet.wire(),
                            outlet.routeM(),
                            coilA,
                            outlet.from(),
                            coil));
        }
        List<Wire> groundWires =
                demand.resolved().groundWires().isEmpty()
                        ? demand.resolved().wires()
                        : demand.resolved().groundWires();
        leads.add(
                loom.lead(
                        id + "/ground",
                        LeadRole.GROUND,
                        coilWire(id, "/ground", groundWires, coilA),
                        use.groundM(),
                        coilA,
                        new LeadEnd.InCavity(id, CavityRole.RELAY_85),
                        new LeadEnd.At("ground")));
    }

    /** The thinnest that fits a cavity and carries the coil, else the thinnest. */
    private LaidWire coilWire(String circuit, String lead, List<Wire> candidates, double coilA) {
        LaidWire[] wires = loom.layFor(circuit, lead, candidates);
        for (LaidWire wire : wires) {
            if (wire.fitsCavity() && wire.allowedA() >= coilA) {
                return wire;
            }
        }
        return wires[0];
    }
}
