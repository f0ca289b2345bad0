package org.fusewright.core.check;

/**
 * What a limit stands on: a published source with its clause, or common practice. Words of the
 * program, in ASCII without quotes or backslashes.
 */
public record Basis(String text) {

    private static final String COMMON_PRACTICE = "common practice, no published source";

    public Basis {
        if (text.isBlank()) {
            throw new IllegalArgumentException("a basis must be named");
        }
    }

    /** A published source, such as "33 CFR 183.425 table 5". */
    public static Basis published(String source) {
        return new Basis(source);
    }

    /** A fact of the trade that no published source states. */
    public static Basis commonPractice() {
        return new Basis(COMMON_PRACTICE);
    }

    /** A fact of the trade, with a word on which one. */
    public static Basis commonPractice(String which) {
        return new Basis(which + " (" + COMMON_PRACTICE + ")");
    }

    /** What the part's catalog entry states. */
    public static Basis catalog(String figure) {
        return new Basis("catalog data: " + figure);
    }
}
