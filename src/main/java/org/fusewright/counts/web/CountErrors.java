package org.fusewright.counts.web;

import jakarta.servlet.http.HttpServletRequest;

import org.fusewright.counts.SignedCountException;
import org.fusewright.counts.StaleCountException;
import org.fusewright.counts.UnknownCountException;
import org.fusewright.web.ErrorPages;
import org.fusewright.web.Problems;
import org.fusewright.web.Words;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpStatus;
import org.springframework.http.ProblemDetail;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.ExceptionHandler;

/** What goes wrong with counts, as answers. */
@ControllerAdvice
@Order(Ordered.HIGHEST_PRECEDENCE)
class CountErrors {
    private final ErrorPages pages;

    CountErrors(ErrorPages pages) {
        this.pages = pages;
    }

    static ProblemDetail stale() {
        return Problems.of(HttpStatus.PRECONDITION_FAILED, Words.say("counts.stale"));
    }

    @ExceptionHandler
    ResponseEntity<Object> unknown(UnknownCountException e, HttpServletRequest request) {
        return pages.answer(
                Problems.of(HttpStatus.NOT_FOUND, Words.say("counts.unknown")), request);
    }

    @ExceptionHandler
    ResponseEntity<Object> stale(StaleCountException e, HttpServletRequest request) {
        return pages.answer(stale(), request);
    }

    @ExceptionHandler
    ResponseEntity<Object> signed(SignedCountException e, HttpServletRequest request) {
        return pages.answer(
                Problems.of(HttpStatus.CONFLICT, Words.say("counts.is-signed")), request);
    }
}
