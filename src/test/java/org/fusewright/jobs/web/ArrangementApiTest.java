package org.fusewright.jobs.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.ServiceTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpMethod;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.client.EntityExchangeResult;
import org.springframework.test.web.servlet.client.RestTestClient;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * Picking an arrangement and keeping its places, over HTTP: the API, and the page's plain forms.
 */
@ServiceTest
class ArrangementApiTest {
    private static final JsonMapper JSON = JsonMapper.shared();
    private static final AtomicInteger NUMBER = new AtomicInteger();

    @Autowired private RestTestClient client;

    private record Answer(int status, HttpHeaders headers, String text) {
        JsonNode body() {
            return JSON.readTree(text);
        }

        String eTag() {
            return String.valueOf(headers.getETag());
        }
    }

    private static ObjectNode job() {
        ObjectNode job =
                (ObjectNode)
                        JSON.readTree(
                                """
                                {"reference": "ARR-%d", "supply": {"nominalV": 12},
                                 "feeds": [{"id": "battery", "terminal": "30", "lengthM": 0.6,
                                            "sourceDistanceM": 0.15}],
                                 "circuits": [], "choices": {"devices": ["fuse"]}}
                                """
                                        .formatted(NUMBER.incrementAndGet()));
        for (int i = 0; i < 9; i++) {
            ObjectNode circuit = job.withArray("circuits").addObject();
            circuit.put("id", "c" + i).put("feed", "battery").put("runM", 1);
            if (i < 3) {
                circuit.putObject("relay")
                        .put("triggerFrom", "controller")
                        .put("triggerM", 0.5)
                        .put("groundM", 0.3);
            }
            circuit.putArray("loads").addObject().put("kind", "electronic").put("amps", 2);
        }
        return job;
    }

    /** Two blocks that the job fixes, each of its own type. */
    private static ObjectNode fixedToTwoTypes(ObjectNode job) {
        ObjectNode fixed = job.deepCopy();
        fixed.withObject("/circuits/7").putObject("place").put("block", "L").put("part", "WDB-3");
        fixed.withObject("/circuits/8").putObject("place").put("block", "R").put("part", "WDB-4");
        return fixed;
    }

    private Answer send(HttpMethod method, String path, String ifMatch, String type, String body) {
        RestTestClient.RequestBodySpec request = client.method(method).uri(path);
        if (!ifMatch.isEmpty()) {
            request.header(HttpHeaders.IF_MATCH, ifMatch);
        }
        if (!body.isEmpty()) {
            request.contentType(MediaType.parseMediaType(type)).body(body);
        }
        EntityExchangeResult<byte[]> result = request.exchange().expectBody().returnResult();
        byte[] bytes = result.getResponseBody();
        return new Answer(
                result.getStatus().value(),
                result.getResponseHeaders(),
                bytes == null ? "" : new String(bytes, StandardCharsets.UTF_8));
    }

    private Answer sendJson(HttpMethod method, String path, String ifMatch, ObjectNode body) {
        return send(method, path, ifMatch, MediaType.APPLICATION_JSON_VALUE, body.toString());
    }

    private Answer post(String path, String ifMatch) {
        return send(HttpMethod.POST, path, ifMatch, "", "");
    }

    private Answer postForm(String path, String form) {
        return send(HttpMethod.POST, path, "", MediaType.APPLICATION_FORM_URLENCODED_VALUE, form);
    }

    private Answer get(String path) {
        return send(HttpMethod.GET, path, "", "", "");
    }

    /** Its path in the API. */
    private String create(ObjectNode job) {
        Answer created = sendJson(HttpMethod.POST, "/api/jobs", "", job);
        assertThat(created.status()).isEqualTo(201);
        String location = String.valueOf(created.headers().getLocation());
        return location.substring(location.indexOf("/api/"));
    }

    private static String page(String path) {
        return path.substring("/api".length());
    }

    private static String version(String eTag) {
        return eTag.replaceAll("\\D", "");
    }

    private JsonNode kitOf(String path) {
        Answer kit = sendJson(HttpMethod.POST, "/api/kits", "", (ObjectNode) get(path).body());
        assertThat(kit.status()).isEqualTo(200);
        return kit.body();
    }

    private void assertUnchanged(String path, ObjectNode job) {
        assertThat(get(path).body()).isEqualTo(job);
        assertThat(get(path + "/revisions").body()).hasSize(1);
    }

    private static List<String> listPicked(JsonNode offers) {
        List<String> picked = new ArrayList<>();
        offers.get("arrangements")
                .forEach(
                        offer -> {
                            if (offer.get("picked").asBoolean()) {
                                offer.get("bestIn").forEach(kind -> picked.add(kind.asString()));
                            }
                        });
        return picked;
    }

