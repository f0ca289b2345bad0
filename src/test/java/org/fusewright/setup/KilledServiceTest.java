package org.fusewright.setup;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.SmallJob;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * What was acknowledged stays, whole, whoever is killed and when. {@code -Dfusewright.kills=50}
 * kills that often; the moments follow from the number of the kill.
 */
@Timeout(value = 3, unit = TimeUnit.HOURS)
class KilledServiceTest {
    private static final int KILLS = Integer.getInteger("fusewright.kills", 3);
    private static final int WRITERS = 3;
    private static final int MOST_WRITES = 300;
    private static final JsonMapper MAPPER = new JsonMapper();
    // One folder for all: the second test finds what the first one left.
    @TempDir private static Path parent;

    private final Path home = parent.resolve("our shop");

    private enum Victim {
        SERVICE,
        SERVICE_AND_DATABASE,
        DATABASE
    }

    /**
     * What a writer was told of one of its jobs.
     *
     * @param revision the newest one that was acknowledged; its title ends with that number
     * @param quote empty when none was acknowledged
     */
    private record Acknowledged(String job, int revision, String quote) {}

    @Test
    void keepsEveryAcknowledgedWriteWholeWheneverItIsKilled()
            throws IOException, InterruptedException {
        Map<String, Acknowledged> all = new HashMap<>();
        for (int kill = 0; kill < KILLS; kill++) {
            Victim victim = Victim.values()[kill % Victim.values().length];
            int writes = 1 + new Random(kill).nextInt(MOST_WRITES);
            all.putAll(killDuringWrites(kill, victim, writes));
            try (ServiceProcess restarted = ServiceProcess.start(home)) {
                assertThat(restarted.output()).contains("Fusewright is ready");
                assertKept(restarted, all, "kill %d, %s".formatted(kill, victim));
                assertNothingHalf(restarted);
            }
        }
        assertThat(all).hasSizeGreaterThan(KILLS);
    }

    private Map<String, Acknowledged> killDuringWrites(int kill, Victim victim, int writes)
            throws IOException, InterruptedException {
        Map<String, Acknowledged> acknowledged = new ConcurrentHashMap<>();
        AtomicInteger count = new AtomicInteger();
        List<Thread> writers = new ArrayList<>();
        ServiceProcess killed = ServiceProcess.start(home);
        ProcessHandle database = killed.database();
        try {
            for (int i = 0; i < WRITERS; i++) {
                String prefix = "K-" + kill + "-" + i + "-";
                URI address = killed.address();
                writers.add(
                        Thread.ofPlatform()
                                .start(() -> write(address, prefix, acknowledged, count)));
            }
            while (count.get() < writes && writers.stream().anyMatch(Thread::isAlive)) {
                Thread.sleep(Duration.ofMillis(1));
            }
            if (victim != Victim.DATABASE) {
                killed.kill();
            }
            if (victim != Victim.SERVICE) {
                database.destroyForcibly();
                database.onExit().join();
            }
            for (Thread writer : writers) {
                writer.join();
            }
        } finally {
            killed.kill();
            // The one that the service has started again in its place may still be there.
            killed.findDatabase().ifPresent(ProcessHandle::destroy);
        }
        return acknowledged;
    }

