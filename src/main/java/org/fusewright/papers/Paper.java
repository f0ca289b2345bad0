package org.fusewright.papers;

/** The sheet that a paper is laid out for, upright. */
public enum Paper {
    /** ISO 216 A4, 210 x 297 mm. */
    A4(595.28f, 841.89f),
    /** US Letter, 8.5 x 11 in. */
    LETTER(612, 792);

    private final float width;
    private final float height;

    Paper(float width, float height) {
        this.width = width;
        this.height = height;
    }

    float width() {
        return width;
    }

    float height() {
        return height;
    }
}
