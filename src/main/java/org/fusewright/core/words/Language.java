package org.fusewright.core.words;

import org.jspecify.annotations.Nullable;

import java.util.Collections;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.ResourceBundle;
import java.util.Set;

/**
 * A language of the message bundle {@code words/texts.properties}, UTF-8, with {0}, {1}, ... for
 * what goes into a text. A text that a language lacks is said in English.
 */
public enum Language {
    ENGLISH(Locale.ENGLISH, "English", '.'),
    GERMAN(Locale.GERMAN, "Deutsch", ',');

    private final Locale locale;
    private final String ownName;
    private final char decimalSign;
    private final Map<String, Template> templates;

    Language(Locale locale, String ownName, char decimalSign) {
        this.locale = locale;
        this.ownName = ownName;
        this.decimalSign = decimalSign;
        this.templates = load(locale);
    }

    /** The language of a tag such as "de". */
    public static Optional<Language> find(String code) {
        for (Language language : values()) {
            if (language.code().equals(code)) {
                return Optional.of(language);
            }
        }
        return Optional.empty();
    }

    public String code() {
        return locale.getLanguage();
    }

    public Locale locale() {
        return locale;
    }

    /** What its speakers call it. */
    public String ownName() {
        return ownName;
    }

    /** What stands before the decimals of a number. */
    public char decimalSign() {
        return decimalSign;
    }

    /** The names of all texts. */
    public Set<String> keys() {
        return Collections.unmodifiableSet(templates.keySet());
    }

    /**
     * A text of the bundle as it stands there, with {0}, {1}, ... in it.
     *
     * @throws IllegalArgumentException when there is none
     */
    public String pattern(String key) {
        return template(key).toString();
    }

    Template template(String key) {
        @Nullable Template template = templates.get(key);
        if (template == null) {
            throw new IllegalArgumentException("no text " + key + " in " + locale);
        }
        return template;
    }

    private static Map<String, Template> load(Locale locale) {
        ResourceBundle texts =
                ResourceBundle.getBundle(
                        "words.texts",
                        locale,
                        ResourceBundle.Control.getNoFallbackControl(
                                ResourceBundle.Control.FORMAT_PROPERTIES));
        Map<String, Template> templates = HashMap.newHashMap(texts.keySet().size());
        // As the code names its keys, which then are the same strings and soon found.
        for (String key : texts.keySet()) {
            templates.put(key.intern(), Template.parse(texts.getString(key)));
        }
        return templates;
    }
}
