package org.fusewright.papers;

import org.fusewright.core.order.PurchaseOrder;
import org.fusewright.core.order.PurchaseOrder.OrderLine;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Wording;

import java.util.List;
import java.util.OptionalInt;

/** The order as it goes to a supplier. The same order on the same paper gives the same bytes. */
public final class PurchaseOrderPaper {
    private static final float PAD = 7;
    private static final float BELOW_MARK = 2;

    private static final List<Table.Column> COLUMNS =
            List.of(
                    Table.Column.right("orders.line", 9),
                    Table.Column.right("print.column.quantity", 18),
                    Table.Column.left("print.column.part", 28),
                    Table.Column.left("print.column.title", 58),
                    Table.Column.right("orders.packs", 24),
                    Table.Column.right("orders.unit-price", 22),
                    Table.Column.right("orders.price", 20));

    private final Sheet sheet;
    private final PurchaseOrder order;
    private final Amounts amounts;

    private PurchaseOrderPaper(Sheet sheet, PurchaseOrder order) {
        this.sheet = sheet;
        this.order = order;
        amounts = new Amounts(sheet);
    }

    /**
     * Prints as PDF.
     *
     * @param wording how its reader is spoken to
     */
    public static byte[] print(PurchaseOrder order, Paper paper, Wording wording) {
        KitHeading heading =
                new KitHeading(
                        wording.say("print.order.title"),
                        order.number(),
                        order.orderedOn().isPresent()
                                ? wording.say("print.order.to", order.supplierName())
                                : wording.say("print.order.draft"),
                        order.buyer(),
                        OptionalInt.empty(),
                        PaperFont.BOLD.printable(
                                KitHeading.grouped(KitHeading.shortened(order.fingerprint()))),
                        wording.say("print.order.prices-as-of"));
        Sheet sheet = new Sheet(paper, wording, heading, order.fingerprint());
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
                        sheet.say(
                                "print.order.parties",
                                order.buyer(),
                                order.supplierName(),
                                order.supplierCode()),
                        order.wantedBy()
                                .map(
                                        day ->
                                                sheet.say(
                                                        "print.order.wanted-by",
                                                        Moments.day(day, sheet.wording())))
                                .orElseGet(() -> sheet.say("print.order.wanted-soon")),
                        sheet.say(
                                Phrase.counted(
                                        "print.order.lines",
                                        order.lines().size(),
                                        order.currency().getCode())));
        float height =
                2 * PAD + BELOW_MARK + Style.MARK.leading() + texts.size() * Style.BODY.leading();
        float x = sheet.left() + PAD;
        float room = sheet.width() - 2 * PAD;
        sheet.pen().box(Style.THICK, sheet.left(), sheet.y() - height, sheet.width(), height);
        String statement =
                order.orderedOn()
                        .map(
                                day ->
                                        sheet.say(
                                                "print.order.statement",
                                                order.number(),
                                                Moments.day(day, sheet.wording())))
                        .orElseGet(() -> sheet.say("print.order.no-order-yet"));
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
        Table table =
                new Table(
                        sheet,
                        Headings.section(sheet, sheet.say("print.order.please-send")),
                        COLUMNS);
        for (OrderLine line : order.lines()) {
            String metres = line.unit().equals("m") ? " m" : "";
            table.row(
                    Cell.of(Integer.toString(line.line())),
                    Cell.of(Style.STRONG, line.quantity() + metres),
                    Cell.of(Style.STRONG, line.part().value()),
                    Cell.of(line.title()),
                    Cell.of(line.quantity() / line.packSize() + " × " + line.packSize() + metres),
                    Cell.of(
                            sheet.figures().plain(line.unitPrice().getAmount())
                                    + (metres.isEmpty() ? "" : " / m")),
                    Cell.of(amounts.of(line.price())));
        }
        Cell none = Cell.of("");
        table.row(
                none,
                none,
                none,
                Cell.of(
                        Style.STRONG,
                        sheet.say("print.order.total-in", order.currency().getCode())),
                none,
                none,
                Cell.of(Style.STRONG, amounts.of(order.total())));
    }

    private void requests() {
        Headings.drawSection(sheet, sheet.say("print.order.delivery"), 2 * Style.BODY.leading());
        sheet.paragraph(Style.BODY, sheet.say("print.order.requests", order.number()));
    }
}
