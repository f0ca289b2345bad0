package org.fusewright.jobs.web;

import jakarta.servlet.http.HttpServletRequest;

import org.fusewright.core.job.JobProblem;
import org.fusewright.jobs.NoCatalogException;
import org.fusewright.jobs.ReferenceTakenException;
import org.fusewright.jobs.StaleJobException;
import org.fusewright.jobs.UnknownJobException;
import org.fusewright.web.ErrorPages;
import org.fusewright.web.Problems;
import org.fusewright.web.Words;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.dao.OptimisticLockingFailureException;
import org.springframework.http.HttpStatus;
import org.springframework.http.ProblemDetail;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.ExceptionHandler;

import java.util.List;

/** What goes wrong with kept jobs, as answers. */
@ControllerAdvice
@Order(Ordered.HIGHEST_PRECEDENCE)
class JobErrors {
    private final ErrorPages pages;

    JobErrors(ErrorPages pages) {
        this.pages = pages;
    }

    static ProblemDetail stale() {
        return Problems.of(HttpStatus.PRECONDITION_FAILED, Words.say("job.stale"));
    }

    @ExceptionHandler
    ResponseEntity<Object> unknown(UnknownJobException e, HttpServletRequest request) {
        return pages.answer(Problems.of(HttpStatus.NOT_FOUND, Words.say("job.unknown")), request);
    }

    @ExceptionHandler({StaleJobException.class, OptimisticLockingFailureException.class})
    ResponseEntity<Object> stale(Exception e, HttpServletRequest request) {
        return pages.answer(stale(), request);
    }

    @ExceptionHandler
    ResponseEntity<Object> stopped(StoppedEditException e, HttpServletRequest request) {
        return pages.answer(Problems.of(HttpStatus.CONFLICT, Words.say("job.stopped")), request);
    }

    @ExceptionHandler
    ResponseEntity<Object> taken(ReferenceTakenException e, HttpServletRequest request) {
        return pages.answer(
                Problems.of(
                        HttpStatus.CONFLICT, Words.say("job.reference-taken"), List.of(problem(e))),
                request);
    }

    @ExceptionHandler
    ResponseEntity<Object> noCatalog(NoCatalogException e, HttpServletRequest request) {
        return pages.answer(
                Problems.of(HttpStatus.SERVICE_UNAVAILABLE, Words.say("job.no-catalog")), request);
    }

    static JobProblem problem(ReferenceTakenException taken) {
        return JobProblem.of("/reference", "wrong.reference-taken", taken.reference());
    }
}
