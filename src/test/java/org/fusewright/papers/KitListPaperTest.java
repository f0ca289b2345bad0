package org.fusewright.papers;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.Verdict;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitLead;
import org.fusewright.core.kit.PartLine;
import org.fusewright.core.kit.WireLine;
import org.fusewright.core.words.Wording;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import java.util.stream.Stream;

class KitListPaperTest {

    private static final float MARGIN = 28;
    private static final float FOOT = 28 + 19;
    private static final String PARTS_HEAD = "QuantityPartTitleGoesto";
    private static final String CUT_LIST_HEAD = "Cut,mmLeadRoleFromStrip,mmToStrip,mm";
    private static final List<String> TABLE_HEADS =
            List.of(
                    PARTS_HEAD,
                    CUT_LIST_HEAD,
                    "PositionCircuitPartRatingKind",
                    "VerdictCheckandsubjectValueLimitWhatitmeans;basis",
                    "FeedMaindeviceRatingInholderTothesource",
                    "SplicePartLeadsWhichleadsmeet");

    static Stream<Arguments> kitsOnPapers() {
        return Stream.concat(SampleKits.listKits().stream(), PlannedKits.listKits().stream())
                .flatMap(kit -> Stream.of(Paper.values()).map(paper -> arguments(kit, paper)))
                .map(
                        arguments -> {
                            Kit kit = (Kit) arguments.get()[0];
                            String name = kit.job().reference();
                            return Arguments.argumentSet(
                                    name.substring(0, Math.min(name.length(), 12)),
                                    arguments.get());
                        });
    }

    private static PrintedPaper read(Kit kit, Paper paper) {
        return PrintedPaper.of(
                BenchPaper.KIT_LIST.print(kit, OptionalInt.empty(), paper, Wording.ENGLISH));
    }

    @ParameterizedTest
    @MethodSource("kitsOnPapers")
    void listsEachPartWithQuantityFirst(Kit kit, Paper paper) {
        try (PrintedPaper printed = read(kit, paper)) {
            String text = printed.denseText();
            for (PartLine line : kit.parts()) {
                String quantity =
                        line.unit().equals("m")
                                ? metres(line.quantity().movePointRight(3).longValueExact()) + "m"
                                : line.quantity().toBigIntegerExact().toString();
                assertThat(text).contains("☐" + quantity + line.part().number());
            }
        }
    }

    @ParameterizedTest
    @MethodSource("kitsOnPapers")
    void listsEachLeadWithItsCutLength(Kit kit, Paper paper) {
        try (PrintedPaper printed = read(kit, paper)) {
            String text = printed.denseText();
            for (WireLine line : kit.wire()) {
                assertThat(text)
                        .contains(
                                line.wire().number()
                                        + "·"
                                        + line.leads().size()
                                        + (line.leads().size() == 1 ? "lead," : "leads,")
                                        + metres(line.total().value())
                                        + "minall");
                for (KitLead lead : line.leads()) {
                    assertThat(text)
                            .contains(
                                    "☐"
                                            + lead.lead().cut().value()
                                            + PrintedPaper.dense(lead.lead().id()));
                }
            }
        }
    }

    /** Millimetres as metres, written out by hand: 1770 becomes 1.77, 900 becomes 0.90. */
    private static String metres(long mm) {
        String thousandths = "%d.%03d".formatted(mm / 1000, mm % 1000);
        return thousandths.endsWith("0")
                ? thousandths.substring(0, thousandths.length() - 1)
                : thousandths;
    }

    @ParameterizedTest
    @MethodSource("kitsOnPapers")
    void saysEachCheckThatIsNotAPassAndFailsFirst(Kit kit, Paper paper) {
        List<Check> open =
                kit.checks().stream().filter(check -> check.verdict() != Verdict.PASS).toList();
        try (PrintedPaper printed = read(kit, paper)) {
            String text = printed.denseText();
            for (Check check : open) {
                if (check.says().english().length() < 200) {
                    assertThat(text).contains(PrintedPaper.dense(check.says().english()));
                    assertThat(text).contains(PrintedPaper.dense(check.basis().text().english()));
                }
                assertThat(text).contains(check.verdict().code() + check.code().code());
            }
            int lastFail = text.lastIndexOf("✘fail");
            int firstCaution = text.indexOf("⚠caution");
            assertThat(firstCaution == -1 || lastFail < firstCaution).isTrue();
            if (kit.checks().isEmpty()) {
                assertThat(text).contains("Nothingwaschecked");
            } else if (open.isEmpty()) {
                assertThat(text).contains("all" + kit.checks().size() + "checkspass");
            }
        }
    }

