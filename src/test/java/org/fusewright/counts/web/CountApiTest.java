package org.fusewright.counts.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.fusewright.ServiceTest;
import org.fusewright.TestDatabase;
import org.junit.jupiter.api.BeforeEach;
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
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;

@ServiceTest
class CountApiTest {
    private static final JsonMapper MAPPER = new JsonMapper();
    private static final AtomicInteger NUMBER = new AtomicInteger();

    @Autowired private RestTestClient client;

    private long job;
    private String reference = "";

    private record Answer(int status, HttpHeaders headers, byte[] bytes) {
        JsonNode body() {
            return MAPPER.readTree(bytes);
        }

        String eTag() {
            return String.valueOf(headers.getETag());
        }
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
                bytes == null ? new byte[0] : bytes);
    }

    private Answer post(String path, String body) {
        return send(HttpMethod.POST, path, "", body);
    }

    private Answer get(String path) {
        return send(HttpMethod.GET, path, "", "");
    }

    private static String document(String reference, double lampRunM, String more) {
        return """
        {"reference": "%s", "title": "Bench test", "currency": "EUR", "supply": {"nominalV": 12},
         "feeds": [{"id": "battery", "terminal": "30", "lengthM": 0.6, "sourceDistanceM": 0.1}],
         "circuits": [{"id": "lamp", "feed": "battery", "runM": %s, "ratingA": 10,
                       "devices": ["auto-reset"], "returnPath": "chassis",
                       "loads": [{"kind": "led", "watts": 60}]}%s]}
        """
                .formatted(reference, lampRunM, more);
    }

    @BeforeEach
    void keepAJob() {
        reference = "BAG-" + NUMBER.incrementAndGet();
        Answer created = post("/api/jobs", document(reference, 1.5, ""));
        assertThat(created.status()).isEqualTo(201);
        String location = String.valueOf(created.headers().getLocation());
        job = Long.parseLong(location.substring(location.lastIndexOf('/') + 1));
    }

    private String begin() {
        Answer created =
                post(
                        "/api/counts",
                        "{\"jobId\": %d, \"by\": \"Ada\", \"sets\": \"opened\"}".formatted(job));
        assertThat(created.status()).isEqualTo(201);
        assertThat(created.eTag()).isEqualTo("\"0\"");
        return String.valueOf(created.headers().getLocation());
    }

    private Answer tap(String count, String part, int pieces) {
        return post(
                count + "/pieces",
                "{\"part\": \"%s\", \"pieces\": %d, \"by\": \"Ada\"}".formatted(part, pieces));
    }

    private Answer scan(String count, String code) {
        return post(count + "/scans", MAPPER.writeValueAsString(Map.of("code", code, "by", "Ada")));
    }

    private void fill(String count) {
        for (JsonNode line : get(count).body().get("lines")) {
            int missing = line.get("expected").intValue() - line.get("counted").intValue();
            assertThat(tap(count, line.get("part").stringValue(), missing).status()).isEqualTo(200);
        }
    }

    private static JsonNode line(JsonNode count, String part) {
        for (JsonNode line : count.get("lines")) {
            if (line.get("part").stringValue().equals(part)) {
                return line;
            }
        }
        throw new AssertionError("no line " + part + " in " + count);
    }

    private static List<String> values(JsonNode list, String field) {
        List<String> values = new ArrayList<>();
        list.forEach(entry -> values.add(entry.get(field).asString()));
        return values;
    }

    private Answer sign(String count) {
        return send(
                HttpMethod.POST,
                count + "/signature",
                get(count).eTag(),
                "{\"name\": \"Ada Quill\", \"remark\": \"all there\"}");
    }

    @Test
    void asksForTheWholeKitAndIsCompleteOnceItIsThere() {
        String count = begin();
        JsonNode fresh = get(count).body();
        assertThat(fresh.get("complete").booleanValue()).isFalse();
        assertThat(line(fresh, "TNA-10").get("expected").intValue()).isEqualTo(1);
        assertThat(line(fresh, "TNA-10").get("usedAt").toString()).contains("B1-1");
        assertThat(line(fresh, "PYF-10").get("usedAt").toString()).contains("spare for B1-1");
        fill(count);
        JsonNode full = get(count).body();
        assertThat(full.get("complete").booleanValue()).isTrue();
        assertThat(values(full.get("lines"), "state")).containsOnly("complete");
    }

    @Test
    void tellsShortagesExtrasAndWrongParts() {
        String count = begin();
        fill(count);
        tap(count, "TNA-10", -1);
        tap(count, "PYF-10", 2);
        JsonNode body = tap(count, "OSR-24", 1).body();
        assertThat(line(body, "TNA-10").get("state").stringValue()).isEqualTo("short");
        assertThat(line(body, "PYF-10").get("difference").intValue()).isEqualTo(2);
        assertThat(values(body.get("wrongParts"), "part")).containsExactly("OSR-24");
        assertThat(body.get("complete").booleanValue()).isFalse();
    }

    @Test
    void rejectsTapsThatCannotBe() {
        String count = begin();
        assertThat(tap(count, "TNA-10", -1).body().at("/errors/0/pointer").stringValue())
                .isEqualTo("/pieces");
        assertThat(tap(count, "NO-SUCH", 1).body().at("/errors/0/detail").stringValue())
                .contains("neither in this kit nor in the catalog");
        assertThat(get(count).eTag()).isEqualTo("\"0\"");
    }

    @Test
    void countsWhatAScannerTypes() {
        String count = begin();
        assertThat(scan(count, "TNA-10").body().get("kind").stringValue()).isEqualTo("counted");
        assertThat(scan(count, " tna-10 ").body().get("kind").stringValue()).isEqualTo("too-many");
        JsonNode wrong = scan(count, "OSR-24").body();
        assertThat(wrong.get("kind").stringValue()).isEqualTo("wrong-part");
        assertThat(wrong.get("sentence").stringValue()).contains("does not belong in this bag");
        String before = get(count).eTag();
        for (String code : List.of("4006381333931", "ZZ-9", "", "<b>", "FW0|x")) {
            JsonNode unknown = scan(count, code).body();
            assertThat(unknown.get("kind").stringValue()).describedAs(code).isEqualTo("unknown");
            assertThat(unknown.get("sentence").stringValue()).contains("Nothing was counted");
        }
        assertThat(get(count).eTag()).isEqualTo(before);
    }

    @Test
    void comparesTheLabelOfTheBag() {
        String count = begin();
        String print = get(count).body().at("/design/fingerprint").stringValue().substring(0, 12);
        String label = "FW1|" + reference + "|1|" + print;
        assertThat(scan(count, label).body().get("kind").stringValue()).isEqualTo("right-bag");
        JsonNode other = scan(count, "FW1|" + reference + "|2|" + print).body();
        assertThat(other.get("kind").stringValue()).isEqualTo("wrong-bag");
        assertThat(other.get("sentence").stringValue()).contains("revision 2, not 1");
        assertThat(scan(count, "FW1|Other|1|" + print).body().get("sentence").stringValue())
                .contains("job Other, not " + reference);
        assertThat(scan(count, "FW1|").body().get("kind").stringValue()).isEqualTo("wrong-bag");
        assertThat(get(count).eTag()).isEqualTo("\"0\"");
    }

    @Test
    void losesNoTapOfTwoPeople() throws Exception {
        String count = begin();
        int each = 40;
        List<Callable<Integer>> people = new ArrayList<>();
        for (int person = 0; person < 2; person++) {
            people.add(
                    () -> {
                        int good = 0;
                        for (int i = 0; i < each; i++) {
                            good += tap(count, "PYF-10", 1).status() == 200 ? 1 : 0;
                        }
                        return good;
                    });
        }
        people.add(
                () -> {
                    int good = 0;
                    for (int i = 0; i < each; i++) {
                        good += scan(count, "PYF-10").body().get("kind").isString() ? 1 : 0;
                    }
                    return good;
                });
        int sent = 0;
        try (ExecutorService pool = Executors.newFixedThreadPool(people.size())) {
            for (Future<Integer> done : pool.invokeAll(people)) {
                sent += done.get();
            }
        }
        assertThat(sent).isEqualTo(3 * each);
        Answer after = get(count);
        assertThat(line(after.body(), "PYF-10").get("counted").intValue()).isEqualTo(3 * each);
        assertThat(after.eTag()).isEqualTo("\"" + 3 * each + "\"");
    }

    @Test
    void recordsASubstituteThatAPersonAgreedTo() {
        String count = begin();
        fill(count);
        tap(count, "TNA-10", -1);
        JsonNode offered = tap(count, "PYF-10", 1).body().get("possibleSubstitutes");
        assertThat(offered).hasSize(1);
        assertThat(offered.at("/0/wanted").stringValue()).isEqualTo("TNA-10");
        assertThat(get(count).body().get("complete").booleanValue()).isFalse();
        JsonNode agreed =
                post(
                                count + "/substitutes",
                                """
                                {"wanted": "TNA-10", "offered": "PYF-10", "pieces": 1, "by": "Bo"}
                                """)
                        .body();
        assertThat(agreed.get("complete").booleanValue()).isTrue();
        assertThat(line(agreed, "TNA-10").at("/standIns/0/agreedBy").stringValue()).isEqualTo("Bo");
    }

    @Test
    void withdrawsASubstituteUntilTheCountIsSigned() {
        String count = begin();
        fill(count);
        tap(count, "TNA-10", -1);
        tap(count, "PYF-10", 1);
        String pair = "\"wanted\": \"TNA-10\", \"offered\": \"PYF-10\"";
        post(count + "/substitutes", "{%s, \"pieces\": 1, \"by\": \"Bo\"}".formatted(pair));
        Answer back = post(count + "/withdrawals", "{%s, \"by\": \"Ada\"}".formatted(pair));
        assertThat(back.status()).isEqualTo(200);
        assertThat(back.body().get("complete").booleanValue()).isFalse();
        assertThat(line(back.body(), "TNA-10").get("standIns")).isEmpty();
        assertThat(back.body().get("possibleSubstitutes")).hasSize(1);
        JsonNode kept = back.body().at("/agreedSubstitutes/0");
        assertThat(kept.get("by").stringValue()).isEqualTo("Bo");
        assertThat(kept.get("withdrawnBy").stringValue()).isEqualTo("Ada");

        Answer again = post(count + "/withdrawals", "{%s, \"by\": \"Ada\"}".formatted(pair));
        assertThat(again.status()).isEqualTo(400);
        assertThat(again.body().at("/errors/0/detail").stringValue())
                .isEqualTo("nothing is agreed for PYF-10 in place of TNA-10");
        assertThat(again.body().at("/errors/0/pointer").stringValue()).isEqualTo("/offered");

        post(count + "/substitutes", "{%s, \"pieces\": 1, \"by\": \"Bo\"}".formatted(pair));
        assertThat(get(count).body().get("complete").booleanValue()).isTrue();
        sign(count);
        Answer late = post(count + "/withdrawals", "{%s, \"by\": \"Ada\"}".formatted(pair));
        assertThat(late.status()).isEqualTo(409);
        assertThat(get(count).body().get("complete").booleanValue()).isTrue();
    }

    @ParameterizedTest
    @CsvSource({
        "TNA-10, PYF-15, 1, /offered, 'rated 15 A, not 10 A'",
        "TNA-10, TNM-10, 1, /offered, only a fuse in place of a breaker",
        "TNA-10, PYF-10, 2, /pieces, short of 1",
        "OSR-24, PYF-10, 1, /wanted, needs no OSR-24",
        "TNA-10, NO-SUCH, 1, /offered, is not in the catalog",
    })
    void rejectsASubstituteThatTheRulesDoNotAllow(
            String wanted, String offered, int pieces, String pointer, String detail) {
        String count = begin();
        Answer answer =
                post(
                        count + "/substitutes",
                        "{\"wanted\": \"%s\", \"offered\": \"%s\", \"pieces\": %d, \"by\": \"Bo\"}"
                                .formatted(wanted, offered, pieces));
        assertThat(answer.status()).isEqualTo(400);
        assertThat(answer.body().at("/errors/0/pointer").stringValue()).isEqualTo(pointer);
        assertThat(answer.body().at("/errors/0/detail").stringValue()).contains(detail);
        assertThat(get(count).eTag()).isEqualTo("\"0\"");
    }

    @Test
    void statesWhatAScaleSeesAndWhatToCountByHand() {
        String count = begin();
        JsonNode coarse = post(count + "/weight-statement", "{\"resolutionG\": 1}").body();
        assertThat(coarse.get("visible").booleanValue()).isFalse();
        assertThat(coarse.get("byHand")).isNotEmpty();
        assertThat(coarse.at("/terms/scatterPercent/seal").doubleValue()).isEqualTo(3);
        JsonNode fine =
                post(
                                count + "/weight-statement",
                                """
                                {"resolutionG": 0.001, "samplePieces": 1000,
                                 "scatterPercent": {"block": 0, "cap": 0, "wedge": 0, "terminal": 0,
                                   "seal": 0, "plug": 0, "fuse": 0, "auto-reset": 0, "wire": 0,
                                   "holder": 0}}
                                """)
                        .body();
        assertThat(fine.get("visible").booleanValue()).isTrue();
        assertThat(fine.get("byHand")).isEmpty();
        assertThat(get(count).eTag()).isEqualTo("\"0\"");
    }

    @Test
    void keepsAWeighingAsItWasJudged() {
        String count = begin();
        fill(count);
        JsonNode rest =
                post(count + "/weight-statement", "{\"resolutionG\": 0.1}").body().get("rest");
        double expectedG = rest.get("expectedG").doubleValue();
        JsonNode weighing =
                post(
                                count + "/weighings",
                                "{\"resolutionG\": 0.1, \"tareG\": 5, \"grossG\": %s, \"by\": \"Ada\"}"
                                        .formatted(5 + expectedG))
                        .body()
                        .at("/weighings/0");
        assertThat(weighing.get("outcome").stringValue()).isEqualTo("agrees");
        assertThat(weighing.get("differenceG").doubleValue()).isCloseTo(0, within(1e-5));

        // A breaker of 4.6 g becomes a fuse of 0.78 g: what was weighed before stays judged.
        tap(count, "TNA-10", -1);
        tap(count, "PYF-10", 1);
        JsonNode agreed =
                post(
                                count + "/substitutes",
                                """
                                {"wanted": "TNA-10", "offered": "PYF-10", "pieces": 1, "by": "Bo"}
                                """)
                        .body();
        assertThat(agreed.at("/weighings/0")).isEqualTo(weighing);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "weight-statement | {} | /resolutionG",
                "weight-statement | {\"resolutionG\": 0} | /resolutionG",
                "weight-statement | {\"resolutionG\": 1, \"scatterPercent\": {\"nut\": 1}} |"
                        + " /scatterPercent/nut",
                "weight-statement | {\"resolutionG\": 1, \"errorProbability\": 0.6} |"
                        + " /errorProbability",
                "weighings | {\"resolutionG\": 1, \"tareG\": 9, \"grossG\": 5, \"by\": \"A\"} |"
                        + " /grossG",
                "weighings | {\"resolutionG\": 1, \"grossG\": 5, \"by\": \" \"} | /by",
                "pieces | {\"part\": \"?\", \"pieces\": 1, \"by\": \"A\"} | /part",
                "pieces | {\"part\": \"PYF-10\", \"pieces\": 1.5, \"by\": \"A\"} | /pieces",
                "pieces | {\"part\": \"PYF-10\", \"pieces\": 1, \"by\": \"A\", \"x\": 1} | /x",
                "scans | {\"by\": \"A\"} | /code",
                "scans | [] | ''",
                "substitutes | nonsense | ''",
            })
    void namesWhatIsWrong(String path, String body, String pointer) {
        Answer answer = post(begin() + "/" + path, body);
        assertThat(answer.status()).isEqualTo(400);
        assertThat(values(answer.body().get("errors"), "pointer")).contains(pointer);
    }

    @Test
    void signsOnlyWhatThePersonSaw() {
        String count = begin();
        String seen = get(count).eTag();
        String name = "{\"name\": \"Ada\"}";
        assertThat(post(count + "/signature", name).status()).isEqualTo(428);
        tap(count, "PYF-10", 1);
        assertThat(send(HttpMethod.POST, count + "/signature", seen, name).status()).isEqualTo(412);
        assertThat(send(HttpMethod.DELETE, count, seen, "").status()).isEqualTo(412);
        assertThat(get(count).body().get("signedBy").isNull()).isTrue();
        assertThat(get(count + "/record").status()).isEqualTo(409);
        JsonNode signed = sign(count).body();
        assertThat(signed.get("signedBy").stringValue()).isEqualTo("Ada Quill");
        assertThat(signed.get("signedAt").stringValue()).isNotEmpty();
    }

    @Test
    void keepsASignedCountAsItIs() throws SQLException {
        String count = begin();
        fill(count);
        assertThat(sign(count).status()).isEqualTo(200);
        Answer signed = get(count);
        byte[] record = get(count + "/record").bytes();
        byte[] letter = get(count + "/record?paper=letter").bytes();

        assertThat(tap(count, "PYF-10", 1).status()).isEqualTo(409);
        assertThat(scan(count, "PYF-10").status()).isEqualTo(409);
        assertThat(
                        post(
                                        count + "/substitutes",
                                        "{\"wanted\": \"TNA-10\", \"offered\": \"PYF-10\","
                                                + " \"pieces\": 1, \"by\": \"A\"}")
                                .status())
                .isEqualTo(409);
        assertThat(
                        post(
                                        count + "/weighings",
                                        "{\"resolutionG\": 1, \"grossG\": 5, \"by\": \"A\"}")
                                .status())
                .isEqualTo(409);
        assertThat(sign(count).status()).isEqualTo(409);
        assertThat(send(HttpMethod.DELETE, count, signed.eTag(), "").status()).isEqualTo(409);

        long id = signed.body().get("id").longValue();
        for (String change :
                List.of(
                        "update bag_count set signed_by = 'Eve' where id = " + id,
                        "update bag_count set signed_by = null, signed_at = null, record_a4 = null,"
                                + " record_letter = null where id = "
                                + id,
                        "delete from bag_count where id = " + id,
                        "update count_line set quantity = 99 where count_id = " + id,
                        "delete from count_line where count_id = " + id,
                        "update count_tap set pieces = 99 where count_id = " + id,
                        "delete from count_tap where count_id = " + id,
                        "insert into count_tap (count_id, part_number, title, pieces, way,"
                                + " counted_by, counted_at) values ("
                                + id
                                + ", 'PYF-10', '', 1, 'tapped', 'Eve', now())",
                        "truncate bag_count cascade")) {
            try (Connection connection = TestDatabase.connect();
                    Statement statement = connection.createStatement()) {
                assertThatThrownBy(() -> statement.executeUpdate(change))
                        .describedAs(change)
                        .isInstanceOf(SQLException.class)
                        .hasMessageMatching("(?s).*(is signed and stays|are not emptied).*");
            }
        }

        Answer job = get("/api/jobs/" + this.job);
        assertThat(
                        send(
                                        HttpMethod.PUT,
                                        "/api/jobs/" + this.job,
                                        job.eTag(),
                                        document(reference, 2.5, ""))
                                .status())
                .isEqualTo(200);
        assertThat(get(count).eTag()).isEqualTo(signed.eTag());
        assertThat(get(count).body().get("lines")).isEqualTo(signed.body().get("lines"));
        assertThat(get(count + "/record").bytes()).isEqualTo(record);
        assertThat(get(count + "/record?paper=letter").bytes()).isEqualTo(letter);
        assertThat(new String(record, 0, 5, StandardCharsets.US_ASCII)).isEqualTo("%PDF-");
        assertThat(letter).isNotEqualTo(record);
    }

    @Test
    void letsNobodyTapWhileItIsSigned() throws Exception {
        for (int round = 0; round < 5; round++) {
            String count = begin();
            fill(count);
            String seen = get(count).eTag();
            try (ExecutorService pool = Executors.newFixedThreadPool(2)) {
                Future<Integer> signing =
                        pool.submit(
                                () ->
                                        send(
                                                        HttpMethod.POST,
                                                        count + "/signature",
                                                        seen,
                                                        "{\"name\": \"Ada\"}")
                                                .status());
                Future<Integer> tapping = pool.submit(() -> tap(count, "PYF-10", 1).status());
                assertThat(List.of(signing.get(), tapping.get()))
                        .isIn(List.of(200, 409), List.of(412, 200));
                int pieces = line(get(count).body(), "PYF-10").get("counted").intValue();
                assertThat(pieces).isEqualTo(tapping.get() == 200 ? 2 : 1);
            }
        }
    }

    @Test
    void saysWhatToSendAfterWhenTheJobMovedOn() {
        String count = begin();
        assertThat(get(count).body().get("newerRevision").isNull()).isTrue();
        String horn =
                """
                , {"id": "horn", "feed": "battery", "runM": 1, "ratingA": 15,
                   "devices": ["fuse"], "returnPath": "chassis",
                   "loads": [{"kind": "resistive", "watts": 90}]}
                """;
        Answer job = get("/api/jobs/" + this.job);
        assertThat(
                        send(
                                        HttpMethod.PUT,
                                        "/api/jobs/" + this.job,
                                        job.eTag(),
                                        document(reference, 2.5, horn))
                                .status())
                .isEqualTo(200);
        JsonNode newer = get(count).body().get("newerRevision");
        assertThat(newer.get("revision").intValue()).isEqualTo(2);

        // Old bag, plus what is added, less what is taken back, is the new bag.
        Map<String, Integer> bag = pieces(get(count).body().get("lines"), "expected");
        pieces(newer.get("toAdd"), "quantity")
                .forEach((part, more) -> bag.merge(part, more, Integer::sum));
        pieces(newer.get("toTakeBack"), "quantity")
                .forEach((part, less) -> bag.merge(part, -less, Integer::sum));
        bag.values().removeIf(pieces -> pieces == 0);
        assertThat(bag).isEqualTo(pieces(get(begin()).body().get("lines"), "expected"));
        assertThat(values(newer.get("toAdd"), "part")).contains("PYF-15");
        assertThat(newer.get("toAdd").toString()).contains("\"cutsMm\":[2");

        JsonNode older =
                post(
                                "/api/counts",
                                "{\"jobId\": %d, \"revision\": 1, \"by\": \"Ada\"}"
                                        .formatted(this.job))
                        .body();
        assertThat(older.at("/design/revision").intValue()).isEqualTo(1);
        assertThat(older.at("/newerRevision/revision").intValue()).isEqualTo(2);
    }

    private static Map<String, Integer> pieces(JsonNode list, String field) {
        Map<String, Integer> pieces = new LinkedHashMap<>();
        list.forEach(
                entry -> pieces.put(entry.get("part").stringValue(), entry.get(field).intValue()));
        return pieces;
    }

    @Test
    void rejectsABeginningThatCannotBe() {
        Answer answer =
                post(
                        "/api/counts",
                        "{\"jobId\": \"x\", \"by\": \"\", \"sets\": \"torn\", \"a\": 1}");
        assertThat(values(answer.body().get("errors"), "pointer"))
                .containsExactly("/jobId", "/sets", "/by", "/a");
        assertThat(
                        post(
                                        "/api/counts",
                                        "{\"jobId\": %d, \"revision\": 7, \"by\": \"A\"}"
                                                .formatted(job))
                                .body()
                                .at("/errors/0/detail")
                                .stringValue())
                .contains("revisions 1 to 1, not 7");
        assertThat(
                        post("/api/counts", "{\"jobId\": 99999999, \"by\": \"A\"}")
                                .body()
                                .at("/errors/0/pointer")
                                .stringValue())
                .isEqualTo("/jobId");
        assertThat(get("/api/counts/99999999").status()).isEqualTo(404);
    }

    @Test
    void checksAKitFromElsewhereInOneCall() {
        String parts =
                new String(
                        client.get()
                                .uri("/api/jobs/" + job + "/kit")
                                .accept(MediaType.parseMediaType("text/csv"))
                                .exchange()
                                .expectBody()
                                .returnResult()
                                .getResponseBody(),
                        StandardCharsets.UTF_8);
        JsonNode right = checkCsv("?jobId=" + job, parts).body();
        assertThat(right.get("complete").booleanValue()).isTrue();

        String csv =
                parts.replaceFirst("(?m)^device,TNA-10,.*\\R", "")
                        + "x,NEW-1,x,2\r\nx,OSR-24,x,1\r\n";
        JsonNode wrong = checkCsv("?jobId=" + job + "&revision=1", csv).body();
        assertThat(line(wrong, "TNA-10").get("state").stringValue()).isEqualTo("short");
        assertThat(values(wrong.get("wrongParts"), "part")).containsExactly("NEW-1", "OSR-24");
        assertThat(wrong.get("unknownParts").toString()).isEqualTo("[\"NEW-1\"]");

        Answer byDocument =
                post(
                        "/api/counts/check",
                        MAPPER.writeValueAsString(
                                Map.of(
                                        "job",
                                        MAPPER.readTree(document(reference, 1.5, "")),
                                        "csv",
                                        csv)));
        assertThat(byDocument.body().get("lines")).isEqualTo(wrong.get("lines"));
        assertThat(byDocument.body().at("/design/revision").isNull()).isTrue();
    }

    private Answer checkCsv(String query, String csv) {
        EntityExchangeResult<byte[]> result =
                client.post()
                        .uri("/api/counts/check" + query)
                        .header("Content-Type", "text/csv")
                        .body(csv.getBytes(StandardCharsets.UTF_8))
                        .exchange()
                        .expectBody()
                        .returnResult();
        return new Answer(
                result.getStatus().value(),
                result.getResponseHeaders(),
                result.getResponseBody() == null ? new byte[0] : result.getResponseBody());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "{\"jobId\": 1}",
                "{\"csv\": \"part,quantity\"}",
                "{\"jobId\": 1, \"job\": {}, \"csv\": \"part,quantity\"}",
                "{\"jobId\": 1, \"csv\": 5}",
                "{\"jobId\": 1, \"csv\": \"\"}",
                "{\"job\": {\"reference\": 1}, \"csv\": \"part,quantity\"}",
                "{\"jobId\": 1, \"csv\": \"part,quantity\\nA B,1\"}",
            })
    void rejectsAKitThatCannotBeChecked(String body) {
        Answer answer = post("/api/counts/check", body);
        assertThat(answer.status()).isEqualTo(400);
        assertThat(answer.body().get("errors")).isNotEmpty();
        assertThat(values(answer.body().get("errors"), "pointer"))
                .allMatch(pointer -> pointer.matches("/(csv|jobId|job(/.*)?)"));
    }

    @Test
    void listsCountsNewestFirst() {
        begin();
        String last = begin();
        JsonNode list = get("/api/counts?limit=1").body();
        assertThat(last).endsWith("/" + list.at("/counts/0/id").longValue());
        JsonNode older = get("/api/counts?limit=1&before=" + list.get("next").longValue()).body();
        assertThat(older.at("/counts/0/id").longValue())
                .isLessThan(list.at("/counts/0/id").longValue());
        assertThat(get("/api/counts?limit=0").status()).isEqualTo(400);
    }

    @Test
    void deletesACountThatIsNotSigned() {
        String count = begin();
        tap(count, "PYF-10", 1);
        assertThat(send(HttpMethod.DELETE, count, "", "").status()).isEqualTo(428);
        assertThat(send(HttpMethod.DELETE, count, get(count).eTag(), "").status()).isEqualTo(204);
        assertThat(get(count).status()).isEqualTo(404);
    }
}
