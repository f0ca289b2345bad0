package org.fusewright.counts.load;

import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.count.CountedKind;
import org.fusewright.core.count.ExpectedBag;
import org.fusewright.core.count.Weighing.Reading;
import org.fusewright.core.count.WeighingTerms;
import org.fusewright.core.job.MalformedJobException;
import org.fusewright.counts.NewCount;

import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Reads what callers send about counts.
 *
 * <p>Each method throws a {@link MalformedJobException} with all that is wrong.
 */
public final class CountRequests {
    /** The finest step that a scale may show, in grams. */
    public static final double LEAST_STEP_G = 0.0001;

    /** The coarsest step that a scale may show, in grams. */
    public static final double MOST_STEP_G = 1_000;

    /** The most that a scale may show, in grams. */
    public static final double MOST_G = 1_000_000;

    /** Signs in the remark of a signature. */
    public static final int LONGEST_REMARK = 2_000;

    /** Pieces that a mean mass was found from, at most; also pieces in a bag. */
    public static final int MOST_PIECES = 100_000;

    private static final double LEAST_ERROR = 1e-6;
    private static final double MOST_ERROR = 0.4;
    private static final int LONGEST_CODE = 500;
    private static final PartNumber NO_PART = new PartNumber("0");

    private CountRequests() {}

    /** Pieces of a part, found or taken out. */
    public record Pieces(PartNumber part, int pieces, String by) {}

    /** A code as a scanner types it. */
    public record Code(String code, String by) {}

    /** An agreement to take one part in place of another. */
    public record Agreement(PartNumber wanted, PartNumber offered, int pieces, String by) {}

    /** What was agreed for one part in place of another, taken back. */
    public record Withdrawal(PartNumber wanted, PartNumber offered, String by) {}

    /**
     * A weighing.
     *
     * @param offScale empty for what the scale advises to count by hand
     */
    public record Weighed(
            WeighingTerms terms, Reading reading, Optional<Set<PartNumber>> offScale, String by) {}

    /** A signature. */
    public record Signed(String name, String remark) {}

    public static NewCount readNewCount(byte[] json) {
        JsonFields fields = JsonFields.of(json);
        if (!fields.has("jobId")) {
            fields.report("jobId", "wrong.missing-job");
        }
        int job = fields.findWhole("jobId", 1, Integer.MAX_VALUE).orElse(1);
        OptionalInt revision = fields.findWhole("revision", 1, Integer.MAX_VALUE);
        ExpectedBag.Sets sets = readSets(fields);
        String by = fields.name("by");
        return fields.finish(() -> new NewCount(job, revision, sets, by));
    }

    private static ExpectedBag.Sets readSets(JsonFields fields) {
        String sets = fields.findText("sets").orElse("closed");
        if (sets.equals("opened")) {
            return ExpectedBag.Sets.OPENED;
        }
        if (!sets.equals("closed")) {
            fields.report("sets", "wrong.sets");
        }
        return ExpectedBag.Sets.CLOSED;
    }

    public static Pieces readPieces(byte[] json) {
        JsonFields fields = JsonFields.of(json);
        PartNumber part = part(fields, "part");
        if (!fields.has("pieces")) {
            fields.report("pieces", "wrong.missing-pieces");
        }
        int pieces = fields.findWhole("pieces", -MOST_PIECES, MOST_PIECES).orElse(0);
        String by = fields.name("by");
        return fields.finish(() -> new Pieces(part, pieces, by));
    }

    public static Code readCode(byte[] json) {
        JsonFields fields = JsonFields.of(json);
        String code = fields.text("code");
        if (code.length() > LONGEST_CODE) {
            fields.report("code", "wrong.too-long", LONGEST_CODE);
        }
        String by = fields.name("by");
        return fields.finish(() -> new Code(code, by));
    }

    public static Agreement readAgreement(byte[] json) {
        JsonFields fields = JsonFields.of(json);
        PartNumber wanted = part(fields, "wanted");
        PartNumber offered = part(fields, "offered");
        int pieces = (int) fields.number("pieces", 1, MOST_PIECES);
        String by = fields.name("by");
        return fields.finish(() -> new Agreement(wanted, offered, pieces, by));
    }

