package org.fusewright.web;

import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;

import jakarta.servlet.http.HttpServletRequest;

import org.springframework.http.HttpHeaders;
import org.springframework.http.InvalidMediaTypeException;
import org.springframework.http.MediaType;
import org.springframework.http.ProblemDetail;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Component;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/** Answers with an error in the form that the caller reads: problem+json, or a page. */
@Component
public class ErrorPages {
    private static final MediaType PAGE = new MediaType("text", "html", StandardCharsets.UTF_8);

    private final TemplateEngine templates;

    ErrorPages(TemplateEngine templates) {
        this.templates = templates;
    }

    public ResponseEntity<Object> answer(ProblemDetail problem, HttpServletRequest request) {
        return answer(problem, HttpHeaders.EMPTY, request);
    }

    ResponseEntity<Object> answer(
            ProblemDetail problem, HttpHeaders headers, HttpServletRequest request) {
        boolean page = isForBrowser(request);
        return ResponseEntity.status(problem.getStatus())
                .headers(headers)
                .contentType(page ? PAGE : MediaType.APPLICATION_PROBLEM_JSON)
                .body(page ? print(problem) : problem);
    }

    /** With a page in this service's own words where others wrote the problem. */
    ResponseEntity<Object> answerInOwnWords(
            ProblemDetail problem, HttpHeaders headers, HttpServletRequest request) {
        if (isForBrowser(request)) {
            find("error.detail.", problem).ifPresent(problem::setDetail);
        }
        return answer(problem, headers, request);
    }

    private String print(ProblemDetail problem) {
        StringOutput page = new StringOutput();
        templates.render(
                "frame/error.jte",
                Map.of(
                        "title",
                        find("error.title.", problem)
                                .orElseGet(() -> String.valueOf(problem.getTitle())),
                        "detail",
                        Objects.requireNonNullElse(problem.getDetail(), "")),
                page);
        return page.toString();
    }

    /** What the bundle says of a status, if anything. */
    private static Optional<String> find(String family, ProblemDetail problem) {
        String key = family + problem.getStatus();
        return Words.wording().language().keys().contains(key)
                ? Optional.of(Words.say(key))
                : Optional.empty();
    }

    private static boolean isForBrowser(HttpServletRequest request) {
        String accept = request.getHeader(HttpHeaders.ACCEPT);
        if (accept == null) {
            return false;
        }
        try {
            List<MediaType> types = MediaType.parseMediaTypes(accept);
            return types.stream().anyMatch(type -> type.equalsTypeAndSubtype(MediaType.TEXT_HTML));
        } catch (InvalidMediaTypeException e) {
            return false;
        }
    }
}
