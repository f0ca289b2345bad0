package org.fusewright.jobs.web;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.catalog.Relay;
import org.fusewright.core.job.Circuit;
import org.fusewright.core.kit.KitBlock;
import org.fusewright.web.Figures;
import org.fusewright.web.Words;

import java.util.List;
import java.util.Locale;

/**
 * A block from the device side with the cap off, its outline dashed: turned so that position 1
 * stays at the left, which puts side b above. Fuses have the colours of their ratings (ISO 8820-3),
 * breakers a band of it; the rating stands in figures too.
 */
final class DeviceSideDrawing {
    private static final double ROW = 122;
    private static final double TOP = 30;
    private static final double BODY = 70;
    private static final double HALF = 32;

    private final SvgText svg = new SvgText();
    private final KitBlock block;
    private final Belonging belonging;
    private final List<Circuit> circuits;
    private final List<KeptPlace> places;

    private DeviceSideDrawing(
            KitBlock block, Belonging belonging, List<Circuit> circuits, List<KeptPlace> places) {
        this.block = block;
        this.belonging = belonging;
        this.circuits = circuits;
        this.places = places;
    }

    /**
     * The drawing as an element to stand in a page.
     *
     * @param circuits all of the job, in its order
     */
    static String draw(
            KitBlock block, Belonging belonging, List<Circuit> circuits, List<KeptPlace> places) {
        return new DeviceSideDrawing(block, belonging, circuits, places).draw();
    }

    private String draw() {
        List<BlockRows.Row> rows = BlockRows.of(block.block());
        double width = Housing.width(block.block());
        double height = rows.size() * ROW;
        svg.open(
                "svg",
                "class",
                "block devices",
                "viewBox",
                "0 0 " + width + " " + height,
                "width",
                width,
                "height",
                height,
                "role",
                "group",
                "aria-label",
                Words.say(
                        "drawing.device-side",
                        block.id(),
                        block.block().positions(),
                        block.seats().size()),
                "data-block",
                block.id(),
                "data-location",
                block.location());
        for (int i = 0; i < rows.size(); i++) {
            draw(rows.get(i), i * ROW);
        }
        return svg.close("svg").toString();
    }

    private void draw(BlockRows.Row row, double top) {
        double width = row.positions() * Housing.PITCH + 2 * Housing.MARGIN - 4;
        svg.put(
                "rect", "class", "cap", "x", 2, "y", top + 2, "width", width, "height", ROW - 6,
                "rx", 12);
        Housing.outline(svg, block, row, top + 22, top + 108);
        Housing.pairs(svg, block, row, top + 25, top + 105);
        for (int position = row.first(); position <= row.last(); position++) {
            spot(row, position, top);
        }
        block.seats().stream()
                .filter(seat -> seat.positions().getFirst() >= row.first())
                .filter(seat -> seat.positions().getFirst() <= row.last())
                .forEach(seat -> draw(seat, row, top + TOP));
    }

    private void spot(BlockRows.Row row, int position, double top) {
        double x = Housing.centre(row, position);
        svg.text("name", x, top + 16, String.valueOf(position));
        svg.put(
                "rect",
                "class",
                "spot",
                "x",
                x - HALF,
                "y",
                top + TOP,
                "width",
                2 * HALF,
                "height",
                BODY,
                "rx",
                5,
                "data-position",
                position);
        if (block.seats().stream().noneMatch(seat -> seat.positions().contains(position))) {
            svg.text("name", x, top + TOP + BODY / 2 + 4, Words.say("drawing.free"));
        }
    }

