package org.fusewright.papers;

import org.fusewright.core.quote.DeviceDifference;
import org.fusewright.core.quote.Quote;
import org.fusewright.core.quote.Variant;
import org.fusewright.core.words.Amount;
import org.fusewright.core.words.Recall;
import org.fusewright.core.words.Unit;
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
    private final Amounts amounts;
    private final Table table;

    VariantsSection(Sheet sheet, Quote quote) {
        this.sheet = sheet;
        this.quote = quote;
        amounts = new Amounts(sheet);
        List<Table.Column> columns = new ArrayList<>();
        columns.add(Table.Column.unnamed(LABEL_SHARE));
        quote.variants()
                .forEach(
                        variant ->
                                columns.add(
                                        Table.Column.right(variant.kind().title(), VARIANT_SHARE)));
        this.table =
                new Table(
                        sheet,
                        Headings.section(
                                sheet,
                                sheet.say(
                                        quote.variants().size() == 1
                                                ? "print.quote.the-offer"
                                                : "quotes.side-by-side")),
                        columns);
    }

    void print() {
        amounts(sheet.say("quotes.before-tax"), Variant::net, Style.BODY);
        amounts(sheet.say("quotes.tax", quote.tax().percent()), Variant::tax, Style.BODY);
        amounts(
                sheet.say("print.quote.total-in", quote.currency().getCode()),
                Variant::total,
                Style.STRONG);
        row("print.quote.passed", variant -> Integer.toString(variant.passes()));
        row("print.quote.cautions", variant -> Integer.toString(variant.cautions()));
        row("print.quote.failed", variant -> Integer.toString(variant.fails()));
        row("quotes.blocks", variant -> Integer.toString(variant.blocks()));
        row(
                "print.quote.mass",
                variant ->
                        sheet.say("print.quote.about", new Amount(variant.massG(), Unit.GRAM, 0)));
        row(
                "quotes.design",
                variant -> KitHeading.grouped(KitHeading.shortened(variant.fingerprint())));
        for (DeviceDifference difference : DeviceDifference.listIn(quote)) {
            table.row(
                    cells(
                            Cell.of(sheet.say("print.quote.device-of", difference.title())),
                            difference.devices().stream().map(one -> Cell.of(device(one)))));
        }
        sheet.down(BELOW_TABLE);
        quote.variants()
                .forEach(
                        variant ->
                                sheet.paragraph(
                                        Style.SMALL,
                                        sheet.say(variant.kind().title())
                                                + ": "
                                                + sheet.say(variant.kind().meaning())
                                                + "."));
    }

    private String device(String english) {
        return sheet.say(Recall.of(english, "quote.device."));
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
                                                        amounts.of(amount.apply(variant))))));
    }

    private void row(String key, Function<Variant, String> text) {
        table.row(
                cells(Cell.of(sheet.say(key)), quote.variants().stream().map(text).map(Cell::of)));
    }

    private static Cell[] cells(Cell label, Stream<Cell> variants) {
        return Stream.concat(Stream.of(label), variants).toArray(Cell[]::new);
    }
}
