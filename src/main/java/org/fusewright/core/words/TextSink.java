package org.fusewright.core.words;

/** Takes what a {@link Wording} says, piece by piece. */
public interface TextSink {

    void literal(Literal literal);

    /** Any text. */
    void given(String text);

    /**
     * A figure to so many decimals, as {@link org.fusewright.core.quantity.Figures} prints it.
     *
     * @param decimals most decimals to show, 0 to 6
     * @param decimalSign what stands before the decimals
     */
    void figure(double value, int decimals, char decimalSign);
}