    @ParameterizedTest
    @MethodSource("kitsOnPapers")
    void numbersEveryPage(Kit kit, Paper paper) {
        try (PrintedPaper printed = read(kit, paper)) {
            for (int page = 1; page <= printed.pages(); page++) {
                assertThat(printed.text(page))
                        .containsPattern("Page " + page + " of " + printed.pages() + "\\b")
                        .contains(
                                "Fingerprint "
                                        + KitHeading.of("Kit list", kit, OptionalInt.empty())
                                                .shortFingerprint());
            }
        }
    }

    @ParameterizedTest
    @MethodSource("kitsOnPapers")
    void keepsAllTextInsideTheFrame(Kit kit, Paper paper) {
        try (PrintedPaper printed = read(kit, paper)) {
            assertThat(printed.signs())
                    .isNotEmpty()
                    .allSatisfy(
                            sign -> {
                                assertThat(sign.left()).isGreaterThan(MARGIN);
                                assertThat(sign.right()).isLessThan(paper.width() - MARGIN);
                                assertThat(sign.baseline() - sign.size()).isGreaterThan(MARGIN - 1);
                                assertThat(sign.baseline()).isLessThan(paper.height() - MARGIN);
                                assertThat(sign.size()).isGreaterThanOrEqualTo(8);
                            });
        }
    }

    @ParameterizedTest
    @MethodSource("kitsOnPapers")
    void keepsTextOutOfOtherText(Kit kit, Paper paper) {
        try (PrintedPaper printed = read(kit, paper)) {
            List<PrintedPaper.Sign> signs = printed.signs();
            var lines =
                    signs.stream()
                            .filter(sign -> !sign.text().isBlank())
                            .collect(
                                    Collectors.groupingBy(
                                            sign -> sign.page() + "/" + sign.baseline()));
            lines.values()
                    .forEach(
                            line -> {
                                var sorted =
                                        line.stream()
                                                .sorted(
                                                        Comparator.comparing(
                                                                PrintedPaper.Sign::left))
                                                .toList();
                                for (int i = 1; i < sorted.size(); i++) {
                                    assertThat(sorted.get(i).left())
                                            .as("%s", sorted.get(i))
                                            .isGreaterThan(sorted.get(i - 1).right() - 0.6f);
                                }
                            });
        }
    }

    @ParameterizedTest
    @MethodSource("kitsOnPapers")
    void leavesNoHeadingAloneAtAPagesEnd(Kit kit, Paper paper) {
        try (PrintedPaper printed = read(kit, paper)) {
            for (int page = 1; page <= printed.pages(); page++) {
                List<PrintedPaper.Sign> last = printed.lastLine(page, paper.height() - FOOT);
                String text = PrintedPaper.dense(PrintedPaper.join(last));
                assertThat(last).as(text).anyMatch(sign -> sign.size() < 9);
                assertThat(text).isNotIn(TABLE_HEADS);
            }
        }
    }

    @ParameterizedTest
    @EnumSource(Paper.class)
    void repeatsTheHeadOfATableOverleaf(Paper paper) {
        try (PrintedPaper printed = read(SampleKits.large(), paper)) {
            int continued = 0;
            for (int page = 2; page <= printed.pages(); page++) {
                String text = PrintedPaper.dense(printed.text(page));
                if (text.contains("Cutlist(continued)")) {
                    assertThat(text).contains(CUT_LIST_HEAD);
                    continued++;
                }
                if (text.contains("Parts(continued)")) {
                    assertThat(text).contains(PARTS_HEAD);
                    continued++;
                }
            }
            assertThat(continued).isGreaterThan(3);
        }
    }

