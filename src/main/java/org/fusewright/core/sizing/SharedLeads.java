package org.fusewright.core.sizing;

import org.fusewright.core.sizing.FeedPlan.Limb;
import org.fusewright.core.sizing.Missed.Reason;
import org.fusewright.core.sizing.SpliceChoice.Joint;
import org.fusewright.core.sizing.Upstream.Passed;
import org.jspecify.annotations.Nullable;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The leads of all circuits behind one shared device, chosen together: the lead from the device to
 * the splice outside the block, the splices, each circuit's jumper or trunk from there, and what
 * follows. The combination of least cost that keeps every limit of every circuit.
 *
 * <p>Currents follow from the loads alone. So with the shared lead and the splices given, no
 * circuit changes what another loses or draws in a short, and each finds its cheapest leads by
 * itself. What ties them together is the splice, which depends on all leads that it joins, and the
 * shared lead. Tried is every shared lead with every set of first leads, depth first and cheapest
 * first, and no further where even the least cost of the rest is too much. Least cost of a circuit
 * is what it takes right behind the shared lead, splices left out: they only add to what is lost.
 */
final class SharedLeads {

    /**
     * Far more than jobs ask for. A device with very many circuits whose first leads suit no splice
     * ends here, with the best found so far.
     */
    private static final int MOST_WHOLE_CHOICES = 1_000;

    /**
     * @param starts where each circuit's way starts, in the order of the circuits
     * @param ways from there on
     * @param micros cost of all leads and splices in millionths of the currency
     * @param missed the first limit that they miss
     */
    record Choice(
            LaidWire share,
            List<Joint> chain,
            List<Upstream> starts,
            List<CircuitWay.Choice> ways,
            long micros,
            Optional<Missed> missed) {}

    /** A wire that a circuit's way may start with, and the least that the way then costs. */
    private record Option(LaidWire first, long leastMicros) {}

    private final Loom loom;
    private final List<CircuitWay> ways;
    private final Limb atDevice;
    private final double carriedA;
    private final Jumpers jumpers;
    private final LaidWire[] shareWires;
    private final List<List<Option>> options = new ArrayList<>();
    private final long[] restMicros;
    private final double[] restMm2;
    private int wholeChoices;
    private @Nullable Choice best;

    /**
     * @param ways the owner's first
     * @param atDevice up to the device's load side
     */
    SharedLeads(
            Loom loom,
            List<CircuitWay> ways,
            Protection protection,
            Limb atDevice,
            double carriedA) {
        this.loom = loom;
        this.ways = ways;
        this.atDevice = atDevice;
        this.carriedA = carriedA;
        this.jumpers = new Jumpers(loom, protection);
        CircuitDemand owner = ways.getFirst().demand();
        this.shareWires = loom.layFor(owner.id(), "/share", owner.resolved().wires());
        this.restMicros = new long[ways.size() + 1];
        this.restMm2 = new double[ways.size() + 1];
        for (CircuitWay way : ways) {
            options.add(listOptions(way));
        }
        for (int i = ways.size() - 1; i >= 0; i--) {
            double thinnestMm2 = Double.POSITIVE_INFINITY;
            for (Option option : options.get(i)) {
                thinnestMm2 = Math.min(thinnestMm2, option.first().areaMm2());
            }
            boolean none = options.get(i).isEmpty();
            restMicros[i] =
                    restMicros[i + 1]
                            + (none
                                    ? LoadCosts.NONE_MICROS
                                    : options.get(i).getFirst().leastMicros());
            restMm2[i] = restMm2[i + 1] + (none ? 0 : thinnestMm2);
        }
    }

    private static List<Option> listOptions(CircuitWay way) {
        long behindMicros = way.leastMicrosBehindFirst();
        List<Option> found = new ArrayList<>();
        for (LaidWire wire : way.listFirst()) {
            if (way.mayStartWith(wire)) {
                found.add(new Option(wire, way.firstMicros(wire) + behindMicros));
            }
        }
        found.sort(Comparator.comparingLong(Option::leastMicros));
        return found;
    }

