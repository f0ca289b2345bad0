package org.fusewright.papers;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** The sheet that a paper is laid out for, upright. */
public enum Paper {
    /** ISO 216 A4, 210 x 297 mm. */
    A4(595.28f, 841.89f),
    /** US Letter, 8.5 x 11 in. */
    LETTER(612, 792);

    /** The names that {@link #parse} reads. */
    public static final String NAMES = "a4 or letter";

    private final float width;
    private final float height;

    Paper(float width, float height) {
        this.width = width;
        this.height = height;
    }

    /** The paper of a name in small letters: "a4" or "letter". */
    public static Optional<Paper> parse(String name) {
        return Stream.of(values())
                .filter(paper -> paper.name().toLowerCase(Locale.ROOT).equals(name))
                .findFirst();
    }

    float width() {
        return width;
    }

    float height() {
        return height;
    }
}
