package org.fusewright.core.quote;

import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.job.Job;
import org.fusewright.core.kit.KitPlanner;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;

import java.time.LocalDate;
import java.util.List;

/** From a job to its quote, on one page: plan each variant, price it, put them side by side. */
public final class Quoting {
    private static final Text NOT_PROVEN = Phrase.of("quote.gap.not-proven");

    private final Job job;
    private final KitPlanner planner;
    private final Pricing pricing;

    private Quoting(Job job, PriceBook book, QuoteWishes wishes) {
        this.job = job;
        this.planner = KitPlanner.of(book.catalog());
        this.pricing =
                new Pricing(book, job.currency(), wishes.kits(), wishes.tax(), wishes.shipped());
    }

    /**
     * @param day the quote's date
     * @throws org.fusewright.core.job.MalformedJobException when the job, as it is or in a variant,
     *     asks for what the catalog does not stock
     */
    public static Quote quote(
            String number,
            int revision,
            LocalDate day,
            Job job,
            int jobRevision,
            PriceBook book,
            QuoteWishes wishes) {
        Quoting quoting = new Quoting(job, book, wishes);
        List<Variant> variants = wishes.variants().stream().map(quoting::variant).toList();
        return new Quote(
                number,
                revision,
                day,
                day.plusDays(wishes.validDays()),
                new Quote.QuotedJob(
                        job.reference(),
                        job.title(),
                        job.customer(),
                        jobRevision,
                        book.catalog().version()),
                wishes.kits(),
                job.currency(),
                wishes.tax(),
                wishes.shipped(),
                variants,
                wishes.terms(),
                wishes.notIncluded());
    }

    private Variant variant(VariantKind kind) {
        return switch (kind) {
            case AS_ASKED -> planned(kind, job);
            case FUSES -> planned(kind, VariantKind.withDevices(job, DeviceKind.FUSE));
            case SOLID_STATE ->
                    planned(
                            kind,
                            VariantKind.withDevices(job, DeviceKind.AUTO_RESET, DeviceKind.FUSE));
            case CHEAPEST -> cheapest();
        };
    }

    private Variant planned(VariantKind kind, Job variant) {
        return pricing.price(kind, planner.plan(variant));
    }

    private Variant cheapest() {
        CheapestDesign.Found found =
                CheapestDesign.find(job, planner.plan(job), planner::plan, pricing);
        return pricing.price(
                VariantKind.CHEAPEST,
                found.kit(),
                found.isProven() ? List.of() : List.of(NOT_PROVEN.english()));
    }
}
