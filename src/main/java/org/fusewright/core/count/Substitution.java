package org.fusewright.core.count;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.catalog.Seal;
import org.fusewright.core.words.Exact;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;
import org.fusewright.core.words.Unit;

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
public record Substitution(boolean allowed, Text sentence) {

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
            return refused("same", offered.number());
        }
        return switch (wanted) {
            case Device breaker when offered instanceof Device fuse ->
                    fuseForBreaker(breaker, fuse, design);
            case Seal seal when offered instanceof Seal other -> sealForSeal(line, seal, other);
            default -> refused("other-kinds", offered.number(), wanted.number());
        };
    }

    private static Substitution fuseForBreaker(Device breaker, Device fuse, BagDesign design) {
        PartNumber offered = fuse.number();
        PartNumber wanted = breaker.number();
        if (breaker.kind() == DeviceKind.FUSE || fuse.kind() != DeviceKind.FUSE) {
            return refused("no-fuse", offered, wanted);
        }
        if (fuse.form() != breaker.form()) {
            return refused("other-blades", offered, wanted);
        }
        if (fuse.ratingA() != breaker.ratingA()) {
            return refused(
                    "other-rating",
                    offered,
                    wanted,
                    amount(fuse.ratingA(), Unit.AMPERE),
                    amount(breaker.ratingA(), Unit.AMPERE));
        }
        if (fuse.maxVoltageV() < design.supplyV()) {
            return refused(
                    "voltage",
                    offered,
                    wanted,
                    amount(design.supplyV(), Unit.VOLT),
                    amount(fuse.maxVoltageV(), Unit.VOLT));
        }
        if (fuse.interruptingA() < breaker.interruptingA()) {
            return refused(
                    "interrupting",
                    offered,
                    wanted,
                    amount(fuse.interruptingA(), Unit.AMPERE),
                    amount(breaker.interruptingA(), Unit.AMPERE));
        }
        if (fuse.heightMm() > breaker.heightMm()) {
            return refused("taller", offered, wanted);
        }
        return new Substitution(
                true,
                Phrase.of(
                        "substitute.fuse-allowed",
                        offered,
                        wanted,
                        amount(fuse.ratingA(), Unit.AMPERE)));
    }

    private static Substitution sealForSeal(ExpectedLine line, Seal seal, Seal other) {
        PartNumber offered = other.number();
        PartNumber wanted = seal.number();
        if (!other.family().equals(seal.family())) {
            return refused("other-family", offered, wanted);
        }
        Optional<ExpectedLine.LeadRange> leads = line.leads();
        if (leads.isEmpty()) {
            return refused("leads-not-known", offered, wanted);
        }
        double thinnest = leads.get().thinnestMm();
        double thickest = leads.get().thickestMm();
        Text from = amount(other.minOutsideMm(), Unit.MILLIMETRE).bare();
        Text to = amount(other.maxOutsideMm(), Unit.MILLIMETRE);
        Text diameters =
                thinnest == thickest
                        ? Phrase.of("substitute.leads-of", amount(thinnest, Unit.MILLIMETRE))
                        : Phrase.of(
                                "substitute.leads-from",
                                amount(thinnest, Unit.MILLIMETRE).bare(),
                                amount(thickest, Unit.MILLIMETRE));
        return other.accepts(thinnest) && other.accepts(thickest)
                ? new Substitution(
                        true,
                        Phrase.of("substitute.seal-allowed", offered, wanted, from, to, diameters))
                : refused("range", offered, wanted, from, to, diameters);
    }

    private static Substitution refused(String why, Object... values) {
        return new Substitution(false, Phrase.of("substitute.no." + why, values));
    }

    private static Exact amount(double value, Unit unit) {
        BigDecimal stripped = BigDecimal.valueOf(value).stripTrailingZeros();
        return new Exact(stripped.setScale(Math.max(0, stripped.scale())), unit);
    }
}
