package org.fusewright.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.FusewrightApplication;
import org.fusewright.TestDatabase;
import org.fusewright.contract.JobGenerator;
import org.fusewright.jobs.load.JobMutations;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.web.bind.annotation.RequestMethod;
import org.springframework.web.servlet.mvc.method.RequestMappingInfo;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Whatever is sent to whatever route: no answer is a failure of the service, none tells of its
 * inside, none takes long, and the memory that it holds does not grow.
 *
 * <p>Input number n follows from its number alone, and from what the inputs before it have left in
 * the database. {@code -Dfusewright.inputs=100000} sends that many.
 */
class HostileInputsTest {
    private static final int INPUTS = Integer.getInteger("fusewright.inputs", 1500);
    private static final Duration LONGEST = Duration.ofSeconds(20);
    private static final long MOST_GROWTH_BYTES = 48L << 20;
    private static final JsonMapper MAPPER = new JsonMapper();

    /** One holds its connection open, the other is no address of its own. */
    private static final Pattern LEFT_OUT = Pattern.compile(".*/live|/error");

    private static final List<String> DOCUMENTS =
            List.of(
                    """
                    {"job": 1, "kits": 3, "variants": ["fuses", "solid-state", "cheapest"],
                     "customerKind": "private", "validDays": 30, "shipping": true,
                     "terms": "net", "notIncluded": "fitting"}\
                    """,
                    """
                    {"variant": "fuses"}\
                    """,
                    """
                    {"currency": "EUR", "wantedBy": "2099-12-31", "wirePercent": 5}\
                    """,
                    """
                    {"note": "DN-118", "lines": [{"part": "WDB-3", "quantity": 10}]}\
                    """,
                    """
                    {"jobId": 1, "revision": 1, "by": "Ada", "sets": "opened"}\
                    """,
                    """
                    {"part": "WDB-3", "pieces": 2, "by": "Ada"}\
                    """,
                    """
                    {"code": "WDB-3", "pieces": 2, "by": "Ada"}\
                    """,
                    """
                    {"wanted": "TNA-5", "offered": "MFB-5", "pieces": 1, "by": "Ada"}\
                    """,
                    """
                    {"tareG": 12, "grossG": 812.5, "resolutionG": 0.1, "samplePieces": 5,
                     "errorProbability": 0.01, "scatterPercent": 2, "offScale": ["WDB-3"],
                     "by": "Ada"}\
                    """,
                    """
                    {"name": "Ada", "remark": "all there"}\
                    """,
                    """
                    {"csv": "part,quantity\\nWDB-3,1\\n", "jobId": 1, "revision": 1}\
                    """,
                    """
                    {"job": {"reference": "A"}, "circuit": "lamp", "change": {"ambientC": 60}}\
                    """);

    private static final List<String> TEXTS =
            List.of(
                    "",
                    " ",
                    "0",
                    "1",
                    "2",
                    "-1",
                    "1,5",
                    "1e309",
                    "NaN",
                    "999999999999999999999",
                    "9223372036854775807",
                    "2147483648",
                    "true",
                    "null",
                    "a4",
                    "letter",
                    "2026-02-30",
                    "EUR",
                    "\u0000",
                    "a\u0000b",
                    "\ud83d",
                    "\u202e",
                    "'; drop table job; --",
                    "%",
                    "_%_",
                    "${7*7}",
                    "../../etc/passwd",
                    "<script>alert(1)</script>",
                    "\"'><img src=x>",
                    "=1+1",
                    "/circuits/0/runM",
                    "/circuits/99999999/runM",
                    "/circuits/-1",
                    "check:voltage-drop/0",
                    "parts.csv",
                    "*",
                    "\"0\"",
                    "W/\"1\"",
                    "x".repeat(10_000));

    private static final List<String> FIRST = List.of("1", "2", "3", "4", "5", "6", "7");
    private static final int MOST_IDS = 20;
    private static final int ENOUGH = 10;
    private static final Pattern INSIDE =
            Pattern.compile(
                    "\tat |Exception|org\\.springframework|java\\.lang|org\\.fusewright|hibernate"
                            + "|Apache Tomcat");
    private static final String BOUNDARY = "part-of-a-test";

    private static ConfigurableApplicationContext service;
    private static HttpClient client;
    private static String address;

    private final Map<String, List<String>> ids = new HashMap<>();
    private final List<String> failures = new ArrayList<>();
    private final Set<String> fields = new TreeSet<>();
    private final List<String> forms = new ArrayList<>();
    private final TreeMap<Integer, Integer> statuses = new TreeMap<>();
    private final List<byte[]> jobs = new ArrayList<>();
    private final List<Path> catalog = new ArrayList<>();

