package org.fusewright.jobs.web;

import org.fusewright.core.words.Language;
import org.fusewright.core.words.UnitSystem;
import org.fusewright.core.words.Wording;
import org.fusewright.papers.Paper;
import org.fusewright.web.Asked;
import org.fusewright.web.Words;

import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * On what sheet a paper is asked for, and how its reader is spoken to.
 *
 * @param sheet what it is laid out for
 */
record AskedPaper(Paper sheet, Wording wording) {
    /** What a request says when it does not say otherwise. */
    static final String USUAL_SHEET = "a4";

    static final String USUAL_LANGUAGE = "en";

    /** What the description of a request says of the language. */
    static final String LANGUAGE_MEANING = "The language of a PDF: en or de.";

    /**
     * Of a request for a document, which has metric units.
     *
     * @param sheet "a4" or "letter"
     * @param language code of ISO 639, "en" or "de"
     */
    static AskedPaper of(String sheet, String language) {
        Language known = Asked.value("language", Language.find(language), languages());
        return new AskedPaper(sheet(sheet), new Wording(known, UnitSystem.METRIC));
    }

    /** Of whoever reads the page that offers the paper. */
    static AskedPaper ofReader(String sheet) {
        return new AskedPaper(sheet(sheet), Words.wording());
    }

    private static Paper sheet(String name) {
        return Asked.value("paper", Paper.parse(name), Paper.NAMES);
    }

    private static String languages() {
        return Stream.of(Language.values()).map(Language::code).collect(Collectors.joining(" or "));
    }
}
