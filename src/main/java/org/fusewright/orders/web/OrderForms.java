package org.fusewright.orders.web;

import org.fusewright.orders.OrderPapers;
import org.fusewright.papers.Paper;
import org.fusewright.web.AcceptedForm;
import org.fusewright.web.Asked;
import org.springframework.http.MediaType;
import org.springframework.web.HttpMediaTypeNotAcceptableException;

import java.nio.charset.StandardCharsets;
import java.util.List;

/** The forms in which an order is answered: document, paper, table, UBL. */
enum OrderForms {
    JSON(MediaType.APPLICATION_JSON),
    PDF(MediaType.APPLICATION_PDF),
    CSV(new MediaType("text", "csv", StandardCharsets.UTF_8)),
    UBL(MediaType.APPLICATION_XML);

    private final MediaType type;

    OrderForms(MediaType type) {
        this.type = type;
    }

    MediaType type() {
        return type;
    }

    /** The form that the caller likes best. */
    static OrderForms preferred(List<MediaType> accepted)
            throws HttpMediaTypeNotAcceptableException {
        return AcceptedForm.preferred(accepted, List.of(values()), OrderForms::type);
    }

    static OrderPapers pdf(String paper) {
        return OrderPapers.pdf(Asked.value("paper", Paper.parse(paper), Paper.NAMES));
    }
}
