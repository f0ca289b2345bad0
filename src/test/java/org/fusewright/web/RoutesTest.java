package org.fusewright.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.ServiceTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.http.HttpMethod;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.client.EntityExchangeResult;
import org.springframework.test.web.servlet.client.RestTestClient;
import org.springframework.web.bind.annotation.RequestMethod;
import org.springframework.web.servlet.mvc.method.RequestMappingInfo;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** What callers see of errors, on every route there is. */
@ServiceTest
class RoutesTest {
    @Autowired private RestTestClient client;

    @Autowired
    @Qualifier("requestMappingHandlerMapping")
    private RequestMappingHandlerMapping routes;

    private record Answer(int status, MediaType type, String body) {}

    private Answer send(HttpMethod method, String path, String accept, String type, String body) {
        RestTestClient.RequestBodySpec request =
                client.method(method).uri(path).header("Accept", accept);
        EntityExchangeResult<byte[]> result =
                (type.isEmpty()
                                ? request
                                : request.header("Content-Type", type)
                                        .body(body.getBytes(StandardCharsets.UTF_8)))
                        .exchange()
                        .expectBody()
                        .returnResult();
        byte[] bytes = result.getResponseBody();
        return new Answer(
                result.getStatus().value(),
                result.getResponseHeaders().getContentType(),
                bytes == null ? "" : new String(bytes, StandardCharsets.UTF_8));
    }

    @Test
    void tellsNothingOfItsInsideOnAnyRoute() {
        List<String> tried = new ArrayList<>();
        for (RequestMappingInfo route : routes.getHandlerMethods().keySet()) {
            Set<RequestMethod> methods = route.getMethodsCondition().getMethods();
            for (String pattern : route.getPatternValues()) {
                for (RequestMethod method :
                        methods.isEmpty() ? Set.of(RequestMethod.GET) : methods) {
                    for (String value : List.of("999999", "no-such-thing", "%00", "'")) {
                        String path = pattern.replaceAll("\\{[^}]+}", value);
                        for (String type :
                                List.of(
                                        "",
                                        "application/json",
                                        "application/x-www-form-urlencoded",
                                        "multipart/form-data; boundary=x")) {
                            for (String accept : List.of("*/*", "text/html", "image/png")) {
                                tried.add(method + " " + path);
                                assertToldNothing(
                                        send(
                                                method.asHttpMethod(),
                                                path.replace("%00", "%2500"),
                                                accept,
                                                type,
                                                "{\"a\":[1,"),
                                        method + " " + path + " " + type + " " + accept);
                            }
                        }
                    }
                }
            }
        }
        assertThat(tried)
                .contains(
                        "POST /api/kits",
                        "POST /api/kits/papers/no-such-thing",
                        "PUT /api/jobs/999999",
                        "GET /jobs/999999",
                        "POST /api/quotes/999999/send",
                        "GET /quotes/999999")
                .contains("POST /api/counts/check", "POST /counts/999999/pieces");
    }

    private static void assertToldNothing(Answer answer, String request) {
        assertThat(answer.body())
                .describedAs(request)
                .doesNotContain("\tat ", "Exception", "org.springframework", "java.lang", "SELECT ")
                .doesNotContain("org.fusewright", "hibernate", "Whitelabel", "Apache Tomcat");
        assertThat(answer.status()).describedAs(request).isLessThan(500);
    }

    @ParameterizedTest
    @CsvSource({
        "GET, /no/such/page, 404",
        "GET, /api/no-such-thing, 404",
        "DELETE, /api/kits, 405",
        "PATCH, /api/jobs/1, 405",
        "GET, /api/jobs/abc, 400",
        "GET, /api/jobs?limit=many, 400",
    })
    void answersErrorsAsProblemsToProgramsAndAsPagesToBrowsers(
            String method, String path, int status) {
        Answer toProgram = send(HttpMethod.valueOf(method), path, "application/json", "", "");
        assertThat(toProgram.status()).isEqualTo(status);
        assertThat(toProgram.type()).isEqualTo(MediaType.APPLICATION_PROBLEM_JSON);
        assertThat(toProgram.body()).contains("\"status\":" + status, "\"title\":");
        Answer toBrowser =
                send(
                        HttpMethod.valueOf(method),
                        path,
                        "text/html,application/xhtml+xml,*/*;q=0.8",
                        "",
                        "");
        assertThat(toBrowser.status()).isEqualTo(status);
        assertThat(toBrowser.type().isCompatibleWith(MediaType.TEXT_HTML)).isTrue();
        assertThat(toBrowser.body()).contains("<h1>").contains("To the jobs");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/fusewright.css",
                "/count.js",
                "/favicon.svg",
                "/bench-swap.js",
                "/bench-keys.js",
                "/bench-keep.js",
                "/bench-fields.js",
                "/bench-fetch.js",
                "/who.js",
                "/bench-print.js",
                "/webjars/htmx.org/2.0.10/dist/htmx.min.js"
            })
    void servesWhatThePagesNeed(String path) {
        assertThat(send(HttpMethod.GET, path, "*/*", "", "").status()).isEqualTo(200);
    }

    @Test
    void letsBrowsersRunNothingButItsOwn() {
        client.get()
                .uri("/jobs")
                .exchange()
                .expectHeader()
                .valueMatches("Content-Security-Policy", "default-src 'self';.*")
                .expectHeader()
                .valueEquals("X-Content-Type-Options", "nosniff")
                .expectBody(String.class)
                .value(
                        page ->
                                assertThat(page)
                                        .doesNotContain(
                                                "style=\"",
                                                "onclick",
                                                "<script>",
                                                "http://",
                                                "https://"));
    }

    @Test
    void describesTheInterface() {
        client.get()
                .uri("/v3/api-docs")
                .exchange()
                .expectStatus()
                .isOk()
                .expectBody()
                .jsonPath("$.openapi")
                .value(String.class, version -> assertThat(version).startsWith("3.1"))
                .jsonPath("$.paths['/api/kits'].post.summary")
                .isEqualTo("Plan a kit")
                .jsonPath("$.paths['/api/kits/what-if'].post.tags[0]")
                .isEqualTo("Kits")
                .jsonPath("$.paths['/api/jobs/{id}/what-if'].post.tags[0]")
                .isEqualTo("Jobs")
                .jsonPath("$.paths['/api/kits/papers/{name}'].post.tags[0]")
                .isEqualTo("Kits")
                .jsonPath("$.paths['/api/jobs/{id}/papers/{name}'].get.tags[0]")
                .isEqualTo("Jobs")
                .jsonPath("$.paths['/api/jobs/{id}'].put.summary")
                .isEqualTo("Change a job")
                .jsonPath("$.paths['/api/schema/job'].get.summary")
                .exists()
                .jsonPath("$.paths['/api/counts/check'].post.summary")
                .isEqualTo("Check a kit from elsewhere")
                .jsonPath("$.paths['/api/counts/{id}/signature'].post.tags[0]")
                .isEqualTo("Counts")
                .jsonPath("$.paths['/api/quotes/{id}/send'].post.tags[0]")
                .isEqualTo("Quotes")
                .jsonPath("$.paths['/quotes']")
                .doesNotExist()
                .jsonPath("$.paths['/jobs']")
                .doesNotExist()
                .jsonPath("$.paths['/error']")
                .doesNotExist();
    }
}