    private record Input(String method, String path, String type, byte[] body, String match) {
        @Override
        public String toString() {
            return "%s %s\nContent-Type: %s\nIf-Match: %s\n\n%s"
                    .formatted(
                            method,
                            path,
                            type,
                            match,
                            new String(
                                    body, 0, Math.min(2000, body.length), StandardCharsets.UTF_8));
        }
    }

    @BeforeAll
    static void start() {
        service =
                new SpringApplicationBuilder(FusewrightApplication.class)
                        .initializers(TestDatabase.newOne("fusewright_hostile"))
                        .run("--server.port=0");
        client = HttpClient.newHttpClient();
        address =
                "http://127.0.0.1:"
                        + service.getEnvironment().getRequiredProperty("local.server.port");
    }

    @AfterAll
    static void stop() {
        client.close();
        service.close();
    }

    @Test
    void answersWhateverItIsSent() throws IOException, InterruptedException {
        List<RequestMappingInfo> routes = listRoutes();
        learn();
        long usedEarly = 0;
        for (int number = 0; number < INPUTS && failures.size() < ENOUGH; number++) {
            if (number == INPUTS / 5) {
                usedEarly = usedBytes();
            }
            Random random = new Random(number);
            send(number, input(routes.get(random.nextInt(routes.size())), random));
        }
        assertThat(failures).isEmpty();
        assertThat(statuses.keySet()).contains(200, 400, 404);
        assertThat(usedBytes() - usedEarly)
                .as("growth of the memory held, answers by status " + statuses)
                .isLessThan(MOST_GROWTH_BYTES);
    }

    private static List<RequestMappingInfo> listRoutes() {
        return service
                .getBean("requestMappingHandlerMapping", RequestMappingHandlerMapping.class)
                .getHandlerMethods()
                .keySet()
                .stream()
                .filter(
                        route ->
                                route.getPatternValues().stream()
                                        .noneMatch(path -> LEFT_OUT.matcher(path).matches()))
                .sorted(Comparator.comparing(RequestMappingInfo::toString))
                .toList();
    }

    /** What the pages offer: the names of their fields, their forms as they stand, their links. */
    private void learn() throws IOException, InterruptedException {
        try (Stream<Path> samples = Files.list(Path.of("catalog-sample/jobs"))) {
            for (Path sample : samples.sorted().toList()) {
                jobs.add(Files.readAllBytes(sample));
            }
        }
        try (Stream<Path> files = Files.list(Path.of("catalog-sample"))) {
            catalog.addAll(
                    files.filter(file -> file.toString().endsWith(".csv")).sorted().toList());
        }
        post("/quotes", "job=1&kits=40&variants=fuses&customerKind=private&validDays=30");
        post("/counts", "job=1&revision=1&by=Ada");
        for (String page :
                List.of(
                        "/jobs",
                        "/jobs/1",
                        "/jobs/6",
                        "/jobs/1/revisions",
                        "/jobs/1/arrangements",
                        "/quotes/new?job=1",
                        "/quotes/1",
                        "/orders",
                        "/counts/new?job=1",
                        "/counts/1",
                        "/catalog",
                        "/catalog/import")) {
            String text = get(page);
            Matcher field = Pattern.compile("name=\"([^\"]+)\"").matcher(text);
            while (field.find()) {
                fields.add(field.group(1));
            }
            forms.add(formOf(text));
        }
        fields.addAll(
                List.of("paper", "limit", "after", "q", "of", "circuit", "from", "to", "row"));
        assertThat(fields).contains("/circuits/0/runM", "kits", "customerKind");
    }

    private static String formOf(String page) {
        StringBuilder form = new StringBuilder();
        Matcher input = Pattern.compile("name=\"([^\"]+)\"[^>]*value=\"([^\"]*)\"").matcher(page);
        while (input.find()) {
            form.append('&')
                    .append(encoded(input.group(1)))
                    .append('=')
                    .append(encoded(input.group(2)));
        }
        return form.isEmpty() ? "" : form.substring(1);
    }

    private Input input(RequestMappingInfo route, Random random) {
        List<RequestMethod> methods = List.copyOf(route.getMethodsCondition().getMethods());
        String method =
                methods.isEmpty()
                        ? "GET"
                        : methods.get(random.nextInt(methods.size())).asHttpMethod().name();
        List<String> patterns = route.getPatternValues().stream().sorted().toList();
        String path = filled(patterns.get(random.nextInt(patterns.size())), random);
        if (random.nextInt(3) == 0 || method.equals("GET")) {
            path += "?" + parameters(random);
        }
        String match = random.nextInt(3) == 0 ? anyOf(TEXTS, random) : "*";
        if (method.equals("GET") || method.equals("DELETE")) {
            return new Input(method, path, "", new byte[0], match);
        }
        List<String> types =
                route.getConsumesCondition().getExpressions().stream()
                        .map(type -> type.getMediaType().toString())
                        .toList();
        String type =
                !types.isEmpty()
                        ? types.getFirst()
                        : path.startsWith("/api")
                                ? "application/json"
                                : "application/x-www-form-urlencoded";
        byte[] body = body(type, random);
        if (type.startsWith("multipart")) {
            type += ";boundary=" + BOUNDARY;
        }
        return new Input(
                method, path, type, random.nextInt(4) == 0 ? torn(body, random) : body, match);
    }

