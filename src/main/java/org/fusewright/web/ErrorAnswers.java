package org.fusewright.web;

import jakarta.servlet.http.HttpServletRequest;

import org.apache.tomcat.util.http.InvalidParameterException;
import org.fusewright.core.job.JobProblem;
import org.fusewright.core.job.MalformedJobException;
import org.fusewright.core.words.Phrase;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.TypeMismatchException;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.ProblemDetail;
import org.springframework.http.ResponseEntity;
import org.springframework.web.ErrorResponse;
import org.springframework.web.ErrorResponseException;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.context.request.ServletWebRequest;
import org.springframework.web.context.request.WebRequest;
import org.springframework.web.multipart.MultipartException;
import org.springframework.web.servlet.HandlerMapping;
import org.springframework.web.servlet.mvc.method.annotation.ResponseEntityExceptionHandler;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Turns whatever goes wrong while answering into an error that a caller may see: {@code
 * application/problem+json} (RFC 9457), or a small page for a browser. Nothing from inside the
 * service is told.
 */
@ControllerAdvice
@Order(Ordered.LOWEST_PRECEDENCE)
class ErrorAnswers extends ResponseEntityExceptionHandler {
    private static final Logger log = LoggerFactory.getLogger(ErrorAnswers.class);

    private final ErrorPages pages;
    private final OutageFinder outages;

    ErrorAnswers(ErrorPages pages, OutageFinder outages) {
        this.pages = pages;
        this.outages = outages;
    }

    @ExceptionHandler
    ResponseEntity<Object> malformed(MalformedJobException malformed, HttpServletRequest request) {
        List<JobProblem> problems = malformed.problems();
        return pages.answer(
                Problems.of(
                        HttpStatus.BAD_REQUEST,
                        Words.say(Phrase.counted("error.document", problems.size())),
                        problems),
                request);
    }

    /** Parameters that are no text, or more of them than the server reads. */
    @ExceptionHandler
    ResponseEntity<Object> unreadable(
            InvalidParameterException unreadable, HttpServletRequest request) {
        return pages.answer(
                Problems.of(
                        HttpStatusCode.valueOf(unreadable.getErrorCode()),
                        Words.say("error.detail.400")),
                request);
    }

    /** An upload that ends too soon, or is none. */
    @ExceptionHandler
    ResponseEntity<Object> unreadable(MultipartException unreadable, HttpServletRequest request) {
        return pages.answer(
                Problems.of(HttpStatus.BAD_REQUEST, Words.say("error.detail.400")), request);
    }

    @ExceptionHandler
    ResponseEntity<Object> unexpected(Exception unexpected, HttpServletRequest request) {
        Optional<Outage> outage = outages.find(unexpected);
        if (outage.isPresent()) {
            log.warn("{} failed: {}", routeOf(request), unexpected.getMessage());
            return outage(outage.get(), request);
        }
        log.error("{} failed", routeOf(request), unexpected);
        return pages.answer(
                Problems.of(
                        HttpStatus.INTERNAL_SERVER_ERROR,
                        Words.say("error.failed", RequestIds.idOf(request))),
                request);
    }

    private ResponseEntity<Object> outage(Outage outage, HttpServletRequest request) {
        HttpHeaders headers = new HttpHeaders();
        outage.retryAfter()
                .ifPresent(
                        wait ->
                                headers.set(
                                        HttpHeaders.RETRY_AFTER, Long.toString(wait.toSeconds())));
        return pages.answer(
                Problems.of(outage.status(), Words.say(outage.text())), headers, request);
    }

    /** The pattern of the address: what stands in an address may be somebody's secret. */
    private static String routeOf(HttpServletRequest request) {
        return request.getMethod()
                + " "
                + Objects.requireNonNullElse(
                        request.getAttribute(HandlerMapping.BEST_MATCHING_PATTERN_ATTRIBUTE), "?");
    }

    @Override
    protected ResponseEntity<Object> handleTypeMismatch(
            TypeMismatchException mismatch,
            HttpHeaders headers,
            HttpStatusCode status,
            WebRequest request) {
        String name = Objects.requireNonNullElse(mismatch.getPropertyName(), "?");
        return handleExceptionInternal(
                mismatch,
                Problems.of(status, Words.say("error.unreadable", name)),
                headers,
                status,
                request);
    }

    @Override
    protected ResponseEntity<Object> handleExceptionInternal(
            Exception exception,
            Object body,
            HttpHeaders headers,
            HttpStatusCode status,
            WebRequest request) {
        ProblemDetail problem =
                body instanceof ProblemDetail detail
                        ? detail
                        : exception instanceof ErrorResponse told
                                ? told.getBody()
                                : Problems.of(status, Words.say("error.unanswerable"));
        HttpServletRequest asked = ((ServletWebRequest) request).getRequest();
        return exception instanceof ErrorResponseException
                ? pages.answer(problem, headers, asked)
                : pages.answerInOwnWords(problem, headers, asked);
    }
}
