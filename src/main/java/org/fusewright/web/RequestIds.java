package org.fusewright.web;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

import org.slf4j.MDC;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

import java.io.IOException;
import java.util.HexFormat;
import java.util.concurrent.ThreadLocalRandom;
import java.util.regex.Pattern;

/**
 * Gives each request a name that its answer carries and all log lines about it: the one that a
 * proxy in front has given it, or one of its own.
 */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE)
class RequestIds extends OncePerRequestFilter {
    private static final String HEADER = "X-Request-Id";
    private static final String IN_LOG = "request";
    private static final String ATTRIBUTE = RequestIds.class.getName();
    private static final Pattern PLAIN = Pattern.compile("[A-Za-z0-9._-]{1,64}");

    /** The name of the request; empty where it has none yet. */
    static String idOf(HttpServletRequest request) {
        return request.getAttribute(ATTRIBUTE) instanceof String id ? id : "";
    }

    @Override
    protected void doFilterInternal(
            HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        String given = request.getHeader(HEADER);
        String id =
                given != null && PLAIN.matcher(given).matches()
                        ? given
                        : HexFormat.of().toHexDigits(ThreadLocalRandom.current().nextLong());
        request.setAttribute(ATTRIBUTE, id);
        response.setHeader(HEADER, id);
        MDC.put(IN_LOG, id);
        try {
            chain.doFilter(request, response);
        } finally {
            MDC.remove(IN_LOG);
        }
    }
}