    private String filled(String pattern, Random random) {
        Matcher place = Pattern.compile("\\{\\*?([^}]+)}").matcher(pattern);
        StringBuilder path = new StringBuilder();
        while (place.find()) {
            String value =
                    switch (random.nextInt(4)) {
                        case 0 -> anyOf(TEXTS, random);
                        case 1 ->
                                List.of("kit-list", "WDB-3", "lamp", "cut-list", "bag-label")
                                        .get(random.nextInt(5));
                        default -> anyOf(ids.getOrDefault(typeOf(pattern), FIRST), random);
                    };
            String encoded = encoded(shortened(value)).replace("+", "%20");
            place.appendReplacement(
                    path,
                    Matcher.quoteReplacement(
                            place.group().startsWith("{*") ? "/" + encoded : encoded));
        }
        return place.appendTail(path).toString();
    }

    /** What an address is about: the word before its first number. */
    private static String typeOf(String path) {
        return path.replaceFirst("^(/api)?/([a-z]*).*", "$2");
    }

    private void remember(HttpResponse<?> answer) {
        answer.headers()
                .firstValue("Location")
                .map(location -> URI.create(location).getPath())
                .filter(path -> path.matches(".*/\\d+"))
                .ifPresent(
                        path -> {
                            List<String> known =
                                    ids.computeIfAbsent(
                                            typeOf(path), type -> new ArrayList<>(FIRST));
                            known.add(path.substring(path.lastIndexOf('/') + 1));
                            if (known.size() > MOST_IDS) {
                                known.removeFirst();
                            }
                        });
    }

    private String parameters(Random random) {
        List<String> names = List.copyOf(fields);
        StringBuilder parameters = new StringBuilder();
        for (int i = random.nextInt(4); i >= 0; i--) {
            parameters
                    .append(encoded(anyOf(names, random)))
                    .append('=')
                    .append(encoded(shortened(anyOf(TEXTS, random))))
                    .append(i > 0 ? "&" : "");
        }
        return parameters.toString();
    }

    private byte[] body(String type, Random random) {
        if (type.startsWith("multipart")) {
            return upload(random);
        }
        if (type.startsWith("application/x-www-form-urlencoded")) {
            return form(random).getBytes(StandardCharsets.UTF_8);
        }
        if (type.endsWith("json")) {
            return document(random);
        }
        if (type.endsWith("csv")) {
            return anyOf(
                            List.of(
                                    "part,quantity\nWDB-3,1\n",
                                    "part;quantity\nWDB-3;x\n",
                                    "\"",
                                    "a"),
                            random)
                    .getBytes(StandardCharsets.UTF_8);
        }
        byte[] noise = new byte[random.nextInt(500)];
        random.nextBytes(noise);
        return noise;
    }

    private byte[] document(Random random) {
        byte[] base =
                switch (random.nextInt(3)) {
                    case 0 -> jobs.get(random.nextInt(jobs.size()));
                    case 1 -> MAPPER.writeValueAsBytes(JobGenerator.generate(random.nextInt(200)));
                    default -> anyOf(DOCUMENTS, random).getBytes(StandardCharsets.UTF_8);
                };
        JsonNode document = MAPPER.readTree(base);
        for (int i = random.nextInt(4); i > 0; i--) {
            JobMutations.mutate(document, random);
        }
        return MAPPER.writeValueAsBytes(document);
    }

    private String form(Random random) {
        List<String> pairs = new ArrayList<>(Arrays.asList(anyOf(forms, random).split("&")));
        for (int i = random.nextInt(5); i > 0; i--) {
            int at = random.nextInt(pairs.size());
            switch (random.nextInt(4)) {
                case 0 -> pairs.remove(at);
                case 1 -> pairs.add(pairs.get(at));
                case 2 -> pairs.add(parameters(random));
                default ->
                        pairs.set(
                                at,
                                pairs.get(at).split("=")[0] + "=" + encoded(anyOf(TEXTS, random)));
            }
            if (pairs.isEmpty()) {
                break;
            }
        }
        return String.join("&", pairs);
    }

