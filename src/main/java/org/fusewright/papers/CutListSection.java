package org.fusewright.papers;

import org.fusewright.core.catalog.Wire;
import org.fusewright.core.kit.Cavity;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitLead;
import org.fusewright.core.kit.WireLine;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Unit;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Every lead to cut, wire by wire, with a box to tick for each. */
final class CutListSection {

    private static final List<Table.Column> COLUMNS =
            List.of(
                    Table.Column.unnamed(4),
                    Table.Column.right("bill.cut", Unit.MILLIMETRE, 13),
                    Table.Column.left("print.column.lead", 31),
                    Table.Column.left("print.column.role", 14)
                            .holding(
                                    Style.BODY,
                                    "print.lead-role.trunk",
                                    "print.lead-role.pigtail",
                                    "print.lead-role.return",
                                    "print.lead-role.trigger"),
                    Table.Column.left("print.column.from", 32),
                    Table.Column.right("print.column.strip", Unit.MILLIMETRE, 16),
                    Table.Column.left("print.column.to", 32),
                    Table.Column.right("print.column.strip", Unit.MILLIMETRE, 16));

    private static final String NO_STRIP = "–";

    private final Sheet sheet;
    private final Kit kit;
    private final Map<String, Cavity> cavities = new HashMap<>();

    CutListSection(Sheet sheet, Kit kit) {
        this.sheet = sheet;
        this.kit = kit;
        kit.blocks().stream()
                .flatMap(block -> block.cavities().stream())
                .forEach(cavity -> cavities.put(cavity.id(), cavity));
    }

    void print() {
        String section = sheet.say("bill.cut-list");
        if (kit.wire().isEmpty()) {
            Headings.drawSection(sheet, section, Style.BODY.leading());
            sheet.paragraph(Style.BODY, sheet.say("print.cut-list.none"));
            return;
        }
        Table table = new Table(sheet, Headings.section(sheet, section), COLUMNS);
        for (WireLine line : kit.wire()) {
            table.group(new WireHeading(sheet, line));
            line.leads().forEach(lead -> addRow(table, lead));
        }
    }

    private void addRow(Table table, KitLead lead) {
        table.row(
                Cell.TICK_BOX,
                Cell.of(
                        Style.STRONG,
                        sheet.figures().whole(lead.lead().cut().value(), Unit.MILLIMETRE)),
                Cell.of(lead.lead().id()),
                Cell.of(sheet.say("print.lead-role." + lead.lead().role().code())),
                Cell.of(Style.STRONG, Places.said(lead.from(), sheet.wording())),
                Cell.of(strip(lead.from(), lead)),
                Cell.of(Style.STRONG, Places.said(lead.to(), sheet.wording())),
                Cell.of(strip(lead.to(), lead)));
    }

    /** How much to strip where a terminal is crimped on; at other ends the maker's data say. */
    private String strip(String end, KitLead lead) {
        Cavity cavity = cavities.get(end);
        if (cavity == null) {
            return NO_STRIP;
        }
        return cavity.occupant()
                .filter(occupant -> occupant.lead().id().equals(lead.lead().id()))
                .flatMap(Cavity.Occupant::terminal)
                .map(terminal -> sheet.figures().of(terminal.stripMm(), Unit.MILLIMETRE))
                .orElse(NO_STRIP);
    }

    /** A wire's swatch, name and sums above its leads. */
    private record WireHeading(Sheet sheet, Table.Heading text, Wire wire)
            implements Table.Heading {

        private static final float GAP = 7;

        WireHeading(Sheet sheet, WireLine line) {
            this(
                    sheet,
                    Headings.group(sheet, describe(sheet, line), Swatch.BAR_WIDTH + GAP),
                    line.wire());
        }

        private static String describe(Sheet sheet, WireLine line) {
            Wire wire = line.wire();
            return "%s  %s  %s · %s · %s"
                    .formatted(
                            wire.colour(),
                            sheet.figures().size(wire.size()),
                            wire.family(),
                            wire.number(),
                            sheet.say(
                                    Phrase.counted(
                                            "print.cut-list.leads",
                                            line.leads().size(),
                                            sheet.figures().metres(line.total()))));
        }

        @Override
        public float height() {
            return text.height();
        }

        @Override
        public void draw(boolean continued) {
            text.draw(continued);
            Swatch.bar(sheet.pen(), wire.colour(), sheet.left(), sheet.y() + GAP / 2);
        }
    }
}