    /** No choice costs less. */
    long leastMicros() {
        long least = Long.MAX_VALUE;
        for (LaidWire share : shareWires) {
            least = Math.min(least, leastMicros(share));
        }
        return least;
    }

    private long leastMicros(LaidWire share) {
        return shareMicros(share) + restMicros[0] + leastSpliceMicros(share, restMm2[0]);
    }

    private long shareMicros(LaidWire share) {
        return loom.micros(share, loom.pigtailCut(), 1);
    }

    private long linkMicros(LaidWire share) {
        return loom.micros(share, loom.pigtailCut(), 0);
    }

    private long leastSpliceMicros(LaidWire share, double firstsMm2) {
        return loom.splices()
                .leastMicros(ways.size(), share.areaMm2() + firstsMm2, linkMicros(share));
    }

    /** When nothing keeps every limit, the nearest stands in. */
    Choice choose() {
        for (LaidWire share : shareWires) {
            if ((best == null || leastMicros(share) < best.micros())
                    && jumpers.missedBy(share, carriedA) == null) {
                new Behind(share).search();
            }
        }
        return best == null ? standIn() : best;
    }

    /** Everything behind one size of the shared lead. */
    private final class Behind {

        private final LaidWire share;
        private final Upstream rightBehind;
        private final LaidWire[] firsts = new LaidWire[ways.size()];

        /** The cheapest way with a first lead, where the splices cost nothing; as found. */
        private final CircuitWay.Choice[][] cheapest = new CircuitWay.Choice[ways.size()][];

        Behind(LaidWire share) {
            this.share = share;
            this.rightBehind = Upstream.atSplice(behindShare(share)).plusPassed(share, carriedA);
            for (int i = 0; i < cheapest.length; i++) {
                cheapest[i] = new CircuitWay.Choice[options.get(i).size()];
            }
        }

        void search() {
            descend(0, shareMicros(share), 0);
        }

        private void descend(int circuit, long soFarMicros, double soFarMm2) {
            if (circuit == firsts.length) {
                judge(soFarMicros);
                return;
            }
            List<Option> sizes = options.get(circuit);
            for (int i = 0; i < sizes.size(); i++) {
                if (wholeChoices >= MOST_WHOLE_CHOICES) {
                    return;
                }
                Option option = sizes.get(i);
                double areaMm2 = soFarMm2 + option.first().areaMm2();
                long restLeast =
                        restMicros[circuit + 1]
                                + leastSpliceMicros(share, areaMm2 + restMm2[circuit + 1]);
                if (isTooMuch(soFarMicros + option.leastMicros() + restLeast)) {
                    continue;
                }
                CircuitWay.Choice way = cheapest(circuit, i, option);
                long micros = soFarMicros + way.micros();
                if (way.missed().isEmpty() && !isTooMuch(micros + restLeast)) {
                    firsts[circuit] = option.first();
                    descend(circuit + 1, micros, areaMm2);
                }
            }
        }

        private boolean isTooMuch(long micros) {
            return best != null && micros >= best.micros();
        }

        private CircuitWay.Choice cheapest(int circuit, int i, Option option) {
            CircuitWay.@Nullable Choice known = cheapest[circuit][i];
            if (known == null) {
                known = ways.get(circuit).startingWith(rightBehind, option.first());
                cheapest[circuit][i] = known;
            }
            return known;
        }

        private void judge(long soFarMicros) {
            wholeChoices++;
            List<Joint> chain = join(share, firsts);
            if (isTooMuch(soFarMicros + chainMicros(share, chain))) {
                return;
            }
            Choice choice = whole(share, firsts, chain);
            if (choice.missed().isEmpty() && !isTooMuch(choice.micros())) {
                best = choice;
            }
        }
    }

    private Limb behindShare(LaidWire share) {
        return atDevice.plusContact(share.terminalOhm(), carriedA)
                .plusLead(share, loom.pigtailM(), carriedA);
    }

