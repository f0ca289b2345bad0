package org.fusewright.jobs.load;

import java.util.regex.Pattern;

/** The texts that a field allows: a form, and that form in words. */
record TextForm(Pattern pattern, int maxLength, String words) {
    /**
     * What a text must not hold: control characters, broken surrogates, and the signs that break
     * lines or turn the direction of writing.
     */
    private static final String SIGN =
            "[^\\u0000-\\u001f\\u007f-\\u009f\\u2028-\\u202e\\u2066-\\u2069\\ud800-\\udfff]";

    static final TextForm ID =
            new TextForm(
                    Pattern.compile("[A-Za-z0-9][A-Za-z0-9._-]*"),
                    40,
                    "1 to 40 letters, digits, dots, dashes or underscores,"
                            + " starting with a letter or digit");
    static final TextForm TITLE =
            new TextForm(
                    Pattern.compile("(?=.*[^ ])" + SIGN + "*", Pattern.DOTALL),
                    120,
                    "a text of 1 to 120 characters, no control characters");
    static final TextForm FREE =
            new TextForm(
                    Pattern.compile(SIGN + "*"),
                    120,
                    "a text of up to 120 characters, no control characters");

    boolean allows(String text) {
        return text.codePointCount(0, text.length()) <= maxLength
                && pattern.matcher(text).matches();
    }
}
