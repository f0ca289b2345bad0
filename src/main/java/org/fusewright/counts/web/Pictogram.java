package org.fusewright.counts.web;

import org.fusewright.core.count.CountedKind;
import org.fusewright.core.count.Likeness;
import org.fusewright.web.Words;

import java.util.Locale;

/**
 * Draws what a part looks like as a small SVG, so that it is found on the bench by eye. Colours are
 * classes of the style sheet; kind, colour and mark are said in words too.
 */
public final class Pictogram {
    private static final int SIZE = 48;

    private Pictogram() {}

    /** The drawing as an element to stand in a page; all text in it is escaped. */
    public static String draw(Likeness likeness) {
        return "<svg class=\"part %s\" viewBox=\"0 0 %d %d\" width=\"%d\" height=\"%d\" role=\"img\" aria-label=\"%s\">%s</svg>"
                .formatted(
                        likeness.kind() == CountedKind.WIRE
                                ? wireClasses(likeness.colour())
                                : "body-" + word(likeness.colour()),
                        SIZE,
                        SIZE,
                        SIZE,
                        SIZE,
                        escaped(description(likeness)),
                        shape(likeness));
    }

    private static String description(Likeness likeness) {
        return String.join(
                        " ",
                        Words.say("counted." + likeness.kind().code()),
                        likeness.colour(),
                        likeness.mark())
                .strip();
    }

    private static String shape(Likeness likeness) {
        return switch (likeness.kind()) {
            case FUSE ->
                    rect("blade", 11, 26, 7, 17)
                            + rect("blade", 30, 26, 7, 17)
                            + "<rect class=\"body\" x=\"6\" y=\"6\" width=\"36\" height=\"23\""
                            + " rx=\"3\"/>"
                            + mark(24, 22, likeness.mark());
            case MANUAL_RESET ->
                    rect("blade", 11, 32, 7, 13)
                            + rect("blade", 30, 32, 7, 13)
                            + rect("tip", 20, 2, 8, 6)
                            + rect("case", 6, 7, 36, 27)
                            + rect("body", 6, 7, 36, 7)
                            + mark(24, 28, likeness.mark());
            case AUTO_RESET ->
                    rect("blade", 11, 32, 7, 13)
                            + rect("blade", 30, 32, 7, 13)
                            + rect("case", 6, 5, 36, 29)
                            + rect("body", 6, 5, 36, 7)
                            + mark(24, 28, likeness.mark());
            case RELAY ->
                    rect("blade", 10, 34, 5, 11)
                            + rect("blade", 21, 34, 5, 11)
                            + rect("blade", 33, 34, 5, 11)
                            + rect("case", 5, 5, 38, 31)
                            + mark(24, 25, likeness.mark());
            case BLOCK ->
                    "<rect class=\"case\" x=\"3\" y=\"9\" width=\"42\" height=\"30\" rx=\"4\"/>"
                            + holes(14)
                            + holes(34)
                            + mark(24, 29, likeness.mark());
            case CAP ->
                    "<path class=\"case\" d=\"M4 36 V20 Q4 10 14 10 H34 Q44 10 44 20 V36 Z\"/>"
                            + "<path class=\"line\" d=\"M4 30 H44\"/>";
            case WEDGE ->
                    "<path class=\"case\" d=\"M5 17 H43 V24 L38 33 H10 L5 24 Z\"/>"
                            + "<path class=\"line\" d=\"M14 17 V33 M24 17 V33 M34 17 V33\"/>";
            case TERMINAL ->
                    "<path class=\"blade\" d=\"M3 18 H17 V12 H31 V18 H36 V14 H45 V30 H36 V26 H31"
                            + " V30 H17 V26 H3 Z\"/>"
                            + small(24, 45, likeness.mark());
            case SEAL ->
                    "<circle class=\"rubber\" cx=\"24\" cy=\"19\" r=\"15\"/>"
                            + "<circle class=\"line\" cx=\"24\" cy=\"19\" r=\"10.5\"/>"
                            + "<circle class=\"hole\" cx=\"24\" cy=\"19\" r=\"5\"/>"
                            + small(24, 46, likeness.mark());
            case PLUG ->
                    "<path class=\"rubber\" d=\"M8 14 H24 V18 H40 V30 H24 V34 H8 Z\"/>"
                            + "<path class=\"line\" d=\"M13 14 V34 M18 14 V34\"/>";
            case SPLICE ->
                    "<path class=\"line\" d=\"M2 16 H14 M2 32 H14 M34 24 H46\"/><rect"
                        + " class=\"case\" x=\"12\" y=\"13\" width=\"24\" height=\"22\" rx=\"9\"/>";
            case WIRE ->
                    "<path class=\"edge\" d=\"M4 26 C16 6 30 42 44 18\"/>"
                            + "<path class=\"lead\" d=\"M4 26 C16 6 30 42 44 18\"/>"
                            + "<path class=\"stripe\" d=\"M4 26 C16 6 30 42 44 18\"/>"
                            + small(24, 46, likeness.mark());
            case HOLDER ->
                    "<path class=\"line\" d=\"M1 28 H12 M36 28 H47\"/><rect class=\"case\" x=\"10\""
                            + " y=\"14\" width=\"28\" height=\"24\" rx=\"4\"/>"
                            + rect("blade", 18, 8, 12, 10);
            case SET ->
                    "<path class=\"bag\" d=\"M8 14 H40 L43 44 H5 Z\"/>"
                            + "<path class=\"line\" d=\"M12 14 Q24 2 36 14\"/>"
                            + rect("case", 14, 23, 20, 13);
        };
    }

    private static String rect(String name, int x, int y, int width, int height) {
        return "<rect class=\"%s\" x=\"%d\" y=\"%d\" width=\"%d\" height=\"%d\"/>"
                .formatted(name, x, y, width, height);
    }

    private static String holes(int y) {
        return "<circle class=\"hole\" cx=\"11\" cy=\"%1$d\" r=\"2.6\"/><circle class=\"hole\" cx=\"20\" cy=\"%1$d\" r=\"2.6\"/><circle class=\"hole\" cx=\"28\" cy=\"%1$d\" r=\"2.6\"/><circle class=\"hole\" cx=\"37\" cy=\"%1$d\" r=\"2.6\"/>"
                .formatted(y);
    }

    private static String mark(int x, int y, String mark) {
        return text("mark", x, y, mark);
    }

    private static String small(int x, int y, String mark) {
        return text("small", x, y, mark);
    }

    private static String text(String name, int x, int y, String mark) {
        return mark.isEmpty()
                ? ""
                : "<text class=\"%s\" x=\"%d\" y=\"%d\" text-anchor=\"middle\">%s</text>"
                        .formatted(name, x, y, escaped(mark));
    }

    private static String wireClasses(String colour) {
        String body = colour.length() >= 2 ? colour.substring(0, 2) : "";
        String stripe = colour.length() == 4 ? colour.substring(2) : body;
        return "body-" + word(body) + " stripe-" + word(stripe);
    }

    private static String word(String colour) {
        String word = colour.toLowerCase(Locale.ROOT).replaceAll("[^a-z]+", "-");
        return word.isEmpty() ? "none" : word;
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }
}
