package org.fusewright.setup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import org.fusewright.SmallJob;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

import java.io.IOException;
import java.io.OutputStream;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** What the service does when its machine fails it, and how it ends. */
@Timeout(value = 3, unit = TimeUnit.MINUTES)
class ServiceFaultsTest {
    private static final JsonMapper MAPPER = new JsonMapper();

    private static HttpResponse<String> get(ServiceProcess service, String path)
            throws IOException, InterruptedException {
        return send(service, HttpRequest.newBuilder(service.address().resolve(path)));
    }

    private static HttpResponse<String> keepJob(ServiceProcess service, String reference)
            throws IOException, InterruptedException {
        return send(
                service,
                HttpRequest.newBuilder(service.address().resolve("/api/jobs"))
                        .header("Content-Type", "application/json")
                        .POST(BodyPublishers.ofString(SmallJob.document(reference))));
    }

    private static HttpResponse<String> send(ServiceProcess service, HttpRequest.Builder request)
            throws IOException, InterruptedException {
        try (HttpClient client = HttpClient.newHttpClient()) {
            return client.send(
                    request.timeout(Duration.ofSeconds(20)).build(), BodyHandlers.ofString());
        }
    }

    @Test
    void startsItsDatabaseAgainWhenThatIsKilled(@TempDir Path home)
            throws IOException, InterruptedException {
        try (ServiceProcess service = ServiceProcess.start(home)) {
            HttpResponse<String> kept = keepJob(service, "BEFORE");
            assertThat(kept.statusCode()).isEqualTo(201);
            service.database().destroyForcibly();
            Instant patience = Instant.now().plusSeconds(60);
            HttpResponse<String> answer = get(service, "/api/jobs");
            while (answer.statusCode() != 200) {
                assertThat(answer.statusCode()).isEqualTo(503);
                assertThat(Instant.now()).isBefore(patience);
                answer = get(service, "/api/jobs");
            }
            // The connections of before may still be noticed one by one.
            Thread.sleep(Duration.ofSeconds(3));
            String job = URI.create(kept.headers().firstValue("Location").orElseThrow()).getPath();
            assertThat(get(service, job).body()).contains("\"BEFORE\"");
            assertThat(keepJob(service, "AFTER").statusCode()).isEqualTo(201);
            assertThat(service.output()).contains("it is started again");
        }
    }

    /**
     * On a disk of its own, which takes a system with mount namespaces and the right to use them.
     */
    @Test
    void turnsChangesAwayOnAFullDiskAndGoesOnReading(@TempDir Path parent)
            throws IOException, InterruptedException {
        Path disk = Files.createDirectory(parent.resolve("disk"));
        List<String> onSmallDisk =
                List.of(
                        "unshare",
                        "--mount",
                        "sh",
                        "-c",
                        "mount -t tmpfs -o size=400m none '" + disk + "' && exec \"$@\"",
                        "sh");
        assumeTrue(isPossible(onSmallDisk), "no disk can be made for the test");
        try (ServiceProcess service = ServiceProcess.start(onSmallDisk, disk)) {
            HttpResponse<String> kept = keepJob(service, "BEFORE");
            assertThat(kept.statusCode()).isEqualTo(201);
            String job = URI.create(kept.headers().firstValue("Location").orElseThrow()).getPath();
            Path seen = Path.of("/proc/" + service.pid() + "/root" + disk);

            fill(seen.resolve("filler"));
            for (int i = 0; i < 20; i++) {
                HttpResponse<String> refused = keepJob(service, "FULL-" + i);
                assertThat(refused.statusCode()).isEqualTo(507);
                assertThat(refused.body()).contains("The disk is full, so no change can be kept");
                assertThat(get(service, job).body()).contains("\"BEFORE\"");
                assertThat(get(service, "/jobs").statusCode()).isEqualTo(200);
            }

            Files.delete(seen.resolve("filler"));
            assertThat(keepJob(service, "AFTER").statusCode()).isEqualTo(201);
            String all = get(service, "/api/jobs?limit=100").body();
            assertThat(all).contains("\"BEFORE\"", "\"AFTER\"").doesNotContain("FULL-");
            assertThat(service.output()).doesNotContain("\tat ");
        }
    }

