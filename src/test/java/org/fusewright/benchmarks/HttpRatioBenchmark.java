package org.fusewright.benchmarks;

import org.fusewright.FusewrightApplication;
import org.fusewright.TestDatabase;
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
import java.util.Arrays;

/**
 * How long {@code POST /api/kits} takes for a job of twelve circuits, beside an endpoint that only
 * parses the same JSON and writes it again. Both are asked in turn, so that whatever else the
 * machine does hits both; what is printed are medians and their ratio, which should be at most 3.
 *
 * <p>Run its {@code main} with the test class path.
 */
public final class HttpRatioBenchmark {
    private static final int WARM_UP = 20_000;
    private static final int ROUNDS = 3_000;
    private static final Path JOB = Path.of("catalog-sample/jobs/06-touring-twelve.json");
    private static final String ECHO = "/echo";

    private HttpRatioBenchmark() {}

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

    public static void main(String[] arguments) throws IOException, InterruptedException {
        try (ConfigurableApplicationContext service =
                        new SpringApplicationBuilder(FusewrightApplication.class, Echo.class)
                                .initializers(new TestDatabase())
                                .properties("server.port=0")
                                .run("--server.port=0");
                HttpClient client = HttpClient.newHttpClient()) {
            String port = service.getEnvironment().getRequiredProperty("local.server.port");
            byte[] job = Files.readAllBytes(JOB);
            HttpRequest kit = post(port, "/api/kits", job);
            HttpRequest echo = post(port, ECHO, job);
            for (int i = 0; i < WARM_UP; i++) {
                nanos(client, kit);
                nanos(client, echo);
            }
            long[] kitTimes = new long[ROUNDS];
            long[] echoTimes = new long[ROUNDS];
            for (int i = 0; i < ROUNDS; i++) {
                kitTimes[i] = nanos(client, kit);
                echoTimes[i] = nanos(client, echo);
            }
            double kitMicros = median(kitTimes) / 1000.0;
            double echoMicros = median(echoTimes) / 1000.0;
            System.out.printf(
                    "kit %.0f us, echo %.0f us, ratio %.2f (medians of %d)%n",
                    kitMicros, echoMicros, kitMicros / echoMicros, ROUNDS);
        }
    }

    private static HttpRequest post(String port, String path, byte[] body) {
        return HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path))
                .header("Content-Type", "application/json")
                .POST(BodyPublishers.ofByteArray(body))
                .build();
    }

    private static long nanos(HttpClient client, HttpRequest request)
            throws IOException, InterruptedException {
        long start = System.nanoTime();
        HttpResponse<byte[]> answer = client.send(request, BodyHandlers.ofByteArray());
        long time = System.nanoTime() - start;
        if (answer.statusCode() != 200) {
            throw new IllegalStateException("answered " + answer.statusCode());
        }
        return time;
    }

    private static double median(long[] times) {
        long[] sorted = times.clone();
        Arrays.sort(sorted);
        return (sorted[sorted.length / 2 - 1] + sorted[sorted.length / 2]) / 2.0;
    }
}
