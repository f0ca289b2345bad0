package org.fusewright.core.check;

import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;

/**
 * What a limit stands on: a published source with its clause, what the catalog says of a part, or
 * common practice. Kept in constants, as it is the same for each check of a rule.
 */
public record Basis(Text text) {

    private static final Basis COMMON_PRACTICE = of("basis.common-practice");

    /** A text of the bundle, {@code basis.} and what the limit is. */
    public static Basis of(String key) {
        return new Basis(Phrase.of(key));
    }

    /** A published source by its name alone, such as "33 CFR 183.425 table 5". */
    public static Basis published(String source) {
        return new Basis(Text.verbatim(source));
    }

    /** A fact of the trade that no published source states. */
    public static Basis commonPractice() {
        return COMMON_PRACTICE;
    }
}
