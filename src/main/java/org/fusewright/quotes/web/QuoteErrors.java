package org.fusewright.quotes.web;

import jakarta.servlet.http.HttpServletRequest;

import org.fusewright.quotes.QuoteRefusedException;
import org.fusewright.quotes.StaleQuoteException;
import org.fusewright.quotes.UnknownQuoteException;
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

/** What goes wrong with quotes, as answers. */
@ControllerAdvice
@Order(Ordered.HIGHEST_PRECEDENCE)
class QuoteErrors {
    private final ErrorPages pages;

    QuoteErrors(ErrorPages pages) {
        this.pages = pages;
    }

    static ProblemDetail stale() {
        return Problems.of(HttpStatus.PRECONDITION_FAILED, Words.say("quotes.stale"));
    }

    @ExceptionHandler
    ResponseEntity<Object> unknown(UnknownQuoteException e, HttpServletRequest request) {
        return pages.answer(
                Problems.of(HttpStatus.NOT_FOUND, Words.say("quotes.unknown")), request);
    }

    @ExceptionHandler
    ResponseEntity<Object> stale(StaleQuoteException e, HttpServletRequest request) {
        return pages.answer(stale(), request);
    }

    @ExceptionHandler
    ResponseEntity<Object> refused(QuoteRefusedException e, HttpServletRequest request) {
        return pages.answer(Problems.of(HttpStatus.CONFLICT, Words.say(e.reason())), request);
    }
}
