package org.fusewright.papers;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.NotFoundException;
import com.google.zxing.ReaderException;
import com.google.zxing.client.j2se.BufferedImageLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.oned.Code128Reader;

import org.fusewright.core.kit.Kit;
import org.fusewright.core.words.Wording;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/** The labels' codes, read by another library from the labels as a printer would print them. */
class BarCodeTest {

    /** The height of a part's label: 37 mm. */
    private static final double PART_LABEL = 37 / 25.4 * 72;

    static List<Kit> samples() {
        return PlannedKits.listSamples();
    }

    @ParameterizedTest
    @MethodSource("samples")
    void readsEveryPartLabelAt300DotsToTheInch(Kit kit) {
        assertThat(codesOfPartLabels(kit, Paper.A4, 300)).isEqualTo(numbers(kit));
    }

    @ParameterizedTest
    @MethodSource("samples")
    void readsEveryBagLabelAt300DotsToTheInch(Kit kit) {
        assertThat(codeOfBag(kit, OptionalInt.of(3), Paper.A4, 300))
                .isEqualTo(
                        "FW1|"
                                + kit.job().reference()
                                + "|3|"
                                + kit.fingerprint().substring(0, 12));
        assertThat(codeOfBag(kit, OptionalInt.empty(), Paper.LETTER, 300))
                .isEqualTo(
                        "FW1|" + kit.job().reference() + "||" + kit.fingerprint().substring(0, 12));
    }

    @Test
    void readsTheLabelsOfALargeJobAtTheCoarsestOfLabelPrinters() {
        Kit kit = PlannedKits.equippedQuad();
        assertThat(codesOfPartLabels(kit, Paper.A4, 203)).isEqualTo(numbers(kit));
        assertThat(codeOfBag(kit, OptionalInt.of(12), Paper.A4, 203)).startsWith("FW1|TQ-015|12|");
    }

    private static List<String> numbers(Kit kit) {
        return kit.parts().stream().map(line -> line.part().number().value()).toList();
    }

    private static List<String> codesOfPartLabels(Kit kit, Paper sheet, int dotsPerInch) {
        byte[] pdf = BenchPaper.PART_LABELS.print(kit, OptionalInt.empty(), sheet, Wording.ENGLISH);
        List<String> codes = new ArrayList<>();
        try (PrintedPaper printed = PrintedPaper.of(pdf)) {
            BufferedImage picture = printed.picture(1, dotsPerInch);
            int page = 1;
            for (PrintedPaper.Rectangle box : printed.rectangles()) {
                if (Math.abs(box.height() - PART_LABEL) < 0.05) {
                    if (box.page() != page) {
                        page = box.page();
                        picture = printed.picture(page, dotsPerInch);
                    }
                    codes.add(read(part(picture, box, dotsPerInch)));
                }
            }
        }
        return codes;
    }

    private static String codeOfBag(Kit kit, OptionalInt revision, Paper sheet, int dotsPerInch) {
        byte[] pdf = BenchPaper.BAG_LABEL.print(kit, revision, sheet, Wording.ENGLISH);
        try (PrintedPaper printed = PrintedPaper.of(pdf)) {
            return read(printed.picture(1, dotsPerInch));
        }
    }

    private static BufferedImage part(
            BufferedImage picture, PrintedPaper.Rectangle box, int dotsPerInch) {
        double dots = dotsPerInch / 72.0;
        return picture.getSubimage(
                (int) (box.left() * dots),
                (int) (box.top() * dots),
                (int) (box.width() * dots),
                (int) (box.height() * dots));
    }

    private static String read(BufferedImage picture) {
        try {
            return new Code128Reader()
                    .decode(
                            new BinaryBitmap(
                                    new HybridBinarizer(new BufferedImageLuminanceSource(picture))),
                            Map.of(DecodeHintType.TRY_HARDER, true))
                    .getText();
        } catch (NotFoundException nothing) {
            throw new AssertionError("no code in the picture", nothing);
        } catch (ReaderException unreadable) {
            throw new AssertionError("a code that cannot be read", unreadable);
        }
    }

    /**
     * ISO/IEC 15417, from memory: eleven modules for each of start, signs and check, thirteen for
     * stop; ten on each side left quiet. Four letters are 6 x 11 + 13 + 20 = 99 modules.
     */
    @ParameterizedTest
    @CsvSource({"1000, 0.375", "99.1, 0.25", "70.3, 0.25", "70.1, 0.19", "53.4, 0.19"})
    void takesTheWidestBarsThatFit(double room, double moduleMm) {
        BarCode code = BarCode.of("ABCD", (float) room).orElseThrow();
        assertThat(code.width()).isCloseTo((float) (99 * moduleMm / 25.4 * 72), offset(0.02f));
        assertThat(code.width()).isLessThanOrEqualTo((float) room);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "Zug-Öse",
                "tab\there",
                "a\\<FNC1>b",
                "this text is far longer than any label of a bag or a part could ever have room for"
            })
    void refusesWhatItCannotSay(String content) {
        assertThat(BarCode.of(content, 10_000)).isEmpty();
    }

    @Test
    void refusesWhatHasNoRoom() {
        assertThat(BarCode.of("ABCD", 53)).isEmpty();
    }

    /** A reference that no code can hold: the label says so and is printed all the same. */
    @Test
    void saysOnTheBagWhenThereIsNoCode() {
        byte[] pdf =
                BenchPaper.BAG_LABEL.print(
                        SampleKits.longNames(), OptionalInt.of(1), Paper.LETTER, Wording.ENGLISH);
        try (PrintedPaper printed = PrintedPaper.of(pdf)) {
            assertThat(printed.text()).contains("No bar code:");
        }
    }

    /** No ink within ten modules of the bars of a part's label. */
    @Test
    void leavesTheQuietZonesFree() {
        byte[] pdf =
                BenchPaper.PART_LABELS.print(
                        PlannedKits.quad(), OptionalInt.empty(), Paper.A4, Wording.ENGLISH);
        try (PrintedPaper printed = PrintedPaper.of(pdf)) {
            List<PrintedPaper.Rectangle> boxes = printed.rectangles();
            PrintedPaper.Rectangle label =
                    boxes.stream()
                            .filter(box -> Math.abs(box.height() - PART_LABEL) < 0.05)
                            .findFirst()
                            .orElseThrow();
            List<PrintedPaper.Rectangle> bars =
                    boxes.stream()
                            .filter(box -> box.page() == label.page())
                            .filter(box -> isWithin(box, label) && box.width() < 5)
                            .toList();
            double module =
                    bars.stream().mapToDouble(PrintedPaper.Rectangle::width).min().orElseThrow();
            double first =
                    bars.stream().mapToDouble(PrintedPaper.Rectangle::left).min().orElseThrow();
            assertThat(bars).hasSizeGreaterThan(20);
            assertThat(module).isCloseTo(0.375 / 25.4 * 72, offset(0.01));
            assertThat(first - label.left()).isGreaterThanOrEqualTo(10 * module - 0.01);
            assertThat(bars)
                    .allSatisfy(
                            bar ->
                                    assertThat(bar.height())
                                            .isGreaterThanOrEqualTo(8 / 25.4 * 72 - 0.01));
        }
    }

    private static boolean isWithin(PrintedPaper.Rectangle inner, PrintedPaper.Rectangle outer) {
        return inner != outer
                && inner.left() >= outer.left()
                && inner.left() + inner.width() <= outer.left() + outer.width()
                && inner.top() >= outer.top()
                && inner.top() + inner.height() <= outer.top() + outer.height();
    }
}
