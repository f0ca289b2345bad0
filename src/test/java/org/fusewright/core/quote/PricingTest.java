package org.fusewright.core.quote;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.core.kit.PartGroup;
import org.fusewright.core.pricing.PriceList;
import org.joda.money.BigMoney;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import java.math.BigDecimal;
import java.util.List;

/** Selling prices; every expected amount is worked out by hand beside it. */
class PricingTest {
    private static final int ONE = 1;

    private static Variant price(PlainKits kits, List<MarkUp> markUps, int count, String tax) {
        PriceBook book = new PriceBook(kits.catalog(), List.of(), markUps, List.of());
        return new Pricing(book, kits.kit().job().currency(), count, PlainKits.tax(tax), false)
                .price(VariantKind.AS_ASKED, kits.kit());
    }

    private static Variant priceWith(
            PlainKits kits, List<LabourTask> labour, List<ShippingClass> shipping, int count) {
        PriceBook book =
                new PriceBook(kits.catalog(), labour, List.of(PlainKits.usual("0")), shipping);
        return new Pricing(book, kits.kit().job().currency(), count, PlainKits.tax("0"), true)
                .price(VariantKind.AS_ASKED, kits.kit());
    }

    /**
     * ISO 4217: EUR has 2 decimals, JPY none, KWD 3. Halves go up, as in trade: 12.5 yen are 13,
     * which rounding to even would make 12.
     */
    @ParameterizedTest
    @CsvSource({
        "EUR, 0.335, 3, 1.01", // 1.005
        "EUR, 0.3349, 3, 1.00", // 1.0047
        "EUR, 0.125, 1, 0.13",
        "EUR, 0.115, 1, 0.12",
        "JPY, 12.5, 1, 13",
        "JPY, 12.4, 1, 12",
        "JPY, 2.5, 1, 3",
        "JPY, 0.5, 1, 1",
        "KWD, 0.1005, 5, 0.503", // 0.5025
        "KWD, 0.0005, 1, 0.001",
        "KWD, 1.0004, 1, 1.000",
        // the lines of OASIS's UBL-Order-2.1-Example
        "SEK, 50, 120, 6000.00",
        "SEK, 15, 15, 225.00",
    })
    void roundsALineHalfUpToTheMinorUnit(
            String currency, BigDecimal unitPrice, BigDecimal quantity, String amount) {
        BigMoney price = BigMoney.of(CurrencyUnit.of(currency), unitPrice);
        assertThat(PriceList.extend(price, quantity).getAmount().toPlainString()).isEqualTo(amount);
        assertThat(PriceList.extend(price, quantity, BigDecimal.ONE))
                .isEqualTo(PriceList.extend(price, quantity));
    }

    /** EN 16931 rule BR-CO-17: tax is the taxable amount times the rate over 100, rounded. */
    @ParameterizedTest
    @CsvSource({
        "EUR, 10.10, 5, 0.51, 10.61", // 0.505
        "EUR, 10.13, 20, 2.03, 12.16", // 2.026
        "EUR, 99.99, 19.6, 19.60, 119.59", // 19.59804
        "EUR, 99.99, 0, 0.00, 99.99",
        "JPY, 105, 10, 11, 116", // 10.5
        "JPY, 104, 10, 10, 114", // 10.4
        "KWD, 1.015, 10, 0.102, 1.117", // 0.1015
        "KWD, 1.014, 10, 0.101, 1.115", // 0.1014
    })
    void taxesTheSumOfTheLinesAsOneLine(
            String currency, String net, String rate, String tax, String total) {
        PlainKits kits =
                PlainKits.in(currency)
                        .part("A")
                        .offer("S", "A", 1, "1=" + net)
                        .line(PartGroup.PLUG, "A", "1");
        Variant variant = price(kits, List.of(PlainKits.usual("0")), ONE, rate);
        assertThat(variant.net().getAmount()).isEqualTo(net);
        assertThat(variant.tax().getAmount()).isEqualTo(tax);
        assertThat(variant.total().getAmount()).isEqualTo(total);
    }

    /** Three lines of 0.335 are 0.34 each, so 1.02; their exact sum 1.005 would have been 1.01. */
    @Test
    void roundsEachLineAndNeverTheSum() {
        PlainKits kits = PlainKits.in("EUR");
        for (String number : List.of("A", "B", "C")) {
            kits.part(number).offer("S", number, 1, "1=0.335").line(PartGroup.PLUG, number, "1");
        }
        Variant variant = price(kits, List.of(PlainKits.usual("0")), ONE, "10");
        assertThat(variant.net().getAmount()).isEqualTo("1.02");
        assertThat(variant.tax().getAmount()).isEqualTo("0.10");
    }

