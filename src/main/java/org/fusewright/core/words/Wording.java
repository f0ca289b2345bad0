package org.fusewright.core.words;

import org.fusewright.core.quantity.Figures;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;

/**
 * How a reader is spoken to: in a language, with units. {@link #ENGLISH} is how documents and files
 * speak, whoever reads them.
 */
public record Wording(Language language, UnitSystem units) {

    public static final Wording ENGLISH = new Wording(Language.ENGLISH, UnitSystem.METRIC);

    private static final int USUAL_LENGTH = 160;

    /**
     * @throws IllegalArgumentException when the bundle has no such text or the text asks for a
     *     value that is not there
     */
    public String say(Text text) {
        if (text instanceof Verbatim(String given)) {
            return given;
        }
        if (text instanceof Phrase phrase) {
            Template template = language.template(phrase.key());
            if (template.isPlain()) {
                return template.plain();
            }
        }
        StringBuilder said = new StringBuilder(USUAL_LENGTH);
        say(text, said);
        return said.toString();
    }

    /** A text of the bundle with its values; see {@link Phrase}. */
    public String say(String key, Object... values) {
        Template template = language.template(key);
        return template.isPlain() ? template.plain() : say(Phrase.of(key, values));
    }

    /** As above, at the end of what was said before: for many texts one after the other. */
    public void say(Text text, StringBuilder said) {
        // The frequent ones first, and no switch over types: each kit has over a thousand.
        if (text instanceof Phrase phrase) {
            phrase(phrase, said);
        } else if (text instanceof Amount amount) {
            amount(amount, said);
        } else if (text instanceof Verbatim(String given)) {
            said.append(given);
        } else if (text instanceof Bare(Text figure)) {
            bare(figure, said);
        } else if (text instanceof Exact exact) {
            exact(exact, said);
            sign(exact.unit().sign(units), said);
        } else if (text instanceof Price(BigDecimal amount, String currency)) {
            plain(amount.toPlainString(), said);
            sign(currency, said);
        } else if (text instanceof Series(List<? extends Text> texts, String between)) {
            String before = "";
            for (Text each : texts) {
                said.append(before);
                say(each, said);
                before = between;
            }
        }
    }

    private void bare(Text figure, StringBuilder said) {
        switch (figure) {
            case Amount(double value, Unit unit, int decimals) ->
                    figure(unit.shown(value, units), unit.decimals(decimals, units), said);
            case Exact exact -> exact(exact, said);
            default -> say(figure, said);
        }
    }

    private void phrase(Phrase phrase, StringBuilder said) {
        Template template = language.template(phrase.key());
        List<Object> values = phrase.values();
        int last = template.pieces() - 1;
        for (int piece = 0; piece < last; piece++) {
            said.append(template.literal(piece));
            int slot = template.slotAfter(piece);
            if (slot >= values.size()) {
                throw new IllegalArgumentException(
                        phrase.key() + " asks for {" + slot + "}, and there is none");
            }
            value(values.get(slot), said);
        }
        said.append(template.literal(last));
    }

    private void value(Object value, StringBuilder said) {
        if (value instanceof Text text) {
            say(text, said);
        } else if (value instanceof BigDecimal number) {
            plain(number.toPlainString(), said);
        } else if (value instanceof Double) {
            plain(value.toString(), said);
        } else {
            said.append(value);
        }
    }

    private void amount(Amount amount, StringBuilder said) {
        double value = amount.unit().shown(amount.value(), units);
        int decimals = amount.unit().decimals(amount.decimals(), units);
        String sign = amount.unit().sign(units);
        if (amount.unit() == Unit.SECOND) {
            if (value < 1) {
                decimals = value < 0.01 ? 1 : 0;
                value *= 1000;
                sign = "ms";
            } else if (value >= 3600) {
                value /= 3600;
                sign = "h";
            }
        }
        figure(value, decimals, said);
        sign(sign, said);
    }

    private void exact(Exact exact, StringBuilder said) {
        BigDecimal value = exact.value();
        double shown = exact.unit().shown(value.doubleValue(), units);
        if (shown != value.doubleValue()) {
            int decimals = exact.unit().decimals(value.scale(), units);
            value = BigDecimal.valueOf(shown).setScale(decimals, RoundingMode.HALF_UP);
        }
        plain(value.toPlainString(), said);
    }

    private static void sign(String sign, StringBuilder said) {
        if (!sign.isEmpty()) {
            said.append(' ').append(sign);
        }
    }

    /** A number with at most so many decimals, 0 to 6, as the language writes it. */
    public String figure(double value, int decimals) {
        StringBuilder said = new StringBuilder();
        figure(value, decimals, said);
        return said.toString();
    }

    private void figure(double value, int decimals, StringBuilder said) {
        plain(Figures.of(value, decimals), said);
    }

    /** A number with a point, as the language writes it. */
    private void plain(String number, StringBuilder said) {
        int start = said.length();
        said.append(number);
        char sign = language.decimalSign();
        if (sign != '.') {
            int point = said.indexOf(".", start);
            if (point >= 0) {
                said.setCharAt(point, sign);
            }
        }
    }
}