    @ParameterizedTest
    @EnumSource(Paper.class)
    void fitsThePaper(Paper paper) {
        PDRectangle expected = paper == Paper.A4 ? PDRectangle.A4 : PDRectangle.LETTER;
        try (PrintedPaper printed = read(SampleKits.large(), paper)) {
            assertThat(printed.pages()).isGreaterThan(5);
            for (PDPage page : printed.document().getPages()) {
                assertThat(page.getMediaBox().getWidth())
                        .isCloseTo(expected.getWidth(), offset(0.1f));
                assertThat(page.getMediaBox().getHeight())
                        .isCloseTo(expected.getHeight(), offset(0.1f));
            }
        }
    }

    @ParameterizedTest
    @MethodSource("kitsOnPapers")
    void embedsEveryFontAndNothingThatActs(Kit kit, Paper paper) throws IOException {
        try (PrintedPaper printed = read(kit, paper)) {
            for (PDPage page : printed.document().getPages()) {
                assertThat(page.getAnnotations()).isEmpty();
                assertThat(page.getActions().getO()).isNull();
                assertThat(page.getActions().getC()).isNull();
                assertThat(page.getResources().getFontNames()).isNotEmpty();
                assertEmbedded(page.getResources());
            }
            var catalog = printed.document().getDocumentCatalog();
            assertThat(catalog.getOpenAction()).isNull();
            assertThat(catalog.getAcroForm()).isNull();
            assertThat(catalog.getCOSObject().containsKey(COSName.AA)).isFalse();
            assertThat(catalog.getNames()).isNull();
        }
    }

    private static void assertEmbedded(PDResources resources) throws IOException {
        for (COSName name : resources.getFontNames()) {
            PDFont font = resources.getFont(name);
            assertThat(font.isEmbedded()).as(font.getName()).isTrue();
            assertThat(font.getName()).contains("DejaVu");
        }
        for (COSName name : resources.getXObjectNames()) {
            if (resources.getXObject(name) instanceof PDFormXObject form) {
                assertEmbedded(form.getResources());
            }
        }
    }

    @ParameterizedTest
    @MethodSource("kitsOnPapers")
    void carriesEveryCautionOnEveryKitList(Kit kit, Paper paper) {
        try (PrintedPaper printed = read(kit, paper)) {
            String text = printed.denseText();
            for (String caution :
                    List.of(
                            "Disconnect the battery first.",
                            "Fit the main device close to the source.",
                            "Never raise a rating to stop a device from tripping.",
                            "Auto-reset devices re-energise without warning.",
                            "Calculations are an aid: local codes, the makers' data and licensed"
                                    + " practice come first; a competent person checks the finished"
                                    + " machine.")) {
                assertThat(text).contains(PrintedPaper.dense(caution));
            }
            assertThat(text).contains("Builtby").contains("Checkedby").contains("Date");
        }
    }

    @Test
    void saysWhetherTheKitMayBeBuilt() {
        assertStatus(SampleKits.empty(), "Nothing to build", "0 fails, 0 cautions, 0 in all");
        assertStatus(SampleKits.clean(), "✔ Buildable", "0 fails, 0 cautions, 12 in all");
        assertStatus(
                SampleKits.small(),
                "⚠ Buildable when a person agrees to the cautions",
                "0 fails, 1 caution, 32 in all");
        assertStatus(SampleKits.large(), "✘ Not buildable", "1 fail, 6 cautions, 427 in all");
    }

    private static void assertStatus(Kit kit, String sign, String counts) {
        try (PrintedPaper printed = read(kit, Paper.A4)) {
            assertThat(printed.text(1)).contains(sign, counts);
        }
    }

    @Test
    void drawsTheBlockFromTheWireSide() {
        try (PrintedPaper printed = read(SampleKits.small(), Paper.A4)) {
            String text = printed.text(1);
            assertThat(text)
                    .contains("1a", "1b", "2a", "2b", "3a", "3b", "4a", "4b")
                    .contains("30", "85", "86", "87")
                    .contains("RDBK", "1.0 mm²", "10 A", "red")
                    .contains("Cap: BW-C4T", "Locking wedge: BW-W4");
        }
    }

    @Test
    void namesStripLengthsOfTheTerminals() {
        try (PrintedPaper printed = read(SampleKits.small(), Paper.A4)) {
            assertThat(printed.denseText())
                    .contains("pump/jumperjumperB1-1b3.2B1-2a3.2")
                    .contains("pump/groundgroundB1-3b3.2ground–");
        }
    }

