package org.fusewright.core.words;

import org.fusewright.core.quantity.Figures;

/** Puts what is said together to one string. */
final class SaidString implements TextSink {
    private static final int USUAL_LENGTH = 160;

    private final StringBuilder said = new StringBuilder(USUAL_LENGTH);

    @Override
    public void literal(Literal literal) {
        said.append(literal);
    }

    @Override
    public void given(String text) {
        said.append(text);
    }

    @Override
    public void figure(double value, int decimals, char decimalSign) {
        said.append(Figures.of(value, decimals).replace('.', decimalSign));
    }

    @Override
    public String toString() {
        return said.toString();
    }
}
