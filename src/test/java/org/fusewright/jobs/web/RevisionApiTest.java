package org.fusewright.jobs.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.ServiceTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpMethod;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.client.EntityExchangeResult;
import org.springframework.test.web.servlet.client.RestTestClient;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.Iterator;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;

@ServiceTest
class RevisionApiTest {
    private static final JsonMapper MAPPER = new JsonMapper();
    private static final AtomicInteger NUMBER = new AtomicInteger();

    @Autowired private RestTestClient client;
    @LocalServerPort private int port;

    private record Answer(int status, String eTag, JsonNode body) {}

    private static String job(String reference, double watts) {
        return """
        {"reference": "%s", "title": "Bench test", "supply": {"nominalV": 12},
         "feeds": [{"id": "battery", "terminal": "30", "lengthM": 0.6, "sourceDistanceM": 0.1}],
         "circuits": [{"id": "lamp", "feed": "battery", "runM": 1.5,
                       "loads": [{"kind": "led", "watts": %s}]}]}
        """
                .formatted(reference, watts);
    }

    private Answer send(HttpMethod method, String path, String ifMatch, String body) {
        RestTestClient.RequestBodySpec request = client.method(method).uri(path);
        if (!ifMatch.isEmpty()) {
            request.header(HttpHeaders.IF_MATCH, ifMatch);
        }
        EntityExchangeResult<byte[]> result =
                (body.isEmpty()
                                ? request
                                : request.contentType(MediaType.APPLICATION_JSON).body(body))
                        .exchange()
                        .expectBody()
                        .returnResult();
        byte[] bytes = result.getResponseBody();
        return new Answer(
                result.getStatus().value(),
                String.valueOf(result.getResponseHeaders().getETag()),
                MAPPER.readTree(bytes == null ? new byte[] {'{', '}'} : bytes));
    }

    private Answer get(String path) {
        return send(HttpMethod.GET, path, "", "");
    }

    /** A job of two revisions: 24 W by the shop, 96 W by Ada. */
    private String create() {
        String reference = "REV-" + NUMBER.incrementAndGet();
        String location =
                String.valueOf(
                        client.post()
                                .uri("/api/jobs")
                                .contentType(MediaType.APPLICATION_JSON)
                                .body(job(reference, 24))
                                .exchange()
                                .returnResult(String.class)
                                .getResponseHeaders()
                                .getLocation());
        String path = location.substring(location.indexOf("/api/"));
        assertThat(
                        send(HttpMethod.PUT, path + "?by=Ada", get(path).eTag(), job(reference, 96))
                                .status())
                .isEqualTo(200);
        return path;
    }

