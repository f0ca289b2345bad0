package org.fusewright.core.count;

import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.words.Phrase;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What lies in a bag beside what should. A part first fills its own line; what is left of it fills
 * the lines that it was agreed to stand in for, in the order of agreement, no more than agreed and
 * no more than is short there.
 *
 * @param unexpected parts that belong to no line, with what is left of them after standing in
 */
public record Comparison(List<LineResult> lines, List<Found> unexpected) {

    /** How a line stands. */
    public enum State {
        COMPLETE("complete"),
        SHORT("short"),
        OVER("over");

        private final String code;

        State(String code) {
            this.code = code;
        }

        public String code() {
            return code;
        }
    }

    /** So much of a part. */
    public record Found(PartNumber part, BigDecimal quantity) {}

    /** Pieces that stand in on a line. */
    public record StandIn(AgreedSubstitute agreed, BigDecimal pieces) {}

    /**
     * One line with what was found for it.
     *
     * @param counted pieces of the line's own part, all of them
     * @param standIns pieces of other parts in its place
     * @param lent pieces of its own part that stand in on other lines
     */
    public record LineResult(
            ExpectedLine line, BigDecimal counted, List<StandIn> standIns, BigDecimal lent) {

        public LineResult {
            standIns = List.copyOf(standIns);
        }

        /** What fills the line: its own pieces and those that stand in. */
        public BigDecimal filled() {
            return standIns.stream()
                    .map(StandIn::pieces)
                    .reduce(counted.subtract(lent), BigDecimal::add);
        }

        /** Positive for pieces too many, negative for pieces too few. */
        public BigDecimal difference() {
            return filled().subtract(line.quantity());
        }

        public State state() {
            return switch (difference().signum()) {
                case 0 -> State.COMPLETE;
                case 1 -> State.OVER;
                default -> State.SHORT;
            };
        }
    }

    public Comparison {
        lines = List.copyOf(lines);
        unexpected = List.copyOf(unexpected);
    }

    /**
     * Compares.
     *
     * @param counted what was found of each part, in the order of finding
     */
    public static Comparison of(
            List<ExpectedLine> expected,
            Map<PartNumber, BigDecimal> counted,
            List<AgreedSubstitute> agreed) {
        Map<PartNumber, BigDecimal> left = new LinkedHashMap<>(counted);
        Map<PartNumber, BigDecimal> missing = new LinkedHashMap<>();
        for (ExpectedLine line : expected) {
            BigDecimal found = left.getOrDefault(line.part(), BigDecimal.ZERO);
            left.put(line.part(), found.subtract(line.quantity()).max(BigDecimal.ZERO));
            missing.put(line.part(), line.quantity().subtract(found).max(BigDecimal.ZERO));
        }
        Map<PartNumber, List<StandIn>> standIns = new LinkedHashMap<>();
        Map<PartNumber, BigDecimal> lent = new LinkedHashMap<>();
        for (AgreedSubstitute substitute : agreed) {
            BigDecimal pieces =
                    BigDecimal.valueOf(substitute.pieces())
                            .min(missing.getOrDefault(substitute.wanted(), BigDecimal.ZERO))
                            .min(left.getOrDefault(substitute.offered(), BigDecimal.ZERO));
            if (pieces.signum() > 0) {
                standIns.computeIfAbsent(substitute.wanted(), part -> new ArrayList<>())
                        .add(new StandIn(substitute, pieces));
                missing.merge(substitute.wanted(), pieces.negate(), BigDecimal::add);
                left.merge(substitute.offered(), pieces.negate(), BigDecimal::add);
                lent.merge(substitute.offered(), pieces, BigDecimal::add);
            }
        }
        List<LineResult> results = new ArrayList<>();
        for (ExpectedLine line : expected) {
            results.add(
                    new LineResult(
                            line,
                            counted.getOrDefault(line.part(), BigDecimal.ZERO),
                            standIns.getOrDefault(line.part(), List.of()),
                            lent.getOrDefault(line.part(), BigDecimal.ZERO)));
            left.remove(line.part());
        }
        List<Found> unexpected = new ArrayList<>();
        left.forEach(
                (part, quantity) -> {
                    if (quantity.signum() > 0) {
                        unexpected.add(new Found(part, quantity));
                    }
                });
        return new Comparison(results, unexpected);
    }

    /** Whether every line is filled exactly and nothing else is in the bag. */
    public boolean isComplete() {
        return unexpected.isEmpty()
                && lines.stream().allMatch(line -> line.state() == State.COMPLETE);
    }

    public Optional<LineResult> findLine(PartNumber part) {
        return lines.stream().filter(result -> result.line().part().equals(part)).findFirst();
    }

    /** What a complete bag weighs with the substitutes that were agreed and found. */
    public List<ExpectedLine> listForScale() {
        List<ExpectedLine> forScale = new ArrayList<>();
        for (LineResult result : lines) {
            ExpectedLine line = result.line();
            BigDecimal replaced =
                    result.standIns().stream()
                            .map(StandIn::pieces)
                            .reduce(BigDecimal.ZERO, BigDecimal::add);
            BigDecimal own = line.quantity().subtract(replaced);
            if (own.signum() > 0) {
                double share = own.doubleValue() / line.quantity().doubleValue();
                forScale.add(line.withPieces(own, line.masses().share(share)));
            }
            result.standIns().forEach(standIn -> forScale.add(standInLine(standIn)));
        }
        return forScale;
    }

    private static ExpectedLine standInLine(StandIn standIn) {
        AgreedSubstitute agreed = standIn.agreed();
        return new ExpectedLine(
                agreed.offered(),
                agreed.offeredTitle(),
                new Likeness(agreed.kind(), "", ""),
                standIn.pieces(),
                ExpectedLine.EACH,
                List.of(Phrase.of("place.for", agreed.wanted()).english()),
                List.of(),
                Masses.alike(standIn.pieces().intValueExact(), agreed.massG()),
                Optional.empty());
    }
}
