package org.fusewright.setup;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.FusewrightApplication;
import org.fusewright.SmallJob;
import org.fusewright.TestDatabase;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.boot.test.util.TestPropertyValues;
import org.springframework.context.ConfigurableApplicationContext;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * While the database cannot be reached, requests are told so soon, and afterwards all is well
 * again. The outage lasts some seconds, or {@code -Dfusewright.outage=60} seconds.
 */
@Timeout(value = 5, unit = TimeUnit.MINUTES)
class OutageTest {
    private static final Duration OUTAGE =
            Duration.ofSeconds(Integer.getInteger("fusewright.outage", 4));
    private static final Duration RECOVERY = Duration.ofSeconds(10);
    private static final Duration SOON = Duration.ofSeconds(8);
    private static final AtomicInteger NUMBER = new AtomicInteger();

    private static Relay relay;
    private static ConfigurableApplicationContext service;
    private static HttpClient client;

    @BeforeAll
    static void startBehindTheRelay() {
        service =
                new SpringApplicationBuilder(FusewrightApplication.class)
                        .initializers(
                                TestDatabase.newOne("fusewright_outage"), OutageTest::goByRelay)
                        .run(
                                "--server.port=0",
                                "--logging.level.org.fusewright=off",
                                "--spring.datasource.hikari.data-source-properties.socketTimeout=2");
        client = HttpClient.newHttpClient();
    }

    private static void goByRelay(ConfigurableApplicationContext context) {
        URI database =
                URI.create(
                        context.getEnvironment()
                                .getRequiredProperty("spring.datasource.url")
                                .substring("jdbc:".length()));
        try {
            relay = new Relay(database.getHost(), database.getPort());
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
        TestPropertyValues.of(
                        "spring.datasource.url=jdbc:"
                                + database.toString()
                                        .replace(":" + database.getPort(), ":" + relay.port()))
                .applyTo(context);
    }

    @AfterAll
    static void stop() {
        client.close();
        service.close();
        relay.close();
    }

    private HttpResponse<String> send(String method, String path, String body, String accept)
            throws IOException, InterruptedException {
        String port = service.getEnvironment().getRequiredProperty("local.server.port");
        return client.send(
                HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path))
                        .header("Content-Type", "application/json")
                        .header("Accept", accept)
                        .timeout(SOON)
                        .method(method, BodyPublishers.ofString(body))
                        .build(),
                BodyHandlers.ofString());
    }

    private HttpResponse<String> keepJob() throws IOException, InterruptedException {
        return send(
                "POST",
                "/api/jobs",
                SmallJob.document("OUT-" + NUMBER.incrementAndGet()),
                "application/json");
    }

    private HttpResponse<String> get(String path) throws IOException, InterruptedException {
        return send("GET", path, "", "*/*");
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void tellsSoonThatTheDatabaseIsGoneAndRecoversByItself(boolean silently)
            throws IOException, InterruptedException {
        HttpResponse<String> kept = keepJob();
        assertThat(kept.statusCode()).isEqualTo(201);
        String job = URI.create(kept.headers().firstValue("Location").orElseThrow()).getPath();

        if (silently) {
            relay.silence();
        } else {
            relay.cut();
        }
        Instant end = Instant.now().plus(OUTAGE);
        do {
            for (HttpResponse<String> answer :
                    List.of(
                            send("GET", job, "", "application/json"),
                            send("GET", "/jobs", "", "text/html"),
                            keepJob())) {
                assertThat(answer.statusCode()).isEqualTo(503);
                assertThat(answer.headers().firstValue("Retry-After")).hasValue("5");
                assertThat(answer.body()).contains("The database does not answer just now");
            }
            assertThat(get("/actuator/health/liveness").statusCode()).isEqualTo(200);
            assertThat(get("/actuator/health/readiness").statusCode()).isEqualTo(503);
        } while (Instant.now().isBefore(end));
        // What needs no database goes on.
        assertThat(
                        send("POST", "/api/kits", SmallJob.document("OUT"), "application/json")
                                .statusCode())
                .isEqualTo(200);

        relay.mend();
        Instant patience = Instant.now().plus(RECOVERY);
        while (get(job).statusCode() != 200) {
            assertThat(Instant.now()).isBefore(patience);
        }
        assertThat(get("/actuator/health").body()).isEqualTo("{\"status\":\"UP\"}");
        assertThat(get("/actuator/health/readiness").statusCode()).isEqualTo(200);
        assertThat(keepJob().statusCode()).isEqualTo(201);
    }
}
