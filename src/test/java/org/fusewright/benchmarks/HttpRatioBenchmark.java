package org.fusewright.benchmarks;

import org.fusewright.FusewrightApplication;
import org.fusewright.TestDatabase;
import org.openjdk.jmh.annotations.AuxCounters;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.http.MediaType;
import org.springframework.web.servlet.function.RouterFunction;
import org.springframework.web.servlet.function.RouterFunctions;
import org.springframework.web.servlet.function.ServerResponse;

import tools.jackson.databind.json.JsonMapper;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * How long {@code POST /api/kits} takes for a job of twelve circuits, beside an endpoint that only
 * parses the same JSON and writes it again; {@code inTurn:ratio}, of the medians, is to be at most
 * 3.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 6, time = 10) // a slow machine compiles that long
@Measurement(iterations = 1, time = 10) // one: events of several would be added up
@Fork(1)
public class HttpRatioBenchmark {
    private static final Path JOB = Path.of("catalog-sample/jobs/06-touring-twelve.json");
    private static final String ECHO = "/echo";

    private ConfigurableApplicationContext service;
    private HttpClient client;
    private HttpRequest kit;
    private HttpRequest echo;

    @Configuration(proxyBeanMethods = false)
    static class Echo {
        private static final JsonMapper MAPPER = new JsonMapper();

        @Bean
        RouterFunction<ServerResponse> echo() {
            return RouterFunctions.route()
                    .POST(
                            ECHO,
                            request ->
                                    ServerResponse.ok()
                                            .contentType(MediaType.APPLICATION_JSON)
                                            .body(
                                                    MAPPER.writeValueAsBytes(
                                                            MAPPER.readTree(
                                                                    request.servletRequest()
                                                                            .getInputStream()))))
                    .build();
        }
    }

    @Setup
    public void start() throws IOException {
        service =
                new SpringApplicationBuilder(FusewrightApplication.class, Echo.class)
                        .initializers(new TestDatabase())
                        .run("--server.port=0");
        client = HttpClient.newHttpClient();
        String port = service.getEnvironment().getRequiredProperty("local.server.port");
        byte[] job = Files.readAllBytes(JOB);
        kit = post(port, "/api/kits", job);
        echo = post(port, ECHO, job);
    }

    @TearDown
    public void stop() {
        client.close();
        service.close();
    }

    /** One after the other, so that whatever else the machine does slows both alike. */
    @Benchmark
    public void inTurn(Times times) throws IOException, InterruptedException {
        times.kit.add(nanos(kit));
        times.echo.add(nanos(echo));
    }

    /** What either took, and the ratio that should be at most 3. */
    @AuxCounters(AuxCounters.Type.EVENTS)
    @State(Scope.Thread)
    public static class Times {

        private final List<Long> kit = new ArrayList<>();
        private final List<Long> echo = new ArrayList<>();

        @Setup(Level.Iteration)
        public void forget() {
            kit.clear();
            echo.clear();
        }

        public double kitMicros() {
            return Percentile.median(kit) / 1000.0;
        }

        public double echoMicros() {
            return Percentile.median(echo) / 1000.0;
        }

        public double ratio() {
            return (double) Percentile.median(kit) / Percentile.median(echo);
        }
    }

    private static HttpRequest post(String port, String path, byte[] body) {
        return HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path))
                .header("Content-Type", "application/json")
                .POST(BodyPublishers.ofByteArray(body))
                .build();
    }

    private long nanos(HttpRequest request) throws IOException, InterruptedException {
        long start = System.nanoTime();
        HttpResponse<byte[]> answer = client.send(request, BodyHandlers.ofByteArray());
        long time = System.nanoTime() - start;
        if (answer.statusCode() != 200) {
            throw new IllegalStateException("answered " + answer.statusCode());
        }
        return time;
    }
}
