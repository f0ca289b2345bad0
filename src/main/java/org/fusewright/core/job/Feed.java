package org.fusewright.core.job;

import org.fusewright.core.quantity.WireSize;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Where circuits get their current from, through one main device near the source.
 *
 * @param terminal "30" permanent, "15" switched (DIN 72552)
 * @param lengthM from the main device to the block, or to the splice before it
 * @param sourceDistanceM from the source to the main device: unprotected, so keep it short
 * @param diversity most of the running currents behind it that is ever drawn at the same time, as a
 *     share of their sum: above 0, at most 1
 * @param ratingA main device's rating that the job fixes, in amperes
 * @param gauge size of the main lead that the job fixes
 */
public record Feed(
        String id,
        String terminal,
        double lengthM,
        double sourceDistanceM,
        double diversity,
        OptionalDouble ratingA,
        Optional<WireSize> gauge) {

    public static final String PERMANENT = "30";
    public static final String SWITCHED = "15";

    public Feed {
        if (!terminal.equals(PERMANENT) && !terminal.equals(SWITCHED)) {
            throw new IllegalArgumentException("terminal must be 30 or 15, not " + terminal);
        }
        if (!(lengthM > 0) || !(sourceDistanceM >= 0) || !(diversity > 0) || !(diversity <= 1)) {
            throw new IllegalArgumentException("feed " + id + " is out of range");
        }
    }

    /** A feed on which everything may run at once and nothing is fixed. */
    public Feed(String id, String terminal, double lengthM, double sourceDistanceM) {
        this(id, terminal, lengthM, sourceDistanceM, 1, OptionalDouble.empty(), Optional.empty());
    }

    public Feed withDiversity(double share) {
        return new Feed(id, terminal, lengthM, sourceDistanceM, share, ratingA, gauge);
    }

    public Feed withRatingA(double fixedA) {
        return new Feed(
                id,
                terminal,
                lengthM,
                sourceDistanceM,
                diversity,
                OptionalDouble.of(fixedA),
                gauge);
    }

    public Feed withGauge(WireSize fixed) {
        return new Feed(
                id, terminal, lengthM, sourceDistanceM, diversity, ratingA, Optional.of(fixed));
    }
}