    private List<Joint> join(LaidWire share, LaidWire[] firsts) {
        double[] areasMm2 = new double[firsts.length];
        for (int i = 0; i < firsts.length; i++) {
            areasMm2[i] = firsts[i].areaMm2();
        }
        return loom.splices().arrange(areasMm2, share.areaMm2());
    }

    private long chainMicros(LaidWire share, List<Joint> chain) {
        long micros = 0;
        for (Joint joint : chain) {
            micros += joint.micros() + (joint.linksOn() ? linkMicros(share) : 0);
        }
        return micros;
    }

    /** Each circuit's cheapest way with these first leads, now that the splices are known. */
    private Choice whole(LaidWire share, LaidWire[] firsts, List<Joint> chain) {
        List<Upstream> starts = starts(share, chain);
        List<CircuitWay.Choice> chosen = new ArrayList<>(firsts.length);
        long micros = shareMicros(share) + chainMicros(share, chain);
        Optional<Missed> missed =
                Optional.ofNullable(jumpers.missedBy(share, carriedA))
                        .or(() -> missedBy(chain, share));
        for (int i = 0; i < firsts.length; i++) {
            CircuitWay.Choice way = ways.get(i).startingWith(starts.get(i), firsts[i]);
            chosen.add(way);
            micros += way.micros();
            missed = missed.or(way::missed);
        }
        return new Choice(share, chain, starts, chosen, micros, missed);
    }

    private static Optional<Missed> missedBy(List<Joint> chain, LaidWire share) {
        for (Joint joint : chain) {
            if (!joint.fits()) {
                return Optional.of(new Missed(Reason.NO_SPLICE, share, 0));
            }
        }
        return Optional.empty();
    }

    /** Where each circuit's way starts: at the splice that it is joined to. */
    private List<Upstream> starts(LaidWire share, List<Joint> chain) {
        List<Upstream> starts = new ArrayList<>(ways.size());
        List<Passed> passed = List.of(new Passed(share, carriedA));
        Limb here = behindShare(share);
        double restA = carriedA;
        for (Joint joint : chain) {
            here = here.plusContact(joint.ohm(), restA);
            for (int i = joint.from(); i < joint.to(); i++) {
                starts.add(new Upstream(here, false, passed));
                restA -= ways.get(i).demand().runningA();
            }
            if (joint.linksOn()) {
                restA = Math.max(0, restA);
                here = here.plusLead(share, loom.pigtailM(), restA);
            }
        }
        return starts;
    }

    /** Each lead as it suits by itself, one after another. */
    private Choice standIn() {
        LaidWire share = jumpers.standIn(shareWires, loom.pigtailCut(), 1, carriedA);
        Upstream rightBehind = Upstream.atSplice(behindShare(share)).plusPassed(share, carriedA);
        LaidWire[] firsts = new LaidWire[ways.size()];
        for (int i = 0; i < firsts.length; i++) {
            firsts[i] = ways.get(i).cheapest(rightBehind).first();
        }
        return whole(share, firsts, join(share, firsts));
    }

    /** What settled sizes would miss; empty when they would do. */
    Optional<Missed> findMissed(
            LaidWire share, List<Optional<LaidWire>> jumpersTo, List<LaidWire> trunks) {
        LaidWire[] firsts = new LaidWire[trunks.size()];
        for (int i = 0; i < firsts.length; i++) {
            firsts[i] = jumpersTo.get(i).orElse(trunks.get(i));
        }
        List<Joint> chain = join(share, firsts);
        List<Upstream> starts = starts(share, chain);
        Optional<Missed> missed =
                Optional.ofNullable(jumpers.missedBy(share, carriedA))
                        .or(() -> missedBy(chain, share));
        for (int i = 0; i < firsts.length && missed.isEmpty(); i++) {
            missed = ways.get(i).findMissed(starts.get(i), jumpersTo.get(i), trunks.get(i));
        }
        return missed;
    }
}
