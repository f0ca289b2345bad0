package org.fusewright.core.sizing;

import org.fusewright.core.job.Supply;

/**
 * What a load loses between the battery's terminals and its own, out and back: leads at conductor
 * temperature ({@link ConductorTemperature}), holder, main device, terminals, device, relay contact
 * and splices, each at the current that runs through it. The feed's part counts at the feed's
 * running current, everything on it running.
 *
 * <p>Limits: 3 % for essential circuits and 10 % for others is marine practice (ABYC E-11, ISO
 * 10133) and the job's own to change; AC 43.13-1B table 11-6 has 0.5 V, or 1 V for two minutes, at
 * 14 V, and asks to count the round trip.
 */
final class VoltageDrop {

    private VoltageDrop() {}

    /** A drop as a share of the nominal voltage. */
    static double percent(double dropV, Supply supply) {
        return 100 * dropV / supply.nominalV();
    }
}
