package org.fusewright.jobs.web;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.Relay;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.kit.Cavity;
import org.fusewright.core.kit.KitBlock;
import org.fusewright.core.sizing.Lead;
import org.fusewright.web.Figures;

import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Draws a block from the wire side as SVG: positions from left to right, side a above, side b
 * below, devices and relays between their cavities. Colours are classes of the style sheet, and
 * each is said in letters or figures too.
 */
public final class BlockDrawing {
    private static final int PITCH = 112;
    private static final int MARGIN = 14;
    private static final int HEIGHT = 286;
    private static final int TOP = 78;
    private static final int BOTTOM = HEIGHT - TOP;
    private static final int RADIUS = 17;
    private static final int SWATCH_WIDTH = 22;
    private static final int SWATCH_HEIGHT = 10;
    private static final int LONGEST_NAME = 18;

    /** Colours of blade fuses by rating (ISO 8820-3). */
    private static final Map<Double, String> RATING_COLOURS =
            Map.of(
                    2.0, "grey",
                    3.0, "violet",
                    4.0, "pink",
                    5.0, "tan",
                    7.5, "brown",
                    10.0, "red",
                    15.0, "blue",
                    20.0, "yellow",
                    25.0, "clear",
                    30.0, "green");

    private final StringBuilder svg = new StringBuilder();
    private final KitBlock block;

    private BlockDrawing(KitBlock block) {
        this.block = block;
    }

    /** The drawing as an element to stand in a page; all text in it is escaped. */
    public static String draw(KitBlock block) {
        return new BlockDrawing(block).draw();
    }

    private String draw() {
        int positions = block.block().positions();
        int width = positions * PITCH + 2 * MARGIN;
        svg.append(
                "<svg class=\"block\" viewBox=\"0 0 %d %d\" width=\"%d\" height=\"%d\" role=\"img\" aria-label=\"%s\">"
                        .formatted(width, HEIGHT, width, HEIGHT, escaped(description(positions))));
        svg.append(
                "<rect class=\"housing\" x=\"%d\" y=\"%d\" width=\"%d\" height=\"%d\" rx=\"12\"/>"
                        .formatted(
                                MARGIN / 2,
                                TOP - RADIUS - 8,
                                width - MARGIN,
                                BOTTOM - TOP + 2 * RADIUS + 16));
        block.seats().forEach(this::seat);
        block.cavities().forEach(this::cavity);
        return svg.append("</svg>").toString();
    }

    private String description(int positions) {
        return "Block %s from the wire side, %d positions, %d of %d cavities in use"
                .formatted(
                        block.id(),
                        positions,
                        block.cavities().stream().filter(c -> c.occupant().isPresent()).count(),
                        block.cavities().size());
    }

    private void seat(KitBlock.Seat seat) {
        List<Integer> at = seat.positions();
        double left = centre(at.getFirst()) - 36;
        double right = centre(at.getLast()) + 36;
        double middle = (left + right) / 2;
        int top = TOP + RADIUS + 10;
        int height = BOTTOM - TOP - 2 * RADIUS - 20;
        svg.append("<g class=\"seat ").append(bodyClass(seat.part())).append("\">");
        svg.append("<title>").append(escaped(seat.part().title())).append("</title>");
        svg.append(
                "<rect x=\"%s\" y=\"%d\" width=\"%s\" height=\"%d\" rx=\"5\"/>"
                        .formatted(n(left), top, n(right - left), height));
        if (seat.part() instanceof Device device && device.colour().isEmpty()) {
            svg.append(
                    "<rect class=\"band %s\" x=\"%s\" y=\"%d\" width=\"%s\" height=\"7\"/>"
                            .formatted(
                                    bodyClass(ratingColour(device.ratingA())),
                                    n(left),
                                    top,
                                    n(right - left)));
        }
        text(middle, top + height / 2.0 - 6, "rating", rating(seat.part()));
        text(middle, top + height / 2.0 + 9, "kind", kind(seat.part()));
        text(middle, top + height / 2.0 + 23, "name", shortened(seat.circuit()));
        svg.append("</g>");
    }

    private static String bodyClass(Part part) {
        return part instanceof Relay
                ? "body-relay"
                : part instanceof Device device ? bodyClass(device.colour()) : "body-none";
    }

    private static String bodyClass(String colour) {
        return colour.isEmpty()
                ? "body-none"
                : "body-" + colour.toLowerCase(Locale.ROOT).replaceAll("[^a-z]+", "-");
    }

