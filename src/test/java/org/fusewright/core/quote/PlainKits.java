package org.fusewright.core.quote;

import org.fusewright.core.TestJob;
import org.fusewright.core.TestStock;
import org.fusewright.core.catalog.Catalog;
import org.fusewright.core.catalog.Offer;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.catalog.Plug;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.job.ArrangementKind;
import org.fusewright.core.job.Job;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.PartGroup;
import org.fusewright.core.kit.PartLine;
import org.fusewright.core.quantity.WireColour;
import org.fusewright.core.quantity.WireSize;
import org.joda.money.BigMoney;
import org.joda.money.CurrencyUnit;
import org.joda.money.Money;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Kits of nothing but parts lines, and the offers for them: prices can be worked out by hand. */
final class PlainKits {
    private final CurrencyUnit currency;
    private final Map<PartNumber, Part> parts = new LinkedHashMap<>();
    private final List<Offer> offers = new ArrayList<>();
    private final List<PartLine> lines = new ArrayList<>();
    private double massG;

    private PlainKits(CurrencyUnit currency) {
        this.currency = currency;
    }

    static PlainKits in(String currency) {
        return new PlainKits(CurrencyUnit.of(currency));
    }

    PlainKits part(String number) {
        Part part = new Plug(TestStock.item(number), "F");
        parts.put(part.number(), part);
        return this;
    }

    PlainKits wire(String number) {
        Part wire =
                new Wire(
                        TestStock.item(number),
                        "thin",
                        WireSize.parse("1 mm2").orElseThrow(),
                        new WireColour("RD"),
                        1,
                        2,
                        18.5,
                        125,
                        "PVC");
        parts.put(wire.number(), wire);
        return this;
    }

    /**
     * @param breaks such as "1=0.42 50=0.38"
     */
    PlainKits offer(String supplier, String part, int pack, String breaks) {
        return offer(supplier, part, pack, breaks, currency.getCode());
    }

    PlainKits offer(String supplier, String part, int pack, String breaks, String inCurrency) {
        List<Offer.PriceBreak> prices = new ArrayList<>();
        for (String entry : breaks.split(" ")) {
            String[] sides = entry.split("=");
            prices.add(
                    new Offer.PriceBreak(
                            Integer.parseInt(sides[0]),
                            BigMoney.of(CurrencyUnit.of(inCurrency), new BigDecimal(sides[1]))));
        }
        offers.add(new Offer(supplier, new PartNumber(part), pack, prices, 1));
        return this;
    }

    PlainKits line(PartGroup group, String part, String quantity) {
        BigMoney none = BigMoney.zero(currency);
        lines.add(
                new PartLine(
                        parts.get(new PartNumber(part)),
                        group,
                        new BigDecimal(quantity),
                        List.of(),
                        none,
                        Money.zero(currency),
                        0,
                        List.of(),
                        List.of()));
        return this;
    }

    PlainKits massG(double mass) {
        massG = mass;
        return this;
    }

    Catalog catalog() {
        return Catalog.of("plain", parts.values(), offers);
    }

    Kit kit() {
        Job quiet = new TestJob().build();
        Job job =
                new Job(
                        quiet.reference(),
                        quiet.title(),
                        quiet.customer(),
                        currency,
                        quiet.supply(),
                        quiet.surroundings(),
                        quiet.feeds(),
                        List.of(),
                        List.of(),
                        quiet.choices());
        BigMoney none = BigMoney.zero(currency);
        return new Kit(
                job,
                "plain",
                "f1",
                List.of(),
                List.of(),
                List.of(),
                new Kit.Fit(none, none, true, ArrangementKind.CHEAPEST, List.of(), List.of()),
                List.of(),
                lines,
                List.of(),
                new Kit.Totals(Money.zero(currency), massG));
    }

    /** One line of a group at one price, by what it is called. */
    static QuoteLine line(Variant variant, String group, String code) {
        return variant.lines().stream()
                .filter(line -> line.group().equals(group) && line.code().equals(code))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no line " + group + " " + code));
    }

    static MarkUp usual(String percent) {
        return new MarkUp(Optional.empty(), Optional.empty(), new BigDecimal(percent));
    }

    static MarkUp group(String group, String percent) {
        return new MarkUp(Optional.empty(), Optional.of(group), new BigDecimal(percent));
    }

    static MarkUp part(String part, String percent) {
        return new MarkUp(
                Optional.of(new PartNumber(part)), Optional.empty(), new BigDecimal(percent));
    }

    static TaxKind tax(String percent) {
        return new TaxKind("private", "Private", new BigDecimal(percent), "");
    }
}