    @Test
    void keepsWhoMadeEachChangeAndWhat() {
        JsonNode revisions = get(create() + "/revisions").body();
        assertThat(revisions)
                .extracting(revision -> revision.path("changedBy").asString())
                .containsExactly("Ada", "shop");
        assertThat(revisions.at("/0/changes/0/says").asString())
                .isEqualTo("circuit lamp: draws 24 W → 96 W");
        assertThat(revisions.at("/1/changes")).isEmpty();
        assertThat(revisions.at("/0/changedAt").asString()).endsWith("Z");
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 101})
    void rejectsWhatIsNoName(int length) {
        String by = "a".repeat(length);
        String path = create();
        Answer answer =
                send(HttpMethod.POST, path + "/revisions/1/restore?by=" + by, get(path).eTag(), "");
        assertThat(answer.status()).isEqualTo(400);
        assertThat(answer.body().path("detail").asString()).contains("by must be a name");
        assertThat(get(path + "/revisions").body()).hasSize(2);
    }

    @Test
    void comparesFieldsPartsPriceAndVerdicts() {
        JsonNode comparison = get(create() + "/comparison?from=1&to=2").body();
        assertThat(comparison.path("fields"))
                .extracting(change -> change.path("says").asString())
                .containsExactly("circuit lamp: draws 24 W → 96 W");
        JsonNode totals = comparison.path("totals");
        assertThat(totals.path("difference").decimalValue())
                .isEqualByComparingTo(
                        totals.path("after")
                                .decimalValue()
                                .subtract(totals.path("before").decimalValue()));
        assertThat(totals.path("difference").decimalValue()).isNotZero();
        assertThat(comparison.path("parts"))
                .isNotEmpty()
                .allSatisfy(
                        part ->
                                assertThat(part.path("before").decimalValue())
                                        .isNotEqualByComparingTo(
                                                part.path("after").decimalValue()));
        JsonNode turned = get(create() + "/comparison?from=2&to=1").body();
        assertThat(turned.path("parts")).hasSameSizeAs(comparison.path("parts"));
        JsonNode same = get(create() + "/comparison?from=2&to=2").body();
        assertThat(same.path("fields")).isEmpty();
        assertThat(same.path("parts")).isEmpty();
        assertThat(same.path("verdicts")).isEmpty();
    }

    @Test
    void addsUpTheDifferencesOfAllParts() {
        JsonNode comparison = get(create() + "/comparison?from=1&to=2").body();
        double sum = 0;
        for (JsonNode part : comparison.path("parts")) {
            sum += part.path("extendedAfter").asDouble() - part.path("extendedBefore").asDouble();
        }
        assertThat(Math.round(sum * 100))
                .isEqualTo(Math.round(comparison.at("/totals/difference").asDouble() * 100));
    }

    @Test
    void restoresARevisionAsANewOne() {
        String path = create();
        String restore = path + "/revisions/1/restore?by=Ben";
        assertThat(send(HttpMethod.POST, restore, "", "").status()).isEqualTo(428);
        assertThat(send(HttpMethod.POST, restore, "\"0\"", "").status()).isEqualTo(412);
        Answer restored = send(HttpMethod.POST, restore, get(path).eTag(), "");
        assertThat(restored.status()).isEqualTo(200);
        assertThat(restored.body()).isEqualTo(get(path + "/revisions/1").body().path("document"));
        JsonNode revisions = get(path + "/revisions").body();
        assertThat(revisions).hasSize(3);
        assertThat(revisions.at("/0/changedBy").asString()).isEqualTo("Ben");
        assertThat(restored.eTag()).isEqualTo(get(path).eTag());
    }

    @ParameterizedTest
    @CsvSource({
        "/revisions/3, 404",
        "/revisions/0, 404",
        "/revisions/3/kit, 404",
        "/comparison?from=1&to=3, 404",
        "/comparison?from=1, 400",
        "/revisions/2, 200",
        "/revisions/2/kit, 200",
    })
    void answersForRevisionsThatAreThere(String path, int status) {
        assertThat(get(create() + path).status()).isEqualTo(status);
    }

    @Test
    void plansTheKitOfAnEarlierRevision() {
        String path = create();
        JsonNode before = get(path + "/revisions/1/kit").body();
        JsonNode after = get(path + "/revisions/2/kit").body();
        assertThat(after).isEqualTo(get(path + "/kit").body());
        assertThat(before.at("/circuits/0/runningA").asDouble())
                .isLessThan(after.at("/circuits/0/runningA").asDouble());
    }

    @Test
    void describesWhoMakesAChange() {
        JsonNode parameters =
                get("/v3/api-docs").body().at("/paths/~1api~1jobs~1{id}/put/parameters");
        assertThat(parameters)
                .anySatisfy(
                        parameter -> {
                            assertThat(parameter.path("name").asString()).isEqualTo("by");
                            assertThat(parameter.path("in").asString()).isEqualTo("query");
                            assertThat(parameter.at("/schema/type").asString()).isEqualTo("string");
                            assertThat(parameter.at("/schema/maxLength").asInt()).isEqualTo(100);
                        });
    }

    /** As server-sent events (the HTML standard, section 9.2). */
    @Test
    void tellsViewersOfChangesAndOfTheEnd() throws IOException, InterruptedException {
        String path = create();
        HttpRequest request =
                HttpRequest.newBuilder(
                                URI.create(
                                        "http://127.0.0.1:"
                                                + port
                                                + path.substring("/api".length())
                                                + "/live"))
                        .build();
        try (HttpClient viewer = HttpClient.newHttpClient()) {
            HttpResponse<Stream<String>> answer =
                    viewer.send(request, HttpResponse.BodyHandlers.ofLines());
            assertThat(answer.headers().firstValue("Content-Type").orElseThrow())
                    .startsWith("text/event-stream");
            Iterator<String> lines = answer.body().iterator();
            assertThat(next(lines, "data:")).isEqualTo("data:2");
            send(HttpMethod.POST, path + "/revisions/1/restore", get(path).eTag(), "");
            assertThat(next(lines, "data:")).isEqualTo("data:3");
            send(HttpMethod.DELETE, path, get(path).eTag(), "");
            assertThat(next(lines, "event:")).isEqualTo("event:gone");
            viewer.shutdownNow();
        }
    }

    private static String next(Iterator<String> lines, String start) {
        String line = lines.next();
        while (!line.startsWith(start)) {
            line = lines.next();
        }
        return line;
    }
}
