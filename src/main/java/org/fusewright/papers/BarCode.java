package org.fusewright.papers;

import org.openpdf.text.pdf.PdfContentByte;

import uk.org.okapibarcode.backend.Code128;
import uk.org.okapibarcode.backend.HumanReadableLocation;
import uk.org.okapibarcode.graphics.Rectangle;

import java.util.List;
import java.util.Optional;

/**
 * A Code 128 symbol, drawn as rectangles, with the text that it holds below it.
 *
 * <p>By ISO/IEC 15417, from memory: a quiet zone of ten modules on each side, bars at least 5 mm
 * high and 15 % of the symbol's length, and a narrowest bar of 0.19 mm in open use. The narrowest
 * bar here is three or two dots of a label printer with 203 dots to the inch, or those 0.19 mm
 * where the content is long.
 */
final class BarCode {

    private static final double[] MODULES_MM = {0.375, 0.25, 0.19};
    private static final int QUIET_MODULES = 10;
    private static final double LEAST_HEIGHT_MM = 8;
    private static final double LEAST_SHARE_OF_LENGTH = 0.15;
    private static final float GAP = 1.5f;

    /** Far more than any label has room for; the library refuses much longer ones. */
    private static final int LONGEST = 80;

    /** How the library is told a sign that no keyboard has; it would not stand for itself. */
    private static final String ESCAPE = "\\<FNC";

    private final String content;
    private final List<Rectangle> bars;
    private final int modules;
    private final float module;

    private BarCode(String content, List<Rectangle> bars, int modules, float module) {
        this.content = content;
        this.bars = bars;
        this.modules = modules;
        this.module = module;
    }

    /**
     * The symbol, with the widest bars that fit; empty when the content has other signs than
     * printable ASCII or is too long for the room.
     */
    static Optional<BarCode> of(String content, float room) {
        if (content.isEmpty()
                || content.length() > LONGEST
                || content.contains(ESCAPE)
                || !content.chars().allMatch(sign -> sign >= ' ' && sign <= '~')) {
            return Optional.empty();
        }
        Code128 symbol = new Code128();
        symbol.setHumanReadableLocation(HumanReadableLocation.NONE);
        symbol.setModuleWidth(1);
        symbol.setContent(content);
        int modules = symbol.getWidth();
        for (double moduleMm : MODULES_MM) {
            float module = Style.mm(moduleMm);
            if ((modules + 2 * QUIET_MODULES) * module <= room) {
                return Optional.of(new BarCode(content, symbol.getRectangles(), modules, module));
            }
        }
        return Optional.empty();
    }

    /** With both quiet zones. */
    float width() {
        return (modules + 2 * QUIET_MODULES) * module;
    }

    /** With the text below. */
    float height() {
        return barHeight() + GAP + Style.SMALL.leading();
    }

    private float barHeight() {
        double share = LEAST_SHARE_OF_LENGTH * modules * module;
        return (float) Math.max(Style.mm(LEAST_HEIGHT_MM), share);
    }

    /** Draws with the left quiet zone beginning at {@code left}. */
    void draw(Pen pen, float left, float top) {
        PdfContentByte canvas = pen.canvas();
        float first = left + QUIET_MODULES * module;
        canvas.setColorFill(Style.INK);
        for (Rectangle bar : bars) {
            canvas.rectangle(
                    first + (float) bar.x * module,
                    top - barHeight(),
                    (float) bar.width * module,
                    barHeight());
        }
        canvas.fill();
        pen.text(
                Style.SMALL,
                Style.SMALL.clip(content, modules * module),
                first,
                top - barHeight() - GAP - Style.SMALL.ascent());
    }
}
