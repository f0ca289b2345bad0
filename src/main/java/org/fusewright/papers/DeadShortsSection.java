package org.fusewright.papers;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitCircuit;
import org.fusewright.core.sizing.DeadShort;
import org.fusewright.core.sizing.SizedCircuit;
import org.fusewright.core.words.Unit;

import java.util.List;

/** What a jumper wire would show on the bench, worked out: two dead shorts behind each device. */
final class DeadShortsSection {

    private static final String TITLE = "print.shorts.title";

    private static final List<Table.Column> COLUMNS =
            List.of(
                    Table.Column.left("print.column.circuit", 66),
                    Table.Column.left("print.shorts.place", 44),
                    Table.Column.right("shorts.draws", 42),
                    Table.Column.right("print.shorts.breaks", 44),
                    Table.Column.right("print.shorts.clears", 42),
                    Table.Column.right("print.shorts.passes", 55),
                    Table.Column.right("print.shorts.bears", 51),
                    Table.Column.right("print.shorts.ends", Unit.CELSIUS, 41),
                    Table.Column.left("shorts.weakest", 72));

    private final Sheet sheet;
    private final Kit kit;

    DeadShortsSection(Sheet sheet, Kit kit) {
        this.sheet = sheet;
        this.kit = kit;
    }

    void print() {
        Table table = new Table(sheet, Headings.section(sheet, sheet.say(TITLE)), COLUMNS);
        boolean any = false;
        for (KitCircuit circuit : kit.circuits()) {
            SizedCircuit sized = circuit.sized();
            if (sized.study().isPresent() && sized.device().isPresent()) {
                for (DeadShort deadShort : sized.study().get().deadShorts()) {
                    addRow(table, sized.id(), sized.device().get(), deadShort);
                }
                any = true;
            }
        }
        if (any) {
            sheet.paragraph(Style.SMALL, sheet.say("print.shorts.meaning"));
        }
    }

    private void addRow(Table table, String circuit, Device device, DeadShort deadShort) {
        Figures figures = sheet.figures();
        table.row(
                Cell.of(Style.STRONG, circuit),
                Cell.of(place(deadShort)),
                Cell.of(figures.of(deadShort.prospectiveA())),
                marked(device.interruptingA(), deadShort.prospectiveA() <= device.interruptingA()),
                Cell.of(
                        deadShort.clearsS().isPresent()
                                ? figures.of(deadShort.clearsS().getAsDouble())
                                : sheet.say("shorts.need-not-open")),
                Cell.of(figures.of(deadShort.letThroughA2s())),
                marked(deadShort.survivesA2s(), deadShort.isSurvived()),
                Cell.of(figures.whole(deadShort.endC(), Unit.CELSIUS)),
                Cell.of(deadShort.lead()));
    }

    private Cell marked(double limit, boolean holds) {
        String figure = sheet.figures().of(limit);
        return holds ? Cell.of(figure) : Cell.of(Style.STRONG, "✘ " + figure);
    }

    private String place(DeadShort deadShort) {
        return switch (deadShort.place()) {
            case AT_DEVICE -> sheet.say("print.shorts.at-device");
            case FAR_END -> sheet.say("print.shorts.far-end");
        };
    }
}
