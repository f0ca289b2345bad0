package org.fusewright.papers;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.Relay;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.kit.Cavity;
import org.fusewright.core.kit.KitBlock;
import org.openpdf.text.pdf.PdfContentByte;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A block as seen from the wire side: positions from left to right, feed cavities above, load
 * cavities below, the device between them. A block that is wider than the sheet goes on below.
 */
final class BlockDrawing {

    private static final float PITCH = 64;
    private static final float NUMBER_STRIP = 15;
    private static final float CAVITY = 47;
    private static final float BAND = 29;
    private static final float WALL = 4;
    private static final float ROW = NUMBER_STRIP + 2 * CAVITY + BAND + 2 * WALL;
    private static final float ROW_GAP = 8;
    private static final float PAD = 3.5f;
    private static final float BAND_INSET = 2.5f;
    private static final float HOLE = 8.2f;
    private static final float WIRE_END = 6;
    private static final float[] DASHES = {2, 2};

    private final KitBlock block;
    private final Sheet sheet;
    private final Devices devices;
    private final List<List<Integer>> rows;
    private final Map<Integer, KitBlock.Seat> seats = new HashMap<>();
    private final Map<String, Cavity> cavities = new HashMap<>();

    BlockDrawing(KitBlock block, Sheet sheet) {
        this.block = block;
        this.sheet = sheet;
        devices = new Devices(sheet);
        for (KitBlock.Seat seat : block.seats()) {
            seat.positions().forEach(position -> seats.put(position, seat));
        }
        for (Cavity cavity : block.cavities()) {
            cavities.put(key(cavity.position(), cavity.side()), cavity);
        }
        rows = rows(Math.max(2, (int) ((sheet.width() - 2 * WALL) / PITCH)));
    }

    float width() {
        return rows.getFirst().size() * PITCH + 2 * WALL;
    }

    float height() {
        return rows.size() * (ROW + ROW_GAP) - ROW_GAP;
    }

    void draw(Pen pen, float left, float top) {
        float rowTop = top;
        for (List<Integer> row : rows) {
            drawRow(pen, row, left, rowTop);
            rowTop -= ROW + ROW_GAP;
        }
    }

    /** Splits the positions so that no relay is torn apart. */
    private List<List<Integer>> rows(int most) {
        List<List<Integer>> split = new ArrayList<>();
        List<Integer> row = new ArrayList<>();
        for (int position = 1; position <= block.block().positions(); position++) {
            int needed = isFirstOfPair(position) ? 2 : 1;
            if (row.size() + needed > most) {
                split.add(row);
                row = new ArrayList<>();
            }
            row.add(position);
        }
        split.add(row);
        return split;
    }

    private boolean isFirstOfPair(int position) {
        KitBlock.Seat seat = seats.get(position);
        return seat != null
                && seat.positions().size() > 1
                && seat.positions().getFirst() == position;
    }

    private void drawRow(Pen pen, List<Integer> positions, float left, float top) {
        float width = positions.size() * PITCH + 2 * WALL;
        pen.roundBox(Style.THICK, left, top - ROW, width, ROW, 6);
        float x = left + WALL;
        for (int position : positions) {
            drawPosition(pen, position, x, top - WALL);
            if (position != positions.getLast()) {
                drawWall(pen, position, x + PITCH, top - WALL);
            }
            x += PITCH;
        }
    }

    /** Between two positions; a relay that spans them leaves it open. */
    private void drawWall(Pen pen, int position, float x, float top) {
        boolean open = isFirstOfPair(position);
        float bandTop = top - NUMBER_STRIP - CAVITY;
        pen.line(Style.HAIRLINE, Style.RULE, x, top, x, bandTop);
        if (!open) {
            pen.line(Style.HAIRLINE, Style.RULE, x, bandTop, x, bandTop - BAND);
        }
        pen.line(Style.HAIRLINE, Style.RULE, x, bandTop - BAND, x, top - ROW + 2 * WALL);
    }

    private void drawPosition(Pen pen, int position, float x, float top) {
        pen.textCentred(Style.STRONG, Integer.toString(position), x + PITCH / 2, top - 11);
        float cavityTop = top - NUMBER_STRIP;
        drawCavity(pen, position, 'a', x, cavityTop);
        float bandTop = cavityTop - CAVITY;
        KitBlock.Seat seat = seats.get(position);
        if (seat == null) {
            drawFree(pen, x, bandTop);
        } else if (seat.positions().getFirst() == position) {
            drawSeat(pen, seat, x, bandTop);
        }
        drawCavity(pen, position, 'b', x, bandTop - BAND);
    }

    private void drawFree(Pen pen, float x, float top) {
        pen.dashed(
                DASHES,
                () ->
                        pen.box(
                                Style.THIN,
                                x + BAND_INSET,
                                top - BAND,
                                PITCH - 2 * BAND_INSET,
                                BAND));
        pen.textCentred(Style.SMALL, sheet.say("drawing.free"), x + PITCH / 2, top - BAND / 2 - 3);
    }

