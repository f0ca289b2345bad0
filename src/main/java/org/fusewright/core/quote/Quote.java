package org.fusewright.core.quote;

import org.joda.money.CurrencyUnit;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.LocalDate;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * What the shop offers a customer for one job: a number of equal kits in up to three variants.
 *
 * @param number the same for all revisions
 * @param validUntil the last day on which it can be accepted
 * @param job what it was made of
 * @param shipped whether it includes shipping; else the customer fetches the kits
 */
public record Quote(
        String number,
        int revision,
        LocalDate quotedOn,
        LocalDate validUntil,
        QuotedJob job,
        int kits,
        CurrencyUnit currency,
        TaxKind tax,
        boolean shipped,
        List<Variant> variants,
        List<String> terms,
        List<String> notIncluded) {

    /** The most variants that one quote shows side by side. */
    public static final int MOST_VARIANTS = 3;

    /** A job's revision, and the catalog that its kits were planned from. */
    public record QuotedJob(
            String reference, String title, String customer, int revision, String catalogVersion) {}

    public Quote {
        variants = List.copyOf(variants);
        terms = List.copyOf(terms);
        notIncluded = List.copyOf(notIncluded);
        if (variants.isEmpty() || variants.size() > MOST_VARIANTS) {
            throw new IllegalArgumentException("a quote has one to three variants");
        }
        if (kits < 1 || revision < 1) {
            throw new IllegalArgumentException("kits and revision are counted from 1");
        }
        if (validUntil.isBefore(quotedOn)) {
            throw new IllegalArgumentException("a quote must not end before it begins");
        }
    }

    public Optional<Variant> findVariant(VariantKind kind) {
        return variants.stream().filter(variant -> variant.kind() == kind).findFirst();
    }

    /** Names the designs offered: that of its one variant, else a hash over those of all. */
    public String fingerprint() {
        if (variants.size() == 1) {
            return variants.getFirst().fingerprint();
        }
        String all = variants.stream().map(Variant::fingerprint).collect(Collectors.joining("\n"));
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            return HexFormat.of().formatHex(digest.digest(all.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java platform has SHA-256", impossible);
        }
    }

    /** The same quote from another day on, and valid for as many days. */
    public Quote dated(LocalDate day) {
        return with(number, revision, day);
    }

    public Quote numbered(String given) {
        return with(given, revision, quotedOn);
    }

    private Quote with(String number, int revision, LocalDate day) {
        return new Quote(
                number,
                revision,
                day,
                validUntil.plusDays(day.toEpochDay() - quotedOn.toEpochDay()),
                job,
                kits,
                currency,
                tax,
                shipped,
                variants,
                terms,
                notIncluded);
    }
}
