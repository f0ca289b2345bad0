package org.fusewright.jobs.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.ServiceTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpMethod;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.client.EntityExchangeResult;
import org.springframework.test.web.servlet.client.RestTestClient;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;

@ServiceTest
class JobApiTest {
    private static final JsonMapper MAPPER = new JsonMapper();
    private static final AtomicInteger NUMBER = new AtomicInteger();

    @Autowired private RestTestClient client;

    private record Answer(int status, HttpHeaders headers, JsonNode body) {
        String eTag() {
            return String.valueOf(headers.getETag());
        }
    }

    private static String newReference() {
        return "API-" + NUMBER.incrementAndGet();
    }

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
                result.getResponseHeaders(),
                MAPPER.readTree(bytes == null ? new byte[] {'{', '}'} : bytes));
    }

    private Answer get(String path) {
        return send(HttpMethod.GET, path, "", "");
    }

    private String create(String reference) {
        Answer created = send(HttpMethod.POST, "/api/jobs", "", job(reference, 24));
        assertThat(created.status()).isEqualTo(201);
        return String.valueOf(created.headers().getLocation());
    }

    @Test
    void keepsAJobAsItWasGiven() {
        String reference = newReference();
        String path = create(reference);
        Answer got = get(path);
        assertThat(got.status()).isEqualTo(200);
        assertThat(got.body()).isEqualTo(MAPPER.readTree(job(reference, 24)));
        assertThat(got.body().propertyNames())
                .containsExactly("reference", "title", "supply", "feeds", "circuits");
    }

    @Test
    void makesARevisionOfEachChange() {
        String reference = newReference();
        String path = create(reference);
        String first = get(path).eTag();
        Answer changed = send(HttpMethod.PUT, path, first, job(reference, 48));
        assertThat(changed.status()).isEqualTo(200);
        assertThat(changed.eTag()).isNotEqualTo(first);
        assertThat(get(path).body().at("/circuits/0/loads/0/watts").asDouble()).isEqualTo(48);
        JsonNode revisions = get(path + "/revisions").body();
        assertThat(revisions).hasSize(2);
        assertThat(revisions.at("/0/revision").asInt()).isEqualTo(2);
        assertThat(revisions.at("/1/document/circuits/0/loads/0/watts").asDouble()).isEqualTo(24);
    }

    @Test
    void rejectsAChangeThatNamesNoVersion() {
        String reference = newReference();
        String path = create(reference);
        Answer answer = send(HttpMethod.PUT, path, "", job(reference, 48));
        assertThat(answer.status()).isEqualTo(428);
        assertProblem(answer, HttpStatus.PRECONDITION_REQUIRED);
        assertUnchanged(path);
    }

    @Test
    void rejectsAStaleChange() {
        String reference = newReference();
        String path = create(reference);
        String first = get(path).eTag();
        send(HttpMethod.PUT, path, first, job(reference, 30));
        Answer stale = send(HttpMethod.PUT, path, first, job(reference, 48));
        assertProblem(stale, HttpStatus.PRECONDITION_FAILED);
        assertProblem(send(HttpMethod.DELETE, path, first, ""), HttpStatus.PRECONDITION_FAILED);
        assertThat(get(path).body().at("/circuits/0/loads/0/watts").asDouble()).isEqualTo(30);
        assertThat(get(path + "/revisions").body()).hasSize(2);
    }

    @Test
    void rejectsAReferenceThatAnotherJobHas() {
        String taken = newReference();
        create(taken);
        Answer created = send(HttpMethod.POST, "/api/jobs", "", job(taken, 24));
        assertProblem(created, HttpStatus.CONFLICT);
        assertThat(created.body().at("/errors/0/pointer").asString()).isEqualTo("/reference");
        String path = create(newReference());
        Answer changed = send(HttpMethod.PUT, path, get(path).eTag(), job(taken, 24));
        assertProblem(changed, HttpStatus.CONFLICT);
        assertUnchanged(path);
    }

    @Test
    void rejectsAMalformedJobWithAllThatIsWrong() {
        String path = create(newReference());
        String wrong =
                job("X", 24)
                        .replace("\"kind\": \"led\"", "\"kind\": \"lad\"")
                        .replace("\"runM\": 1.5", "\"runM\": 0, \"gauge\": \"0.7 mm2\"");
        Answer answer = send(HttpMethod.PUT, path, get(path).eTag(), wrong);
        assertProblem(answer, HttpStatus.BAD_REQUEST);
        assertThat(answer.body().path("errors"))
                .extracting(error -> error.path("pointer").asString())
                .containsExactlyInAnyOrder(
                        "/circuits/0/loads/0/kind", "/circuits/0/runM", "/circuits/0/gauge");
        assertUnchanged(path);
    }

    @Test
    void takesOneOfManyChangesAtOnce() throws Exception {
        String reference = newReference();
        String path = create(reference);
        String first = get(path).eTag();
        List<Callable<Integer>> changes = new ArrayList<>();
        for (int i = 1; i <= 8; i++) {
            String changed = job(reference, 24 + i);
            changes.add(() -> send(HttpMethod.PUT, path, first, changed).status());
        }
        List<Integer> answers = new ArrayList<>();
        try (ExecutorService threads = Executors.newFixedThreadPool(8)) {
            for (Future<Integer> answer : threads.invokeAll(changes)) {
                answers.add(answer.get());
            }
        }
        assertThat(answers).containsOnlyOnce(200).containsOnly(200, 412);
        assertThat(get(path + "/revisions").body()).hasSize(2);
    }

    @Test
    void takesOneOfManyNewJobsWithOneReference() throws Exception {
        String body = job(newReference(), 24);
        List<Callable<Integer>> creations =
                Collections.nCopies(8, () -> send(HttpMethod.POST, "/api/jobs", "", body).status());
        List<Integer> answers = new ArrayList<>();
        try (ExecutorService threads = Executors.newFixedThreadPool(8)) {
            for (Future<Integer> answer : threads.invokeAll(creations)) {
                answers.add(answer.get());
            }
        }
        assertThat(answers).containsOnlyOnce(201).containsOnly(201, 409);
    }

    @Test
    void deletesAJobInItsVersion() {
        String path = create(newReference());
        assertProblem(send(HttpMethod.DELETE, path, "", ""), HttpStatus.PRECONDITION_REQUIRED);
        assertThat(send(HttpMethod.DELETE, path, get(path).eTag(), "").status()).isEqualTo(204);
        assertProblem(get(path), HttpStatus.NOT_FOUND);
        assertProblem(get(path + "/revisions"), HttpStatus.NOT_FOUND);
    }

    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource({
        "letters within a word, ITHI, true",
        "letters over a space, 'n tH', true",
        "two letters, ü1, true",
        "signs that mean something to LIKE, 5%_!x, true",
        "one of these in a wrong place, 5_%!x, false",
        "letters in another order, hitiw, false",
        "a sign that no text holds, 'with\0in', false",
        "all groups of the letters but not in a row, athina, false",
    })
    void findsJobsByAnyPartOfTheirTexts(String what, String sought, boolean found) {
        String reference = newReference();
        ObjectNode job = (ObjectNode) MAPPER.readTree(job(reference, 24));
        job.put("title", "Within this: ath thi hin ina").put("customer", "Ü1 5%_!x");
        send(HttpMethod.POST, "/api/jobs", "", job.toString());

        byte[] answer =
                client.get()
                        .uri(
                                uri ->
                                        uri.path("/api/jobs")
                                                .queryParam("limit", 100)
                                                .queryParam("q", "{sought}")
                                                .build(sought))
                        .exchange()
                        .expectBody()
                        .returnResult()
                        .getResponseBody();

        assertThat(MAPPER.readTree(answer).findValuesAsString("reference").contains(reference))
                .as(what)
                .isEqualTo(found);
    }

    @Test
    void listsPageByPageNewestFirst() {
        String mark = "PAGED-" + newReference();
        for (int i = 0; i < 5; i++) {
            create(mark + "-" + i);
        }
        JsonNode first = get("/api/jobs?limit=3&q=" + mark.toLowerCase()).body();
        assertThat(first.path("jobs"))
                .extracting(job -> job.path("reference").asString())
                .containsExactly(mark + "-4", mark + "-3", mark + "-2");
        JsonNode rest =
                get("/api/jobs?limit=3&q=" + mark + "&after=" + first.path("next").asLong()).body();
        assertThat(rest.path("jobs"))
                .extracting(job -> job.path("reference").asString())
                .containsExactly(mark + "-1", mark + "-0");
        assertThat(rest.path("next").isNull()).isTrue();
        assertThat(get("/api/jobs?q=%25").body().path("jobs")).isEmpty();
        assertProblem(get("/api/jobs?limit=0"), HttpStatus.BAD_REQUEST);
    }

    @Test
    void plansTheKitOfAKeptJob() {
        String path = create(newReference());
        Answer kit = get(path + "/kit");
        assertThat(kit.body().at("/circuits/0/id").asString()).isEqualTo("lamp");
        byte[] pdf =
                client.get()
                        .uri(path + "/kit?paper=letter")
                        .accept(MediaType.APPLICATION_PDF)
                        .exchange()
                        .expectStatus()
                        .isOk()
                        .expectBody()
                        .returnResult()
                        .getResponseBody();
        assertThat(new String(pdf, 0, 5, StandardCharsets.US_ASCII)).isEqualTo("%PDF-");
    }

    private void assertUnchanged(String path) {
        assertThat(get(path).body().at("/circuits/0/loads/0/watts").asDouble()).isEqualTo(24);
        assertThat(get(path + "/revisions").body()).hasSize(1);
    }

    private static void assertProblem(Answer answer, HttpStatus status) {
        assertThat(answer.status()).isEqualTo(status.value());
        assertThat(answer.headers().getContentType()).isEqualTo(MediaType.APPLICATION_PROBLEM_JSON);
        assertThat(answer.body().path("detail").asString()).isNotBlank();
    }
}
