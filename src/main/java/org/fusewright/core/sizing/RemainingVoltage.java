package org.fusewright.core.sizing;

/**
 * What remains of the battery's voltage with the engine off, while everything of the job runs.
 *
 * @param batteryV between the battery's terminals
 * @param busV at the end of a feed's main lead
 * @param busAtStartV there, at the worst start-up of the job; never above {@code busV}
 */
public record RemainingVoltage(double batteryV, double busV, double busAtStartV) {

    /** In one sentence, in shop language. */
    public String says() {
        String running =
                "With the engine off and everything running, "
                        + Say.volts(batteryV)
                        + " remain at the battery and "
                        + Say.volts(busV)
                        + " at the end of this feed";
        return busAtStartV < busV
                ? running
                        + "; the worst start pulls that down to "
                        + Say.volts(busAtStartV)
                        + " for a moment."
                : running + ".";
    }
}
