package org.fusewright.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

import org.fusewright.core.words.Phrase;
import org.springframework.http.HttpStatus;

import java.io.IOException;
import java.util.Optional;

/** Turns requests down before they reach a handler, in the form of all other errors. */
public final class Refusals {
    private static final String ATTRIBUTE = Refusals.class.getName();

    private Refusals() {}

    /** Answers with the reason, by way of {@link FailedRequests}. */
    public static void send(
            HttpServletRequest request,
            HttpServletResponse response,
            HttpStatus status,
            Phrase reason)
            throws IOException {
        request.setAttribute(ATTRIBUTE, reason);
        response.sendError(status.value());
    }

    static Optional<String> find(HttpServletRequest request) {
        return request.getAttribute(ATTRIBUTE) instanceof Phrase reason
                ? Optional.of(Words.say(reason))
                : Optional.empty();
    }
}
