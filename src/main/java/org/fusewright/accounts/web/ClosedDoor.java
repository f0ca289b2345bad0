package org.fusewright.accounts.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

import org.fusewright.core.words.Phrase;
import org.fusewright.web.Refusals;
import org.fusewright.web.Visitor;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.security.authentication.BadCredentialsException;
import org.springframework.security.authentication.InsufficientAuthenticationException;
import org.springframework.security.core.AuthenticationException;
import org.springframework.security.web.AuthenticationEntryPoint;
import org.springframework.security.web.access.AccessDeniedHandler;
import org.springframework.security.web.csrf.CsrfException;

import java.io.IOException;
import java.net.URI;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;

/**
 * What a request is answered that does not get in. A browser that opens a page is led to the
 * log-in, so is a page that asks by script; a program is told in a document, without the challenge
 * at which a browser would ask for a password itself.
 */
class ClosedDoor implements AuthenticationEntryPoint, AccessDeniedHandler {
    @Override
    public void commence(
            HttpServletRequest request,
            HttpServletResponse response,
            AuthenticationException refused)
            throws IOException {
        if (refused instanceof TooManyAttemptsException many) {
            response.setHeader(HttpHeaders.RETRY_AFTER, Long.toString(many.seconds()));
            Refusals.send(
                    request,
                    response,
                    HttpStatus.TOO_MANY_REQUESTS,
                    Phrase.of("log-in.wait", many.seconds()));
        } else if (request.getHeader("HX-Request") != null) {
            response.setHeader("HX-Redirect", logIn(shownPage(request)));
            response.setStatus(HttpStatus.UNAUTHORIZED.value());
        } else if (request.getMethod().equals("GET") && isForPage(request)) {
            String query = request.getQueryString();
            response.setStatus(HttpStatus.SEE_OTHER.value());
            response.setHeader(
                    HttpHeaders.LOCATION,
                    logIn(request.getRequestURI() + (query == null ? "" : "?" + query)));
        } else {
            boolean wrong = refused instanceof BadCredentialsException;
            Refusals.send(
                    request,
                    response,
                    HttpStatus.UNAUTHORIZED,
                    Phrase.of(wrong ? "log-in.wrong" : "log-in.required"));
        }
    }

    @Override
    public void handle(
            HttpServletRequest request, HttpServletResponse response, AccessDeniedException denied)
            throws IOException {
        Visitor visitor = SecuritySetup.visitor(request);
        boolean open = AccessTable.find(request).filter(who -> who.admits(visitor)).isPresent();
        if (denied instanceof CsrfException && !open && !visitor.isLoggedIn()) {
            // The token went with the session.
            commence(request, response, new InsufficientAuthenticationException("expired", denied));
        } else if (denied instanceof CsrfException) {
            Refusals.send(request, response, HttpStatus.FORBIDDEN, Phrase.of("guard.token"));
        } else if (AccessTable.find(request).isEmpty()) {
            response.sendError(HttpStatus.NOT_FOUND.value());
        } else {
            Refusals.send(request, response, HttpStatus.FORBIDDEN, Phrase.of("guard.role"));
        }
    }

    private static boolean isForPage(HttpServletRequest request) {
        String accept = request.getHeader(HttpHeaders.ACCEPT);
        return accept != null
                && accept.contains("text/html")
                && !request.getRequestURI().startsWith("/api/");
    }

    private static String logIn(String then) {
        return "/log-in?to=" + URLEncoder.encode(then, StandardCharsets.UTF_8);
    }

    /** The page whose script asks. */
    private static String shownPage(HttpServletRequest request) {
        String address = request.getHeader("HX-Current-URL");
        try {
            return address == null ? "/" : URI.create(address).getRawPath();
        } catch (IllegalArgumentException broken) {
            return "/";
        }
    }
}
