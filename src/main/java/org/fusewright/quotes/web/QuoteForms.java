package org.fusewright.quotes.web;

import org.fusewright.papers.Paper;
import org.fusewright.quotes.QuotePapers;
import org.fusewright.web.AcceptedForm;
import org.fusewright.web.Asked;
import org.springframework.http.MediaType;
import org.springframework.web.HttpMediaTypeNotAcceptableException;

import java.nio.charset.StandardCharsets;
import java.util.List;

/** The forms in which a quote is answered: document, paper, table. */
enum QuoteForms {
    JSON(MediaType.APPLICATION_JSON),
    PDF(MediaType.APPLICATION_PDF),
    CSV(new MediaType("text", "csv", StandardCharsets.UTF_8));

    private final MediaType type;

    QuoteForms(MediaType type) {
        this.type = type;
    }

    MediaType type() {
        return type;
    }

    /** The form that the caller likes best. */
    static QuoteForms preferred(List<MediaType> accepted)
            throws HttpMediaTypeNotAcceptableException {
        return AcceptedForm.preferred(accepted, List.of(values()), QuoteForms::type);
    }

    static QuotePapers pdf(String paper) {
        return QuotePapers.pdf(Asked.value("paper", Paper.parse(paper), Paper.NAMES));
    }
}