    /** Makes jobs, changes each some times, and quotes it, until it is told no more. */
    private static void write(
            URI address,
            String prefix,
            Map<String, Acknowledged> acknowledged,
            AtomicInteger count) {
        try (HttpClient client = HttpClient.newHttpClient()) {
            for (int number = 0; ; number++) {
                String reference = prefix + number;
                HttpResponse<String> made =
                        send(client, address, "POST", "/api/jobs", "", document(reference, 1));
                if (made.statusCode() != 201) {
                    return;
                }
                String job =
                        URI.create(made.headers().firstValue("Location").orElseThrow()).getPath();
                acknowledged.put(job, new Acknowledged(job, 1, ""));
                count.incrementAndGet();
                String version = made.headers().firstValue("ETag").orElseThrow();
                for (int revision = 2; revision <= 4; revision++) {
                    HttpResponse<String> changed =
                            send(
                                    client,
                                    address,
                                    "PUT",
                                    job,
                                    version,
                                    document(reference, revision));
                    if (changed.statusCode() != 200) {
                        return;
                    }
                    acknowledged.put(job, new Acknowledged(job, revision, ""));
                    count.incrementAndGet();
                    version = changed.headers().firstValue("ETag").orElseThrow();
                }
                HttpResponse<String> quoted =
                        send(
                                client,
                                address,
                                "POST",
                                "/api/quotes",
                                "",
                                """
                                {"job": %s, "kits": 2, "variants": ["fuses", "cheapest"],
                                 "customerKind": "private"}
                                """
                                        .formatted(job.substring(job.lastIndexOf('/') + 1)));
                if (quoted.statusCode() != 201) {
                    return;
                }
                String quote =
                        URI.create(quoted.headers().firstValue("Location").orElseThrow()).getPath();
                acknowledged.put(job, new Acknowledged(job, 4, quote));
                count.incrementAndGet();
            }
        } catch (IOException serviceGone) {
            // The end of every writer: what it was told is kept so far is what counts.
            return;
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }

    private static String document(String reference, int revision) {
        return SmallJob.document(reference, "state " + revision);
    }

    private static HttpResponse<String> send(
            HttpClient client, URI address, String method, String path, String match, String body)
            throws IOException, InterruptedException {
        HttpRequest.Builder request =
                HttpRequest.newBuilder(address.resolve(path))
                        .timeout(Duration.ofSeconds(20))
                        .header("Content-Type", "application/json")
                        .method(method, BodyPublishers.ofString(body));
        if (!match.isEmpty()) {
            request.header("If-Match", match);
        }
        return client.send(request.build(), BodyHandlers.ofString());
    }

    private static void assertKept(
            ServiceProcess service, Map<String, Acknowledged> all, String after)
            throws IOException, InterruptedException {
        for (Acknowledged told : all.values()) {
            JsonNode revisions = MAPPER.readTree(get(service, told.job() + "/revisions"));
            // One more than told is what was kept just when it was killed.
            assertThat(revisions.at("/0/revision").intValue())
                    .as(after + ": " + told)
                    .isBetween(told.revision(), told.revision() + 1);
            if (!told.quote().isEmpty()) {
                assertThat(MAPPER.readTree(get(service, told.quote())).at("/id").isIntegralNumber())
                        .as(after + ": " + told)
                        .isTrue();
            }
        }
    }

    /** Whatever is there is there with all that belongs to it, acknowledged or not. */
    private static void assertNothingHalf(ServiceProcess service)
            throws IOException, InterruptedException {
        JsonNode jobs = MAPPER.readTree(get(service, "/api/jobs?limit=100")).get("jobs");
        for (JsonNode job : jobs) {
            String path = "/api/jobs/" + job.get("id").asString();
            JsonNode document = MAPPER.readTree(get(service, path));
            JsonNode revisions = MAPPER.readTree(get(service, path + "/revisions"));
            int newest = job.get("revision").intValue();
            assertThat(revisions.size()).as(path).isEqualTo(newest);
            assertThat(revisions.at("/0/document")).as(path).isEqualTo(document);
            for (int i = 0; i < newest; i++) {
                JsonNode revision = revisions.get(i);
                assertThat(revision.get("revision").intValue()).as(path).isEqualTo(newest - i);
                if (document.get("reference").asString().startsWith("K-")) {
                    assertThat(revision.at("/document/title").asString())
                            .as(path)
                            .isEqualTo("state " + (newest - i));
                }
            }
        }
        JsonNode quotes = MAPPER.readTree(get(service, "/api/quotes?limit=100")).get("quotes");
        for (JsonNode quote : quotes) {
            String path = "/api/quotes/" + quote.get("id").asString();
            assertThat(MAPPER.readTree(get(service, path)).at("/quote/variants").size())
                    .as(path)
                    .isEqualTo(2);
        }
    }

    @Test
    void stopsTheDatabaseWithTheServiceAndTurnsASecondServiceAway()
            throws IOException, InterruptedException {
        ProcessHandle database;
        try (ServiceProcess service = ServiceProcess.start(home)) {
            database = service.database();
            assertThat(service.output()).doesNotContain("WARN", "ERROR");
            assertThat(service.address()).hasScheme("http").hasHost("127.0.0.1");
            assertThat(get(service, "/actuator/health")).isEqualTo("{\"status\":\"UP\"}");

            try (ServiceProcess second = ServiceProcess.start(home)) {
                assertThat(second.output())
                        .contains("is in use by another Fusewright")
                        .doesNotContain("\tat ", "Exception");
            }
            assertThat(get(service, "/actuator/health")).isEqualTo("{\"status\":\"UP\"}");
        }
        assertThat(database.onExit()).succeedsWithin(Duration.ofSeconds(5));
    }

    private static String get(ServiceProcess service, String path)
            throws IOException, InterruptedException {
        try (HttpClient client = HttpClient.newHttpClient()) {
            HttpRequest request = HttpRequest.newBuilder(service.address().resolve(path)).build();
            return client.send(request, BodyHandlers.ofString()).body();
        }
    }
}
