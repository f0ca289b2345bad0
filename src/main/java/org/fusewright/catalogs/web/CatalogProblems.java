package org.fusewright.catalogs.web;

import org.fusewright.catalogs.CatalogError;
import org.fusewright.catalogs.CatalogRejected;
import org.fusewright.catalogs.StaleCatalog;
import org.fusewright.web.Problems;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpStatus;
import org.springframework.http.ProblemDetail;
import org.springframework.http.ResponseEntity;
import org.springframework.web.ErrorResponseException;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.RestControllerAdvice;

/** What goes wrong with the catalog, as problem details (RFC 9457) whoever asks. */
@RestControllerAdvice(assignableTypes = CatalogApi.class)
@Order(Ordered.HIGHEST_PRECEDENCE)
class CatalogProblems {

    /** An error as the document names it: documents speak one language. */
    private record Fault(String file, long line, String column, String value, String detail) {
        static Fault of(CatalogError error) {
            return new Fault(
                    error.file(),
                    error.line(),
                    error.column(),
                    error.value(),
                    error.detail().english());
        }
    }

    @ExceptionHandler
    ProblemDetail rejected(CatalogRejected rejected) {
        int count = rejected.errors().size();
        ProblemDetail problem =
                Problems.of(
                        HttpStatus.BAD_REQUEST,
                        (count == 1
                                        ? "The files have 1 error."
                                        : "The files have " + count + " errors.")
                                + " Nothing was imported.");
        problem.setProperty("errors", rejected.errors().stream().map(Fault::of).toList());
        return problem;
    }

    @ExceptionHandler
    ProblemDetail stale(StaleCatalog stale) {
        return Problems.of(HttpStatus.PRECONDITION_FAILED, stale.getMessage());
    }

    @ExceptionHandler
    ResponseEntity<ProblemDetail> answer(ErrorResponseException problem) {
        return ResponseEntity.status(problem.getStatusCode()).body(problem.getBody());
    }
}
