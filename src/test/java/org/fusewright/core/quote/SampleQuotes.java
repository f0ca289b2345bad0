package org.fusewright.core.quote;

import org.fusewright.catalogs.CatalogContent;
import org.fusewright.catalogs.SampleFiles;
import org.fusewright.core.job.Job;
import org.fusewright.jobs.load.JobReader;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;

/** Quotes of the sample jobs, from the sample catalog. */
public final class SampleQuotes {
    public static final LocalDate DAY = LocalDate.of(2026, 3, 2);

    private static final PriceBook BOOK = read();

    private SampleQuotes() {}

    public static Job job(String file) {
        try {
            return JobReader.read(
                            Files.readAllBytes(Path.of("catalog-sample", "jobs", file + ".json")))
                    .getJob();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public static PriceBook book() {
        return BOOK;
    }

    private static PriceBook read() {
        CatalogContent content = new SampleFiles().read();
        return new PriceBook(
                content.catalog(),
                content.labour(),
                content.markUps().orElseThrow(),
                content.shipping().orElseThrow());
    }

    public static QuoteWishes wishes(int kits, VariantKind... variants) {
        return new QuoteWishes(
                kits,
                List.of(variants),
                PlainKits.tax("20"),
                true,
                30,
                List.of("Payable within 14 days of delivery."),
                List.of("Fitting the kit to the machine."));
    }

    public static Quote quad(int kits, VariantKind... variants) {
        return of(1, job("01-trail-quad"), wishes(kits, variants));
    }

    public static Quote of(int revision, Job job, QuoteWishes wishes) {
        return Quoting.quote("Q-2026-0007", revision, DAY, job, 4, book(), wishes);
    }
}
