package org.fusewright.accounts.web;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

import org.fusewright.accounts.AccountsMode;
import org.fusewright.core.words.Phrase;
import org.fusewright.web.Refusals;
import org.fusewright.web.Visitor;
import org.jspecify.annotations.Nullable;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.core.env.Environment;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

import java.io.IOException;
import java.net.URI;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;

/**
 * Stands before everything else. Pages of others, open in the same browser, may change nothing here
 * (Sec-Fetch-Site of W3C Fetch Metadata, else the Origin of RFC 6454). Where nobody logs in, such a
 * page could also lead its own name to this machine and read all (DNS rebinding): so only names of
 * this machine are answered to. Programs other than browsers send neither header and are let
 * through.
 */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE + 10)
class RequestGuard extends OncePerRequestFilter {
    private static final Pattern PORT = Pattern.compile(":\\d*$");
    private static final Set<String> READING = Set.of("GET", "HEAD", "OPTIONS");
    private static final Set<String> OWN = Set.of("same-origin", "none");

    private final boolean accounts;
    private final Set<String> hosts = new TreeSet<>(Set.of("localhost", "127.0.0.1", "[::1]"));

    RequestGuard(Environment settings) {
        accounts = AccountsMode.isRequired(settings);
        String address = settings.getProperty("server.address", "").toLowerCase(Locale.ROOT);
        hosts.add(address.contains(":") ? "[" + address + "]" : address);
    }

    @Override
    protected void doFilterInternal(
            HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        if (accounts) {
            Visitor.nobody().enter(request);
        } else if (!isOwnName(request.getHeader(HttpHeaders.HOST))) {
            refuse(request, response, Phrase.of("guard.host", String.join(", ", hosts)));
            return;
        }
        if (!READING.contains(request.getMethod()) && isForeign(request)) {
            refuse(request, response, Phrase.of("guard.foreign"));
            return;
        }
        chain.doFilter(request, response);
    }

    private static void refuse(
            HttpServletRequest request, HttpServletResponse response, Phrase reason)
            throws IOException {
        Refusals.send(request, response, HttpStatus.FORBIDDEN, reason);
    }

    /** Only HTTP/1.0 comes without a name, and no browser speaks that. */
    private boolean isOwnName(@Nullable String host) {
        return host == null
                || hosts.contains(PORT.matcher(host).replaceFirst("").toLowerCase(Locale.ROOT));
    }

    private static boolean isForeign(HttpServletRequest request) {
        String site = request.getHeader("Sec-Fetch-Site");
        if (site != null) {
            return !OWN.contains(site);
        }
        String origin = request.getHeader(HttpHeaders.ORIGIN);
        return origin != null
                && !authority(origin)
                        .filter(own -> own.equalsIgnoreCase(request.getHeader(HttpHeaders.HOST)))
                        .isPresent();
    }

    /** Name and port; empty for the origin "null". */
    private static Optional<String> authority(String origin) {
        try {
            return Optional.ofNullable(URI.create(origin).getRawAuthority());
        } catch (IllegalArgumentException noAddress) {
            return Optional.empty();
        }
    }
}
