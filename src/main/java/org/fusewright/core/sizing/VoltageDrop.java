package org.fusewright.core.sizing;

import org.fusewright.core.check.Basis;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.Check.Measured;
import org.fusewright.core.check.CheckCode;
import org.fusewright.core.check.Subject;
import org.fusewright.core.check.Verdict;
import org.fusewright.core.job.Supply;
import org.fusewright.core.words.Amount;
import org.fusewright.core.words.Phrase;

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

    private static final Basis BASIS = Basis.of("basis.voltage-drop");

    private VoltageDrop() {}

    /** A drop as a share of the nominal voltage. */
    static double percent(double dropV, Supply supply) {
        return 100 * dropV / supply.nominalV();
    }

    static Check check(Subject circuit, SizedLoad load, double mayLosePercent) {
        boolean inside = load.dropPercent() <= mayLosePercent;
        Phrase says =
                Phrase.of(
                        inside ? "voltage-drop.inside" : "voltage-drop.beyond",
                        load.title(),
                        Amount.volts(load.dropV()),
                        Amount.percent(load.dropPercent()),
                        Amount.percent(mayLosePercent));
        return Check.atMost(
                CheckCode.VOLTAGE_DROP,
                circuit.detail(Phrase.of("subject.load", load.title())),
                new Measured(load.dropPercent(), mayLosePercent, "%"),
                Verdict.FAIL,
                says,
                BASIS);
    }
}
