package org.fusewright.quotes.web;

import org.fusewright.papers.Paper;
import org.fusewright.quotes.QuotePapers;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.util.MimeTypeUtils;
import org.springframework.web.HttpMediaTypeNotAcceptableException;
import org.springframework.web.server.ResponseStatusException;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
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
        List<MediaType> wishes =
                new ArrayList<>(accepted.isEmpty() ? List.of(MediaType.ALL) : accepted);
        wishes.removeIf(wish -> wish.getQualityValue() == 0);
        MimeTypeUtils.sortBySpecificity(wishes);
        for (MediaType wanted : wishes) {
            for (QuoteForms form : values()) {
                if (wanted.isCompatibleWith(form.type)) {
                    return form;
                }
            }
        }
        throw new HttpMediaTypeNotAcceptableException(List.of(JSON.type, PDF.type, CSV.type));
    }

    static QuotePapers pdf(String paper) {
        return Paper.parse(paper)
                .map(QuotePapers::pdf)
                .orElseThrow(
                        () ->
                                new ResponseStatusException(
                                        HttpStatus.BAD_REQUEST, "paper must be a4 or letter"));
    }
}
