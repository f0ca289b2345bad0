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

    private static final Literal MILLISECONDS = new Literal(" ms");
    private static final Literal HOURS = new Literal(" h");

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
        SaidString said = new SaidString();
        say(text, said);
        return said.toString();
    }

    /** A text of the bundle with its values; see {@link Phrase}. */
    public String say(String key, Object... values) {
        Template template = language.template(key);
        return template.isPlain() ? template.plain() : say(Phrase.of(key, values));
    }

    /**
     * Says a text piece by piece.
     *
     * @throws IllegalArgumentException as above
     */
    public void say(Text text, TextSink said) {
        // The frequent ones first, and no switch over types: each kit has over a thousand.
        if (text instanceof Phrase phrase) {
            phrase(phrase, said);
        } else if (text instanceof Amount amount) {
            amount(amount, said);
        } else if (text instanceof Verbatim(String given)) {
            said.given(given);
        } else if (text instanceof Bare(Text figure)) {
            bare(figure, said);
        } else if (text instanceof Exact exact) {
            exact(exact, said);
            said.literal(exact.unit().behind(units));
        } else if (text instanceof Price(BigDecimal amount, String currency)) {
            plain(amount.toPlainString(), said);
            said.literal(Series.SPACE);
            said.given(currency);
        } else if (text instanceof Series(List<? extends Text> texts, Literal between)) {
            boolean first = true;
            for (Text each : texts) {
                if (!first) {
                    said.literal(between);
                }
                say(each, said);
                first = false;
            }
        }
    }

    private void bare(Text figure, TextSink said) {
        switch (figure) {
            case Amount(double value, Unit unit, int decimals) ->
                    figure(unit.shown(value, units), unit.decimals(decimals, units), said);
            case Exact exact -> exact(exact, said);
            default -> say(figure, said);
        }
    }

    private void phrase(Phrase phrase, TextSink said) {
        Template template = language.template(phrase.key());
        List<Object> values = phrase.values();
        int last = template.pieces() - 1;
        for (int piece = 0; piece < last; piece++) {
            said.literal(template.literal(piece));
            int slot = template.slotAfter(piece);
            if (slot >= values.size()) {
                throw new IllegalArgumentException(
                        phrase.key() + " asks for {" + slot + "}, and there is none");
            }
            value(values.get(slot), said);
        }
        said.literal(template.literal(last));
    }

    private void value(Object value, TextSink said) {
        if (value instanceof String given) {
            said.given(given);
        } else if (value instanceof Text text) {
            say(text, said);
        } else if (value instanceof BigDecimal number) {
            plain(number.toPlainString(), said);
        } else if (value instanceof Double) {
            plain(value.toString(), said);
        } else {
            said.given(String.valueOf(value));
        }
    }

    private void amount(Amount amount, TextSink said) {
        double value = amount.unit().shown(amount.value(), units);
        int decimals = amount.unit().decimals(amount.decimals(), units);
        Literal behind = amount.unit().behind(units);
        if (amount.unit() == Unit.SECOND) {
            if (value < 1) {
                decimals = value < 0.01 ? 1 : 0;
                value *= 1000;
                behind = MILLISECONDS;
            } else if (value >= 3600) {
                value /= 3600;
                behind = HOURS;
            }
        }
        figure(value, decimals, said);
        said.literal(behind);
    }

    private void exact(Exact exact, TextSink said) {
        BigDecimal value = exact.value();
        double shown = exact.unit().shown(value.doubleValue(), units);
        if (shown != value.doubleValue()) {
            int decimals = exact.unit().decimals(value.scale(), units);
            value = BigDecimal.valueOf(shown).setScale(decimals, RoundingMode.HALF_UP);
        }
        plain(value.toPlainString(), said);
    }

    /** A number with at most so many decimals, 0 to 6, as the language writes it. */
    public String figure(double value, int decimals) {
        return localized(Figures.of(value, decimals));
    }

    private void figure(double value, int decimals, TextSink said) {
        said.figure(value, decimals, language.decimalSign());
    }

    private void plain(String number, TextSink said) {
        said.given(localized(number));
    }

    /** A number with a point, as the language writes it. */
    private String localized(String number) {
        return number.replace('.', language.decimalSign());
    }
}
