package org.fusewright.catalogs.web;

import org.fusewright.core.catalog.Catalog;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.web.Problems;
import org.fusewright.web.Words;
import org.springframework.http.HttpStatus;
import org.springframework.web.ErrorResponseException;

import java.util.Optional;

/** Finds the part that a path names. */
final class KnownPart {

    private KnownPart() {}

    /**
     * @throws ErrorResponseException 404 when there is no such part
     */
    static Part find(Catalog catalog, String path) {
        String number = path.startsWith("/") ? path.substring(1) : path;
        return Optional.of(number)
                .filter(PartNumber::isOne)
                .flatMap(text -> catalog.findPart(new PartNumber(text)))
                .orElseThrow(
                        () ->
                                Problems.exception(
                                        Problems.of(
                                                HttpStatus.NOT_FOUND,
                                                Words.say("catalog.unknown-part", number))));
    }
}
