package org.fusewright.web;

import io.swagger.v3.oas.annotations.Hidden;

import org.fusewright.core.words.Language;
import org.fusewright.core.words.UnitSystem;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseCookie;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;

import java.time.Duration;

/** Keeps what a reader picks in the page head: a language, or units. */
@Controller
@Hidden
class ReaderPages {
    private static final Duration KEPT = Duration.ofDays(365);

    @PostMapping("/reader")
    ResponseEntity<Void> pick(
            @RequestParam(defaultValue = "") String language,
            @RequestParam(defaultValue = "") String units,
            @RequestParam(defaultValue = "") String back) {
        HttpHeaders headers = new HttpHeaders();
        Language.find(language)
                .ifPresent(picked -> keep(headers, Readers.LANGUAGE_COOKIE, picked.code()));
        UnitSystem.find(units)
                .ifPresent(picked -> keep(headers, Readers.UNITS_COOKIE, picked.code()));
        headers.set(HttpHeaders.LOCATION, Asked.local(back));
        return ResponseEntity.status(HttpStatus.SEE_OTHER).headers(headers).build();
    }

    private static void keep(HttpHeaders headers, String name, String value) {
        headers.add(
                HttpHeaders.SET_COOKIE,
                ResponseCookie.from(name, value)
                        .path("/")
                        .maxAge(KEPT)
                        .httpOnly(true)
                        .sameSite("Lax")
                        .build()
                        .toString());
    }
}
