package org.fusewright.core.count;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.fusewright.core.catalog.PartNumber;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

class ComparisonTest {
    private static final List<ExpectedLine> LINES =
            List.of(
                    Bench.line("BREAKER", CountedKind.AUTO_RESET, 3, 4.6),
                    Bench.line("FUSE", CountedKind.FUSE, 2, 0.78),
                    Bench.line("SEAL", CountedKind.SEAL, 4, 0.15));

    /** Counts as "PART=2 PART=1", agreed as "WANTED<OFFERED=1". */
    private static Comparison compare(String counted, String agreed) {
        Map<PartNumber, BigDecimal> found = new LinkedHashMap<>();
        words(counted)
                .forEach(
                        word ->
                                found.put(
                                        new PartNumber(word.split("=")[0]),
                                        new BigDecimal(word.split("=")[1])));
        List<AgreedSubstitute> substitutes = new ArrayList<>();
        for (String word : words(agreed)) {
            String[] parts = word.split("[<=]");
            substitutes.add(
                    new AgreedSubstitute(
                            new PartNumber(parts[0]),
                            new PartNumber(parts[1]),
                            parts[1],
                            CountedKind.FUSE,
                            0.78,
                            Integer.parseInt(parts[2]),
                            "why",
                            "Ada"));
        }
        return Comparison.of(LINES, found, substitutes);
    }

    private static List<String> words(String text) {
        return text.isBlank() ? List.of() : List.of(text.strip().split(" +"));
    }

    private static String answer(Comparison comparison) {
        String lines =
                comparison.lines().stream()
                        .map(line -> line.line().part() + " " + line.difference())
                        .collect(Collectors.joining(", "));
        String others =
                comparison.unexpected().stream()
                        .map(found -> found.part() + " " + found.quantity())
                        .collect(Collectors.joining(", "));
        return others.isEmpty() ? lines : lines + "; wrong " + others;
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "BREAKER=3 FUSE=2 SEAL=4 | | BREAKER 0, FUSE 0, SEAL 0",
                "BREAKER=1 FUSE=5 | | BREAKER -2, FUSE 3, SEAL -4",
                "BREAKER=3 FUSE=2 SEAL=4 CAP=1 | | BREAKER 0, FUSE 0, SEAL 0; wrong CAP 1",
                "BREAKER=2 FUSE=3 SEAL=4 | BREAKER<FUSE=1 | BREAKER 0, FUSE 0, SEAL 0",
                "BREAKER=2 FUSE=2 SEAL=4 | BREAKER<FUSE=1 | BREAKER -1, FUSE 0, SEAL 0",
                "BREAKER=1 FUSE=4 SEAL=4 | BREAKER<FUSE=1 | BREAKER -1, FUSE 1, SEAL 0",
                "BREAKER=3 FUSE=3 SEAL=4 | BREAKER<FUSE=1 | BREAKER 0, FUSE 1, SEAL 0",
                "BREAKER=3 FUSE=2 SEAL=3 WIDE=2 | SEAL<WIDE=1 | BREAKER 0, FUSE 0, SEAL 0;"
                        + " wrong WIDE 1",
                "BREAKER=3 FUSE=2 SEAL=2 WIDE=1 BROAD=1 | SEAL<WIDE=1 SEAL<BROAD=1 | BREAKER 0,"
                        + " FUSE 0, SEAL 0",
                "CAP=0 | | BREAKER -3, FUSE -2, SEAL -4",
            })
    void tellsShortagesExtrasAndWrongParts(String counted, String agreed, String expected) {
        assertThat(answer(compare(counted, agreed == null ? "" : agreed))).isEqualTo(expected);
    }

    @Test
    void isCompleteOnlyWhenEveryLineIsAndNothingElseIsThere() {
        assertThat(compare("BREAKER=3 FUSE=2 SEAL=4", "").isComplete()).isTrue();
        assertThat(compare("BREAKER=3 FUSE=2 SEAL=4 CAP=1", "").isComplete()).isFalse();
        assertThat(compare("BREAKER=3 FUSE=2 SEAL=5", "").isComplete()).isFalse();
        assertThat(compare("BREAKER=3 FUSE=2", "").isComplete()).isFalse();
        assertThat(compare("BREAKER=2 FUSE=3 SEAL=4", "BREAKER<FUSE=1").isComplete()).isTrue();
    }

    @Test
    void weighsTheSubstitutesInsteadOfWhatTheyReplace() {
        List<ExpectedLine> onScale =
                compare("BREAKER=1 FUSE=4 SEAL=4", "BREAKER<FUSE=2").listForScale();
        double totalG = onScale.stream().mapToDouble(line -> line.masses().totalG()).sum();
        assertThat(totalG).isCloseTo(1 * 4.6 + 4 * 0.78 + 4 * 0.15, within(1e-12));
    }

    @Test
    void tellsWhatToAddAndWhatToTakeBack() {
        List<ExpectedLine> newer =
                List.of(
                        Bench.line("BREAKER", CountedKind.AUTO_RESET, 4, 4.6),
                        Bench.line("FUSE", CountedKind.FUSE, 1, 0.78),
                        Bench.line("RELAY", CountedKind.RELAY, 1, 18.4));
        BagDifference difference = BagDifference.between(LINES, newer);
        assertThat(inWords(difference.toAdd())).isEqualTo("1 BREAKER, 1 RELAY");
        assertThat(inWords(difference.toTakeBack())).isEqualTo("1 FUSE, 4 SEAL");
        assertThat(BagDifference.between(LINES, LINES).isNothing()).isTrue();
    }

    @Test
    void tellsLeadsApartByLength() {
        BagDifference difference =
                BagDifference.between(
                        List.of(Bench.leads("RED", 1200L, 800L, 800L)),
                        List.of(Bench.leads("RED", 1200L, 900L, 800L)));
        assertThat(difference.toAdd())
                .singleElement()
                .extracting("cutsMm")
                .asString()
                .isEqualTo("[900]");
        assertThat(difference.toTakeBack())
                .singleElement()
                .extracting("cutsMm")
                .asString()
                .isEqualTo("[800]");
    }

    private static String inWords(List<BagDifference.Entry> entries) {
        return entries.stream()
                .map(entry -> entry.quantity() + " " + entry.part())
                .collect(Collectors.joining(", "));
    }
}
