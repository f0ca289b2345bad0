package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Device;

import java.util.Arrays;

/**
 * Up to which fault current only a branch device opens, and the main device before it surely stays
 * closed: the main at its earliest, with the fault's current and the rest of the feed's, takes
 * longer than the branch at its latest.
 *
 * <p>Looked at over the whole range up to the prospective short right behind the branch device. For
 * an overload so small that the branch device need not open at all, the latest time of its first
 * gate stands in: a main device that outlasts that counts as staying closed (our own rule). What is
 * left out: that the main device is warm from its load already, and that the rest of the feed draws
 * less while a short pulls the voltage down.
 *
 * @param holdsToA the highest fault current up to which it holds; at most the prospective one
 */
record Selectivity(Branch branch, double holdsToA) {

    /**
     * A device behind the main device.
     *
     * @param circuit whose device it is
     * @param band of the device at the temperature in its block
     * @param restA running current of the feed without this device's share
     * @param prospectiveA what a dead short right behind the device draws
     */
    record Branch(
            String circuit,
            Device device,
            TimeCurrentBand band,
            double restA,
            double prospectiveA) {}

    /** Relative; the crossing is found that exactly. */
    private static final double CLOSE = 1e-6;

    /** A little more than a current at which a curve jumps. */
    private static final double JUST_ABOVE = 1 + 1e-12;

    static Selectivity of(TimeCurrentBand main, Branch branch) {
        return new Selectivity(branch, new Race(main, branch).holdsToA());
    }

    boolean isFull() {
        return holdsToA >= branch.prospectiveA;
    }

    /** Whether it is lost before the branch device surely opens at all. */
    boolean isLostInOverload() {
        return !isFull() && holdsToA < branch.band.surelyOpensA();
    }

    /** The part of the whole range over which it holds. */
    double share() {
        return holdsToA / branch.prospectiveA;
    }

    /** The two curves against each other. */
    private static final class Race {

        private final TimeCurrentBand main;
        private final Branch branch;
        private final double surelyOpensA;

        Race(TimeCurrentBand main, Branch branch) {
            this.main = main;
            this.branch = branch;
            this.surelyOpensA = branch.band.surelyOpensA();
        }

        private double mainS(double faultA) {
            return main.earliestS(faultA + branch.restA);
        }

        private double branchS(double faultA) {
            return branch.band.latestS(Math.max(faultA, surelyOpensA));
        }

        private boolean mainStays(double faultA) {
            double mainS = mainS(faultA);
            return Double.isInfinite(mainS) || mainS > branchS(faultA);
        }

        /**
         * Between two currents where a curve bends, both fall along straight lines in logarithms, a
         * + m ln(I + rest) for the main and b + n ln I for the branch. Their distance can rise and
         * then fall, never the other way round, so it is least at an end.
         */
        double holdsToA() {
            double endA = branch.prospectiveA;
            double fromA = Math.min(surelyOpensA, endA);
            if (!mainStays(fromA)) {
                return mainStays(0) ? lastHeldA(0, fromA) : 0;
            }
            for (double toA : bendsA(fromA, endA)) {
                double startA = fromA * JUST_ABOVE;
                if (!mainStays(startA)) {
                    return fromA;
                }
                if (!mainStays(toA)) {
                    return lastHeldA(startA, toA);
                }
                fromA = toA;
            }
            return endA;
        }

        /** Rising, with the end. */
        private double[] bendsA(double fromA, double endA) {
            double restA = branch.restA;
            double[] ofMain = main.earliestTurningPointsA(fromA + restA, endA + restA);
            double[] ofBranch = branch.band.latestTurningPointsA(fromA, endA);
            double[] bendsA = Arrays.copyOf(ofBranch, ofBranch.length + ofMain.length + 1);
            for (int i = 0; i < ofMain.length; i++) {
                bendsA[ofBranch.length + i] = ofMain[i] - restA;
            }
            bendsA[bendsA.length - 1] = endA;
            Arrays.sort(bendsA);
            return bendsA;
        }

        /** Between a current where it holds and one where it does not; the crossing is single. */
        private double lastHeldA(double heldA, double lostA) {
            double low = heldA;
            double high = lostA;
            while (high - low > CLOSE * high) {
                double mid = (low + high) / 2;
                if (mainStays(mid)) {
                    low = mid;
                } else {
                    high = mid;
                }
            }
            return low;
        }
    }
}