    public static Withdrawal readWithdrawal(byte[] json) {
        JsonFields fields = JsonFields.of(json);
        PartNumber wanted = part(fields, "wanted");
        PartNumber offered = part(fields, "offered");
        String by = fields.name("by");
        return fields.finish(() -> new Withdrawal(wanted, offered, by));
    }

    public static WeighingTerms readTerms(byte[] json) {
        JsonFields fields = JsonFields.of(json);
        Terms terms = Terms.read(fields);
        return fields.finish(terms::make);
    }

    public static Weighed readWeighed(byte[] json) {
        JsonFields fields = JsonFields.of(json);
        Terms terms = Terms.read(fields);
        double tareG = fields.findNumber("tareG", 0, MOST_G).orElse(0);
        double grossG = fields.number("grossG", 0, MOST_G);
        if (grossG < tareG && fields.has("grossG")) {
            fields.report("grossG", "wrong.gross-below-tare");
        }
        Optional<Set<PartNumber>> offScale =
                fields.findTexts("offScale").map(texts -> parts(fields, texts));
        String by = fields.name("by");
        return fields.finish(
                () -> new Weighed(terms.make(), new Reading(tareG, grossG), offScale, by));
    }

    public static Signed readSigned(byte[] json) {
        JsonFields fields = JsonFields.of(json);
        String name = fields.name("name");
        String remark = fields.findText("remark").orElse("").strip();
        if (remark.length() > LONGEST_REMARK) {
            fields.report("remark", "wrong.too-long", LONGEST_REMARK);
        }
        if (remark.chars().anyMatch(Character::isISOControl)) {
            fields.report("remark", "wrong.one-line");
        }
        return fields.finish(() -> new Signed(name, remark));
    }

    private record Terms(
            double resolutionG,
            int samplePieces,
            double errorProbability,
            Map<CountedKind, Double> scatter) {

        static Terms read(JsonFields fields) {
            double resolutionG = fields.number("resolutionG", LEAST_STEP_G, MOST_STEP_G);
            int sample =
                    fields.findWhole("samplePieces", 1, MOST_PIECES)
                            .orElse(WeighingTerms.USUAL_SAMPLE);
            double error =
                    fields.findNumber("errorProbability", LEAST_ERROR, MOST_ERROR)
                            .orElse(WeighingTerms.USUAL_ERROR);
            Map<CountedKind, Double> scatter = new EnumMap<>(CountedKind.class);
            if (fields.has("scatterPercent")) {
                JsonFields percents = fields.object("scatterPercent");
                for (String code : percents.names()) {
                    Optional<CountedKind> kind = CountedKind.parse(code);
                    if (kind.isEmpty()) {
                        percents.report(code, "wrong.no-kind", kinds());
                    }
                    percents.findNumber(code, 0, 100)
                            .ifPresent(
                                    percent ->
                                            kind.ifPresent(
                                                    known -> scatter.put(known, percent / 100)));
                }
            }
            return new Terms(resolutionG, sample, error, scatter);
        }

        WeighingTerms make() {
            return new WeighingTerms(resolutionG, samplePieces, errorProbability, scatter);
        }
    }

    private static String kinds() {
        return Stream.of(CountedKind.values())
                .map(CountedKind::code)
                .collect(Collectors.joining(", "));
    }

    private static PartNumber part(JsonFields fields, String name) {
        String text = fields.text(name);
        if (PartNumber.isOne(text)) {
            return new PartNumber(text);
        }
        if (!text.isEmpty()) {
            fields.report(name, "wrong.no-part-number");
        }
        return NO_PART;
    }

    private static Set<PartNumber> parts(JsonFields fields, List<String> texts) {
        Set<PartNumber> parts = new LinkedHashSet<>();
        for (int i = 0; i < texts.size(); i++) {
            if (PartNumber.isOne(texts.get(i))) {
                parts.add(new PartNumber(texts.get(i)));
            } else {
                fields.report("offScale/" + i, "wrong.no-part-number");
            }
        }
        return parts;
    }
}
