package org.fusewright.papers;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.words.Language;
import org.fusewright.core.words.UnitSystem;
import org.fusewright.core.words.Wording;
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

    private static final Wording GERMAN = new Wording(Language.GERMAN, UnitSystem.METRIC);

    static Stream<Arguments> papers() {
        return Stream.of(Wording.ENGLISH, GERMAN)
                .flatMap(
                        wording ->
                                Stream.concat(
                                                SampleKits.listKits().stream(),
                                                PlannedKits.listKits().stream())
                                        .flatMap(kit -> papersOf(kit, wording)));
    }

    private static Stream<Arguments> papersOf(Kit kit, Wording wording) {
        String reference = kit.job().reference();
        String name = reference.substring(0, Math.min(reference.length(), 12));
        return Stream.of(BenchPaper.values())
                .filter(paper -> paper != BenchPaper.KIT_LIST || wording != Wording.ENGLISH)
                .flatMap(
                        paper ->
                                Stream.of(Paper.values())
                                        .map(
                                                sheet ->
                                                        Arguments.argumentSet(
                                                                String.join(
                                                                        " ",
                                                                        name,
                                                                        paper.code(),
                                                                        wording.language().code()),
                                                                kit,
                                                                paper,
                                                                sheet,
                                                                wording)));
    }

    @ParameterizedTest
    @MethodSource("papers")
    void namesJobRevisionFingerprintAndPageOnEveryPage(
            Kit kit, BenchPaper paper, Paper sheet, Wording wording) {
        String fingerprint = kit.fingerprint().substring(0, 12);
        try (PrintedPaper printed = PrintedPaper.of(paper.print(kit, REVISION, sheet, wording))) {
            for (int page = 1; page <= printed.pages(); page++) {
                assertThat(printed.text(page))
                        .contains(wording.say("print.frame.page", page, printed.pages()))
                        .contains(wording.say("paper." + paper.code()));
                assertThat(PrintedPaper.dense(printed.text(page)))
                        .contains("Revision")
                        .contains("17")
                        .contains(wording.say("print.frame.fingerprint") + fingerprint)
                        .contains(kit.job().reference().substring(0, 4));
            }
        }
    }

    @ParameterizedTest
    @MethodSource("papers")
    void carriesEveryCaution(Kit kit, BenchPaper paper, Paper sheet, Wording wording) {
        try (PrintedPaper printed = PrintedPaper.of(paper.print(kit, REVISION, sheet, wording))) {
            assertThat(printed.denseText())
                    .contains(
                            wording == GERMAN
                                    ? List.of(
                                            "ZuerstdieBatterieabklemmen.",
                                            "DieHauptsicherungnaheanderStromquelleeinbauen.",
                                            "NieeinenhöherenNennstromwählen,nurdamitnichtsmehrauslöst.",
                                            "SelbstrückstellendeAutomatenschaltenohneVorwarnungwiederein.",
                                            "RegelnderFachbetriebegehenvor",
                                            "einefachkundigePersonprüftdiefertigeMaschine.")
                                    : List.of(
                                            "Disconnectthebatteryfirst.",
                                            "Fitthemaindeviceclosetothesource.",
                                            "Neverraisearatingtostopadevicefromtripping.",
                                            "Auto-resetdevicesre-energisewithoutwarning.",
                                            "licensedpracticecomefirst",
                                            "acompetentpersonchecksthefinishedmachine."));
        }
    }

    @ParameterizedTest
    @MethodSource("papers")
    void keepsAllTextInsideTheFrame(Kit kit, BenchPaper paper, Paper sheet, Wording wording) {
        try (PrintedPaper printed = PrintedPaper.of(paper.print(kit, REVISION, sheet, wording))) {
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
    void keepsTextOutOfOtherText(Kit kit, BenchPaper paper, Paper sheet, Wording wording) {
        try (PrintedPaper printed = PrintedPaper.of(paper.print(kit, REVISION, sheet, wording))) {
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
    void givesTheSameBytesForTheSameKit(Kit kit, BenchPaper paper, Paper sheet, Wording wording) {
        assertThat(paper.print(kit, REVISION, sheet, wording))
                .isEqualTo(paper.print(kit, REVISION, sheet, wording));
    }

    @ParameterizedTest
    @EnumSource(BenchPaper.class)
    void printsHostileNamesHarmlessly(BenchPaper paper) {
        byte[] pdf =
                paper.print(SampleKits.longNames(), OptionalInt.empty(), Paper.A4, Wording.ENGLISH);
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
        byte[] pdf =
                paper.print(SampleKits.small(), OptionalInt.empty(), Paper.A4, Wording.ENGLISH);
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
