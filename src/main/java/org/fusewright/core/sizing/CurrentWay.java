package org.fusewright.core.sizing;

import org.fusewright.core.sizing.FeedPlan.Outlet;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a current runs through from the battery to a load and back, piece by piece, read off the
 * leads as they were laid.
 */
final class CurrentWay {

    /**
     * One piece.
     *
     * @param id the lead's id; of a contact, the id of what it belongs to
     * @param laid the lead's wire; empty for a contact, splice or device
     * @param isDevice a short may find it closed and cold
     * @param warmOhm its resistance while the current runs
     */
    record Piece(
            String id,
            Text name,
            Optional<LaidWire> laid,
            double routeM,
            double currentA,
            double warmOhm,
            boolean isDevice) {

        static Piece lead(LaidLead lead) {
            return lead(
                    lead.lead().id(), lead.laid(), lead.lead().routeM(), lead.lead().currentA());
        }

        static Piece lead(String id, LaidWire laid, double routeM, double currentA) {
            return new Piece(
                    id,
                    Phrase.of("formula.warm-lead", id, laid.wire().size().label()),
                    Optional.of(laid),
                    routeM,
                    currentA,
                    laid.warmOhm(routeM, currentA),
                    false);
        }

        static Piece contact(Text name, double ohm, double currentA) {
            return new Piece("", name, Optional.empty(), 0, currentA, ohm, false);
        }

        static Piece device(Text name, double milliohm, double currentA) {
            return new Piece("", name, Optional.empty(), 0, currentA, milliohm / 1000, true);
        }

        boolean isTrunkOf(String circuit) {
            return laid.isPresent()
                    && (id.equals(circuit + "/out") || id.equals(circuit + "/return"));
        }
    }

    private final List<Piece> pieces = new ArrayList<>();

    private CurrentWay() {}

    /** Up to the contacts of the feed's holder. */
    static List<Piece> toMain(FeedPlan feed) {
        CurrentWay way = new CurrentWay();
        way.walkToMain(feed);
        return way.pieces;
    }

    /** Up to the cavity of a circuit's device. */
    static List<Piece> toDevice(FeedPlan feed, CircuitPlan owner) {
        CurrentWay way = new CurrentWay();
        way.walkToDevice(feed, owner);
        return way.pieces;
    }

    /**
     * To a load and back.
     *
     * @param plans of all circuits behind the device, its owner's first
     * @param load index among the plan's loads
     */
    static List<Piece> toLoad(FeedPlan feed, List<CircuitPlan> plans, CircuitPlan plan, int load) {
        CurrentWay way = new CurrentWay();
        CircuitPlan owner = plans.getFirst();
        way.walkToDevice(feed, owner);
        way.walkThroughDevice(feed, owner);
        if (plans.size() > 1) {
            way.walkShared(owner, startOf(plan));
        }
        way.walkThroughRelay(plan);
        way.walkToLoad(plan, load);
        return way.pieces;
    }

    private void walkToMain(FeedPlan feed) {
        pieces.add(Piece.lead(feed.leads().getFirst()));
        pieces.add(
                Piece.contact(
                        Phrase.of("formula.holder", feed.holder().number().value()),
                        feed.holder().contactMilliohm() / 1000,
                        feed.demand().runningA()));
    }

    private void walkToDevice(FeedPlan feed, CircuitPlan owner) {
        walkToMain(feed);
        String id = feed.demand().feed().id();
        pieces.add(
                Piece.device(
                        Phrase.of("formula.main-device", feed.main().number().value()),
                        feed.main().milliohm(),
                        feed.demand().runningA()));
        pieces.add(Piece.lead(lead(feed.leads(), id + "/main")));
        if (outletOf(feed, owner).from() instanceof LeadEnd.AtSplice at) {
            walkChain(
                    new Chain(id + "/splice-", id + "/link-", 1),
                    at,
                    feed.leads(),
                    feed.splices(),
                    feed.demand().runningA());
            pieces.add(
                    Piece.lead(
                            feed.leads().stream()
                                    .filter(lead -> endsAtDeviceOf(owner, lead))
                                    .findFirst()
                                    .orElseThrow()));
        }
    }

    private static boolean endsAtDeviceOf(CircuitPlan owner, LaidLead lead) {
        return lead.lead().to() instanceof LeadEnd.InCavity(String circuit, CavityRole role)
                && circuit.equals(owner.id())
                && role == CavityRole.FEED;
    }

    private static Outlet outletOf(FeedPlan feed, CircuitPlan owner) {
        return feed.outlets().stream()
                .filter(
                        outlet ->
                                !outlet.service().isTrigger()
                                        && outlet.service().circuit().id().equals(owner.id()))
                .findFirst()
                .orElseThrow();
    }

