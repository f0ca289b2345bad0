package org.fusewright.core;

import org.fusewright.core.catalog.BladeForm;
import org.fusewright.core.catalog.Block;
import org.fusewright.core.catalog.Block.RelayPair;
import org.fusewright.core.catalog.Cap;
import org.fusewright.core.catalog.Catalog;
import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.catalog.Holder;
import org.fusewright.core.catalog.Item;
import org.fusewright.core.catalog.Offer;
import org.fusewright.core.catalog.Offer.PriceBreak;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.catalog.Plug;
import org.fusewright.core.catalog.Relay;
import org.fusewright.core.catalog.Relay.Pinout;
import org.fusewright.core.catalog.Rerating;
import org.fusewright.core.catalog.Seal;
import org.fusewright.core.catalog.Splice;
import org.fusewright.core.catalog.Terminal;
import org.fusewright.core.catalog.TimeCurrent;
import org.fusewright.core.catalog.TimeCurrent.Gate;
import org.fusewright.core.catalog.Wedge;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.pricing.Stock;
import org.fusewright.core.quantity.WireColour;
import org.fusewright.core.quantity.WireSize;
import org.joda.money.BigMoney;
import org.joda.money.CurrencyUnit;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;

/**
 * A small stock made in code: {@link #usual()} and then, for what a test is about, parts added or
 * taken away. Figures follow the standards that the sample catalog follows; numbers and prices are
 * invented.
 */
public final class TestStock {

    public static final CurrencyUnit CURRENCY = CurrencyUnit.EUR;
    public static final String WIRES = "thin";
    public static final String FAMILY = "F";

    private static final double OPEN = Double.POSITIVE_INFINITY;

    /** ISO 8820-3 miniature blades; 110, 135, 350 and 600 % from memory. */
    public static final TimeCurrent MINI_FUSE =
            gates(
                    "100:360000:inf 110:360000:inf 135:0.75:600 200:0.15:5 350:0.04:0.5"
                            + " 600:0.02:0.1");

    /** ISO 8820-3 high-current blades; the latest time at 600 % from memory. */
    public static final TimeCurrent MAIN_FUSE =
            gates("100:360000:inf 135:60:1800 200:2:50 350:0.2:7 600:0.04:1");

    /** A thermal breaker as in SAE J553 type 3; from memory. */
    public static final TimeCurrent MANUAL =
            gates("100:3600:inf 135:0:1800 200:2:60 350:0.5:8 600:0.1:1.5 1000:0.03:0.3");

    /** An electronic breaker; invented. */
    public static final TimeCurrent AUTO =
            gates("100:360000:inf 135:1:600 200:0.3:10 350:0.08:1 600:0.03:0.1 1000:0.001:0.02");

    /**
     * A 40 A blade fuse's printed re-rating: 20 C 40 A, 65 C 34 A, 85 C 30 A, 110 C 25 A, 125 C 22
     * A.
     */
    public static final Rerating FUSE_RERATING =
            new Rerating(
                    List.of(
                            new Rerating.Point(20, 1),
                            new Rerating.Point(65, 0.85),
                            new Rerating.Point(85, 0.75),
                            new Rerating.Point(110, 0.625),
                            new Rerating.Point(125, 0.55)));

    /** Thermal breakers in the heat; from memory. */
    public static final Rerating THERMAL_RERATING =
            new Rerating(
                    List.of(
                            new Rerating.Point(-20, 1.2),
                            new Rerating.Point(25, 1),
                            new Rerating.Point(60, 0.87),
                            new Rerating.Point(85, 0.77)));

    private final Map<PartNumber, Part> parts = new TreeMap<>();
    private final Map<PartNumber, BigDecimal> prices = new TreeMap<>();

    private TestStock() {}

    public static TestStock empty() {
        return new TestStock();
    }

