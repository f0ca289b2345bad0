package org.fusewright.papers;

import org.fusewright.core.catalog.BladeForm;
import org.fusewright.core.catalog.Block;
import org.fusewright.core.catalog.Cap;
import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.catalog.Holder;
import org.fusewright.core.catalog.Item;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.catalog.Plug;
import org.fusewright.core.catalog.Relay;
import org.fusewright.core.catalog.Rerating;
import org.fusewright.core.catalog.Seal;
import org.fusewright.core.catalog.Splice;
import org.fusewright.core.catalog.Terminal;
import org.fusewright.core.catalog.TimeCurrent;
import org.fusewright.core.catalog.Wedge;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.quantity.WireColour;
import org.fusewright.core.quantity.WireSize;

import java.math.BigDecimal;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.IntStream;

/** Invented parts for kits made by hand; {@code adorn} changes every title. */
record SampleParts(String adorn) {

    private static final TimeCurrent GATES =
            new TimeCurrent(List.of(new TimeCurrent.Gate(200, 0.1, 5)));

    private Item item(String number, String title, double massG) {
        return new Item(new PartNumber(number), title + adorn, "Brackwater", massG);
    }

    Block block(int positions) {
        List<Block.RelayPair> pairs =
                positions == 3
                        ? List.of()
                        : IntStream.rangeClosed(1, positions / 2)
                                .mapToObj(pair -> new Block.RelayPair(2 * pair - 1))
                                .toList();
        return new Block(
                item("BW-H" + positions, positions + "-position sealed block", 21.5),
                "BW28",
                positions,
                pairs,
                60,
                30,
                13.5);
    }

    Cap cap(int positions) {
        return new Cap(
                item("BW-C" + positions + "T", "tall cap for " + positions + " positions", 6.2),
                Set.of(new PartNumber("BW-H" + positions)),
                28,
                OptionalDouble.empty(),
                OptionalDouble.empty());
    }

    Wedge wedge(int positions) {
        return new Wedge(
                item("BW-W" + positions, "locking wedge for " + positions + " positions", 1.1),
                Set.of(new PartNumber("BW-H" + positions)));
    }

    Terminal terminal(WireSize size) {
        boolean thin = size.areaMm2() <= 1.0;
        return new Terminal(
                item(thin ? "BW-T28-S" : "BW-T28-M", "2.8 mm terminal", 0.4),
                "BW28",
                thin ? 0.35 : 1.0,
                thin ? 1.0 : 3.5,
                25,
                0.8,
                thin ? 3.2 : 3.6);
    }

    Seal seal(WireSize size) {
        boolean thin = size.areaMm2() <= 1.0;
        return new Seal(
                item(thin ? "BW-S28-GN" : "BW-S28-BU", "single-wire seal", 0.1),
                "BW28",
                thin ? 1.2 : 2.1,
                thin ? 2.1 : 3.2);
    }

    Plug plug() {
        return new Plug(item("BW-P28", "cavity plug", 0.2), "BW28");
    }

    Device device(DeviceKind kind, double ratingA) {
        String prefix =
                switch (kind) {
                    case FUSE -> "FM-";
                    case MANUAL_RESET -> "MB-";
                    case AUTO_RESET -> "AB-";
                };
        return new Device(
                item(prefix + plain(ratingA), plain(ratingA) + " A mini " + kind.code(), 2.1),
                kind,
                BladeForm.MINI,
                ratingA,
                32,
                1000,
                16.3,
                5,
                kind == DeviceKind.FUSE ? colour(ratingA) : "",
                GATES,
                Rerating.NONE);
    }

    Device mainDevice(double ratingA) {
        return new Device(
                item("FX-" + plain(ratingA), plain(ratingA) + " A main fuse", 9),
                DeviceKind.FUSE,
                BladeForm.HIGH_CURRENT,
                ratingA,
                32,
                1000,
                34,
                1.2,
                "orange/amber",
                GATES,
                Rerating.NONE);
    }

    Holder holder() {
        return new Holder(
                item("HX-1", "in-line holder for main fuses", 38),
                BladeForm.HIGH_CURRENT,
                60,
                2.5,
                16,
                0.6);
    }

    Relay relay() {
        return new Relay(
                item("RL-12", "sealed relay, make contact", 18),
                12,
                90,
                7.2,
                1.2,
                20,
                3,
                26,
                "resistor",
                new Relay.Pinout("30", "87", "86", "85"));
    }

    Splice splice() {
        return new Splice(item("SP-6", "crimp splice with sleeve", 1.9), 6, 0.5, 20, 0.3);
    }

    Wire wire(String areaMm2, String colour) {
        WireSize size = WireSize.ofMetric(new BigDecimal(areaMm2));
        return new Wire(
                item(
                        "WX-" + areaMm2.replace(".", "") + "-" + colour,
                        "thin-wall wire " + size.label() + " " + colour,
                        12 * size.areaMm2()),
                "WX thin-wall",
                size,
                new WireColour(colour),
                size.areaMm2(),
                1.2 + size.areaMm2() * 0.6,
                18 / size.areaMm2(),
                125,
                "XLPE");
    }

    /** Body colours of ISO 8820-3 type F. */
    private static String colour(double ratingA) {
        return switch (plain(ratingA)) {
            case "2" -> "grey";
            case "3" -> "violet";
            case "5" -> "tan";
            case "7.5" -> "brown";
            case "10" -> "red";
            case "15" -> "blue";
            case "20" -> "yellow";
            case "25" -> "white/clear";
            case "30" -> "green";
            default -> "";
        };
    }

    private static String plain(double value) {
        return value == Math.rint(value) ? Long.toString((long) value) : Double.toString(value);
    }
}
