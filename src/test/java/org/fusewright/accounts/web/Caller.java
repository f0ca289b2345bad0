package org.fusewright.accounts.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.fusewright.accounts.People;
import org.fusewright.accounts.Role;
import org.fusewright.web.Secret;
import org.springframework.web.util.HtmlUtils;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpHeaders;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Somebody at a browser, with its cookies, or a program that sends name and password. */
final class Caller {
    static final String PASSWORD = "several plain words";
    static final String FORM = "application/x-www-form-urlencoded";

    private static final HttpClient CLIENT = HttpClient.newHttpClient();
    private static final Pattern TOKEN = Pattern.compile("name=\"_csrf\" value=\"([^\"]+)\"");

    private final String service;
    private final Map<String, String> cookies = new LinkedHashMap<>();
    private String token = "";
    private String basic = "";

    Caller(int port) {
        service = "http://127.0.0.1:" + port;
    }

    record Answer(int status, HttpHeaders headers, byte[] body) {
        /** What a person can read of it. */
        String text() {
            if (!header("content-type").startsWith("application/pdf")) {
                return new String(body, StandardCharsets.UTF_8);
            }
            try (PDDocument pdf = Loader.loadPDF(body)) {
                return new PDFTextStripper().getText(pdf);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }

        String header(String name) {
            return headers.firstValue(name).orElse("");
        }
    }

    /** Somebody new who chose the usual password. */
    static void let(People people, String name, Role role) {
        Secret secret = Secret.draw();
        people.add(name, role, secret.hash());
        people.choosePassword(secret.hash(), "", PASSWORD);
    }

    static Caller loggedIn(int port, String name) {
        Caller caller = new Caller(port);
        Answer answer = caller.logIn(name, PASSWORD);
        assertThat(answer.status()).as(answer.text()).isEqualTo(302);
        return caller;
    }

    static Caller program(int port, String name, String password) {
        Caller caller = new Caller(port);
        caller.basic =
                "Basic "
                        + Base64.getEncoder()
                                .encodeToString(
                                        (name + ":" + password).getBytes(StandardCharsets.UTF_8));
        return caller;
    }

    /** The same browser, led to another instance of the service. */
    Caller at(int port) {
        Caller moved = new Caller(port);
        moved.cookies.putAll(cookies);
        moved.token = token;
        return moved;
    }

    Answer logIn(String name, String password) {
        get("/log-in");
        Answer answer = post("/log-in", "name=" + encoded(name) + "&password=" + encoded(password));
        if (answer.status() == 302) {
            get("/jobs");
        }
        return answer;
    }

    Answer get(String path) {
        return send("GET", path, Optional.empty(), "", Map.of());
    }

    Answer post(String path, String form) {
        return send("POST", path, Optional.of(form), FORM, Map.of("X-CSRF-TOKEN", token));
    }

    /** Without a token of its own accord. */
    Answer send(
            String method,
            String path,
            Optional<String> body,
            String type,
            Map<String, String> headers) {
        HttpRequest.Builder request =
                HttpRequest.newBuilder(URI.create(service + path))
                        .method(
                                method,
                                body.map(BodyPublishers::ofString)
                                        .orElseGet(BodyPublishers::noBody));
        request.setHeader("Accept", path.startsWith("/api/") ? "*/*" : "text/html,*/*");
        if (!cookies.isEmpty()) {
            request.setHeader(
                    "Cookie",
                    cookies.entrySet().stream()
                            .map(cookie -> cookie.getKey() + "=" + cookie.getValue())
                            .collect(Collectors.joining("; ")));
        }
        if (!basic.isEmpty()) {
            request.setHeader("Authorization", basic);
        }
        if (!type.isEmpty()) {
            request.setHeader("Content-Type", type);
        }
        headers.forEach(request::setHeader);
        try {
            HttpResponse<byte[]> response =
                    CLIENT.send(request.build(), BodyHandlers.ofByteArray());
            keepCookies(response.headers());
            Answer answer = new Answer(response.statusCode(), response.headers(), response.body());
            Matcher found = TOKEN.matcher(new String(response.body(), StandardCharsets.UTF_8));
            if (found.find()) {
                token = HtmlUtils.htmlUnescape(found.group(1));
            }
            return answer;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    private void keepCookies(HttpHeaders headers) {
        for (String cookie : headers.allValues("set-cookie")) {
            String[] pair = cookie.split(";", 2)[0].split("=", 2);
            if (pair[1].isEmpty()) {
                cookies.remove(pair[0]);
            } else {
                cookies.put(pair[0], pair[1]);
            }
        }
    }

    String cookie(String name) {
        return cookies.getOrDefault(name, "");
    }

    String token() {
        return token;
    }

    static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }
}