    @Test
    void keepsThePlacesOfTheKit() {
        String path = create(job());
        JsonNode before = kitOf(path).get("blocks");
        String first = get(path).eTag();

        Answer kept = post(path + "/wired", first);

        assertThat(kept.status()).isEqualTo(200);
        assertThat(kept.eTag()).isNotEqualTo(first).isEqualTo(get(path).eTag());
        assertThat(kept.body()).isEqualTo(get(path).body());
        for (JsonNode circuit : kept.body().get("circuits")) {
            assertThat(circuit.at("/place/fixed").asBoolean(true)).isFalse();
            assertThat(circuit.at("/relay/place").isMissingNode()).isEqualTo(!circuit.has("relay"));
        }
        JsonNode after = kitOf(path);
        assertThat(after.get("blocks")).isEqualTo(before);
        assertThat(after.at("/fit/moved")).isEmpty();
    }

    @Test
    void keepsNoPlacesOfAStaleJob() {
        ObjectNode job = job();
        String path = create(job);
        String first = get(path).eTag();
        ObjectNode changed = job.deepCopy();
        changed.put("title", "Changed meanwhile");
        assertThat(sendJson(HttpMethod.PUT, path, first, changed).status()).isEqualTo(200);

        assertThat(post(path + "/wired", first).status()).isEqualTo(412);
        assertThat(postForm(page(path) + "/wired", "version=" + version(first)).status())
                .isEqualTo(412);
        assertThat(get(path).body()).isEqualTo(changed);
        assertThat(get(path + "/revisions").body()).hasSize(2);
    }

    @Test
    void keepsNoPlacesWhereNoVersionIsNamed() {
        ObjectNode job = job();
        String path = create(job);

        Answer answer = post(path + "/wired", "");

        assertThat(answer.status()).isEqualTo(428);
        assertThat(answer.headers().getContentType()).isEqualTo(MediaType.APPLICATION_PROBLEM_JSON);
        assertUnchanged(path, job);
    }

    @ParameterizedTest
    @ValueSource(strings = {"cheapest", "fewest-blocks", "most-spare", "coolest", "one-block-type"})
    void picksOnThePage(String kind) {
        String path = create(job());
        String form = "version=" + version(get(path).eTag()) + "&kind=" + kind;

        Answer picked = postForm(page(path) + "/arrangement", form);

        assertThat(picked.status()).isEqualTo(302);
        assertThat(String.valueOf(picked.headers().getLocation())).endsWith(page(path));
        assertThat(get(path).body().at("/choices/arrangement").asString()).isEqualTo(kind);
        assertThat(get(path).body().at("/choices/devices/0").asString()).isEqualTo("fuse");
        assertThat(kitOf(path).at("/fit/arrangement").asString()).isEqualTo(kind);
        assertThat(listPicked(get(path + "/arrangements").body())).contains(kind);
    }

    @Test
    void picksNothingForAStaleJobOrOfAKindThatIsNone() {
        ObjectNode job = job();
        String path = create(job);
        long version = Long.parseLong(version(get(path).eTag()));
        String target = page(path) + "/arrangement";

        assertThat(postForm(target, "version=" + (version + 1) + "&kind=coolest").status())
                .isEqualTo(412);
        assertThat(postForm(target, "version=" + version + "&kind=warmest").status())
                .isEqualTo(400);
        assertThat(postForm(target, "kind=coolest").status()).isEqualTo(400);
        assertUnchanged(path, job);
    }

    @Test
    void tellsOfAPickThatIsNoLongerPossible() {
        ObjectNode job = job();
        job.withObject("/choices").put("arrangement", "one-block-type");
        String path = create(job);
        assertThat(kitOf(path).at("/fit/arrangement").asString()).isEqualTo("one-block-type");
        String first = get(path).eTag();

        assertThat(sendJson(HttpMethod.PUT, path, first, fixedToTwoTypes(job)).status())
                .isEqualTo(200);

        JsonNode fit = kitOf(path).get("fit");
        assertThat(fit.get("arrangement").asString()).isEqualTo("cheapest");
        assertThat(fit.get("why").toString()).contains("No one type takes every part any more");
        assertThat(get(path).body().at("/choices/arrangement").asString())
                .as("the pick stays, for when it becomes possible again")
                .isEqualTo("one-block-type");
        JsonNode offers = get(path + "/arrangements").body();
        assertThat(offers.toString()).doesNotContain("one-block-type");
        assertThat(get(page(path)).text()).contains("No one type takes every part any more");
    }
}
