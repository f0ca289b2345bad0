package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.check.Basis;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.Check.Measured;
import org.fusewright.core.check.CheckCode;
import org.fusewright.core.check.Subject;
import org.fusewright.core.check.Verdict;
import org.fusewright.core.words.Amount;
import org.fusewright.core.words.Phrase;

import java.util.List;

/**
 * Whether a device keeps every lead behind it whole in an overload, in two checks.
 *
 * <p>For good: its rating is not above what a lead may carry where it lies ({@link LaidWire}).
 * Above that a person must agree, up to the lead's ampacity by heat balance or 150 % of what 33 CFR
 * 183.455 allows below 50 V, whichever is more: of table 5, corrected for temperature (its note 1)
 * but not for the bundle (its note 2 is for 50 V and over). Beyond, it fails.
 *
 * <p>Until it opens: whatever current flows between the rating and a dead short, no lead gets
 * hotter than 25 K above its class, the short-term ageing of ISO 6722 (240 h). Up to 50 K above it,
 * the overload of ISO 6722 (6 h), a person must agree; beyond, it fails. Both from memory.
 */
final class OverloadProtection {

    static final double TOLERATED_SHARE = 1.5;
    static final double SHORT_TERM_K = 25;
    static final double OVERLOAD_K = 50;

    private static final Basis RATING = Basis.of("basis.overload-rating");
    private static final Basis WARMING = Basis.of("basis.overload-warming");
    private static final Phrase OVERLOAD = Phrase.of("subject.overload");

    private OverloadProtection() {}

    /** What the insulation takes for days, in degrees Celsius. */
    static double shortTermC(LaidWire wire) {
        return wire.wire().classC() + SHORT_TERM_K;
    }

    /**
     * @param leads all behind the device; one at least
     */
    static Check check(Subject subject, Device device, List<ProtectedLead> leads) {
        ProtectedLead weakest = ProtectedLead.weakest(leads);
        LaidWire laid = weakest.laid();
        double allowedA = laid.allowedA();
        boolean tolerated =
                device.ratingA()
                        <= Math.max(laid.heat().ampacityA(), TOLERATED_SHARE * laid.tabledA());
        Phrase says =
                Phrase.of(
                        device.ratingA() <= allowedA
                                ? "overload-protection.protects"
                                : "overload-protection.too-large",
                        DeviceWords.rated(device),
                        weakest.named(),
                        Amount.amps(allowedA));
        return Check.atMost(
                CheckCode.OVERLOAD_PROTECTION,
                subject,
                new Measured(device.ratingA(), allowedA, "A"),
                tolerated ? Verdict.CAUTION : Verdict.FAIL,
                says,
                RATING);
    }

    /**
     * The lead that comes nearest to its limit before the device opens.
     *
     * @param leads all behind the device; one at least
     */
    static Check checkUntilOpen(
            Subject subject,
            Loom loom,
            Device device,
            TimeCurrentBand band,
            List<ProtectedLead> leads,
            double highestA) {
        ProtectedLead nearest = leads.getFirst();
        WorstOverload worst = loom.worstOverload(device, band, nearest.laid(), highestA);
        for (ProtectedLead lead : leads) {
            if (lead.laid().heat() == nearest.laid().heat()) {
                continue;
            }
            WorstOverload other = loom.worstOverload(device, band, lead.laid(), highestA);
            if (shortTermC(lead.laid()) - other.conductorC()
                    < shortTermC(nearest.laid()) - worst.conductorC()) {
                nearest = lead;
                worst = other;
            }
        }
        double limitC = shortTermC(nearest.laid());
        boolean tolerated = worst.conductorC() <= nearest.laid().wire().classC() + OVERLOAD_K;
        Amount currentA = Amount.amps(worst.currentA());
        Amount conductorC = Amount.celsius(worst.conductorC());
        Phrase says =
                worst.isForGood()
                        ? Phrase.of(
                                "overload-protection.for-good",
                                currentA,
                                nearest.named(),
                                conductorC)
                        : Phrase.of(
                                "overload-protection.until-open",
                                currentA,
                                Amount.seconds(worst.opensS()),
                                nearest.named(),
                                conductorC);
        return Check.atMost(
                CheckCode.OVERLOAD_PROTECTION,
                subject.detail(OVERLOAD),
                new Measured(worst.conductorC(), limitC, "C"),
                tolerated ? Verdict.CAUTION : Verdict.FAIL,
                says,
                WARMING);
    }
}
