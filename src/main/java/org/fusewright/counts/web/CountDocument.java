package org.fusewright.counts.web;

import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.count.AgreedSubstitute;
import org.fusewright.core.count.BagDesign;
import org.fusewright.core.count.BagDifference;
import org.fusewright.core.count.Comparison;
import org.fusewright.core.count.Comparison.LineResult;
import org.fusewright.core.count.CountRecord;
import org.fusewright.core.count.CountRecord.Later;
import org.fusewright.core.count.ExpectedBag.Sets;
import org.fusewright.core.count.Weighing;
import org.fusewright.core.count.WeightStatement;
import org.fusewright.core.count.WeightStatement.OnScale;
import org.fusewright.core.words.Text;
import org.fusewright.counts.BagCount;
import org.fusewright.counts.FileCheck;
import org.fusewright.counts.PossibleSubstitute;
import org.jspecify.annotations.Nullable;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** Counts as the API gives them. */
record CountDocument(
        long id,
        long jobId,
        Design design,
        String sets,
        boolean complete,
        List<Line> lines,
        List<WrongPart> wrongParts,
        List<Substitute> possibleSubstitutes,
        List<Agreed> agreedSubstitutes,
        List<WeighingEntry> weighings,
        @Nullable LaterRevision newerRevision,
        String startedBy,
        Instant startedAt,
        @Nullable String signedBy,
        @Nullable Instant signedAt,
        @Nullable String remark) {

    record Design(
            String reference,
            String title,
            String customer,
            @Nullable Integer revision,
            String fingerprint,
            String catalogVersion) {
        static Design of(BagDesign design) {
            return new Design(
                    design.reference(),
                    design.title(),
                    design.customer(),
                    design.revision() == BagDesign.NOT_KEPT ? null : design.revision(),
                    design.fingerprint(),
                    design.catalogVersion());
        }
    }

    record Line(
            String part,
            String title,
            String kind,
            BigDecimal expected,
            String unit,
            BigDecimal counted,
            BigDecimal difference,
            String state,
            List<String> usedAt,
            List<StandIn> standIns) {
        static Line of(LineResult result) {
            return new Line(
                    result.line().part().value(),
                    result.line().title(),
                    result.line().kind().code(),
                    plain(result.line().quantity()),
                    result.line().unit(),
                    plain(result.counted()),
                    plain(result.difference()),
                    result.state().code(),
                    result.line().places(),
                    result.standIns().stream().map(StandIn::of).toList());
        }
    }

    record StandIn(String part, BigDecimal pieces, String agreedBy, String reason) {
        static StandIn of(Comparison.StandIn standIn) {
            return new StandIn(
                    standIn.agreed().offered().value(),
                    standIn.pieces(),
                    standIn.agreed().agreedBy(),
                    standIn.agreed().reason());
        }
    }

    record WrongPart(String part, @Nullable String title, BigDecimal quantity) {}

    record Substitute(String wanted, String offered, int pieces, String reason) {
        static Substitute of(PossibleSubstitute possible) {
            return new Substitute(
                    possible.wanted().value(),
                    possible.offered().value(),
                    possible.pieces(),
                    possible.reason().english());
        }
    }

    /**
     * What was agreed.
     *
     * @param withdrawnBy null while it holds
     */
    record Agreed(
            String wanted,
            String offered,
            int pieces,
            String reason,
            String by,
            @Nullable String withdrawnBy,
            @Nullable Instant withdrawnAt) {
        static List<Agreed> list(BagCount count) {
            return Stream.concat(
                            count.agreed().stream().map(agreed -> of(agreed, null, null)),
                            count.withdrawn().stream()
                                    .map(back -> of(back.agreed(), back.by(), back.at())))
                    .toList();
        }

        private static Agreed of(
                AgreedSubstitute agreed, @Nullable String by, @Nullable Instant at) {
            return new Agreed(
                    agreed.wanted().value(),
                    agreed.offered().value(),
                    agreed.pieces(),
                    agreed.reason(),
                    agreed.agreedBy(),
                    by,
                    at);
        }
    }

    record WeighingEntry(
            String outcome,
            String sentence,
            double tareG,
            double grossG,
            double expectedG,
            double scatterG,
            double differenceG,
            double lowestG,
            double highestG,
            double chanceOfError,
            List<String> offScale,
            List<String> candidates,
            String by,
            Instant at) {
        static WeighingEntry of(CountRecord.Done done) {
            Weighing weighing = done.weighing();
            OnScale onScale = weighing.onScale();
            return new WeighingEntry(
                    weighing.outcome().code(),
                    weighing.sentence().english(),
                    weighing.tareG(),
                    weighing.grossG(),
                    rounded(onScale.mass().meanG()),
                    rounded(onScale.mass().scatterG()),
                    rounded(weighing.differenceG()),
                    rounded(onScale.lowestG()),
                    rounded(onScale.highestG()),
                    onScale.chanceOfError(),
                    numbers(weighing.offScale()),
                    numbers(weighing.candidates()),
                    done.by(),
                    done.at());
        }
    }

    record LaterRevision(int revision, boolean kit, List<Change> toAdd, List<Change> toTakeBack) {
        static LaterRevision of(Later later) {
            Optional<BagDifference> difference = later.difference();
            return new LaterRevision(
                    later.revision(),
                    difference.isPresent(),
                    difference.map(BagDifference::toAdd).map(Change::list).orElse(List.of()),
                    difference.map(BagDifference::toTakeBack).map(Change::list).orElse(List.of()));
        }
    }

    record Change(String part, String title, BigDecimal quantity, String unit, List<Long> cutsMm) {
        static List<Change> list(List<BagDifference.Entry> entries) {
            return entries.stream()
                    .map(
                            entry ->
                                    new Change(
                                            entry.part().value(),
                                            entry.title(),
                                            plain(entry.quantity()),
                                            entry.unit(),
                                            entry.cutsMm()))
                    .toList();
        }
    }

    static CountDocument of(
            BagCount count, List<PossibleSubstitute> possible, Optional<Later> later) {
        Comparison comparison = count.compare();
        Map<PartNumber, String> titles = new LinkedHashMap<>();
        count.found().forEach(found -> titles.put(found.part(), found.title()));
        return new CountDocument(
                count.id(),
                count.jobId(),
                Design.of(count.design()),
                code(count.sets()),
                comparison.isComplete(),
                comparison.lines().stream().map(Line::of).toList(),
                comparison.unexpected().stream()
                        .map(
                                found ->
                                        new WrongPart(
                                                found.part().value(),
                                                titles.get(found.part()),
                                                plain(found.quantity())))
                        .toList(),
                possible.stream().map(Substitute::of).toList(),
                Agreed.list(count),
                count.weighings().stream().map(WeighingEntry::of).toList(),
                later.map(LaterRevision::of).orElse(null),
                count.startedBy(),
                count.startedAt(),
                count.signature().map(CountRecord.Signature::name).orElse(null),
                count.signature().map(CountRecord.Signature::at).orElse(null),
                count.signature().map(CountRecord.Signature::remark).orElse(null));
    }

    static String code(Sets sets) {
        return sets.name().toLowerCase(Locale.ROOT);
    }

    /** A kit from elsewhere beside its design. */
    record Check(
            Design design,
            boolean complete,
            List<Line> lines,
            List<WrongPart> wrongParts,
            List<Substitute> possibleSubstitutes,
            List<String> unknownParts) {
        static Check of(FileCheck check) {
            return new Check(
                    Design.of(check.design()),
                    check.comparison().isComplete(),
                    check.comparison().lines().stream().map(Line::of).toList(),
                    check.comparison().unexpected().stream()
                            .map(
                                    found ->
                                            new WrongPart(
                                                    found.part().value(),
                                                    null,
                                                    plain(found.quantity())))
                            .toList(),
                    check.substitutes().stream().map(Substitute::of).toList(),
                    check.unknown().stream().map(PartNumber::value).sorted().toList());
        }
    }

    /** Whether a scale can see the lightest part, and what to count by hand if not. */
    record Statement(
            List<String> sentences,
            boolean visible,
            Scale all,
            List<String> byHand,
            @Nullable Scale rest,
            Terms terms) {
        static Statement of(WeightStatement statement) {
            return new Statement(
                    statement.sentences().stream().map(Text::english).toList(),
                    statement.all().visible(),
                    Scale.of(statement.all()),
                    statement.byHand().stream().map(line -> line.part().value()).toList(),
                    statement.rest().map(Scale::of).orElse(null),
                    Terms.of(statement));
        }
    }

    /** What the statement was made with. */
    record Terms(
            double resolutionG,
            int samplePieces,
            double errorProbability,
            Map<String, Double> scatterPercent) {
        static Terms of(WeightStatement statement) {
            Map<String, Double> percents = new LinkedHashMap<>();
            statement.terms().scatter().entrySet().stream()
                    .sorted(Map.Entry.comparingByKey())
                    .forEach(
                            entry ->
                                    percents.put(
                                            entry.getKey().code(),
                                            BigDecimal.valueOf(entry.getValue())
                                                    .movePointRight(2)
                                                    .doubleValue()));
            return new Terms(
                    statement.terms().resolutionG(),
                    statement.terms().samplePieces(),
                    statement.terms().errorProbability(),
                    percents);
        }
    }

    record Scale(
            double expectedG,
            double scatterG,
            String lightestPart,
            double lightestG,
            double lowestG,
            double highestG,
            double chanceOfAlarm,
            double chanceOfMiss,
            boolean visible) {
        static Scale of(OnScale onScale) {
            return new Scale(
                    rounded(onScale.mass().meanG()),
                    rounded(onScale.mass().scatterG()),
                    onScale.lightest().part().value(),
                    onScale.lightestG(),
                    rounded(onScale.lowestG()),
                    rounded(onScale.highestG()),
                    onScale.chanceOfAlarm(),
                    onScale.chanceOfMiss(),
                    onScale.visible());
        }
    }

    /** To a microgram: what lies beyond is the arithmetic's. */
    private static double rounded(double massG) {
        return Math.rint(massG * 1e6) / 1e6;
    }

    private static List<String> numbers(List<PartNumber> parts) {
        return parts.stream().map(PartNumber::value).toList();
    }

    private static BigDecimal plain(BigDecimal value) {
        BigDecimal stripped = value.stripTrailingZeros();
        return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
    }
}
