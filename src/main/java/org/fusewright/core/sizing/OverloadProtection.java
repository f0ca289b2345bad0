package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.check.Basis;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.Check.Measured;
import org.fusewright.core.check.CheckCode;
import org.fusewright.core.check.Subject;
import org.fusewright.core.check.Verdict;

import java.util.List;

/**
 * Whether a device keeps every lead behind it below its class temperature. Our own limit is 100 %
 * of the ampacity where the lead lies, temperature and bundle taken off. Above that a person must
 * agree, up to 150 % of what 33 CFR 183.455 allows below 50 V: of table 5, corrected for
 * temperature (its note 1) but not for the bundle (its note 2 is for 50 V and over). Beyond, it
 * fails.
 */
final class OverloadProtection {

    static final double TOLERATED_SHARE = 1.5;

    private static final Basis BASIS =
            Basis.published(
                    Ampacity.SOURCE
                            + " with its factors for temperature and bundle (bundle from memory);"
                            + " 150 % of the table by 33 CFR 183.455");

    private OverloadProtection() {}

    /**
     * @param leads all behind the device; one at least
     */
    static Check check(Subject subject, Device device, List<ProtectedLead> leads) {
        ProtectedLead weakest = ProtectedLead.weakest(leads);
        double allowedA = weakest.laid().allowedA();
        boolean tolerated = device.ratingA() <= TOLERATED_SHARE * weakest.laid().tabledA();
        String says =
                "The "
                        + Say.rating(device.ratingA())
                        + " "
                        + device.kind().code()
                        + (device.ratingA() <= allowedA ? " protects " : " is too large for ")
                        + weakest.named()
                        + ", which carries "
                        + Say.amps(allowedA)
                        + " here.";
        return Check.atMost(
                CheckCode.OVERLOAD_PROTECTION,
                subject,
                new Measured(device.ratingA(), allowedA, "A"),
                tolerated ? Verdict.CAUTION : Verdict.FAIL,
                says,
                BASIS);
    }
}
