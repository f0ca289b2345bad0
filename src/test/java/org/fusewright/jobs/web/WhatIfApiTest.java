package org.fusewright.jobs.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.ServiceTest;
import org.fusewright.jobs.load.JobMutations;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.client.EntityExchangeResult;
import org.springframework.test.web.servlet.client.RestTestClient;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;

@ServiceTest
class WhatIfApiTest {
    private static final JsonMapper MAPPER = new JsonMapper();
    private static final String ASK = "/api/kits/what-if";

    @Autowired private RestTestClient client;

    private record Answer(int status, MediaType type, JsonNode body) {
        List<String> pointers() {
            List<String> pointers = new ArrayList<>();
            body.path("errors").forEach(error -> pointers.add(error.path("pointer").asString()));
            return pointers;
        }
    }

    private Answer post(String path, String body) {
        EntityExchangeResult<byte[]> result =
                client.post()
                        .uri(path)
                        .contentType(MediaType.APPLICATION_JSON)
                        .body(body)
                        .exchange()
                        .expectBody()
                        .returnResult();
        return new Answer(
                result.getStatus().value(),
                result.getResponseHeaders().getContentType(),
                MAPPER.readTree(result.getResponseBody()));
    }

    private static ObjectNode job() throws IOException {
        return (ObjectNode)
                MAPPER.readTree(
                        Files.readAllBytes(Path.of("catalog-sample/jobs/01-trail-quad.json")));
    }

    private static String question(JsonNode job, String rest) {
        return "{\"job\": " + job + ", " + rest + "}";
    }

    private JsonNode ask(String rest) throws IOException {
        Answer answer = post(ASK, question(job(), rest));
        assertThat(answer.status()).as(String.valueOf(answer.body())).isEqualTo(200);
        assertThat(answer.type()).isEqualTo(MediaType.APPLICATION_JSON);
        return answer.body();
    }

