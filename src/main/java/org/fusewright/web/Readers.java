package org.fusewright.web;

import jakarta.servlet.RequestDispatcher;
import jakarta.servlet.http.Cookie;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

import org.fusewright.core.words.Language;
import org.fusewright.core.words.UnitSystem;
import org.fusewright.core.words.Wording;
import org.jspecify.annotations.Nullable;
import org.springframework.context.i18n.LocaleContext;
import org.springframework.http.HttpHeaders;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.LocaleContextResolver;
import org.springframework.web.util.WebUtils;

import java.net.URI;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Finds out who reads a page: language and units as picked on a page (cookies), else as the browser
 * asks for them (Accept-Language of RFC 9110), metric for all but English of the United States.
 * Documents speak English with SI units, whoever reads them.
 */
@Component("localeResolver")
class Readers implements LocaleContextResolver {
    static final String LANGUAGE_COOKIE = "fusewright-language";
    static final String UNITS_COOKIE = "fusewright-units";
    static final String START = "/jobs";

    private static final Pattern DOCUMENT =
            Pattern.compile("/(api|v3|actuator)(/.*)?|.*\\.(json|csv|xml)");

    @Override
    public LocaleContext resolveLocaleContext(HttpServletRequest request) {
        if (DOCUMENT.matcher(path(request)).matches()) {
            return new Words.Reader(Wording.ENGLISH, START);
        }
        List<Locale.LanguageRange> asked = asked(request);
        return Words.Reader.of(
                cookie(request, LANGUAGE_COOKIE)
                        .flatMap(Language::find)
                        .orElseGet(() -> language(asked)),
                cookie(request, UNITS_COOKIE)
                        .flatMap(UnitSystem::find)
                        .orElseGet(() -> units(asked)),
                address(request));
    }

    @Override
    public void setLocaleContext(
            HttpServletRequest request,
            @Nullable HttpServletResponse response,
            @Nullable LocaleContext context) {
        throw new UnsupportedOperationException("a reader is changed by the form of the page head");
    }

    /** The path that was asked for, also while its error is answered. */
    private static String path(HttpServletRequest request) {
        return request.getAttribute(RequestDispatcher.ERROR_REQUEST_URI) instanceof String failed
                ? failed
                : request.getRequestURI();
    }

    private static Optional<String> cookie(HttpServletRequest request, String name) {
        return Optional.ofNullable(WebUtils.getCookie(request, name)).map(Cookie::getValue);
    }

    /** Best first; none when the header is missing or broken. */
    private static List<Locale.LanguageRange> asked(HttpServletRequest request) {
        String header = request.getHeader(HttpHeaders.ACCEPT_LANGUAGE);
        try {
            return header == null ? List.of() : Locale.LanguageRange.parse(header);
        } catch (IllegalArgumentException broken) {
            return List.of();
        }
    }

    private static Language language(List<Locale.LanguageRange> asked) {
        return asked.stream()
                .filter(range -> range.getWeight() > 0)
                .map(range -> Language.find(range.getRange().split("-", 2)[0]))
                .flatMap(Optional::stream)
                .findFirst()
                .orElse(Language.ENGLISH);
    }

    private static UnitSystem units(List<Locale.LanguageRange> asked) {
        return !asked.isEmpty() && asked.getFirst().getRange().equals("en-us")
                ? UnitSystem.IMPERIAL
                : UnitSystem.METRIC;
    }

    /** Of a page that answers a form, the page that the form stood on. */
    private static String address(HttpServletRequest request) {
        if (request.getMethod().equals("GET")) {
            String query = request.getQueryString();
            return path(request) + (query == null ? "" : "?" + query);
        }
        String referer = request.getHeader(HttpHeaders.REFERER);
        try {
            URI from = URI.create(referer == null ? START : referer);
            String query = from.getRawQuery();
            return Asked.local(from.getRawPath() + (query == null ? "" : "?" + query));
        } catch (IllegalArgumentException broken) {
            return START;
        }
    }
}
