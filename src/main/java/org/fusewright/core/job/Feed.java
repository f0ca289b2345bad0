package org.fusewright.core.job;

/**
 * Where circuits get their current from, through one main device near the source.
 *
 * @param terminal "30" permanent, "15" switched (DIN 72552)
 * @param lengthM from the main device to the block, or to the splice before it
 * @param sourceDistanceM from the source to the main device: unprotected, so keep it short
 */
public record Feed(String id, String terminal, double lengthM, double sourceDistanceM) {

    public static final String PERMANENT = "30";
    public static final String SWITCHED = "15";

    public Feed {
        if (!terminal.equals(PERMANENT) && !terminal.equals(SWITCHED)) {
            throw new IllegalArgumentException("terminal must be 30 or 15, not " + terminal);
        }
        if (!(lengthM > 0) || !(sourceDistanceM >= 0)) {
            throw new IllegalArgumentException("feed " + id + " is out of range");
        }
    }
}
