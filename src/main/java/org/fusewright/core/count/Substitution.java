package org.fusewright.core.count;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.Seal;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * Whether one part may stand in for another one in a bag. A person must agree to each such case: it
 * is never taken by itself.
 *
 * <p>Two cases are known, both common practice without a published source. An ordinary fuse of the
 * same blades and rating stands in for a breaker, when it interrupts as much at as high a voltage
 * and stands no taller; never a breaker for a fuse, which would re-energise or may not fit the cap.
 * A seal of the same family stands in for another one when its range takes every lead that the
 * other one was meant for.
 *
 * @param sentence why it may or may not
 */
public record Substitution(boolean allowed, String sentence) {

    /**
     * Judges one part for another.
     *
     * @param line what the bag should hold of the wanted part
     */
    public static Substitution judge(
            ExpectedLine line, Part wanted, Part offered, BagDesign design) {
        if (!wanted.number().equals(line.part())) {
            throw new IllegalArgumentException("the line expects " + line.part());
        }
        if (wanted.number().equals(offered.number())) {
            return refused(offered.number() + " is the part that is wanted.");
        }
        return switch (wanted) {
            case Device breaker when offered instanceof Device fuse ->
                    fuseForBreaker(breaker, fuse, design);
            case Seal seal when offered instanceof Seal other -> sealForSeal(line, seal, other);
            default ->
                    refused(
                            offered.number()
                                    + " cannot stand in for "
                                    + wanted.number()
                                    + ": only a fuse for a breaker and a seal for a seal can.");
        };
    }

    private static Substitution fuseForBreaker(Device breaker, Device fuse, BagDesign design) {
        String pair = fuse.number() + " for " + breaker.number() + ": ";
        if (breaker.kind() == DeviceKind.FUSE || fuse.kind() != DeviceKind.FUSE) {
            return refused(pair + "only a fuse in place of a breaker is known to be safe.");
        }
        if (fuse.form() != breaker.form()) {
            return refused(pair + "its blades are of another form.");
        }
        if (fuse.ratingA() != breaker.ratingA()) {
            return refused(
                    pair
                            + "it is rated "
                            + figure(fuse.ratingA())
                            + " A, not "
                            + figure(breaker.ratingA())
                            + " A; never raise a rating.");
        }
        if (fuse.maxVoltageV() < design.supplyV()) {
            return refused(
                    pair
                            + "it may not interrupt at "
                            + figure(design.supplyV())
                            + " V, only at "
                            + figure(fuse.maxVoltageV())
                            + " V.");
        }
        if (fuse.interruptingA() < breaker.interruptingA()) {
            return refused(
                    pair
                            + "it interrupts "
                            + figure(fuse.interruptingA())
                            + " A, less than the "
                            + figure(breaker.interruptingA())
                            + " A of the breaker.");
        }
        if (fuse.heightMm() > breaker.heightMm()) {
            return refused(pair + "it stands taller, so the cap may not close.");
        }
        return new Substitution(
                true,
                pair
                        + "a fuse of the same "
                        + figure(fuse.ratingA())
                        + " A and blades; it must be replaced after it has opened.");
    }

    private static Substitution sealForSeal(ExpectedLine line, Seal seal, Seal other) {
        String pair = other.number() + " for " + seal.number() + ": ";
        if (!other.family().equals(seal.family())) {
            return refused(pair + "it is of another family, so it does not fit the cavity.");
        }
        Optional<ExpectedLine.LeadRange> leads = line.leads();
        if (leads.isEmpty()) {
            return refused(pair + "which leads it must take is not known.");
        }
        double thinnest = leads.get().thinnestMm();
        double thickest = leads.get().thickestMm();
        String range =
                "its range "
                        + figure(other.minOutsideMm())
                        + " to "
                        + figure(other.maxOutsideMm())
                        + " mm ";
        String diameters =
                thinnest == thickest
                        ? "the leads of " + figure(thinnest) + " mm"
                        : "all leads from " + figure(thinnest) + " to " + figure(thickest) + " mm";
        return other.accepts(thinnest) && other.accepts(thickest)
                ? new Substitution(true, pair + range + "takes " + diameters + ".")
                : refused(pair + range + "does not take " + diameters + ".");
    }

    private static Substitution refused(String sentence) {
        return new Substitution(false, sentence);
    }

    private static String figure(double value) {
        return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }
}
