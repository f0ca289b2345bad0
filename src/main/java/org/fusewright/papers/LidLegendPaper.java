package org.fusewright.papers;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.job.Circuit;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitBlock;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** The labels for the caps, at full size with marks to cut at, and what they say in full. */
final class LidLegendPaper {

    private static final double USUAL_HEIGHT_MM = 30;
    private static final float BELOW_SIZE = 4;
    private static final List<Table.Column> COLUMNS =
            List.of(
                    Table.Column.left("Position", 13),
                    Table.Column.left("Circuit", 62),
                    Table.Column.left("Rating and colour", 40),
                    Table.Column.left("Kind", 40));

    private final Sheet sheet;
    private final Kit kit;
    private final Map<String, String> titles;

    private LidLegendPaper(Sheet sheet, Kit kit) {
        this.sheet = sheet;
        this.kit = kit;
        titles =
                kit.job().circuits().stream()
                        .collect(Collectors.toMap(Circuit::id, Circuit::title));
    }

    static void print(Sheet sheet, Kit kit) {
        new LidLegendPaper(sheet, kit).print();
    }

    private void print() {
        new StatusSection(sheet, kit).print();
        new CautionsSection(sheet).print();
        Headings.drawSection(sheet, "Lid legends", 4 * Style.BODY.leading());
        if (kit.blocks().isEmpty()) {
            sheet.paragraph(Style.BODY, "No blocks.");
            return;
        }
        sheet.paragraph(
                Style.BODY,
                "Print at full size, cut at the corner marks, and put each on its cap so that"
                        + " position 1 of the label lies over position 1 of the block. Seen from"
                        + " above the cap with position 1 at the left, the load side (b) is up.");
        kit.blocks().forEach(this::printBlock);
    }

    private void printBlock(KitBlock block) {
        List<LegendLabel.Field> fields = fields(block);
        double widthMm = labelWidthMm(block);
        double heightMm = block.cap().labelHeightMm().orElse(USUAL_HEIGHT_MM);
        List<LegendLabel> labels =
                LegendLabel.listFor(
                        block,
                        fields,
                        foot(block),
                        Style.mm(widthMm),
                        Style.mm(heightMm),
                        sheet.width() - 2 * CropMarks.REACH);
        Table.Heading heading = Headings.group(sheet, block.id() + " · " + block.location());
        String size = size(block, labels.size(), widthMm, heightMm);
        float above = heading.height() + 2 * Style.SMALL.leading() + BELOW_SIZE;
        sheet.keep(above + labels.getFirst().heightWithMarks());
        heading.draw(false);
        sheet.paragraph(Style.SMALL, size);
        sheet.down(BELOW_SIZE);
        for (LegendLabel label : labels) {
            sheet.keep(label.heightWithMarks());
            label.draw(sheet.pen(), sheet.left() + CropMarks.REACH, sheet.y() - CropMarks.REACH);
            sheet.down(label.heightWithMarks());
        }
        printInFull(block, fields);
    }

    private static double labelWidthMm(KitBlock block) {
        OptionalDouble given = block.cap().labelWidthMm();
        return given.orElse(block.block().positions() * block.block().pitchMm());
    }

    private static String size(KitBlock block, int pieces, double widthMm, double heightMm) {
        String given =
                block.cap().labelWidthMm().isPresent()
                        ? "For cap "
                        : "The catalog gives no label size for the cap: measure it. For cap ";
        return given
                + block.cap().number()
                + ": "
                + Figures.of(widthMm)
                + " mm by "
                + Figures.of(heightMm)
                + " mm"
                + (pieces > 1 ? ", in " + pieces + " pieces to join." : ".");
    }

    private String foot(KitBlock block) {
        return block.id() + " · " + sheet.heading().referenceAndRevision();
    }

    private List<LegendLabel.Field> fields(KitBlock block) {
        List<LegendLabel.Field> fields = new ArrayList<>();
        for (int position = 1; position <= block.block().positions(); position++) {
            fields.add(field(block, position));
        }
        return fields.stream().distinct().toList();
    }

    /** A relay's two positions give the same field twice. */
    private LegendLabel.Field field(KitBlock block, int position) {
        return block.seats().stream()
                .filter(seat -> seat.positions().contains(position))
                .findFirst()
                .map(
                        seat ->
                                new LegendLabel.Field(
                                        seat.positions(),
                                        titles.getOrDefault(seat.circuit(), seat.circuit()),
                                        Devices.rating(seat.part()),
                                        Devices.kind(seat.part()),
                                        colour(seat.part())))
                .orElseGet(() -> new LegendLabel.Field(List.of(position), "free", "", "", ""));
    }

    private static String colour(Part part) {
        return part instanceof Device device ? device.colour() : "";
    }

    /** A colour is said in words after what it belongs to; some have none. */
    static String joined(String text, String colour) {
        return colour.isEmpty() ? text : text + ", " + colour;
    }

    private void printInFull(KitBlock block, List<LegendLabel.Field> fields) {
        Table table =
                new Table(
                        sheet,
                        Headings.group(sheet, "What the label of " + block.id() + " says"),
                        COLUMNS);
        table.keepTogether(Math.min(fields.size(), 8));
        for (LegendLabel.Field field : fields) {
            table.row(
                    Cell.of(Style.STRONG, field.positionsInWords()),
                    Cell.of(field.name()),
                    Cell.of(joined(field.rating(), field.colour())),
                    Cell.of(field.kind()));
        }
    }
}