    private void draw(KitBlock.Seat seat, BlockRows.Row row, double top) {
        boolean relay = seat.part() instanceof Relay;
        double left = Housing.centre(row, seat.positions().getFirst()) - HALF;
        double right = Housing.centre(row, seat.positions().getLast()) + HALF;
        double middle = (left + right) / 2;
        String place = rowOf(seat);
        boolean held = places.stream().anyMatch(kept -> kept.row().equals(place) && kept.kept());
        svg.open(
                "g",
                "class",
                "seat " + bodyClass(seat),
                "id",
                Housing.id("seat", block.id() + "-" + seat.positions().getFirst()),
                "tabindex",
                -1,
                "role",
                "button",
                "aria-label",
                told(seat, held),
                "data-of",
                belonging.of(seat),
                "data-row",
                place,
                "data-position",
                seat.positions().getFirst(),
                "data-width",
                seat.positions().size(),
                "data-what",
                what(seat));
        svg.put(
                "rect",
                "class",
                "body",
                "x",
                left,
                "y",
                top,
                "width",
                right - left,
                "height",
                BODY,
                "rx",
                5);
        if (seat.part() instanceof Device device) {
            dress(device, left, right, top);
        }
        svg.text("rating", middle, top + 30, rating(seat));
        svg.text("kind", middle, top + 45, relay ? seat.part().number().value() : kind(seat));
        svg.text("name", middle, top + 60, SvgText.shortened(seat.circuit()));
        if (relay) {
            pins((Relay) seat.part(), left, right, top);
        }
        if (held) {
            svg.put("circle", "class", "pin", "cx", right - 8, "cy", top + 15, "r", 4);
            svg.put("path", "class", "pin", "d", "M%s %s v8".formatted(right - 8, top + 19));
        }
        svg.close("g");
    }

    /** The blades' test points of a fuse, the band of a breaker, the tip of one reset by hand. */
    private void dress(Device device, double left, double right, double top) {
        if (device.kind() == DeviceKind.FUSE) {
            for (double x : new double[] {left + 12, right - 22}) {
                svg.put("rect", "class", "blade", "x", x, "y", top + 5, "width", 10, "height", 5);
            }
        } else {
            svg.put(
                    "rect",
                    "class",
                    "band " + bodyClass(device.ratingColour().orElse("")),
                    "x",
                    left,
                    "y",
                    top,
                    "width",
                    right - left,
                    "height",
                    9);
        }
        if (device.kind() == DeviceKind.MANUAL_RESET) {
            svg.put("circle", "class", "tip", "cx", (left + right) / 2, "cy", top + 4.5, "r", 6);
        }
    }

    private void pins(Relay relay, double left, double right, double top) {
        Relay.Pinout pinout = relay.pinout();
        svg.text("kind", left + 14, top + 14, pinout.firstB());
        svg.text("kind", right - 14, top + 14, pinout.secondB());
        svg.text("kind", left + 14, top + BODY - 5, pinout.firstA());
        svg.text("kind", right - 14, top + BODY - 5, pinout.secondA());
    }

    private String rowOf(KitBlock.Seat seat) {
        for (int i = 0; i < circuits.size(); i++) {
            if (circuits.get(i).id().equals(seat.circuit())) {
                return "/circuits/" + i + (seat.part() instanceof Relay ? "/relay" : "");
            }
        }
        throw new IllegalArgumentException("no circuit " + seat.circuit());
    }

    private String told(KitBlock.Seat seat, boolean held) {
        return Words.say(
                held ? "drawing.at-held" : "drawing.at",
                block.id() + "-" + seat.positions().getFirst(),
                what(seat));
    }

    private static String what(KitBlock.Seat seat) {
        String named =
                seat.part() instanceof Device device
                        ? Words.say("device." + device.kind().code(), rating(seat))
                        : rating(seat);
        return Words.say("drawing.what", named, seat.circuit());
    }

    private static String kind(KitBlock.Seat seat) {
        return seat.part() instanceof Device device
                ? Words.say("drawing.kind." + device.kind().code())
                : "";
    }

    private static String rating(KitBlock.Seat seat) {
        return seat.part() instanceof Device device
                ? Figures.plain(device.ratingA(), 2) + " A"
                : Words.say("drawing.relay", Figures.plain(((Relay) seat.part()).coilV(), 1));
    }

    private static String bodyClass(KitBlock.Seat seat) {
        return seat.part() instanceof Device device ? bodyClass(device.colour()) : "body-relay";
    }

    private static String bodyClass(String colour) {
        return colour.isEmpty()
                ? "body-none"
                : "body-" + colour.toLowerCase(Locale.ROOT).replaceAll("[^a-z]+", "-");
    }
}