    private static String values(JsonNode answer) {
        return answer.path("points")
                .valueStream()
                .map(point -> point.path("value").asString())
                .collect(Collectors.joining(" "));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
                    ambientC | [40, 55.5, -60, 200]        | C | 40         | 40 55.5 -60 200
                    ambientC | null                        | C | 40         | 20 30 40 50 60 70 80 90 100
                    runM     | [1.1, 0.001, 100]           | m | 1.1        | 1.1 0.001 100
                    runM     | []                          | m | 1.1        | 0.55 1.1 1.65 2.2 3.3 5.5 8.8
                    gauge    | ["4mm2", "1.5 mm2"]         |   | 2.5 mm2    | 4.0 mm2 1.5 mm2
                    kind     | ["fuse", "auto-reset"]      |   | auto-reset | fuse auto-reset
                    kind     | null                        |   | auto-reset | fuse manual-reset auto-reset
                    """)
    void answersForEachValue(
            String vary, String values, String unit, String designed, String answered)
            throws IOException {
        JsonNode answer =
                ask(
                        "\"circuit\": \"pump\", \"vary\": \"%s\", \"values\": %s"
                                .formatted(vary, values));

        assertThat(answer.path("circuit").asString()).isEqualTo("pump");
        assertThat(answer.path("vary").asString()).isEqualTo(vary);
        assertThat(answer.path("unit").asString()).isEqualTo(unit == null ? "" : unit);
        assertThat(answer.path("designed").asString()).isEqualTo(designed);
        assertThat(values(answer)).isEqualTo(answered);
        assertThat(answer.has("unchangedTo")).isEqualTo(unit != null);
        assertThat(answer.has("standsTo")).isEqualTo(unit != null);
        assertThat(answer.path("points"))
                .allSatisfy(
                        point -> {
                            assertThat(point.path("value").isNumber()).isEqualTo(unit != null);
                            assertThat(point.path("says").asString()).isNotBlank();
                            assertThat(point.path("verdict").asString())
                                    .isIn("pass", "caution", "fail");
                            assertIsCheck(point.path("nearest"));
                            assertThat(point.path("notPassed"))
                                    .allSatisfy(WhatIfApiTest::assertIsCheck);
                        });
    }

    private static void assertIsCheck(JsonNode check) {
        assertThat(check.propertyNames())
                .containsExactly(
                        "code", "subject", "value", "limit", "unit", "margin", "verdict", "says",
                        "basis");
        assertThat(check.path("value").isNumber()).isTrue();
        assertThat(check.path("limit").isNumber()).isTrue();
        assertThat(check.path("margin").isNumber()).isTrue();
    }

    @Test
    void findsTheRunAtWhichTheDropIsUsedUp() throws IOException {
        double standsTo =
                ask("\"circuit\": \"pump\", \"vary\": \"runM\"").path("standsTo").asDouble();
        JsonNode points =
                ask("\"circuit\": \"pump\", \"vary\": \"runM\", \"values\": [%s, %s]"
                                .formatted(standsTo, standsTo + 0.02))
                        .path("points");

        assertThat(points.at("/0/worse").asBoolean()).isFalse();
        assertThat(points.at("/0/verdict").asString()).isEqualTo("caution");
        assertThat(points.at("/0/nearest/value").asDouble()).isLessThanOrEqualTo(3);
        assertThat(points.at("/1/worse").asBoolean()).isTrue();
        assertThat(points.at("/1/verdict").asString()).isEqualTo("fail");
        assertThat(points.at("/1/nearest/code").asString()).isEqualTo("voltage-drop");
        assertThat(points.at("/1/nearest/value").asDouble()).isGreaterThan(3);
    }

    @Test
    void repeatsTheVerdictsOfTheKitAtTheDesign() throws IOException {
        JsonNode point =
                ask("\"circuit\": \"pump\", \"vary\": \"runM\", \"values\": [1.1]").at("/points/0");
        List<JsonNode> ofPumpAndFeed =
                post("/api/kits", job().toString())
                        .body()
                        .path("checks")
                        .valueStream()
                        .filter(check -> !check.path("verdict").asString().equals("pass"))
                        .filter(
                                check ->
                                        check.path("subject")
                                                .asString()
                                                .matches("(circuit pump|feed battery).*"))
                        .toList();

        assertThat(ofPumpAndFeed).isNotEmpty();
        assertThat(point.path("notPassed")).containsExactlyInAnyOrderElementsOf(ofPumpAndFeed);
        assertThat(point.path("worse").asBoolean()).isFalse();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            textBlock =
                    """
                    "circuit": "pump", "vary": "ambientC", "values": [40, 201, "hot", -61] | /values/1 /values/2 /values/3 | -60 to 200 degrees C
                    "circuit": "pump", "vary": "runM", "values": [0, 101, 1e999]           | /values/0 /values/1 /values/2 | above 0 and at most 100 m
                    "circuit": "pump", "vary": "runM", "values": 3                         | /values                       | must be a list
                    "circuit": "pump", "vary": "gauge", "values": [1.5, "thin"]            | /values/0 /values/1           | "16 AWG"
                    "circuit": "pump", "vary": "gauge", "values": ["1.5 mm2", "95 mm2"]    | /values/1                     | there are 0.5 mm2, 0.75 mm2
                    "circuit": "pump", "vary": "kind", "values": ["lump"]                  | /values/0                     | one of fuse, manual-reset, auto-reset
                    "circuit": "horn", "vary": "runM"                                      | /circuit                      | there are pump, lamps
                    "circuit": "a b", "vary": "runM"                                       | /circuit                      | letters, digits
                    "circuit": "pump", "vary": "weight", "values": [1]                     | /vary                         | one of ambientC, runM, gauge, kind
                    "vary": "runM", "value": [1]                                           | /circuit /value               | allowed here: job, circuit, vary, values
                    "circuit": "pump"                                                      | /vary                         | is missing
                    "circuit": "pump", "circuit": "lamps", "vary": "runM"                  | /circuit                      | given twice
                    """)
    void rejectsAQuestionWithAllThatIsWrong(String rest, String pointers, String words)
            throws IOException {
        Answer answer = post(ASK, question(job(), rest));

        assertThat(answer.status()).isEqualTo(400);
        assertThat(answer.type()).isEqualTo(MediaType.APPLICATION_PROBLEM_JSON);
        assertThat(answer.pointers()).containsExactly(pointers.split(" "));
        assertThat(answer.body().path("errors").toString().replace("\\\"", "\"")).contains(words);
    }

    @Test
    void rejectsMoreValuesThanItAnswers() throws IOException {
        String many = "1" + ", 1".repeat(50);
        Answer answer =
                post(
                        ASK,
                        question(
                                job(),
                                "\"circuit\": \"pump\", \"vary\": \"runM\", \"values\": [%s]"
                                        .formatted(many)));
        assertThat(answer.pointers()).containsExactly("/values");
        assertThat(answer.body().toString()).contains("must hold 0 to 50 values, not 51");
    }

    @Test
    void rejectsWhatIsWrongInTheJobAndInTheQuestionAtOnce() throws IOException {
        ObjectNode job = job();
        ((ObjectNode) job.at("/circuits/0")).put("runM", 0).put("gauge", "0.7 mm2");
        Answer answer =
                post(ASK, question(job, "\"circuit\": \"pump\", \"vary\": \"size\", \"why\": 1"));

        assertThat(answer.status()).isEqualTo(400);
        assertThat(answer.pointers())
                .containsExactlyInAnyOrder(
                        "/job/circuits/0/runM", "/job/circuits/0/gauge", "/vary", "/why");
    }

    @Test
    void rejectsWhatTheJobAsksForAndIsNotStockedBesideAnUnknownCircuit() throws IOException {
        ObjectNode job = job();
        ((ObjectNode) job.at("/circuits/0")).put("ratingA", 11);
        Answer answer = post(ASK, question(job, "\"circuit\": \"horn\", \"vary\": \"kind\""));

        assertThat(answer.pointers())
                .containsExactlyInAnyOrder("/job/circuits/0/ratingA", "/circuit");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            textBlock =
                    """
                    {}                                      | /job /circuit /vary
                    []                                      | ``
                    {"job": 7, "circuit": "a", "vary": "runM"} | /job /circuit
                    ``                                      | ``
                    {"job":                                 | ``
                    """)
    void rejectsWhatIsNoQuestion(String body, String pointers) {
        Answer answer = post(ASK, body);
        assertThat(answer.status()).isEqualTo(400);
        assertThat(answer.type()).isEqualTo(MediaType.APPLICATION_PROBLEM_JSON);
        assertThat(answer.pointers()).contains(pointers.split(" "));
    }

    @Test
    void answersForAKeptJob() throws IOException {
        ObjectNode job = job().put("reference", "WHAT-IF-KEPT");
        String path =
                String.valueOf(
                        client.post()
                                .uri("/api/jobs")
                                .contentType(MediaType.APPLICATION_JSON)
                                .body(job.toString())
                                .exchange()
                                .expectStatus()
                                .isCreated()
                                .expectBody()
                                .returnResult()
                                .getResponseHeaders()
                                .getLocation());
        String rest = "\"circuit\": \"lamps\", \"vary\": \"ambientC\", \"values\": [90]";

        assertThat(post(path + "/what-if", "{" + rest + "}").body()).isEqualTo(ask(rest));
        assertThat(post(path + "/what-if", question(job, rest)).pointers()).containsExactly("/job");
        assertThat(post(path + "/what-if", "{\"circuit\": \"horn\"}").pointers())
                .containsExactlyInAnyOrder("/circuit", "/vary");
        assertThat(post("/api/jobs/999999/what-if", "{" + rest + "}").status()).isEqualTo(404);
    }

    /** Whatever arrives is either answered, all in numbers, or named as wrong. */
    @ParameterizedTest
    @CsvSource({"ambientC", "runM", "gauge", "kind"})
    void answersOrRejectsWhateverArrives(String vary) throws IOException {
        Random random = new Random(4_711);
        int answered = 0;
        for (int i = 0; i < 60; i++) {
            JsonNode job = job();
            for (int j = random.nextInt(3); j > 0; j--) {
                JobMutations.mutate(job, random);
            }
            String body = question(job, "\"circuit\": \"lamps\", \"vary\": \"%s\"".formatted(vary));
            Answer answer = post(ASK, body);
            assertThat(answer.status()).as(body).isIn(200, 400);
            assertThat(answer.body().toString()).as(body).doesNotContain("NaN", "Infinity");
            answered += answer.status() == 200 ? 1 : 0;
        }
        assertThat(answered).isBetween(10, 55);
    }
}
