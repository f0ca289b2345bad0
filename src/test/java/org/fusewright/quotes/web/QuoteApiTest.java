package org.fusewright.quotes.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.ServiceTest;
import org.fusewright.TestDatabase;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpMethod;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.client.EntityExchangeResult;
import org.springframework.test.web.servlet.client.RestTestClient;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;

@ServiceTest
class QuoteApiTest {
    private static final JsonMapper MAPPER = new JsonMapper();
    private static final AtomicInteger NUMBER = new AtomicInteger();
    private static final String JSON = MediaType.APPLICATION_JSON_VALUE;

    @Autowired private RestTestClient client;

    private record Answer(int status, HttpHeaders headers, byte[] bytes) {
        JsonNode body() {
            return MAPPER.readTree(bytes.length == 0 ? new byte[] {'{', '}'} : bytes);
        }

        String eTag() {
            return String.valueOf(headers.getETag());
        }
    }

    @AfterEach
    void emptyTheTables() throws SQLException {
        try (Connection connection = TestDatabase.connect();
                Statement statement = connection.createStatement()) {
            statement.execute("truncate quote, quote_revision, quote_demand, quote_count");
        }
    }

    private Answer send(
            HttpMethod method, String path, String accept, String ifMatch, String body) {
        RestTestClient.RequestBodySpec request =
                client.method(method).uri(path).header(HttpHeaders.ACCEPT, accept);
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
                result.getResponseHeaders(),
                bytes == null ? new byte[0] : bytes);
    }

    private Answer get(String path, String accept) {
        return send(HttpMethod.GET, path, accept, "", "");
    }

    private Answer post(String path, String ifMatch, String body) {
        return send(HttpMethod.POST, path, JSON, ifMatch, body);
    }

    private String job() {
        String document =
                """
                {"reference": "QA-%d", "title": "Bench test", "supply": {"nominalV": 12},
                 "feeds": [{"id": "battery", "terminal": "30", "lengthM": 0.6,
                            "sourceDistanceM": 0.1}],
                 "circuits": [{"id": "lamp", "feed": "battery", "runM": 1.5,
                               "loads": [{"kind": "led", "watts": 24}]}]}
                """
                        .formatted(NUMBER.incrementAndGet());
        Answer created = post("/api/jobs", "", document);
        String location = String.valueOf(created.headers().getLocation());
        return location.substring(location.lastIndexOf('/') + 1);
    }

    private Answer create() {
        Answer created =
                post(
                        "/api/quotes",
                        "",
                        """
                        {"job": %s, "kits": 3, "variants": ["fuses", "solid-state"],
                         "customerKind": "private"}
                        """
                                .formatted(job()));
        assertThat(created.status()).isEqualTo(201);
        return created;
    }

    private String path(Answer created) {
        return String.valueOf(created.headers().getLocation());
    }

    @Test
    void answersADraftWithItsVariantsSideBySide() {
        Answer created = create();
        assertThat(get(path(created), JSON).bytes()).isEqualTo(created.bytes());
        JsonNode body = created.body();
        assertThat(body.path("state").stringValue()).isEqualTo("draft");
        JsonNode quote = body.path("quote");
        assertThat(quote.path("number").stringValue()).matches("Q-\\d{4}-\\d{4}");
        assertThat(quote.path("kits").asInt()).isEqualTo(3);
        assertThat(quote.path("variants")).hasSize(2);
        assertThat(quote.at("/variants/0/kind").stringValue()).isEqualTo("fuses");
        assertThat(quote.at("/variants/0/total").isNumber()).isTrue();
        assertThat(body.at("/differences/0/circuit").stringValue()).isEqualTo("lamp");
    }

    @ParameterizedTest
    @CsvSource({
        "application/json, a4, {",
        "application/pdf, a4, %PDF-",
        "application/pdf, letter, %PDF-",
        "text/csv, a4, 'quote,revision'",
    })
    void answersInTheFormAskedFor(String accept, String paper, String start) {
        Answer got = get(path(create()) + "?paper=" + paper, accept);
        assertThat(got.status()).isEqualTo(200);
        assertThat(String.valueOf(got.headers().getContentType())).startsWith(accept);
        assertThat(new String(got.bytes(), StandardCharsets.ISO_8859_1)).startsWith(start);
    }

    @ParameterizedTest
    @CsvSource({"application/json, b5, 400", "image/png, a4, 406"})
    void rejectsAFormThatIsNone(String accept, String paper, int status) {
        assertThat(get(path(create()) + "?paper=" + paper, accept).status()).isEqualTo(status);
    }

    /** From a draft to delivered kits, each step with the version that the last one left. */
    @Test
    void goesFromDraftToDelivered() {
        Answer answer = create();
        String path = path(answer);
        answer =
                send(
                        HttpMethod.PUT,
                        path,
                        JSON,
                        answer.eTag(),
                        """
                        {"kits": 2, "variants": ["fuses", "cheapest"], "customerKind": "trade",
                         "shipping": false, "validDays": 14, "terms": ["Cash."],
                         "notIncluded": ["Fitting."]}
                        """);
        assertThat(answer.body().at("/quote/kits").asInt()).isEqualTo(2);
        assertThat(answer.body().at("/quote/terms/0").stringValue()).isEqualTo("Cash.");
        answer = post(path + "/refresh", answer.eTag(), "");
        answer = post(path + "/send", answer.eTag(), "");
        assertThat(answer.body().path("state").stringValue()).isEqualTo("sent");
        byte[] pdf = get(path, "application/pdf").bytes();
        answer = post(path + "/revisions", answer.eTag(), "");
        assertThat(answer.body().at("/quote/revision").asInt()).isEqualTo(2);
        assertThat(answer.body().at("/changes/sinceRevision").asInt()).isEqualTo(1);
        answer = post(path + "/send", answer.eTag(), "");
        assertThat(get(path + "/revisions/1", "application/pdf").bytes()).isEqualTo(pdf);
        answer = post(path + "/accept", answer.eTag(), "{\"variant\": \"cheapest\"}");
        assertThat(answer.status()).isEqualTo(200);
        assertThat(answer.body().path("acceptedVariant").stringValue()).isEqualTo("cheapest");
        answer = post(path + "/fulfil", answer.eTag(), "");
        assertThat(answer.body().path("fulfilledAt").isString()).isTrue();
    }

    @Test
    void givesTheJobTheDevicesOfTheAcceptedVariant() {
        Answer created = create();
        String path = path(created);
        assertThat(post(path + "/take-over", "", "").status()).isEqualTo(409);
        Answer sent = post(path + "/send", created.eTag(), "");
        post(path + "/accept", sent.eTag(), "{\"variant\": \"fuses\"}");
        byte[] frozen = get(path, "application/pdf").bytes();

        Answer taken = post(path + "/take-over?by=Ada", "", "");
        assertThat(taken.status()).isEqualTo(200);
        assertThat(taken.body().path("revision").asInt()).isEqualTo(2);
        String job = "/api/jobs/" + taken.body().path("jobId").asLong();
        assertThat(get(job, JSON).body().at("/circuits/0/devices").toString())
                .isEqualTo("[\"fuse\"]");
        assertThat(get(job + "/revisions", JSON).body().toString()).contains("Ada");
        assertThat(get(path, "application/pdf").bytes()).isEqualTo(frozen);
        assertThat(post(path + "/take-over", "", "").status()).isEqualTo(409);
    }

    /** All at once, each with its pointer. */
    @Test
    void namesEverythingThatIsWrongWithTheWishes() {
        Answer refused =
                post(
                        "/api/quotes",
                        "",
                        """
                        {"job": "first", "kits": 0, "variants": ["fuses", "candles", "fuses"],
                         "customerKind": "royal", "validDays": 400, "terms": ["a", "\\u0007"],
                         "shipping": "yes", "discount": 5}
                        """);
        assertThat(refused.status()).isEqualTo(400);
        List<String> pointers = new ArrayList<>();
        refused.body()
                .path("errors")
                .forEach(error -> pointers.add(error.path("pointer").stringValue()));
        assertThat(pointers)
                .containsExactlyInAnyOrder(
                        "/job",
                        "/kits",
                        "/variants/1",
                        "/variants/2",
                        "/customerKind",
                        "/validDays",
                        "/terms/1",
                        "/shipping",
                        "/discount");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "[] | 400",
                "{ | 400",
                "{\"job\": 1.5, \"customerKind\": \"private\"} | 400",
                "{\"job\": 1, \"job\": 1, \"customerKind\": \"private\"} | 400",
                "{\"customerKind\": \"private\"} | 400",
                "{\"job\": 999999, \"customerKind\": \"private\"} | 404",
                "{\"job\": 1e30, \"customerKind\": \"private\"} | 400",
                "{\"job\": 99999999999999999999, \"customerKind\": \"private\"} | 400",
            })
    void rejectsWhatIsNoQuote(String body, int status) {
        Answer refused = post("/api/quotes", "", body);
        assertThat(refused.status()).isEqualTo(status);
        assertThat(refused.headers().getContentType())
                .isEqualTo(MediaType.APPLICATION_PROBLEM_JSON);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "PUT ",
                "DELETE ",
                "POST /send",
                "POST /accept",
                "POST /decline",
                "POST /refresh",
                "POST /revisions",
                "POST /fulfil"
            })
    void asksForTheVersionOfEveryChange(String change) {
        Answer created = create();
        String[] parts = change.split(" ", 2);
        HttpMethod method = HttpMethod.valueOf(parts[0]);
        String path = path(created) + parts[1];
        String body = parts[0].equals("PUT") ? "{\"customerKind\": \"private\"}" : "";
        assertThat(send(method, path, JSON, "", body).status()).isEqualTo(428);
        assertThat(send(method, path, JSON, "\"77\"", body).status()).isEqualTo(412);
        assertThat(send(method, "/api/quotes/999999" + parts[1], JSON, "*", body).status())
                .isEqualTo(404);
        assertThat(get(path(created), JSON).bytes()).isEqualTo(created.bytes());
    }

    @Test
    void refusesToChangeWhatWasSent() {
        Answer created = create();
        Answer sent = post(path(created) + "/send", created.eTag(), "");
        Answer refused =
                send(
                        HttpMethod.PUT,
                        path(created),
                        JSON,
                        sent.eTag(),
                        "{\"customerKind\": \"private\"}");
        assertThat(refused.status()).isEqualTo(409);
        assertThat(refused.body().path("detail").stringValue())
                .matches(
                        "Revision 1 of quote Q-\\d{4}-0001 is sent and cannot be changed\\."
                                + " Make a new revision of it\\.");
        assertThat(send(HttpMethod.DELETE, path(created), JSON, sent.eTag(), "").status())
                .isEqualTo(409);
        assertThat(get(path(created), JSON).bytes()).isEqualTo(sent.bytes());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"", "{}", "{\"variant\": \"as-asked\"}", "{\"variant\": 3}", "{\"a\": 3}"})
    void asksWhichOfTwoVariantsIsAccepted(String body) {
        Answer created = create();
        Answer sent = post(path(created) + "/send", created.eTag(), "");
        Answer refused = post(path(created) + "/accept", sent.eTag(), body);
        assertThat(refused.status()).isEqualTo(400);
        assertThat(refused.body().at("/errors/0/pointer").stringValue())
                .isEqualTo(body.contains("\"a\"") ? "/a" : "/variant");
        assertThat(get(path(created), JSON).bytes()).isEqualTo(sent.bytes());
    }

    @Test
    void discardsADraft() {
        Answer created = create();
        assertThat(send(HttpMethod.DELETE, path(created), JSON, created.eTag(), "").status())
                .isEqualTo(204);
        assertThat(get(path(created), JSON).status()).isEqualTo(404);
    }

    @Test
    void listsQuotesPageByPage() {
        List<String> made = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            made.addFirst(create().body().at("/quote/number").stringValue());
        }
        List<String> listed = new ArrayList<>();
        String after = "";
        do {
            JsonNode page = get("/api/quotes?limit=2" + after, JSON).body();
            page.path("quotes").forEach(q -> listed.add(q.path("number").stringValue()));
            after = page.path("next").isNull() ? "" : "&after=" + page.path("next").asLong();
        } while (!after.isEmpty());
        assertThat(listed).isEqualTo(made);
        assertThat(get("/api/quotes?limit=0", JSON).status()).isEqualTo(400);
        assertThat(get("/api/quotes?limit=201", JSON).status()).isEqualTo(400);
    }
}
