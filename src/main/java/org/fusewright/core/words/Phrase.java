package org.fusewright.core.words;

import java.util.List;

/**
 * A text of the message bundle and what goes into it.
 *
 * @param key the name of the text in the bundle
 * @param values what stands for {0}, {1}, ...: each a {@link Text}, a string that is said as it is,
 *     a whole number, or any number with all its decimals
 */
public record Phrase(String key, List<Object> values) implements Text {

    public Phrase {
        values = List.copyOf(values);
    }

    public static Phrase of(String key, Object... values) {
        return new Phrase(key, List.of(values));
    }

    /**
     * One or several: the text {@code key.one} or {@code key.other}, with the number as {0} and the
     * values after it.
     */
    public static Phrase counted(String key, long number, Object... values) {
        Object[] all = new Object[values.length + 1];
        all[0] = number;
        System.arraycopy(values, 0, all, 1, values.length);
        return of(key + (number == 1 ? ".one" : ".other"), all);
    }
}