    @Test
    void namesTheDocumentItsLanguageAndNoAuthorOrDate() {
        try (PrintedPaper printed = read(SampleKits.small(), Paper.A4)) {
            var information = printed.document().getDocumentInformation();
            assertThat(information.getTitle()).isEqualTo("Kit list TQ-014: Trail patrol quad");
            assertThat(information.getAuthor()).isNull();
            assertThat(information.getCreationDate()).isNull();
            assertThat(information.getModificationDate()).isNull();
            var catalog = printed.document().getDocumentCatalog();
            assertThat(catalog.getLanguage()).isEqualTo("en");
            assertThat(catalog.getViewerPreferences().displayDocTitle()).isTrue();
        }
    }

    @ParameterizedTest
    @EnumSource(Paper.class)
    void printsHostileNamesHarmlessly(Paper paper) {
        Kit kit = SampleKits.longNames();
        byte[] pdf = BenchPaper.KIT_LIST.print(kit, OptionalInt.empty(), paper, Wording.ENGLISH);
        assertThat(new String(pdf, StandardCharsets.ISO_8859_1))
                .doesNotContain("/JavaScript", "/JS", "/Launch", "/URI");
        try (PrintedPaper printed = PrintedPaper.of(pdf)) {
            String text = printed.denseText();
            assertThat(text).contains("<script>alert('x')</script>").contains("(paren)");
            assertThat(text.codePoints())
                    .noneMatch(Character::isISOControl)
                    .noneMatch(sign -> Character.getType(sign) == Character.FORMAT);
            assertThat(text).contains(String.valueOf(PaperFont.SUBSTITUTE));
            assertThat(printed.document().getDocumentInformation().getTitle().chars())
                    .noneMatch(Character::isISOControl);
        }
    }

    @ParameterizedTest
    @MethodSource("kitsOnPapers")
    void givesTheSameBytesForTheSameKit(Kit kit, Paper paper) {
        assertThat(BenchPaper.KIT_LIST.print(kit, OptionalInt.empty(), paper, Wording.ENGLISH))
                .isEqualTo(
                        BenchPaper.KIT_LIST.print(
                                kit, OptionalInt.empty(), paper, Wording.ENGLISH));
    }

    @Test
    void givesTheSameBytesInAnotherVirtualMachine() throws Exception {
        String here = DigestPrinter.digestAll();
        for (int run = 0; run < 2; run++) {
            Process process =
                    new ProcessBuilder(
                                    Path.of(System.getProperty("java.home"), "bin", "java")
                                            .toString(),
                                    "-cp",
                                    System.getProperty("java.class.path"),
                                    DigestPrinter.class.getName())
                            .redirectError(ProcessBuilder.Redirect.DISCARD)
                            .start();
            String there = new String(process.getInputStream().readAllBytes()).strip();
            assertThat(process.waitFor()).isZero();
            assertThat(there).isEqualTo(here);
        }
    }

    /** Prints a digest of all sample papers. */
    static final class DigestPrinter {

        private DigestPrinter() {}

        public static void main(String[] arguments) throws Exception {
            System.out.println(digestAll());
        }

        static String digestAll() throws Exception {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            for (Kit kit : SampleKits.listKits()) {
                for (BenchPaper bench : BenchPaper.values()) {
                    for (Paper paper : Paper.values()) {
                        digest.update(bench.print(kit, OptionalInt.of(2), paper, Wording.ENGLISH));
                    }
                }
            }
            return HexFormat.of().formatHex(digest.digest());
        }
    }

    @Test
    void printsFromManyThreadsAtOnce() {
        Kit kit = SampleKits.small();
        byte[] expected =
                BenchPaper.KIT_LIST.print(kit, OptionalInt.empty(), Paper.A4, Wording.ENGLISH);
        assertThat(
                        Stream.generate(() -> kit)
                                .limit(64)
                                .parallel()
                                .map(
                                        one ->
                                                BenchPaper.KIT_LIST.print(
                                                        one,
                                                        OptionalInt.empty(),
                                                        Paper.A4,
                                                        Wording.ENGLISH)))
                .allSatisfy(pdf -> assertThat(pdf).isEqualTo(expected));
    }
}
