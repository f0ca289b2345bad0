package org.fusewright.papers;

import org.fusewright.core.quote.DeviceDifference;
import org.fusewright.core.quote.Quote;
import org.fusewright.core.quote.Variant;
import org.joda.money.Money;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;

/** The variants of a quote side by side: prices, checks, and the devices that differ. */
final class VariantsSection {
    private static final float LABEL_SHARE = 34;
    private static final float VARIANT_SHARE = 34;
    private static final float BELOW_TABLE = 4;

    private final Sheet sheet;
    private final Quote quote;
    private final Table table;

    VariantsSection(Sheet sheet, Quote quote) {
        this.sheet = sheet;
        this.quote = quote;
        List<Table.Column> columns = new ArrayList<>();
        columns.add(Table.Column.left("", LABEL_SHARE));
        quote.variants()
                .forEach(
                        variant ->
                                columns.add(
                                        Table.Column.right(
                                                variant.kind().title().english(), VARIANT_SHARE)));
        this.table =
                new Table(
                        sheet,
                        Headings.section(
                                sheet, quote.variants().size() == 1 ? "The offer" : "Side by side"),
                        columns);
    }

    void print() {
        amounts("Before tax", Variant::net, Style.BODY);
        amounts("Tax " + quote.tax().percent().toPlainString() + " %", Variant::tax, Style.BODY);
        amounts("Total " + quote.currency().getCode(), Variant::total, Style.STRONG);
        row("Checks passed", variant -> Integer.toString(variant.passes()));
        row("Cautions", variant -> Integer.toString(variant.cautions()));
        row("Checks failed", variant -> Integer.toString(variant.fails()));
        row("Blocks in a kit", variant -> Integer.toString(variant.blocks()));
        row("Mass, all kits", variant -> "about " + variant.massG() + " g");
        row("Design", variant -> KitHeading.grouped(KitHeading.shortened(variant.fingerprint())));
        for (DeviceDifference difference : DeviceDifference.listIn(quote)) {
            table.row(
                    cells(
                            Cell.of(difference.title() + ", device"),
                            difference.devices().stream().map(Cell::of)));
        }
        sheet.down(BELOW_TABLE);
        quote.variants()
                .forEach(
                        variant ->
                                sheet.paragraph(
                                        Style.SMALL,
                                        variant.kind().title().english()
                                                + ": "
                                                + variant.kind().meaning().english()
                                                + "."));
    }

    private void amounts(String label, Function<Variant, Money> amount, Lettering lettering) {
        table.row(
                cells(
                        Cell.of(lettering, label),
                        quote.variants().stream()
                                .map(
                                        variant ->
                                                Cell.of(
                                                        lettering,
                                                        Amounts.of(amount.apply(variant))))));
    }

    private void row(String label, Function<Variant, String> text) {
        table.row(cells(Cell.of(label), quote.variants().stream().map(text).map(Cell::of)));
    }

    private static Cell[] cells(Cell label, Stream<Cell> variants) {
        return Stream.concat(Stream.of(label), variants).toArray(Cell[]::new);
    }
}