    /** Breakers have no coded body; a band shows the colour that a fuse of their rating has. */
    private static String ratingColour(double ratingA) {
        return RATING_COLOURS.getOrDefault(ratingA, "");
    }

    private static String rating(Part part) {
        return part instanceof Device device
                ? Figures.plain(device.ratingA(), 2) + " A"
                : part instanceof Relay relay
                        ? "relay " + Figures.plain(relay.coilV(), 1) + " V"
                        : "";
    }

    private static String kind(Part part) {
        return part instanceof Device device ? device.kind().code() : part.number().value();
    }

    private void cavity(Cavity cavity) {
        boolean above = cavity.side() == 'a';
        double x = centre(cavity.position());
        int y = above ? TOP : BOTTOM;
        String state =
                cavity.occupant().isPresent()
                        ? "used"
                        : cavity.plug().isPresent() ? "plugged" : "open";
        svg.append("<g class=\"cavity ").append(state).append("\">");
        svg.append("<title>").append(escaped(told(cavity))).append("</title>");
        svg.append("<circle cx=\"%s\" cy=\"%d\" r=\"%d\"/>".formatted(n(x), y, RADIUS));
        text(x, y + 4, "number", cavity.position() + String.valueOf(cavity.side()));
        int away = above ? -1 : 1;
        double first = y + away * (RADIUS + 17.0);
        cavity.occupant()
                .ifPresentOrElse(
                        occupant -> lead(occupant, x, first, above),
                        () -> text(x, first + 4, "name", state.equals("open") ? "empty" : "plug"));
        svg.append("</g>");
    }

    private void lead(Cavity.Occupant occupant, double x, double first, boolean above) {
        Lead lead = occupant.lead();
        Wire wire = lead.wire();
        double swatch = first - SWATCH_HEIGHT / 2.0;
        double left = x - 53;
        rectangle("lead-" + wire.colour().base().code(), left, swatch, SWATCH_HEIGHT);
        wire.colour()
                .stripe()
                .ifPresent(
                        stripe ->
                                rectangle(
                                        "lead-" + stripe.code(),
                                        left,
                                        swatch + SWATCH_HEIGHT / 2.0 - 1.5,
                                        3));
        svg.append(
                "<text class=\"wire\" x=\"%s\" y=\"%s\">%s</text>"
                        .formatted(
                                n(left + SWATCH_WIDTH + 4),
                                n(first + 4),
                                escaped(wire.colour() + " " + wire.size().label())));
        double second = above ? first - 15 : first + 21;
        text(x, second, "name", shortened(lead.id()));
        double third = above ? second - 13 : second + 13;
        text(x, third, "role", role(occupant));
    }

    private static String role(Cavity.Occupant occupant) {
        String code = occupant.role().code();
        return Character.isDigit(code.charAt(0)) ? "terminal " + code : code;
    }

    private void rectangle(String colour, double x, double y, double height) {
        svg.append(
                "<rect class=\"swatch %s\" x=\"%s\" y=\"%s\" width=\"%d\" height=\"%s\"/>"
                        .formatted(colour, n(x), n(y), SWATCH_WIDTH, n(height)));
    }

    private String told(Cavity cavity) {
        return cavity.occupant()
                .map(
                        occupant ->
                                cavity.id()
                                        + ": lead "
                                        + occupant.lead().id()
                                        + ", "
                                        + role(occupant)
                                        + occupant.terminal()
                                                .map(t -> ", terminal " + t.number())
                                                .orElse("")
                                        + occupant.seal()
                                                .map(s -> ", seal " + s.number())
                                                .orElse(""))
                .orElseGet(
                        () ->
                                cavity.id()
                                        + ": "
                                        + cavity.plug()
                                                .map(p -> "plug " + p.number())
                                                .orElse("empty"));
    }

    private void text(double x, double y, String kind, String text) {
        svg.append(
                "<text class=\"%s\" x=\"%s\" y=\"%s\" text-anchor=\"middle\">%s</text>"
                        .formatted(kind, n(x), n(y), escaped(text)));
    }

    private static double centre(int position) {
        return MARGIN + (position - 0.5) * PITCH;
    }

    private static String shortened(String name) {
        return name.length() <= LONGEST_NAME ? name : name.substring(0, LONGEST_NAME - 1) + "…";
    }

    private static String n(double value) {
        return Figures.plain(value, 1);
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }
}
