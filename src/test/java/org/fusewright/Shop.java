package org.fusewright;

import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ApplicationContextInitializer;
import org.springframework.context.ConfigurableApplicationContext;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;

/** A service of a test's own on a database of its own, and what its callers do. */
public final class Shop implements AutoCloseable {
    public static final String JSON = "application/json";
    public static final String FORM = "application/x-www-form-urlencoded";
    private static final JsonMapper MAPPER = new JsonMapper();

    private final ConfigurableApplicationContext service;
    private final HttpClient client = HttpClient.newHttpClient();

    /** What came back. */
    public record Answer(int status, String type, String etag, String location, byte[] body) {
        public String text() {
            return new String(body, StandardCharsets.UTF_8);
        }

        public JsonNode json() {
            return MAPPER.readTree(body);
        }
    }

    private Shop(ConfigurableApplicationContext service) {
        this.service = service;
    }

    /**
     * @param database from {@link TestDatabase#newOne}
     */
    public static Shop open(
            ApplicationContextInitializer<ConfigurableApplicationContext> database,
            String... settings) {
        String[] all = new String[settings.length + 1];
        System.arraycopy(settings, 0, all, 0, settings.length);
        all[settings.length] = "--server.port=0";
        return new Shop(
                new SpringApplicationBuilder(FusewrightApplication.class)
                        .initializers(database)
                        .run(all));
    }

    public ConfigurableApplicationContext service() {
        return service;
    }

    public URI address() {
        return URI.create(
                "http://127.0.0.1:"
                        + service.getEnvironment().getRequiredProperty("local.server.port"));
    }

    public Answer get(String path, String accept) {
        return send("GET", path, accept, "", "", new byte[0]);
    }

    public Answer post(String path, String ifMatch, String type, String body) {
        return send("POST", path, JSON, ifMatch, type, body.getBytes(StandardCharsets.UTF_8));
    }

    /**
     * @param ifMatch none when empty
     * @param type of the body; none when empty
     */
    public Answer send(
            String method, String path, String accept, String ifMatch, String type, byte[] body) {
        HttpRequest.Builder request =
                HttpRequest.newBuilder(address().resolve(path))
                        .header("Accept", accept)
                        .method(method, BodyPublishers.ofByteArray(body));
        if (!ifMatch.isEmpty()) {
            request.header("If-Match", ifMatch);
        }
        if (!type.isEmpty()) {
            request.header("Content-Type", type);
        }
        try {
            HttpResponse<byte[]> answer = client.send(request.build(), BodyHandlers.ofByteArray());
            return new Answer(
                    answer.statusCode(),
                    answer.headers().firstValue("Content-Type").orElse(""),
                    answer.headers().firstValue("ETag").orElse(""),
                    answer.headers()
                            .firstValue("Location")
                            .map(location -> URI.create(location).getPath())
                            .orElse(""),
                    answer.body());
        } catch (IOException e) {
            throw new IllegalStateException(method + " " + path, e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    @Override
    public void close() {
        client.close();
        service.close();
    }
}
