package org.fusewright.web;

import org.fusewright.core.words.Language;
import org.fusewright.core.words.Text;
import org.fusewright.core.words.UnitSystem;
import org.fusewright.core.words.Wording;
import org.springframework.context.i18n.LocaleContext;
import org.springframework.context.i18n.LocaleContextHolder;

import java.util.Locale;

/** What pages say, in the language and units of whoever reads the answer being made. */
public final class Words {
    private Words() {}

    /** How the reader of the answer being made is spoken to. */
    public static Wording wording() {
        return LocaleContextHolder.getLocaleContext() instanceof Reader reader
                ? reader.wording()
                : Wording.ENGLISH;
    }

    /** A text of the bundle; see {@link org.fusewright.core.words.Phrase}. */
    public static String say(String key, Object... values) {
        return wording().say(key, values);
    }

    public static String say(Text text) {
        return wording().say(text);
    }

    /** Whoever reads the answer being made. */
    record Reader(Wording wording) implements LocaleContext {
        static Reader of(Language language, UnitSystem units) {
            return new Reader(new Wording(language, units));
        }

        @Override
        public Locale getLocale() {
            return wording.language().locale();
        }
    }
}
