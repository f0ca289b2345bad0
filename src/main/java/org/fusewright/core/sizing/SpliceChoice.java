package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Splice;
import org.fusewright.core.pricing.PriceList;
import org.fusewright.core.pricing.Stock;
import org.jspecify.annotations.Nullable;

import java.util.ArrayList;
import java.util.List;

/**
 * Where one lead becomes several: the cheapest stocked splice part that takes so many leads and
 * their copper areas together (catalog data). More leads, or more copper, than any part takes make
 * a chain of splices with link leads between them, each splice as full as a part allows.
 */
final class SpliceChoice {

    /**
     * One splice of a chain.
     *
     * @param from first of the outgoing leads that end here
     * @param to behind the last of them
     * @param fits false when no stocked part takes this copper area; the nearest one stands in
     * @param micros price of the part in millionths of the currency
     */
    record Joint(int from, int to, boolean linksOn, Splice part, boolean fits, long micros) {

        int leads() {
            return 1 + (to - from) + (linksOn ? 1 : 0);
        }

        double ohm() {
            return part.milliohm() / 1000;
        }
    }

    private final PriceList prices;
    private final List<Splice> cheapestFirst;
    private final int mostLeads;

    SpliceChoice(Stock stock) {
        prices = stock.prices();
        cheapestFirst = stock.listByPrice(Splice.class);
        mostLeads = cheapestFirst.stream().mapToInt(Splice::maxLeads).max().orElse(0);
    }

    /** The highest resistance of a stocked splice, in ohms. */
    double worstOhm() {
        double worst = 0;
        for (Splice part : cheapestFirst) {
            worst = Math.max(worst, part.milliohm() / 1000);
        }
        return worst;
    }

    /** No splice costs less, in millionths of the currency. */
    long leastMicros() {
        return cheapestFirst.isEmpty() ? 0 : micros(cheapestFirst.getFirst());
    }

    /**
     * No chain to so many leads costs less, its links included.
     *
     * @param areaMm2 copper of all leads of it together, at least
     * @param linkMicros cost of a link
     */
    long leastMicros(int outs, double areaMm2, long linkMicros) {
        long least = Long.MAX_VALUE;
        for (Splice part : cheapestFirst) {
            if (part.maxLeads() > outs && part.maxAreaMm2() >= areaMm2) {
                least = micros(part);
                break;
            }
        }
        if (outs < 3 || mostLeads < 3) {
            return least == Long.MAX_VALUE ? leastMicros() : least;
        }
        int joints = Math.max(2, Math.ceilDiv(outs - 1, mostLeads - 2));
        return Math.min(least, joints * leastMicros() + (joints - 1) * linkMicros);
    }

    private long micros(Splice part) {
        return prices.unitPriceMicros(part.number());
    }

    /**
     * The chain that takes one incoming lead to all outgoing ones, in their order.
     *
     * @param outMm2 copper areas of the outgoing leads, two or more
     * @param inMm2 copper area of the incoming lead, and of each link
     */
    List<Joint> arrange(double[] outMm2, double inMm2) {
        List<Joint> chain = new ArrayList<>(1);
        int next = 0;
        while (next < outMm2.length) {
            Joint joint = widest(outMm2, inMm2, next);
            chain.add(joint);
            next = joint.to();
        }
        return chain;
    }

    private Joint widest(double[] outMm2, double inMm2, int from) {
        int end = outMm2.length;
        if (1 + end - from <= mostLeads) {
            @Nullable Splice last = find(1 + end - from, inMm2 + sum(outMm2, from, end));
            if (last != null) {
                return new Joint(from, end, false, last, true, micros(last));
            }
        }
        // The last splice of a chain joins two leads at least to the link, or it would join
        // nothing.
        for (int to = Math.min(end - 2, from + mostLeads - 2); to > from; to--) {
            double areaMm2 = 2 * inMm2 + sum(outMm2, from, to);
            @Nullable Splice part = find(2 + to - from, areaMm2);
            if (part != null) {
                return new Joint(from, to, true, part, true, micros(part));
            }
        }
        return standIn(outMm2, inMm2, from);
    }

    private static double sum(double[] areasMm2, int from, int to) {
        double sumMm2 = 0;
        for (int i = from; i < to; i++) {
            sumMm2 += areasMm2[i];
        }
        return sumMm2;
    }

    private @Nullable Splice find(int leads, double areaMm2) {
        for (Splice part : cheapestFirst) {
            if (part.maxLeads() >= leads
                    && part.minAreaMm2() <= areaMm2
                    && areaMm2 <= part.maxAreaMm2()) {
                return part;
            }
        }
        return null;
    }

    /** No part fits: the one whose range lies nearest, so that the joint is still on the list. */
    private Joint standIn(double[] outMm2, double inMm2, int from) {
        int end = outMm2.length;
        double areaMm2 = inMm2 + sum(outMm2, from, Math.min(end, from + mostLeads - 1));
        Splice nearest = cheapestFirst.getFirst();
        for (Splice part : cheapestFirst) {
            if (distance(part, areaMm2) < distance(nearest, areaMm2)) {
                nearest = part;
            }
        }
        if (1 + end - from <= nearest.maxLeads()) {
            return new Joint(from, end, false, nearest, false, micros(nearest));
        }
        int to = Math.min(end - 2, from + nearest.maxLeads() - 2);
        return new Joint(from, to, true, nearest, false, micros(nearest));
    }

    private static double distance(Splice part, double areaMm2) {
        return Math.max(0, Math.max(part.minAreaMm2() - areaMm2, areaMm2 - part.maxAreaMm2()));
    }
}