    private byte[] upload(Random random) {
        ByteArrayOutputStream body = new ByteArrayOutputStream();
        for (Path file : catalog) {
            if (random.nextInt(12) == 0) {
                continue;
            }
            body.writeBytes(
                    ("--"
                                    + BOUNDARY
                                    + "\r\nContent-Disposition: form-data; name=\"files\";"
                                    + " filename=\""
                                    + file.getFileName()
                                    + "\"\r\nContent-Type: text/csv\r\n\r\n")
                            .getBytes(StandardCharsets.UTF_8));
            byte[] content = read(file);
            body.writeBytes(random.nextInt(6) == 0 ? otherCell(content, random) : content);
            body.writeBytes("\r\n".getBytes(StandardCharsets.UTF_8));
        }
        // Tried only: what the other inputs build on stays.
        body.writeBytes(
                ("--"
                                + BOUNDARY
                                + "\r\nContent-Disposition: form-data; name=\"dryRun\"\r\n\r\ntrue"
                                + "\r\n--"
                                + BOUNDARY
                                + "--\r\n")
                        .getBytes(StandardCharsets.UTF_8));
        return body.toByteArray();
    }

    private static byte[] read(Path file) {
        try {
            return Files.readAllBytes(file);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private static byte[] otherCell(byte[] table, Random random) {
        String[] lines = new String(table, StandardCharsets.UTF_8).split("\n");
        int at = random.nextInt(lines.length);
        String[] cells = lines[at].split(",", -1);
        cells[random.nextInt(cells.length)] = anyOf(TEXTS, random);
        lines[at] = String.join(",", cells);
        return String.join("\n", lines).getBytes(StandardCharsets.UTF_8);
    }

    /** With some bytes changed, doubled or gone. */
    private static byte[] torn(byte[] body, Random random) {
        if (body.length == 0) {
            return body;
        }
        byte[] torn = body.clone();
        return switch (random.nextInt(3)) {
            case 0 -> Arrays.copyOf(torn, random.nextInt(torn.length));
            case 1 -> {
                for (int i = random.nextInt(5); i >= 0; i--) {
                    torn[random.nextInt(torn.length)] = (byte) random.nextInt();
                }
                yield torn;
            }
            default -> {
                byte[] longer = Arrays.copyOf(torn, torn.length + random.nextInt(torn.length) + 1);
                System.arraycopy(torn, 0, longer, longer.length - torn.length, torn.length);
                yield longer;
            }
        };
    }

    private static <T> T anyOf(List<T> of, Random random) {
        return of.get(random.nextInt(of.size()));
    }

    /** The server hangs up on an address over 8 KB before it has read the rest. */
    private static String shortened(String text) {
        return text.substring(0, Math.min(1000, text.length()));
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }

    private void send(int number, Input input) throws IOException, InterruptedException {
        String what = "input " + number + ": " + input;
        HttpRequest.Builder request =
                HttpRequest.newBuilder(URI.create(address + input.path()))
                        .timeout(LONGEST)
                        .header("If-Match", input.match().replaceAll("[^\\x21-\\x7e]", ""))
                        .header("Accept", number % 2 == 0 ? "*/*" : "text/html")
                        .method(input.method(), BodyPublishers.ofByteArray(input.body()));
        if (!input.type().isEmpty()) {
            request.header("Content-Type", input.type());
        }
        HttpResponse<byte[]> answer;
        try {
            answer = client.send(request.build(), BodyHandlers.ofByteArray());
        } catch (IOException hangsOrBroken) {
            throw new AssertionError(what, hangsOrBroken);
        }
        remember(answer);
        statuses.merge(answer.statusCode(), 1, Integer::sum);
        String said = new String(answer.body(), StandardCharsets.UTF_8);
        if (answer.statusCode() >= 500
                || answer.statusCode() >= 400 && INSIDE.matcher(said).find()) {
            failures.add(answer.statusCode() + " for " + what + "\n\n" + said);
        }
    }

    private static String get(String path) throws IOException, InterruptedException {
        HttpResponse<String> answer =
                client.send(
                        HttpRequest.newBuilder(URI.create(address + path)).build(),
                        BodyHandlers.ofString());
        assertThat(answer.statusCode()).as(path).isEqualTo(200);
        return answer.body();
    }

    private static void post(String path, String form) throws IOException, InterruptedException {
        HttpResponse<String> answer =
                client.send(
                        HttpRequest.newBuilder(URI.create(address + path))
                                .header("Content-Type", "application/x-www-form-urlencoded")
                                .POST(BodyPublishers.ofString(form))
                                .build(),
                        BodyHandlers.ofString());
        assertThat(answer.statusCode()).as(path).isEqualTo(302);
    }

    private static long usedBytes() {
        for (int i = 0; i < 3; i++) {
            System.gc();
        }
        return ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed();
    }
}
