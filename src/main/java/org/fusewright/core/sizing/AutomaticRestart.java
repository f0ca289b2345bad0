package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.check.Basis;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.Check.Measured;
import org.fusewright.core.check.CheckCode;
import org.fusewright.core.check.Subject;
import org.fusewright.core.check.Verdict;

import java.util.Optional;

/**
 * An auto-reset device comes back without a warning; on a fan, a winch or a pump that may catch a
 * hand. AC 43.13-1B 11-50 advises against automatic reset as the only protection.
 */
final class AutomaticRestart {

    private static final Basis BASIS = Basis.published("AC 43.13-1B 11-50");

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
                        restarts
                                ? "The auto-reset device re-energises without warning, and"
                                        + " something here moves: guard it or use another kind."
                                : "After a fault nothing here starts by itself.",
                        BASIS));
    }
}
