package org.fusewright.quotes;

import org.fusewright.core.job.JobProblem;
import org.fusewright.core.job.MalformedJobException;
import org.fusewright.core.quote.Quote;
import org.fusewright.core.quote.QuoteWishes;
import org.fusewright.core.quote.TaxKind;
import org.fusewright.core.quote.VariantKind;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;
import org.fusewright.jobs.load.Fields;
import org.fusewright.jobs.load.Range;
import org.fusewright.jobs.load.TextForm;

import tools.jackson.databind.JsonNode;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Reads what somebody asks of a quote, beside its job. */
final class WishesReader {
    /** Kits in one quote: more than a small shop builds in a year. */
    private static final Range KITS = Range.whole(1, 10_000, "things.kits");

    private static final Range VALID_DAYS = Range.whole(0, 366, "things.days");
    private static final int USUAL_VALID_DAYS = 30;
    private static final Range VARIANTS = Range.whole(1, Quote.MOST_VARIANTS, "things.variants");
    private static final Range PASSAGES = Range.whole(0, 30, "things.texts");
    private static final Text VARIANT_WORDS =
            oneOf(Stream.of(VariantKind.values()).map(VariantKind::code));

    private final List<JobProblem> problems;
    private final List<TaxKind> taxes;

    private WishesReader(List<JobProblem> problems, List<TaxKind> taxes) {
        this.problems = problems;
        this.taxes = taxes;
    }

    /**
     * @param problems found earlier; what is found here is added
     * @throws MalformedJobException with all of them, when there are any
     */
    static QuoteWishes read(JsonNode document, List<JobProblem> problems, List<TaxKind> taxes) {
        List<JobProblem> all = new ArrayList<>(problems);
        QuoteWishes wishes;
        try (Fields fields = Fields.of(document, "", all)) {
            wishes = new WishesReader(all, taxes).wishes(fields);
        }
        if (!all.isEmpty()) {
            throw new MalformedJobException(all);
        }
        return wishes;
    }

    private QuoteWishes wishes(Fields fields) {
        return new QuoteWishes(
                fields.findWhole("kits", KITS).orElse(1),
                variants(fields),
                tax(fields),
                fields.findFlag("shipping", true),
                fields.findWhole("validDays", VALID_DAYS).orElse(USUAL_VALID_DAYS),
                passages(fields, "terms"),
                passages(fields, "notIncluded"));
    }

    private List<VariantKind> variants(Fields fields) {
        if (!fields.has("variants")) {
            return List.of(VariantKind.AS_ASKED);
        }
        Map<VariantKind, String> kinds = new LinkedHashMap<>();
        fields.listParsed("variants", VARIANTS, VariantKind::parse, VARIANT_WORDS)
                .forEach(
                        (at, kind) -> {
                            if (kinds.putIfAbsent(kind, at) != null) {
                                problems.add(JobProblem.of(at, "wrong.stands-already"));
                            }
                        });
        return List.copyOf(kinds.keySet());
    }

    private TaxKind tax(Fields fields) {
        if (taxes.isEmpty()) {
            if (fields.has("customerKind")) {
                fields.report("customerKind", "wrong.no-taxes");
            }
            return TaxKind.NONE;
        }
        Function<String, Optional<TaxKind>> parse =
                code -> taxes.stream().filter(kind -> kind.code().equals(code)).findFirst();
        Text words = oneOf(taxes.stream().map(TaxKind::code));
        return fields.getParsed("customerKind", parse, words, TaxKind.NONE);
    }

    private static Text oneOf(Stream<String> codes) {
        return Phrase.of("wrong.one-of", codes.collect(Collectors.joining(", ")));
    }

    private static List<String> passages(Fields fields, String name) {
        return List.copyOf(
                fields.listParsed(
                                name,
                                PASSAGES,
                                text -> Optional.of(text.strip()).filter(TextForm.PASSAGE::allows),
                                TextForm.PASSAGE.words())
                        .values());
    }
}
