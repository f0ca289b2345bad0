package org.fusewright.jobs.web;

import org.fusewright.core.quantity.Figures;

/** SVG as it is written, element by element; all text in it is escaped. */
final class SvgText {
    private static final int LONGEST_NAME = 13;

    private final StringBuilder svg = new StringBuilder();

    /** Opens an element; attributes come as names and values in turn. */
    SvgText open(String name, Object... attributes) {
        return element(name, ">", attributes);
    }

    /** An element without content. */
    SvgText put(String name, Object... attributes) {
        return element(name, "/>", attributes);
    }

    private SvgText element(String name, String end, Object... attributes) {
        svg.append('<').append(name);
        for (int i = 0; i < attributes.length; i += 2) {
            svg.append(' ')
                    .append(attributes[i])
                    .append("=\"")
                    .append(escaped(text(attributes[i + 1])))
                    .append('"');
        }
        svg.append(end);
        return this;
    }

    SvgText close(String name) {
        svg.append("</").append(name).append('>');
        return this;
    }

    SvgText title(String text) {
        svg.append("<title>").append(escaped(text)).append("</title>");
        return this;
    }

    /** Text with its middle at a point. */
    SvgText text(String kind, double x, double y, String text) {
        open("text", "class", kind, "x", x, "y", y);
        svg.append(escaped(text));
        return close("text");
    }

    /** A name that fits over one position. */
    static String shortened(String name) {
        return name.length() <= LONGEST_NAME ? name : name.substring(0, LONGEST_NAME - 1) + "…";
    }

    private static String text(Object value) {
        return value instanceof Double number ? Figures.of(number, 1) : value.toString();
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }

    @Override
    public String toString() {
        return svg.toString();
    }
}
