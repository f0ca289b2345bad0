package org.fusewright.accounts.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.ServiceTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.boot.test.web.server.LocalServerPort;

import java.io.IOException;
import java.net.Socket;
import java.nio.charset.StandardCharsets;

/** The service of one person, as other people's pages in the same browser could reach it. */
@ServiceTest
class RequestGuardTest {
    @LocalServerPort private int port;

    /** What a request is answered whose every header is written here. */
    private String answer(String start, String... headers) throws IOException {
        try (Socket socket = new Socket("127.0.0.1", port)) {
            String request =
                    start + "\r\n" + String.join("\r\n", headers) + "\r\nConnection: close\r\n\r\n";
            socket.getOutputStream()
                    .write(
                            request.replace("PORT", Integer.toString(port))
                                    .getBytes(StandardCharsets.US_ASCII));
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "127.0.0.1:PORT, 200",
        "localhost:PORT, 200",
        "LocalHost, 200",
        "[::1]:PORT, 200",
        "shop.example:PORT, 403",
        "127.0.0.1.shop.example, 403",
        "localhost.shop.example:PORT, 403",
    })
    void answersToNamesOfThisMachineAlone(String host, int status) throws IOException {
        assertThat(answer("GET /api/jobs HTTP/1.1", "Host: " + host))
                .startsWith("HTTP/1.1 " + status);
    }

    @Test
    void tellsWhyInTheFormOfAllErrors() throws IOException {
        String program = answer("GET /api/jobs HTTP/1.1", "Host: shop.example");
        assertThat(program)
                .contains("application/problem+json", "fusewright.accounts=required")
                .contains("Content-Security-Policy");
        String browser = answer("GET /jobs HTTP/1.1", "Host: shop.example", "Accept: text/html");
        assertThat(browser).contains("text/html", "<h1>");
    }

    @ParameterizedTest
    @CsvSource({
        "POST, Sec-Fetch-Site: cross-site, 403",
        "POST, Sec-Fetch-Site: same-site, 403",
        "DELETE, Sec-Fetch-Site: cross-site, 403",
        "POST, Sec-Fetch-Site: same-origin, 415",
        "POST, Sec-Fetch-Site: none, 415",
        "POST, Origin: http://shop.example, 403",
        "POST, Origin: null, 403",
        "POST, Origin: http://127.0.0.1:1, 403",
        "POST, Origin: http://127.0.0.1:PORT, 415",
        "POST, X-Of-A-Program: yes, 415",
        "GET, Sec-Fetch-Site: cross-site, 405",
    })
    void letsNoPageOfOthersChangeAnything(String method, String header, int status)
            throws IOException {
        String told =
                answer(
                        method + " /api/kits HTTP/1.1",
                        "Host: 127.0.0.1:PORT",
                        "Content-Length: 0",
                        header);
        assertThat(told).startsWith("HTTP/1.1 " + status);
    }

    @Test
    void setsNoCookieAndAsksForNoToken() throws IOException {
        String page = answer("GET /jobs HTTP/1.1", "Host: 127.0.0.1:PORT", "Accept: text/html");
        assertThat(page).startsWith("HTTP/1.1 200").doesNotContain("Set-Cookie", "_csrf");
        assertThat(answer("GET /log-in HTTP/1.1", "Host: 127.0.0.1:PORT"))
                .startsWith("HTTP/1.1 404");
    }
}
