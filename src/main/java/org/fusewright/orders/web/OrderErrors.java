package org.fusewright.orders.web;

import jakarta.servlet.http.HttpServletRequest;

import org.fusewright.orders.OrderRefusedException;
import org.fusewright.orders.StaleOrderException;
import org.fusewright.orders.UnknownOrderException;
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

/** What goes wrong with orders, as answers. */
@ControllerAdvice
@Order(Ordered.HIGHEST_PRECEDENCE)
class OrderErrors {
    private final ErrorPages pages;

    OrderErrors(ErrorPages pages) {
        this.pages = pages;
    }

    static ProblemDetail stale() {
        return Problems.of(HttpStatus.PRECONDITION_FAILED, Words.say("orders.stale"));
    }

    @ExceptionHandler
    ResponseEntity<Object> unknown(UnknownOrderException e, HttpServletRequest request) {
        return pages.answer(
                Problems.of(HttpStatus.NOT_FOUND, Words.say("orders.unknown")), request);
    }

    @ExceptionHandler
    ResponseEntity<Object> stale(StaleOrderException e, HttpServletRequest request) {
        return pages.answer(stale(), request);
    }

    @ExceptionHandler
    ResponseEntity<Object> refused(OrderRefusedException e, HttpServletRequest request) {
        return pages.answer(Problems.of(HttpStatus.CONFLICT, Words.say(e.reason())), request);
    }
}