    /**
     * Thin-wall wire 0.5 to 16 mm2 in red, black and brown; the mini fuse ladder; breakers of both
     * kinds; main fuses 15 to 100 A; blocks with 3 and 4 positions; relays for 12 and 24 V; four
     * splices.
     */
    public static TestStock usual() {
        TestStock stock = new TestStock();
        stock.wire("0.5 mm2", 1.6, 37.1).wire("0.75 mm2", 1.9, 24.7).wire("1 mm2", 2.1, 18.5);
        stock.wire("1.5 mm2", 2.4, 12.7).wire("2.5 mm2", 3.0, 7.6).wire("4 mm2", 3.7, 4.71);
        stock.wire("6 mm2", 4.3, 3.14).wire("10 mm2", 6.0, 1.82).wire("16 mm2", 7.2, 1.16);
        for (double ratingA : new double[] {2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30}) {
            stock.with(fuse(ratingA), "0.35");
        }
        for (double ratingA : new double[] {5, 6, 7.5, 8, 10, 12, 15, 20, 25, 30}) {
            stock.with(manualReset(ratingA), "6.20");
        }
        for (double ratingA : new double[] {5, 10, 15, 20, 25, 30}) {
            stock.with(autoReset(ratingA), "7.90");
        }
        for (double ratingA : new double[] {15, 20, 25, 30}) {
            stock.with(mainFuse(BladeForm.MEDIUM, ratingA), "0.60");
        }
        for (double ratingA : new double[] {40, 50, 60, 80, 100}) {
            stock.with(mainFuse(BladeForm.HIGH_CURRENT, ratingA), "2.10");
        }
        stock.with(new Holder(item("HM"), BladeForm.MEDIUM, 30, 0.75, 6, 3.2), "4.10");
        stock.with(new Holder(item("HH"), BladeForm.HIGH_CURRENT, 100, 4, 25, 1.1), "9.80");
        stock.with(relay("R12", 12, 100, 7.8), "5.40").with(relay("R24", 24, 400, 15.6), "5.90");
        stock.with(block("B3", 3, List.of()), "8.00");
        stock.with(block("B4", 4, List.of(new RelayPair(1), new RelayPair(3))), "9.50");
        Set<PartNumber> blocks = Set.of(new PartNumber("B3"), new PartNumber("B4"));
        stock.with(
                new Cap(item("CAP"), blocks, 25, OptionalDouble.empty(), OptionalDouble.empty()),
                "3.20");
        stock.with(new Wedge(item("WEDGE"), blocks), "0.80");
        stock.with(new Plug(item("PLUG"), FAMILY), "0.15");
        stock.with(terminal("T1", 0.35, 0.6, 10, 4.5), "0.20");
        stock.with(terminal("T2", 0.6, 1.05, 16, 3.4), "0.21");
        stock.with(terminal("T3", 1, 2.1, 25, 2.4), "0.23");
        stock.with(terminal("T4", 2, 3.4, 30, 1.7), "0.26");
        stock.with(terminal("T5", 3.3, 6, 30, 1.3), "0.30");
        stock.with(new Seal(item("S1"), FAMILY, 1.2, 1.7), "0.10");
        stock.with(new Seal(item("S2"), FAMILY, 1.6, 2.2), "0.10");
        stock.with(new Seal(item("S3"), FAMILY, 2.1, 2.7), "0.11");
        stock.with(new Seal(item("S4"), FAMILY, 2.6, 3.4), "0.12");
        stock.with(new Seal(item("S5"), FAMILY, 3.3, 4.0), "0.13");
        stock.with(new Seal(item("S6"), FAMILY, 3.9, 4.8), "0.14");
        stock.with(new Splice(item("J1"), 3, 1, 4.5, 0.45), "0.40");
        stock.with(new Splice(item("J2"), 4, 2.5, 10, 0.28), "0.55");
        stock.with(new Splice(item("J3"), 6, 6, 22, 0.16), "0.90");
        stock.with(new Splice(item("J4"), 6, 16, 45, 0.08), "1.60");
        return stock;
    }

    /** Adds a part with its unit price; one of the same number is replaced. */
    public TestStock with(Part part, String price) {
        parts.put(part.number(), part);
        prices.put(part.number(), new BigDecimal(price));
        return this;
    }

    /** Adds cross-linked wire of 125 C in red, black and brown, at the area of its size. */
    public TestStock wire(String size, double outsideMm, double milliohmPerM) {
        return wire(WIRES, size, outsideMm, milliohmPerM, 125, "XLPE");
    }