    /**
     * The unit price is not rounded before it is extended: 0.105 plus 33 % is 0.13965, times 7 is
     * 0.97755; the unit price cut to cents would have made 0.98 as well, but 1000 pieces 140.00.
     */
    @ParameterizedTest
    @CsvSource({"7, 0.98, 0.74", "1000, 139.65, 105.00"})
    void addsTheMarkUpToTheCostOfOnePieceExactly(String quantity, String price, String cost) {
        PlainKits kits =
                PlainKits.in("EUR")
                        .part("A")
                        .offer("S", "A", 1, "1=0.105")
                        .line(PartGroup.PLUG, "A", quantity);
        QuoteLine line =
                PlainKits.line(price(kits, List.of(PlainKits.usual("33")), ONE, "0"), "plug", "A");
        assertThat(line.unitPrice().getAmount()).isEqualTo("0.13965");
        assertThat(line.price().getAmount()).isEqualTo(price);
        assertThat(line.cost().getAmount()).isEqualTo(cost);
    }

    /** On cost, not on price: 25 % on 8.00 sells at 10.00. */
    @Test
    void takesTheMarkUpAsPercentOfCost() {
        PlainKits kits =
                PlainKits.in("EUR")
                        .part("A")
                        .offer("S", "A", 1, "1=8.00")
                        .line(PartGroup.PLUG, "A", "1");
        assertThat(price(kits, List.of(PlainKits.usual("25")), ONE, "0").net().getAmount())
                .isEqualTo("10.00");
    }

    @ParameterizedTest
    @CsvSource({
        "1, 50, 1.50", // for everything
        "2, 20, 1.20", // for its group
        "3, 10, 1.10", // for the part itself
    })
    void prefersTheMarkUpOfThePartToThatOfItsGroupToTheUsualOne(
            int rows, String percent, String price) {
        List<MarkUp> all =
                List.of(
                        PlainKits.usual("50"),
                        PlainKits.group("plug", "20"),
                        PlainKits.part("A", "10"));
        PlainKits kits =
                PlainKits.in("EUR")
                        .part("A")
                        .offer("S", "A", 1, "1=1.00")
                        .line(PartGroup.PLUG, "A", "1");
        Variant variant = price(kits, all.subList(0, rows), ONE, "0");
        QuoteLine line = PlainKits.line(variant, "plug", "A");
        assertThat(line.markUpPercent()).isEqualByComparingTo(percent);
        assertThat(line.price().getAmount()).isEqualTo(price);
        assertThat(variant.gaps()).noneMatch(gap -> gap.contains("mark-up"));
    }

    /** Offers of a pack and breaks for 4 pieces in a kit. */
    @ParameterizedTest
    @CsvSource({
        "1, S, 0.50", // 4 pieces: S from 1, T from one pack of 10
        "12, S, 0.45", // 48
        "13, T, 0.40", // 52: T's break at 50 is below S's 0.45
        "25, S, 0.30", // 100: S's break
    })
    void buysAtTheBreakThatAllKitsTogetherReach(int count, String supplier, String unit) {
        PlainKits kits =
                PlainKits.in("EUR")
                        .part("A")
                        .offer("S", "A", 1, "1=0.50 40=0.45 100=0.30")
                        .offer("T", "A", 10, "1=0.60 10=0.55 50=0.40")
                        .line(PartGroup.PLUG, "A", "4");
        QuoteLine line =
                PlainKits.line(price(kits, List.of(PlainKits.usual("0")), count, "0"), "plug", "A");
        assertThat(line.source()).isEqualTo(supplier);
        assertThat(line.unitCost().getAmount()).isEqualTo(unit);
        assertThat(line.quantity()).isEqualByComparingTo(Integer.toString(4 * count));
    }

    /** One pack is the least that is bought, so its break counts; the rest of it is not charged. */
    @Test
    void takesTheBreakOfOnePackButChargesOnlyWhatIsNeeded() {
        PlainKits kits =
                PlainKits.in("EUR")
                        .part("A")
                        .offer("S", "A", 100, "1=1.00 100=0.20")
                        .line(PartGroup.PLUG, "A", "3");
        assertThat(price(kits, List.of(PlainKits.usual("0")), ONE, "0").net().getAmount())
                .isEqualTo("0.60");
    }

    @Test
    void countsAPartInTwoLinesTogetherForItsBreak() {
        PlainKits kits =
                PlainKits.in("EUR")
                        .part("A")
                        .offer("S", "A", 1, "1=1.00 10=0.70")
                        .line(PartGroup.DEVICE, "A", "8")
                        .line(PartGroup.SPARE, "A", "2");
        Variant variant = price(kits, List.of(PlainKits.usual("0")), ONE, "0");
        assertThat(PlainKits.line(variant, "device", "A").price().getAmount()).isEqualTo("5.60");
        assertThat(PlainKits.line(variant, "spare", "A").price().getAmount()).isEqualTo("1.40");
        assertThat(variant.demand().values()).singleElement().isEqualTo(new BigDecimal("10"));
    }

