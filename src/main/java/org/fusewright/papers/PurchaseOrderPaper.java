package org.fusewright.papers;

import org.fusewright.core.order.PurchaseOrder;
import org.fusewright.core.order.PurchaseOrder.OrderLine;

import java.util.List;
import java.util.OptionalInt;

/** The order as it goes to a supplier. The same order on the same paper gives the same bytes. */
public final class PurchaseOrderPaper {
    private static final float PAD = 7;
    private static final float BELOW_MARK = 2;

    private static final List<Table.Column> COLUMNS =
            List.of(
                    Table.Column.right("Line", 9),
                    Table.Column.right("Quantity", 18),
                    Table.Column.left("Part", 28),
                    Table.Column.left("Title", 58),
                    Table.Column.right("Packs", 24),
                    Table.Column.right("Unit price", 22),
                    Table.Column.right("Price", 20));

    private final Sheet sheet;
    private final PurchaseOrder order;

    private PurchaseOrderPaper(Sheet sheet, PurchaseOrder order) {
        this.sheet = sheet;
        this.order = order;
    }

    /** Prints as PDF. */
    public static byte[] print(PurchaseOrder order, Paper paper) {
        KitHeading heading =
                new KitHeading(
                        "Purchase order",
                        order.number(),
                        order.orderedOn().isPresent() ? "To " + order.supplierName() : "Draft",
                        order.buyer(),
                        OptionalInt.empty(),
                        PaperFont.BOLD.printable(
                                KitHeading.grouped(KitHeading.shortened(order.fingerprint()))),
                        "prices as of the order");
        Sheet sheet = new Sheet(paper, heading, order.fingerprint());
        PurchaseOrderPaper printed = new PurchaseOrderPaper(sheet, order);
        printed.status();
        printed.lines();
        printed.requests();
        new CautionsSection(sheet).print();
        return sheet.close();
    }

    private void status() {
        List<String> texts =
                List.of(
                        "From %s, to %s (%s)."
                                .formatted(
                                        order.buyer(), order.supplierName(), order.supplierCode()),
                        order.wantedBy()
                                .map(day -> "Wanted by " + day + ", that day included.")
                                .orElse("Wanted as soon as it can be had."),
                        "%d %s; all amounts in %s, without tax. Each line is rounded once, half up."
                                .formatted(
                                        order.lines().size(),
                                        order.lines().size() == 1 ? "line" : "lines",
                                        order.currency().getCode()));
        float height =
                2 * PAD + BELOW_MARK + Style.MARK.leading() + texts.size() * Style.BODY.leading();
        float x = sheet.left() + PAD;
        float room = sheet.width() - 2 * PAD;
        sheet.pen().box(Style.THICK, sheet.left(), sheet.y() - height, sheet.width(), height);
        String statement =
                order.orderedOn()
                        .map(day -> "Order %s of %s".formatted(order.number(), day))
                        .orElse("Draft: not an order yet");
        sheet.pen()
                .text(
                        Style.MARK,
                        Style.MARK.clip(statement, room),
                        x,
                        sheet.y() - PAD - Style.MARK.ascent());
        float baseline = sheet.y() - PAD - Style.MARK.leading() - BELOW_MARK - Style.BODY.ascent();
        for (String text : texts) {
            sheet.pen().text(Style.BODY, Style.BODY.clip(text, room), x, baseline);
            baseline -= Style.BODY.leading();
        }
        sheet.down(height);
    }

    private void lines() {
        Table table = new Table(sheet, Headings.section(sheet, "Please send"), COLUMNS);
        for (OrderLine line : order.lines()) {
            String metres = line.unit().equals("m") ? " m" : "";
            table.row(
                    Cell.of(Integer.toString(line.line())),
                    Cell.of(Style.STRONG, line.quantity() + metres),
                    Cell.of(Style.STRONG, line.part().value()),
                    Cell.of(line.title()),
                    Cell.of(line.quantity() / line.packSize() + " × " + line.packSize() + metres),
                    Cell.of(
                            line.unitPrice().getAmount().toPlainString()
                                    + (metres.isEmpty() ? "" : " / m")),
                    Cell.of(Amounts.of(line.price())));
        }
        Cell none = Cell.of("");
        table.row(
                none,
                none,
                none,
                Cell.of(Style.STRONG, "Total in " + order.currency().getCode()),
                none,
                none,
                Cell.of(Style.STRONG, Amounts.of(order.total())));
    }

    private void requests() {
        Headings.drawSection(sheet, "With the delivery", 2 * Style.BODY.leading());
        sheet.paragraph(
                Style.BODY,
                "Put order number %s and the line numbers on the delivery note. Send no substitutes"
                                .formatted(order.number())
                        + " without asking: ratings, seals and wire sizes are calculated.");
    }
}