    private static boolean isPossible(List<String> onSmallDisk)
            throws IOException, InterruptedException {
        String[] command = onSmallDisk.toArray(new String[onSmallDisk.size() + 1]);
        command[onSmallDisk.size()] = "true";
        try {
            return new ProcessBuilder(command).start().waitFor() == 0;
        } catch (IOException noSuchProgram) {
            return false;
        }
    }

    /** To the last byte. */
    private static void fill(Path filler) {
        byte[] piece = new byte[64 * 1024];
        try (OutputStream out = Files.newOutputStream(filler)) {
            while (true) {
                out.write(piece);
            }
        } catch (IOException full) {
            assertThat(filler).exists();
        }
    }

    @Test
    void finishesWhatItHasBegunWhenAskedToStop(@TempDir Path home)
            throws IOException, InterruptedException {
        try (ServiceProcess service = ServiceProcess.start(home)) {
            URI address = service.address();
            ProcessHandle database = service.database();
            byte[] job = SmallJob.document("SLOW").getBytes(StandardCharsets.UTF_8);
            int half = job.length / 2;
            try (Socket slow = new Socket(address.getHost(), address.getPort());
                    Socket looking = new Socket(address.getHost(), address.getPort())) {
                looking.getOutputStream()
                        .write(
                                ("GET /jobs/1/live HTTP/1.1\r\nHost: 127.0.0.1\r\n"
                                                + "Accept: text/event-stream\r\n\r\n")
                                        .getBytes(StandardCharsets.US_ASCII));
                OutputStream out = slow.getOutputStream();
                out.write(
                        ("POST /api/jobs HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\n"
                                        + "Content-Type: application/json\r\nContent-Length: "
                                        + job.length
                                        + "\r\n\r\n")
                                .getBytes(StandardCharsets.US_ASCII));
                out.write(job, 0, half);
                out.flush();
                Thread.sleep(Duration.ofMillis(500)); // the request is begun
                service.askToStop();
                Thread.sleep(Duration.ofMillis(500)); // the stop is begun
                assertThat(service.handle().isAlive()).isTrue();
                out.write(job, half, job.length - half);
                out.flush();
                String answer =
                        new String(slow.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
                assertThat(answer).startsWith("HTTP/1.1 201");
            }
            assertThat(service.handle().onExit()).succeedsWithin(Duration.ofSeconds(20));
            assertThat(database.onExit()).succeedsWithin(Duration.ofSeconds(5));
        }
        try (ServiceProcess again = ServiceProcess.start(home)) {
            assertThat(get(again, "/api/jobs?limit=100").body()).contains("\"SLOW\"");
        }
    }

    @Test
    void writesALogForMachinesWithTheRequestsNameAndNoSecret(@TempDir Path home)
            throws IOException, InterruptedException {
        try (ServiceProcess service =
                ServiceProcess.start(home, "--logging.structured.format.console=ecs")) {
            HttpResponse<String> failed;
            signal("STOP", service.database());
            try {
                failed =
                        send(
                                service,
                                HttpRequest.newBuilder(
                                                service.address().resolve("/jobs/1?secret=s3cr3t"))
                                        .header("X-Request-Id", "shop-window-17"));
            } finally {
                signal("CONT", service.database());
            }
            assertThat(failed.statusCode()).isEqualTo(503);
            assertThat(failed.headers().firstValue("X-Request-Id")).hasValue("shop-window-17");
            assertThat(service.lines()).isNotEmpty();
            for (String line : service.lines()) {
                JsonNode entry = MAPPER.readTree(line);
                assertThat(entry.get("message").asString()).isNotBlank();
                assertThat(entry.get("log").get("level").asString()).isNotBlank();
            }
            assertThat(service.lines())
                    .anyMatch(
                            line ->
                                    line.contains("\"request\":\"shop-window-17\"")
                                            && line.contains("GET /jobs/{id} failed"));
            assertThat(service.output())
                    .doesNotContain(Files.readString(home.resolve("database-password")))
                    .doesNotContain("s3cr3t");
        }
    }

    /** To a process and to all that it has started. */
    private static void signal(String name, ProcessHandle process)
            throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of("kill", "-" + name));
        Stream.concat(Stream.of(process), process.descendants())
                .forEach(each -> command.add(String.valueOf(each.pid())));
        assertThat(new ProcessBuilder(command).start().waitFor()).isZero();
    }
}