    public TestStock wire(
            String family,
            String size,
            double outsideMm,
            double milliohmPerM,
            double classC,
            String insulation) {
        WireSize parsed = WireSize.parse(size).orElseThrow();
        for (String colour : List.of("RD", "BK", "BN")) {
            String number = family + "-" + size.replace(' ', '-') + "-" + colour;
            with(
                    new Wire(
                            item(number),
                            family,
                            parsed,
                            new WireColour(colour),
                            parsed.areaMm2(),
                            outsideMm,
                            milliohmPerM,
                            classC,
                            insulation),
                    "0.30");
        }
        return this;
    }

    public TestStock without(Predicate<Part> unwanted) {
        parts.values().removeIf(unwanted);
        prices.keySet().retainAll(parts.keySet());
        return this;
    }

    public TestStock without(Class<? extends Part> kind) {
        return without(kind::isInstance);
    }

    public Stock build() {
        List<Offer> offers = new ArrayList<>();
        prices.forEach(
                (number, price) ->
                        offers.add(
                                new Offer(
                                        "Supplier",
                                        number,
                                        1,
                                        List.of(new PriceBreak(1, BigMoney.of(CURRENCY, price))),
                                        2)));
        return Stock.of(Catalog.of("test", parts.values(), offers), CURRENCY);
    }

    public static Device fuse(double ratingA) {
        return device("F", DeviceKind.FUSE, BladeForm.MINI, ratingA, MINI_FUSE, FUSE_RERATING);
    }

    public static Device manualReset(double ratingA) {
        return device(
                "M", DeviceKind.MANUAL_RESET, BladeForm.MINI, ratingA, MANUAL, THERMAL_RERATING);
    }

    public static Device autoReset(double ratingA) {
        return device("A", DeviceKind.AUTO_RESET, BladeForm.MINI, ratingA, AUTO, Rerating.NONE);
    }

    public static Device mainFuse(BladeForm form, double ratingA) {
        return device("MAIN-", DeviceKind.FUSE, form, ratingA, MAIN_FUSE, FUSE_RERATING);
    }

    /** A device for 32 V that breaks 1,000 A and loses 0.1 V at its rating. */
    public static Device device(
            String prefix,
            DeviceKind kind,
            BladeForm form,
            double ratingA,
            TimeCurrent gates,
            Rerating rerating) {
        String rating = BigDecimal.valueOf(ratingA).stripTrailingZeros().toPlainString();
        return new Device(
                item(prefix + rating),
                kind,
                form,
                ratingA,
                32,
                1000,
                kind == DeviceKind.FUSE ? 8.5 : 16,
                100 / ratingA,
                "",
                gates,
                rerating);
    }

    public static Relay relay(String number, double coilV, double coilOhm, double pullInV) {
        return new Relay(
                item(number),
                coilV,
                coilOhm,
                pullInV,
                coilV / 10,
                30,
                3,
                21,
                "resistor",
                new Pinout("30", "87", "86", "85"));
    }

    public static Block block(String number, int positions, List<RelayPair> relayPairs) {
        return new Block(item(number), FAMILY, positions, relayPairs, 60, 30, 9.6);
    }

    public static Terminal terminal(
            String number, double fromMm2, double toMm2, double maxA, double milliohm) {
        return new Terminal(item(number), FAMILY, fromMm2, toMm2, maxA, milliohm, 3.2);
    }

    /** Gates as "percent:earliest:latest", apart by spaces; "inf" for a latest time left open. */
    public static TimeCurrent gates(String text) {
        List<Gate> gates = new ArrayList<>();
        for (String gate : text.split(" ")) {
            String[] figures = gate.split(":");
            gates.add(
                    new Gate(
                            Double.parseDouble(figures[0]),
                            Double.parseDouble(figures[1]),
                            figures[2].equals("inf") ? OPEN : Double.parseDouble(figures[2])));
        }
        return new TimeCurrent(gates);
    }

    public static Item item(String number) {
        return new Item(new PartNumber(number), "Part " + number, "Testbrook", 1);
    }
}