    private void drawSeat(Pen pen, KitBlock.Seat seat, float x, float top) {
        float width = seat.positions().size() * PITCH - 2 * BAND_INSET;
        float left = x + BAND_INSET;
        pen.fill(Style.TINT, left, top - BAND, width, BAND);
        pen.box(Style.THIN, left, top - BAND, width, BAND);
        float room = width - 2 * BAND_INSET;
        pen.text(
                Style.STRONG,
                Style.STRONG.clip(rating(seat.part()), room),
                left + BAND_INSET,
                top - 11.5f);
        pen.text(
                Style.SMALL,
                Style.SMALL.clip(second(seat.part()), room),
                left + BAND_INSET,
                top - 23.5f);
        if (seat.part() instanceof Device device) {
            Swatch.body(device.colour())
                    .ifPresent(
                            colour -> {
                                pen.fill(colour, left + width - 14, top - 12.5f, 10, 8);
                                pen.box(Style.THIN, left + width - 14, top - 12.5f, 10, 8);
                            });
        }
    }

    private String rating(Part part) {
        return part instanceof Relay relay
                ? sheet.say("print.device.relay-of", sheet.figures().of(relay.coilV()))
                : devices.rating(part);
    }

    private String second(Part part) {
        if (part instanceof Relay relay) {
            return sheet.say("print.device.contact", devices.rating(relay));
        }
        if (part instanceof Device device) {
            return device.kind() == DeviceKind.FUSE && !device.colour().isEmpty()
                    ? devices.colour(device)
                    : devices.kind(device);
        }
        return "";
    }

    private void drawCavity(Pen pen, int position, char side, float x, float top) {
        Cavity cavity = cavities.get(key(position, side));
        float holeX = x + PAD + HOLE;
        float holeY = top - 14 - HOLE;
        float besideX = holeX + HOLE + PAD;
        String name = position + "" + side;
        pen.text(Style.STRONG, name, x + PAD, top - 10);
        Optional<Cavity.Occupant> occupant = Optional.ofNullable(cavity).flatMap(Cavity::occupant);
        if (occupant.isPresent()) {
            float room = PITCH - 3 * PAD - Style.STRONG.width(name);
            drawLead(pen, occupant.get(), x, top, room, holeX, holeY);
        } else if (cavity != null && cavity.plug().isPresent()) {
            hole(pen, holeX, holeY);
            float reach = HOLE * 0.7f;
            pen.line(
                    Style.THICK,
                    Style.INK,
                    holeX - reach,
                    holeY - reach,
                    holeX + reach,
                    holeY + reach);
            pen.line(
                    Style.THICK,
                    Style.INK,
                    holeX - reach,
                    holeY + reach,
                    holeX + reach,
                    holeY - reach);
            beside(pen, sheet.say("drawing.plug"), besideX, x, holeY);
        } else {
            pen.dashed(DASHES, () -> hole(pen, holeX, holeY));
            beside(pen, sheet.say("print.cavity.open"), besideX, x, holeY);
        }
    }

    private void drawLead(
            Pen pen,
            Cavity.Occupant occupant,
            float x,
            float top,
            float room,
            float holeX,
            float holeY) {
        Wire wire = occupant.lead().wire();
        boolean complete = occupant.terminal().isPresent() && occupant.seal().isPresent();
        String said = CavityRoles.said(occupant.role(), sheet);
        String role = complete ? said : "⚠ " + said;
        boolean relay = Character.isDigit(occupant.role().code().charAt(0));
        Lettering lettering = relay ? Style.STRONG : Style.SMALL;
        pen.textRight(lettering.fitting(role, room), role, x + PITCH - PAD, top - 10);
        hole(pen, holeX, holeY);
        Swatch.end(pen, wire.colour(), holeX, holeY, WIRE_END);
        float besideX = holeX + HOLE + PAD;
        pen.text(Style.STRONG, wire.colour().code(), besideX, holeY - 3);
        pen.text(
                Style.SMALL,
                Style.SMALL.clip(sheet.figures().size(wire.size()), PITCH - 2 * PAD),
                x + PAD,
                top - 41);
    }

    private static void beside(Pen pen, String word, float besideX, float x, float holeY) {
        Lettering lettering = Style.SMALL.fitting(word, x + PITCH - 1 - besideX);
        pen.text(lettering, word, besideX, holeY - 3);
    }

    private static void hole(Pen pen, float x, float y) {
        PdfContentByte canvas = pen.canvas();
        pen.stroke(Style.THIN, Style.INK);
        canvas.circle(x, y, HOLE);
        canvas.stroke();
    }

    private static String key(int position, char side) {
        return position + "" + side;
    }
}
