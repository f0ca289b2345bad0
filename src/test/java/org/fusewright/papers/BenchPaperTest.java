package org.fusewright.papers;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.fusewright.core.kit.Kit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

import java.nio.charset.StandardCharsets;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.Stream;

/** What every paper of the bench has, whatever the kit; the kit list has a test of its own. */
class BenchPaperTest {

    private static final float MARGIN = 28;
    private static final float LARGEST = 20;
    private static final OptionalInt REVISION = OptionalInt.of(17);

    static Stream<Arguments> papers() {
        return Stream.concat(SampleKits.listKits().stream(), PlannedKits.listKits().stream())
                .flatMap(BenchPaperTest::papersOf);
    }

    private static Stream<Arguments> papersOf(Kit kit) {
        String reference = kit.job().reference();
        String name = reference.substring(0, Math.min(reference.length(), 12));
        return Stream.of(BenchPaper.values())
                .filter(paper -> paper != BenchPaper.KIT_LIST)
                .flatMap(
                        paper ->
                                Stream.of(Paper.values())
                                        .map(
                                                sheet ->
                                                        Arguments.argumentSet(
                                                                name + " " + paper.code(),
                                                                kit,
                                                                paper,
                                                                sheet)));
    }

    @ParameterizedTest
    @MethodSource("papers")
    void namesJobRevisionFingerprintAndPageOnEveryPage(Kit kit, BenchPaper paper, Paper sheet) {
        String fingerprint = kit.fingerprint().substring(0, 12);
        try (PrintedPaper printed = PrintedPaper.of(paper.print(kit, REVISION, sheet))) {
            for (int page = 1; page <= printed.pages(); page++) {
                assertThat(printed.text(page))
                        .contains("Page " + page + " of " + printed.pages())
                        .contains(paper.title());
                assertThat(PrintedPaper.dense(printed.text(page)))
                        .contains("Revision")
                        .contains("17")
                        .contains("Fingerprint" + fingerprint)
                        .contains(kit.job().reference().substring(0, 4));
            }
        }
    }

    @ParameterizedTest
    @MethodSource("papers")
    void carriesEveryCaution(Kit kit, BenchPaper paper, Paper sheet) {
        try (PrintedPaper printed = PrintedPaper.of(paper.print(kit, REVISION, sheet))) {
            assertThat(printed.denseText())
                    .contains("Disconnectthebatteryfirst.")
                    .contains("Fitthemaindeviceclosetothesource.")
                    .contains("Neverraisearatingtostopadevicefromtripping.")
                    .contains("Auto-resetdevicesre-energisewithoutwarning.")
                    .contains("licensedpracticecomefirst")
                    .contains("acompetentpersonchecksthefinishedmachine.");
        }
    }

    @ParameterizedTest
    @MethodSource("papers")
    void keepsAllTextInsideTheFrame(Kit kit, BenchPaper paper, Paper sheet) {
        try (PrintedPaper printed = PrintedPaper.of(paper.print(kit, REVISION, sheet))) {
            assertThat(printed.document().getPages())
                    .allSatisfy(
                            page ->
                                    assertThat(page.getMediaBox().getHeight())
                                            .isCloseTo(sheet.height(), offset(0.1f)));
            assertThat(printed.signs())
                    .isNotEmpty()
                    .allSatisfy(
                            sign -> {
                                assertThat(sign.left()).isGreaterThan(MARGIN);
                                assertThat(sign.right()).isLessThan(sheet.width() - MARGIN);
                                assertThat(sign.baseline() - sign.size()).isGreaterThan(MARGIN - 1);
                                assertThat(sign.baseline()).isLessThan(sheet.height() - MARGIN);
                                assertThat(sign.size()).isGreaterThanOrEqualTo(5);
                            });
        }
    }

    @ParameterizedTest
    @MethodSource("papers")
    void keepsTextOutOfOtherText(Kit kit, BenchPaper paper, Paper sheet) {
        try (PrintedPaper printed = PrintedPaper.of(paper.print(kit, REVISION, sheet))) {
            List<PrintedPaper.Sign> signs =
                    printed.signs().stream()
                            .filter(sign -> !sign.text().isBlank() && sign.upright())
                            .sorted(
                                    Comparator.comparing(PrintedPaper.Sign::page)
                                            .thenComparing(PrintedPaper.Sign::baseline))
                            .toList();
            for (int i = 0; i < signs.size(); i++) {
                for (int k = i + 1; k < signs.size() && isNear(signs.get(i), signs.get(k)); k++) {
                    assertApart(signs.get(i), signs.get(k));
                }
            }
        }
    }

    /** Whether the lower sign could reach up to the other's line, however large it is. */
    private static boolean isNear(PrintedPaper.Sign upper, PrintedPaper.Sign lower) {
        return lower.page() == upper.page() && lower.baseline() - upper.baseline() < LARGEST;
    }

    /** A sign reaches up from its line by more than half of its size. */
    private static void assertApart(PrintedPaper.Sign upper, PrintedPaper.Sign lower) {
        boolean below = lower.baseline() - 0.6f * lower.size() >= upper.baseline();
        boolean beside =
                lower.left() >= upper.right() - 0.6f || upper.left() >= lower.right() - 0.6f;
        if (!below && !beside) {
            throw new AssertionError(lower + " lies over " + upper);
        }
    }

    @ParameterizedTest
    @MethodSource("papers")
    void givesTheSameBytesForTheSameKit(Kit kit, BenchPaper paper, Paper sheet) {
        assertThat(paper.print(kit, REVISION, sheet)).isEqualTo(paper.print(kit, REVISION, sheet));
    }

    @ParameterizedTest
    @EnumSource(BenchPaper.class)
    void printsHostileNamesHarmlessly(BenchPaper paper) {
        byte[] pdf = paper.print(SampleKits.longNames(), OptionalInt.empty(), Paper.A4);
        assertThat(new String(pdf, StandardCharsets.ISO_8859_1))
                .doesNotContain("/JavaScript", "/JS", "/Launch", "/URI");
        try (PrintedPaper printed = PrintedPaper.of(pdf)) {
            assertThat(printed.denseText().codePoints())
                    .noneMatch(Character::isISOControl)
                    .noneMatch(sign -> Character.getType(sign) == Character.FORMAT);
            for (PDPage page : printed.document().getPages()) {
                assertThat(page.getMediaBox().getWidth())
                        .isCloseTo(PDRectangle.A4.getWidth(), offset(0.1f));
            }
        }
    }

    @ParameterizedTest
    @EnumSource(BenchPaper.class)
    void namesNoRevisionOfAJobThatIsNotKept(BenchPaper paper) {
        byte[] pdf = paper.print(SampleKits.small(), OptionalInt.empty(), Paper.A4);
        try (PrintedPaper printed = PrintedPaper.of(pdf)) {
            assertThat(printed.text()).doesNotContainIgnoringCase("revision");
        }
    }

    @Test
    void findsEachPaperByItsCode() {
        assertThat(Stream.of(BenchPaper.values()).map(BenchPaper::code))
                .containsExactly(
                        "kit-list",
                        "assembly-sheet",
                        "lid-legend",
                        "cut-list",
                        "bag-label",
                        "part-labels")
                .allSatisfy(
                        code ->
                                assertThat(BenchPaper.parse(code).orElseThrow().code())
                                        .isEqualTo(code));
        assertThat(BenchPaper.parse("Kit-list")).isEmpty();
    }
}