    private void walkThroughDevice(FeedPlan feed, CircuitPlan owner) {
        terminal(outletOf(feed, owner).wire(), 1, owner.carriedA());
        pieces.add(
                Piece.device(
                        Phrase.of("formula.device", owner.device().number().value()),
                        owner.device().milliohm(),
                        owner.carriedA()));
    }

    private void terminal(LaidWire wire, int ends, double currentA) {
        pieces.add(
                Piece.contact(
                        Phrase.counted("formula.terminals", ends, wire.wire().size().label()),
                        ends * wire.terminalOhm(),
                        currentA));
    }

    /** From the shared device to the splice where a circuit parts from the others. */
    private void walkShared(CircuitPlan owner, LeadEnd start) {
        LaidLead share = lead(owner.leads(), owner.id() + "/share");
        terminal(share.laid(), 1, owner.carriedA());
        pieces.add(Piece.lead(share));
        walkChain(
                new Chain(owner.id() + "/share-", owner.id() + "/share-link-", 1),
                (LeadEnd.AtSplice) start,
                owner.leads(),
                owner.splices(),
                owner.carriedA());
    }

    private static LeadEnd startOf(CircuitPlan plan) {
        return findLead(plan.leads(), plan.id() + "/jumper")
                .orElseGet(() -> lead(plan.leads(), plan.id() + "/out"))
                .lead()
                .from();
    }

    private void walkThroughRelay(CircuitPlan plan) {
        double runningA = plan.demand().runningA();
        Optional<LaidLead> jumper = findLead(plan.leads(), plan.id() + "/jumper");
        jumper.ifPresent(
                lead -> {
                    boolean fromCavity = lead.lead().from() instanceof LeadEnd.InCavity;
                    terminal(lead.laid(), fromCavity ? 2 : 1, runningA);
                    pieces.add(Piece.lead(lead));
                    pieces.add(
                            Piece.device(
                                    Phrase.of("formula.relay-contact", plan.id()),
                                    plan.demand()
                                            .resolved()
                                            .relay()
                                            .orElseThrow()
                                            .contactMilliohm(),
                                    runningA));
                });
        LaidLead trunk = lead(plan.leads(), plan.id() + "/out");
        if (trunk.lead().from() instanceof LeadEnd.InCavity) {
            terminal(trunk.laid(), 1, runningA);
        }
    }

    private void walkToLoad(CircuitPlan plan, int load) {
        String id = plan.id();
        pieces.add(Piece.lead(lead(plan.leads(), id + "/out")));
        Optional<LaidLead> back = findLead(plan.leads(), id + "/return");
        back.ifPresent(lead -> pieces.add(Piece.lead(lead)));
        String number = String.valueOf(load + 1);
        findLead(plan.leads(), id + "/branch-" + number)
                .ifPresent(
                        branch -> {
                            walkChain(
                                    new Chain(
                                            id + "/splice-",
                                            id + "/link-",
                                            back.isPresent() ? 2 : 1),
                                    (LeadEnd.AtSplice) branch.lead().from(),
                                    plan.leads(),
                                    plan.splices(),
                                    plan.demand().runningA());
                            pieces.add(Piece.lead(branch));
                            findLead(plan.leads(), id + "/return-" + number)
                                    .ifPresent(lead -> pieces.add(Piece.lead(lead)));
                        });
    }

    /**
     * Splices in a row.
     *
     * @param sides 2 where the way back has the same splices
     */
    private record Chain(String splice, String link, int sides) {}

    /** Up to one of the splices; the link before a splice carries what the splice does. */
    private void walkChain(
            Chain chain,
            LeadEnd.AtSplice last,
            List<LaidLead> leads,
            List<SizedSplice> splices,
            double enteringA) {
        double restA = enteringA;
        for (int number = 1; ; number++) {
            String id = chain.splice() + number;
            SizedSplice splice =
                    splices.stream().filter(s -> s.id().equals(id)).findFirst().orElseThrow();
            pieces.add(
                    Piece.contact(
                            Phrase.counted("formula.splices", chain.sides(), id),
                            chain.sides() * splice.part().milliohm() / 1000,
                            restA));
            if (last.splice().equals(id)) {
                return;
            }
            LaidLead link = lead(leads, chain.link() + number);
            pieces.add(Piece.lead(link));
            restA = link.lead().currentA();
            if (chain.sides() == 2) {
                LaidWire back = lead(leads, id.replace("/splice-" + number, "/return")).laid();
                pieces.add(Piece.lead(link.lead().id(), back, link.lead().routeM(), restA));
            }
        }
    }

    private static LaidLead lead(List<LaidLead> leads, String id) {
        return findLead(leads, id).orElseThrow();
    }

    private static Optional<LaidLead> findLead(List<LaidLead> leads, String id) {
        return leads.stream().filter(lead -> lead.lead().id().equals(id)).findFirst();
    }
}
