package org.fusewright.papers;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.Relay;
import org.fusewright.core.job.Circuit;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitBlock;
import org.fusewright.core.words.Wording;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

import java.util.List;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import java.util.stream.Stream;

class LidLegendPaperTest {

    static Stream<Kit> kits() {
        return Stream.of(
                        PlannedKits.listSamples(),
                        PlannedKits.listKits(),
                        List.of(SampleKits.small(), SampleKits.large(), SampleKits.clean()))
                .flatMap(List::stream);
    }

    private static PrintedPaper print(Kit kit, Paper sheet) {
        return PrintedPaper.of(
                BenchPaper.LID_LEGEND.print(kit, OptionalInt.of(3), sheet, Wording.ENGLISH));
    }

    @ParameterizedTest
    @MethodSource("kits")
    void saysWhatIsAtEveryPosition(Kit kit) {
        try (PrintedPaper printed = print(kit, Paper.A4)) {
            String text = printed.denseText();
            for (KitBlock block : kit.blocks()) {
                String said = text.substring(text.indexOf("Whatthelabelof" + block.id() + "says"));
                for (int position = 1; position <= block.block().positions(); position++) {
                    assertThat(said).contains(row(kit, block, position));
                }
            }
        }
    }

    /** Position or positions, circuit, rating; and the colour in words where it has one. */
    private static String row(Kit kit, KitBlock block, int position) {
        return block.seats().stream()
                .filter(seat -> seat.positions().contains(position))
                .findFirst()
                .map(
                        seat ->
                                PrintedPaper.dense(
                                        String.join(
                                                        "+",
                                                        seat.positions().stream()
                                                                .map(String::valueOf)
                                                                .toList())
                                                + title(kit, seat)
                                                + rating(seat)))
                .orElse(position + "free");
    }

    private static String title(Kit kit, KitBlock.Seat seat) {
        return kit.job().circuits().stream()
                .filter(circuit -> circuit.id().equals(seat.circuit()))
                .map(Circuit::title)
                .findFirst()
                .orElseThrow();
    }

    private static String rating(KitBlock.Seat seat) {
        return switch (seat.part()) {
            case Device device ->
                    plain(device.ratingA())
                            + "A"
                            + (device.colour().isEmpty() ? "" : "," + device.colour());
            case Relay relay -> plain(relay.contactA()) + "A";
            default -> throw new AssertionError(seat);
        };
    }

    private static String plain(double value) {
        return value == Math.rint(value) ? Long.toString((long) value) : Double.toString(value);
    }

    /** The label of four positions is 42 mm by 30 mm, that is 119.06 by 85.04 points. */
    @Test
    void drawsALabelAtTheCapsSize() {
        try (PrintedPaper printed = print(PlannedKits.quad(), Paper.LETTER)) {
            assertThat(printed.denseText()).contains("42mmby30mm");
            assertThat(printed.rectangles())
                    .filteredOn(box -> Math.abs(box.width() - 119.06) < 0.05)
                    .singleElement()
                    .satisfies(box -> assertThat(box.height()).isCloseTo(85.04, offset(0.05)));
        }
    }

    /** Numbers, names and ratings stand on the label itself, each in its position's column. */
    @Test
    void putsNameAndRatingOnTheLabel() {
        try (PrintedPaper printed = print(PlannedKits.quad(), Paper.A4)) {
            PrintedPaper.Rectangle label =
                    printed.rectangles().stream()
                            .filter(box -> Math.abs(box.width() - 119.06) < 0.05)
                            .findFirst()
                            .orElseThrow();
            String inside =
                    PrintedPaper.dense(
                            PrintedPaper.join(
                                    printed.signs().stream()
                                            .filter(sign -> isInside(sign, label))
                                            .toList()));
            assertThat(inside)
                    .contains("loadside(b)", "Worklamps", "Fuelpump", "auto-reset")
                    .contains("relay,12Vcoil")
                    .contains("5A", "10A", "30A")
                    .contains("B1·TQ-014,revision3");
        }
    }

    private static boolean isInside(PrintedPaper.Sign sign, PrintedPaper.Rectangle box) {
        return sign.page() == box.page()
                && sign.left() > box.left()
                && sign.left() < box.left() + box.width()
                && sign.baseline() > box.top()
                && sign.baseline() < box.top() + box.height();
    }

    @Test
    void saysWhenTheCatalogGivesNoSize() {
        try (PrintedPaper printed = print(SampleKits.clean(), Paper.A4)) {
            // Three positions of 13.5 mm.
            assertThat(printed.denseText())
                    .contains("Thecataloggivesnolabelsizeforthecap")
                    .contains("40.5mmby30mm");
        }
    }

    /** Twelve positions of 13.5 mm are 162 mm; 24 would be 324 mm. */
    @Test
    void partsALabelThatIsWiderThanTheSheet() {
        KitBuilder builder = new KitBuilder("").named("W-1", "Wide", "Highmoor Trails");
        builder.block(24, "tail");
        IntStream.rangeClosed(1, 24)
                .forEach(
                        i ->
                                builder.circuit(
                                        "c" + i,
                                        "Circuit " + i,
                                        org.fusewright.core.catalog.DeviceKind.FUSE,
                                        5,
                                        "0.5",
                                        "BN"));
        try (PrintedPaper printed = print(builder.build(), Paper.A4)) {
            assertThat(printed.denseText()).contains("324mmby30mm,in2piecestojoin.");
            assertThat(
                            printed.rectangles().stream()
                                    .filter(box -> Math.abs(box.height() - 85.04) < 0.05)
                                    .mapToDouble(PrintedPaper.Rectangle::width)
                                    .sum())
                    .isCloseTo(324 / 25.4 * 72, offset(0.1));
        }
    }
}
