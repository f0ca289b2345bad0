package org.fusewright.papers;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitCircuit;
import org.fusewright.core.sizing.DeadShort;
import org.fusewright.core.sizing.SizedCircuit;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;

/** What a jumper wire would show on the bench, worked out: two dead shorts behind each device. */
final class DeadShortsSection {

    private static final String TITLE = "Dead shorts, worked out in place of the jumper-wire test";

    private static final List<Table.Column> COLUMNS =
            List.of(
                    Table.Column.left("Circuit", 66),
                    Table.Column.left("Short", 44),
                    Table.Column.right("Draws, A", 42),
                    Table.Column.right("Breaks, A", 44),
                    Table.Column.right("Clears, s", 42),
                    Table.Column.right("Passes, A²s", 55),
                    Table.Column.right("Bears, A²s", 51),
                    Table.Column.right("Ends, °C", 41),
                    Table.Column.left("Weakest lead", 72));

    private static final String MEANING =
            "Breaks: the most that the device can interrupt. Clears: when it has opened at the"
                    + " latest. Passes: what it lets through until then, counted for 5 s at most."
                    + " Bears: what the weakest lead survives. Ends: how hot that lead gets. "
                    + "✘ marks what the device or the lead does not stand.";

    private final Sheet sheet;
    private final Kit kit;

    DeadShortsSection(Sheet sheet, Kit kit) {
        this.sheet = sheet;
        this.kit = kit;
    }

    void print() {
        Table table = new Table(sheet, Headings.section(sheet, TITLE), COLUMNS);
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
            sheet.paragraph(Style.SMALL, MEANING);
        }
    }

    private static void addRow(Table table, String circuit, Device device, DeadShort deadShort) {
        table.row(
                Cell.of(Style.STRONG, circuit),
                Cell.of(place(deadShort)),
                Cell.of(Figures.of(deadShort.prospectiveA())),
                marked(device.interruptingA(), deadShort.prospectiveA() <= device.interruptingA()),
                Cell.of(
                        deadShort.clearsS().isPresent()
                                ? Figures.of(deadShort.clearsS().getAsDouble())
                                : "need not open"),
                Cell.of(Figures.of(deadShort.letThroughA2s())),
                marked(deadShort.survivesA2s(), deadShort.isSurvived()),
                Cell.of(whole(deadShort.endC())),
                Cell.of(deadShort.lead()));
    }

    private static Cell marked(double limit, boolean holds) {
        return holds ? Cell.of(Figures.of(limit)) : Cell.of(Style.STRONG, "✘ " + Figures.of(limit));
    }

    private static String place(DeadShort deadShort) {
        return switch (deadShort.place()) {
            case AT_DEVICE -> "at device";
            case FAR_END -> "far end";
        };
    }

    private static String whole(double value) {
        return BigDecimal.valueOf(value).setScale(0, RoundingMode.HALF_UP).toPlainString();
    }
}
