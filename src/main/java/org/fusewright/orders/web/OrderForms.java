package org.fusewright.orders.web;

import org.fusewright.orders.OrderPapers;
import org.fusewright.papers.Paper;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.util.MimeTypeUtils;
import org.springframework.web.HttpMediaTypeNotAcceptableException;
import org.springframework.web.server.ResponseStatusException;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

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
        List<MediaType> wishes =
                new ArrayList<>(accepted.isEmpty() ? List.of(MediaType.ALL) : accepted);
        wishes.removeIf(wish -> wish.getQualityValue() == 0);
        MimeTypeUtils.sortBySpecificity(wishes);
        for (MediaType wanted : wishes) {
            for (OrderForms form : values()) {
                if (wanted.isCompatibleWith(form.type)) {
                    return form;
                }
            }
        }
        throw new HttpMediaTypeNotAcceptableException(
                Stream.of(values()).map(OrderForms::type).toList());
    }

    static OrderPapers pdf(String paper) {
        return Paper.parse(paper)
                .map(OrderPapers::pdf)
                .orElseThrow(
                        () ->
                                new ResponseStatusException(
                                        HttpStatus.BAD_REQUEST, "paper must be a4 or letter"));
    }
}
