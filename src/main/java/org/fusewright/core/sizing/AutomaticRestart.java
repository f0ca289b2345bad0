package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.check.Basis;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.Check.Measured;
import org.fusewright.core.check.CheckCode;
import org.fusewright.core.check.Subject;
import org.fusewright.core.check.Verdict;
import org.fusewright.core.words.Phrase;

import java.util.Optional;

/**
 * An auto-reset device comes back without a warning; on a fan, a winch or a pump that may catch a
 * hand. AC 43.13-1B 11-50 advises against automatic reset as the only protection.
 */
final class AutomaticRestart {

    private static final Basis BASIS = Basis.published("AC 43.13-1B 11-50");

    private static final Phrase RESTARTS = Phrase.of("automatic-restart.restarts");
    private static final Phrase STAYS_OFF = Phrase.of("automatic-restart.stays-off");

    private AutomaticRestart() {}

    /** Empty when nothing on the circuit moves. */
    static Optional<Check> check(Subject subject, Device device, CircuitDemand demand) {
        int moving = 0;
        for (SingleLoad load : demand.loads()) {
            moving += load.load().kind().moves() ? 1 : 0;
        }
        if (moving == 0) {
            return Optional.empty();
        }
        boolean restarts = device.kind() == DeviceKind.AUTO_RESET;
        return Optional.of(
                Check.atMost(
                        CheckCode.AUTOMATIC_RESTART,
                        subject,
                        new Measured(restarts ? moving : 0, 0, ""),
                        Verdict.CAUTION,
                        restarts ? RESTARTS : STAYS_OFF,
                        BASIS));
    }
}
