package org.fusewright.web;

import jakarta.servlet.RequestDispatcher;
import jakarta.servlet.http.HttpServletRequest;

import org.springframework.boot.webmvc.error.ErrorController;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.RequestMapping;

import java.util.Optional;

/**
 * Answers for requests that fail outside of any handler, such as one that the server turns down.
 */
@Controller
class FailedRequests implements ErrorController {
    private final ErrorPages pages;

    FailedRequests(ErrorPages pages) {
        this.pages = pages;
    }

    @RequestMapping("${spring.web.error.path:/error}")
    ResponseEntity<Object> answer(HttpServletRequest request) {
        HttpStatus status =
                Optional.ofNullable(request.getAttribute(RequestDispatcher.ERROR_STATUS_CODE))
                        .map(Integer.class::cast)
                        .map(HttpStatus::resolve)
                        .orElse(HttpStatus.NOT_FOUND);
        String detail = Refusals.find(request).orElseGet(() -> Words.say("error.unanswerable"));
        return pages.answer(Problems.of(status, detail), request);
    }
}
