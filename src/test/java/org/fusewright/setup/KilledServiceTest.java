package org.fusewright.setup;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

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
import java.util.List;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.TimeUnit;

/** What was acknowledged stays, whoever is killed. */
@Timeout(value = 2, unit = TimeUnit.MINUTES)
class KilledServiceTest {
    private static final int WRITERS = 3;
    private static final int ENOUGH = 150;
    private static final String JOB =
            """
            {"reference": "%s", "supply": {"nominalV": 12},
             "feeds": [{"id": "battery", "terminal": "30", "lengthM": 0.5, "sourceDistanceM": 0.1}],
             "circuits": [{"id": "horn", "feed": "battery", "runM": 1,
                           "loads": [{"kind": "coil", "amps": 3}]}]}
            """;

    // One folder for all: the second test finds what the first one left.
    @TempDir private static Path parent;

    private final Path home = parent.resolve("our shop");

    /** A job that the service said it has kept. */
    private record Acknowledged(String reference, String location) {}

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void keepsEveryAcknowledgedJobWhenKilledDuringWrites(boolean killDatabaseToo)
            throws IOException, InterruptedException {
        Queue<Acknowledged> acknowledged = new ConcurrentLinkedQueue<>();
        List<Thread> writers = new ArrayList<>();
        ServiceProcess killed = ServiceProcess.start(home);
        ProcessHandle database = killed.database();
        try {
            for (int i = 0; i < WRITERS; i++) {
                String prefix = "K-" + killDatabaseToo + "-" + i + "-";
                URI jobs = killed.address().resolve("/api/jobs");
                writers.add(Thread.ofPlatform().start(() -> keepJobs(jobs, prefix, acknowledged)));
            }
            waitFor(acknowledged, ENOUGH);
            killed.kill();
            if (killDatabaseToo) {
                database.destroyForcibly();
                database.onExit().join();
            } else {
                assertThat(database.isAlive()).isTrue();
            }
            for (Thread writer : writers) {
                writer.join();
            }
            try (ServiceProcess restarted = ServiceProcess.start(home)) {
                assertThat(restarted.output()).contains("Fusewright is ready");
                assertThat(database.isAlive()).isFalse();
                for (Acknowledged job : acknowledged) {
                    assertThat(get(restarted, job.location()))
                            .contains("\"" + job.reference() + "\"");
                }
            }
        } finally {
            killed.kill();
            database.destroy();
        }
    }

    private static void keepJobs(URI jobs, String prefix, Queue<Acknowledged> acknowledged) {
        try (HttpClient client = HttpClient.newHttpClient()) {
            for (int number = 0; ; number++) {
                String reference = prefix + number;
                HttpRequest request =
                        HttpRequest.newBuilder(jobs)
                                .header("Content-Type", "application/json")
                                .POST(BodyPublishers.ofString(JOB.formatted(reference)))
                                .build();
                HttpResponse<String> answer = client.send(request, BodyHandlers.ofString());
                assertThat(answer.statusCode()).isEqualTo(201);
                acknowledged.add(
                        new Acknowledged(
                                reference, answer.headers().firstValue("Location").orElseThrow()));
            }
        } catch (IOException serviceGone) {
            // The end of every writer: what it was told is kept so far is what counts.
            return;
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }

    private static void waitFor(Queue<Acknowledged> acknowledged, int count)
            throws InterruptedException {
        while (acknowledged.size() < count) {
            Thread.sleep(Duration.ofMillis(5));
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
