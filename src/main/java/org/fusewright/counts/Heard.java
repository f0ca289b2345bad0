package org.fusewright.counts;

import org.fusewright.core.words.Text;

/**
 * What became of a code that was scanned or typed.
 *
 * @param sentence for the person at the bench
 */
public record Heard(Kind kind, Text sentence) {

    /** How it went. */
    public enum Kind {
        COUNTED("counted"),
        /** Counted, and now more than the line expects. */
        TOO_MANY("too-many"),
        /** Counted, though no line expects it. */
        WRONG_PART("wrong-part"),
        /** The label of the bag that this count is of; nothing was counted. */
        RIGHT_BAG("right-bag"),
        /** The label of another bag; nothing was counted. */
        WRONG_BAG("wrong-bag"),
        /** Neither a part nor a bag label; nothing was counted. */
        UNKNOWN("unknown");

        private final String code;

        Kind(String code) {
            this.code = code;
        }

        public String code() {
            return code;
        }
    }

    /** Whether all is well. */
    public boolean isGood() {
        return kind == Kind.COUNTED || kind == Kind.RIGHT_BAG;
    }
}