    /** 49.995 m do not reach the break at 50 m; two kits do. 2 x 49.995 m x 0.30 = 29.997. */
    @ParameterizedTest
    @CsvSource({"1, 0.40, 20.00", "2, 0.30, 30.00"})
    void reachesABreakOfWireInWholeMetres(int count, String unit, String price) {
        PlainKits kits =
                PlainKits.in("EUR")
                        .wire("W")
                        .offer("S", "W", 1, "1=0.40 50=0.30")
                        .line(PartGroup.WIRE, "W", "49.995");
        QuoteLine line =
                PlainKits.line(price(kits, List.of(PlainKits.usual("0")), count, "0"), "wire", "W");
        assertThat(line.unit()).isEqualTo("m");
        assertThat(line.unitCost().getAmount()).isEqualTo(unit);
        assertThat(line.price().getAmount()).isEqualTo(price);
    }

    /** 12 min for each kit at 47 an hour: 9.40; 7 min: 5.483..., three kits 16.45. */
    @ParameterizedTest
    @CsvSource({
        "EUR, 12, 47, 1, 9.40",
        "EUR, 7, 47, 1, 5.48",
        "EUR, 7, 47, 3, 16.45",
        "JPY, 7, 5050, 1, 589", // 589.1666...
        "JPY, 9, 5050, 1, 758", // 757.5
        "KWD, 7, 14.5, 1, 1.692", // 1.69166...
    })
    void chargesMinutesAtTheHourlyRate(
            String currency, BigDecimal minutes, BigDecimal rate, int count, String price) {
        BigMoney hourly = BigMoney.of(CurrencyUnit.of(currency), rate);
        Variant variant =
                priceWith(
                        PlainKits.in(currency),
                        List.of(new LabourTask("pack", "Pack", minutes, hourly)),
                        List.of(),
                        count);
        QuoteLine line = PlainKits.line(variant, "labour", "pack");
        assertThat(line.price().getAmount()).isEqualTo(price);
        assertThat(line.unit()).isEqualTo("min");
    }

    @ParameterizedTest
    @CsvSource({
        "100, 5, letter, 4.20", // 500 g, the class's end included
        "100.01, 5, parcel, 6.90", // 500.05 g count as 501 g
        "400, 5, parcel, 6.90", // 2000 g
    })
    void sendsInTheLightestClassThatTakesAllKits(
            double massG, int count, String code, String price) {
        Variant variant =
                priceWith(PlainKits.in("EUR").massG(massG), List.of(), classes("EUR"), count);
        assertThat(PlainKits.line(variant, "shipping", code).price().getAmount()).isEqualTo(price);
        assertThat(variant.net().getAmount()).isEqualTo(price);
    }

    private static List<ShippingClass> classes(String currency) {
        CurrencyUnit unit = CurrencyUnit.of(currency);
        return List.of(
                new ShippingClass("parcel", "Parcel", 2000, BigMoney.of(unit, 6.9)),
                new ShippingClass("letter", "Letter", 500, BigMoney.of(unit, 4.2)));
    }

    @Test
    void saysWhatIsMissingInThePrice() {
        PlainKits kits =
                PlainKits.in("EUR")
                        .part("A")
                        .part("B")
                        .offer("S", "A", 1, "1=1.00")
                        .offer("S", "B", 1, "1=1.00", "USD")
                        .line(PartGroup.PLUG, "A", "1")
                        .line(PartGroup.PLUG, "B", "1")
                        .massG(2001);
        BigMoney dollars = BigMoney.of(CurrencyUnit.USD, 40);
        PriceBook book =
                new PriceBook(
                        kits.catalog(),
                        List.of(
                                new LabourTask("pack", "Pack", BigDecimal.TEN, dollars),
                                new LabourTask("polish", "Polish", BigDecimal.TEN, dollars)),
                        List.of(),
                        classes("EUR"));
        Variant variant =
                new Pricing(book, CurrencyUnit.EUR, 1, TaxKind.NONE, true)
                        .price(VariantKind.AS_ASKED, kits.kit());
        assertThat(variant.gaps())
                .containsExactly(
                        "no mark-up is set for plug: it is sold at cost",
                        "nobody offers B in EUR: it counts as nothing",
                        "labour \"polish\" is nothing that a kit is counted for",
                        "labour \"pack\" has no rate in EUR",
                        "no shipping class in EUR takes 2001 g: shipping is not in the price");
        assertThat(variant.net().getAmount()).isEqualTo("1.00");
    }

    @Test
    void leavesShippingOutWhenTheCustomerFetchesTheKits() {
        PlainKits kits = PlainKits.in("EUR").massG(100);
        PriceBook book = new PriceBook(kits.catalog(), List.of(), List.of(), classes("EUR"));
        Variant variant =
                new Pricing(book, CurrencyUnit.EUR, 1, TaxKind.NONE, false)
                        .price(VariantKind.AS_ASKED, kits.kit());
        assertThat(variant.lines()).isEmpty();
    }
}
