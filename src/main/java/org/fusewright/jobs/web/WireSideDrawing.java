package org.fusewright.jobs.web;

import org.fusewright.core.catalog.Wire;
import org.fusewright.core.kit.Cavity;
import org.fusewright.core.kit.KitBlock;
import org.fusewright.core.quantity.WireColour;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;
import org.fusewright.web.Words;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A block from the wire side: positions from left to right, side a above, side b below; a lead
 * leaves each cavity in its colours (IEC 60757, which are written beside it too), a plug closes
 * what is empty, and the wedge lies between the sides.
 */
final class WireSideDrawing {
    private static final double ROW = 208;
    private static final double RADIUS = 15;
    private static final double LEAD = 12;
    private static final double LEAD_LENGTH = 26;
    private static final double STRIPE = 3.6;
    private static final double ABOVE = 72;
    private static final double BELOW = 134;

    private final SvgText svg = new SvgText();
    private final KitBlock block;
    private final Belonging belonging;

    private WireSideDrawing(KitBlock block, Belonging belonging) {
        this.block = block;
        this.belonging = belonging;
    }

    /** The drawing as an element to stand in a page. */
    static String draw(KitBlock block, Belonging belonging) {
        return new WireSideDrawing(block, belonging).draw();
    }

    private String draw() {
        List<BlockRows.Row> rows = BlockRows.of(block.block());
        double width = Housing.width(block.block());
        double height = rows.size() * ROW;
        svg.open(
                "svg",
                "class",
                "block wires",
                "viewBox",
                "0 0 " + width + " " + height,
                "width",
                width,
                "height",
                height,
                "role",
                "group",
                "aria-label",
                description());
        for (int i = 0; i < rows.size(); i++) {
            draw(rows.get(i), i * ROW);
        }
        return svg.close("svg").toString();
    }

    private String description() {
        return Words.say(
                "drawing.wire-side",
                block.id(),
                block.block().positions(),
                block.cavities().stream().filter(c -> c.occupant().isPresent()).count(),
                block.cavities().size());
    }

    private void draw(BlockRows.Row row, double top) {
        Housing.outline(svg, block, row, top + 50, top + 156);
        Housing.pairs(svg, block, row, top + 54, top + 152);
        wedge(row, top);
        block.cavities().stream()
                .filter(c -> c.position() >= row.first() && c.position() <= row.last())
                .forEach(cavity -> draw(cavity, Housing.centre(row, cavity.position()), top));
    }

    private void wedge(BlockRows.Row row, double top) {
        double width = row.positions() * Housing.PITCH - 8;
        svg.put(
                "rect",
                "class",
                block.wedge().isPresent() ? "wedge" : "wedge none",
                "x",
                Housing.MARGIN + 4,
                "y",
                top + 94,
                "width",
                width,
                "height",
                18.0,
                "rx",
                4);
        svg.text(
                "name",
                Housing.MARGIN + 4 + width / 2,
                top + 107,
                block.wedge()
                        .map(wedge -> Words.say("drawing.wedge", wedge.number()))
                        .orElseGet(() -> Words.say("drawing.no-wedge")));
    }

    private void draw(Cavity cavity, double x, double top) {
        boolean above = cavity.side() == 'a';
        double y = top + (above ? ABOVE : BELOW);
        String state =
                cavity.occupant().isPresent()
                        ? "used"
                        : cavity.plug().isPresent() ? "plugged" : "open";
        svg.open(
                "g",
                "class",
                "cavity " + state,
                "id",
                Housing.id("cavity", cavity.id()),
                "tabindex",
                -1,
                "role",
                "img",
                "data-of",
                belonging.of(cavity));
        svg.title(told(cavity));
        cavity.occupant().ifPresent(occupant -> lead(occupant, x, y, above));
        svg.put("circle", "cx", x, "cy", y, "r", RADIUS);
        if (state.equals("plugged")) {
            double arm = 10.6;
            svg.put(
                    "path",
                    "class",
                    "cross",
                    "d",
                    "M%s %s l%s %s m0 -%s l-%s %s"
                            .formatted(
                                    x - arm, y - arm, 2 * arm, 2 * arm, 2 * arm, 2 * arm, 2 * arm));
        }
        svg.text("number", x, y + 4, cavity.position() + String.valueOf(cavity.side()));
        if (cavity.occupant().isEmpty()) {
            svg.text(
                    "name",
                    x,
                    y + (above ? -30 : 38),
                    Words.say(state.equals("open") ? "drawing.empty" : "drawing.plug"));
        }
        svg.close("g");
    }

    private void lead(Cavity.Occupant occupant, double x, double y, boolean above) {
        Wire wire = occupant.lead().wire();
        double end = above ? y - RADIUS - LEAD_LENGTH + 4 : y + RADIUS - 4;
        piece("lead-" + wire.colour().base().code(), x, end, LEAD);
        wire.colour()
                .stripe()
                .ifPresent(stripe -> piece("stripe lead-" + stripe.code(), x, end, STRIPE));
        svg.text(
                "wire",
                x,
                above ? end - 4 : end + LEAD_LENGTH + 12,
                wire.colour() + " " + wire.size().label().replace("mm2", "mm²"));
        svg.text(
                "name",
                x,
                above ? end - 17 : end + LEAD_LENGTH + 25,
                SvgText.shortened(occupant.lead().id()));
        if (Character.isDigit(occupant.role().code().charAt(0))) {
            svg.text("role", x + RADIUS + 10, y + 4, occupant.role().code());
        }
    }

    private void piece(String colour, double x, double y, double width) {
        svg.put(
                "rect",
                "class",
                "swatch " + colour,
                "x",
                x - width / 2,
                "y",
                y,
                "width",
                width,
                "height",
                LEAD_LENGTH);
    }

    private static String told(Cavity cavity) {
        return cavity.occupant()
                .map(in -> Words.say("drawing.cavity", cavity.id(), told(in)))
                .or(
                        () ->
                                cavity.plug()
                                        .map(
                                                plug ->
                                                        Words.say(
                                                                "drawing.cavity-plug",
                                                                cavity.id(),
                                                                plug.number())))
                .orElseGet(() -> Words.say("drawing.cavity-empty", cavity.id()));
    }

    private static Text told(Cavity.Occupant occupant) {
        Wire wire = occupant.lead().wire();
        List<Text> told = new ArrayList<>();
        told.add(
                Phrase.of(
                        "drawing.lead",
                        occupant.lead().id(),
                        inWords(wire.colour()),
                        wire.size().label()));
        told.add(role(occupant.role().code()));
        occupant.terminal().ifPresent(t -> told.add(Phrase.of("drawing.terminal", t.number())));
        occupant.seal().ifPresent(seal -> told.add(Phrase.of("drawing.seal", seal.number())));
        return Text.listed(told);
    }

    private static Text role(String code) {
        return Character.isDigit(code.charAt(0))
                ? Phrase.of("drawing.role.relay", code)
                : Phrase.of("drawing.role." + code);
    }

    /** The colour, and that of its stripe behind a slash. */
    private static String inWords(WireColour colour) {
        String base = Words.say("colour." + colour.base().code().toLowerCase(Locale.ROOT));
        return colour.stripe().map(stripe -> base + "/" + inWords(stripe)).orElse(base);
    }
}
