package org.fusewright.papers;

import org.fusewright.core.kit.KitBlock;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * A label for a cap, or a piece of one that is wider than the sheet: a column for each position at
 * the block's pitch, with its number, the circuit's name running upwards and the rating below.
 */
final class LegendLabel {

    private static final float STRIP = 8.5f;
    private static final float NUMBER = 11;
    private static final float RATING = 10;
    private static final float PAD = 1.8f;
    private static final float LARGEST = 7;
    private static final float SMALLEST = 5;
    private static final Lettering SIDE = new Lettering(PaperFont.REGULAR, 6);

    /** What stands at a position, or at the two of a relay. */
    record Field(List<Integer> positions, String name, String rating, String kind, String colour) {

        Field {
            positions = List.copyOf(positions);
        }

        String positionsInWords() {
            return positions.stream().map(String::valueOf).collect(Collectors.joining(" + "));
        }
    }

    private final List<Field> fields;
    private final String side;
    private final String foot;
    private final float pitch;
    private final float width;
    private final float height;

    private LegendLabel(
            List<Field> fields, String side, String foot, float pitch, float width, float height) {
        this.fields = List.copyOf(fields);
        this.side = side;
        this.foot = foot;
        this.pitch = pitch;
        this.width = width;
        this.height = height;
    }

    /**
     * The label of a block's cap; in pieces where it is wider than the room.
     *
     * @param side what says which side is up
     */
    static List<LegendLabel> listFor(
            KitBlock block,
            List<Field> fields,
            String side,
            String foot,
            float width,
            float height,
            float room) {
        int positions = block.block().positions();
        float pitch = Math.min(Style.mm(block.block().pitchMm()), width / positions);
        if (width <= room) {
            return List.of(new LegendLabel(fields, side, foot, pitch, width, height));
        }
        List<LegendLabel> pieces = new ArrayList<>();
        List<Field> piece = new ArrayList<>();
        float used = 0;
        for (Field field : fields) {
            float needed = field.positions().size() * pitch;
            if (used + needed > room && !piece.isEmpty()) {
                pieces.add(new LegendLabel(piece, side, foot, pitch, used, height));
                piece = new ArrayList<>();
                used = 0;
            }
            piece.add(field);
            used += needed;
        }
        pieces.add(new LegendLabel(piece, side, foot, pitch, used, height));
        return pieces;
    }

    float heightWithMarks() {
        return height + 2 * CropMarks.REACH;
    }

    /** Draws with its left upper corner there; the marks reach beyond it. */
    void draw(Pen pen, float left, float top) {
        CropMarks.draw(pen, left, top, width, height);
        pen.box(Style.HAIRLINE, left, top - height, width, height);
        float room = width - 2 * PAD;
        Lettering small = SIDE.fitting(side, room);
        pen.textCentred(small, small.clip(side, room), left + width / 2, top - STRIP + PAD);
        float upper = top - STRIP;
        float lower = top - height + STRIP;
        pen.line(Style.THIN, Style.INK, left, upper, left + width, upper);
        pen.line(Style.THIN, Style.INK, left, lower, left + width, lower);
        pen.textCentred(SIDE, SIDE.clip(foot, room), left + width / 2, top - height + PAD + 0.5f);
        int positions = fields.stream().mapToInt(field -> field.positions().size()).sum();
        float x = left + (width - positions * pitch) / 2;
        for (Field field : fields) {
            if (field != fields.getFirst()) {
                pen.line(Style.THIN, Style.INK, x, lower, x, upper);
            }
            float fieldWidth = field.positions().size() * pitch;
            draw(pen, field, x, fieldWidth, upper, lower);
            x += fieldWidth;
        }
    }

    private static void draw(Pen pen, Field field, float x, float width, float upper, float lower) {
        float room = width - 2 * PAD;
        float middle = x + width / 2;
        pen.textCentred(
                Style.STRONG,
                Style.STRONG.clip(field.positionsInWords(), room),
                middle,
                upper - PAD - Style.STRONG.ascent() + 1);
        float nameBase = lower;
        if (!field.rating().isEmpty()) {
            nameBase += RATING;
            FittedText rating =
                    FittedText.fit(
                            List.of(FittedText.Passage.strong(field.rating())),
                            room,
                            RATING,
                            LARGEST,
                            SMALLEST);
            rating.drawCentred(pen, middle, lower + (RATING + rating.height()) / 2);
        }
        float length = upper - NUMBER - nameBase - 2 * PAD;
        FittedText name =
                FittedText.fit(
                        List.of(
                                FittedText.Passage.strong(field.name()),
                                FittedText.Passage.plain(
                                        LidLegendPaper.joined(field.kind(), field.colour()))),
                        length,
                        room,
                        LARGEST,
                        SMALLEST);
        pen.upwards(
                middle + name.height() / 2, nameBase + PAD, () -> name.draw(pen, 0, name.height()));
    }
}
