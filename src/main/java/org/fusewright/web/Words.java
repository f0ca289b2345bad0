package org.fusewright.web;

import gg.jte.Content;
import gg.jte.support.LocalizationSupport;

import org.fusewright.core.words.Language;
import org.fusewright.core.words.Text;
import org.fusewright.core.words.UnitSystem;
import org.fusewright.core.words.Wording;
import org.springframework.context.i18n.LocaleContext;
import org.springframework.context.i18n.LocaleContextHolder;

import java.util.Locale;

/** What pages say, in the language and units of whoever reads the answer being made. */
public final class Words {
    private static final String START = "/jobs";
    private static final LocalizationSupport MARKED = key -> wording().language().pattern(key);

    private Words() {}

    /** How the reader of the answer being made is spoken to. */
    public static Wording wording() {
        return LocaleContextHolder.getLocaleContext() instanceof Reader reader
                ? reader.wording()
                : Wording.ENGLISH;
    }

    /** Where the page being made may be got again. */
    public static String address() {
        return LocaleContextHolder.getLocaleContext() instanceof Reader reader
                ? reader.address()
                : START;
    }

    /** A text of the bundle; see {@link org.fusewright.core.words.Phrase}. */
    public static String say(String key, Object... values) {
        return wording().say(key, values);
    }

    public static String say(Text text) {
        return wording().say(text);
    }

    /** A text of the bundle with values that are parts of a page. */
    public static Content marked(String key, Object... values) {
        return MARKED.localize(key, values);
    }

    /**
     * Whoever reads the answer being made.
     *
     * @param address path and query of the page
     */
    record Reader(Wording wording, String address) implements LocaleContext {
        static Reader of(Language language, UnitSystem units, String address) {
            return new Reader(new Wording(language, units), address);
        }

        Reader with(UnitSystem units) {
            return of(wording.language(), units, address);
        }

        @Override
        public Locale getLocale() {
            return wording.language().locale();
        }
    }
}
