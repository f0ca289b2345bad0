package org.fusewright.backups;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.fusewright.FusewrightApplication;
import org.fusewright.TestDatabase;
import org.fusewright.backups.store.BackupReader;
import org.fusewright.backups.store.BackupWriter;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.util.unit.DataSize;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;

class BackupTest {
    private static final String SHOP = "fusewright_backup_shop";
    private static final String ELSEWHERE = "fusewright_backup_elsewhere";
    private static final JsonMapper MAPPER = new JsonMapper();
    private static final AtomicInteger NUMBER = new AtomicInteger();

    private static ConfigurableApplicationContext shop;
    private static HttpClient client;

    private record Answer(int status, String etag, String location, byte[] body) {
        JsonNode json() {
            return MAPPER.readTree(body);
        }
    }

    @BeforeAll
    static void openAShopWithSomethingOfEachSort() throws Exception {
        shop = service(SHOP);
        client = HttpClient.newHttpClient();
        Answer job = keepAJob();
        String id = job.location().substring(job.location().lastIndexOf('/') + 1);
        Answer quote =
                post(
                        "/api/quotes",
                        "",
                        "{\"job\": %s, \"kits\": 40, \"customerKind\": \"private\"}".formatted(id));
        Answer sent = post(quote.location() + "/send", quote.etag(), "");
        String variant = sent.json().at("/quote/variants/0/kind").stringValue();
        assertThat(
                        post(
                                        quote.location() + "/accept",
                                        sent.etag(),
                                        "{\"variant\": \"%s\"}".formatted(variant))
                                .status())
                .isEqualTo(200);
        order();
        count(id);
        execute(
                "insert into account (name, role, created_at) values ('Ada', 'owner', now());"
                        + " insert into account_link values ('hash', 1, now());"
                        + " insert into quote_share (quote_id, revision, secret_hash, created_at,"
                        + " expires_at) values (1, 1, 'hash', now(), now() + interval '1 day')");
    }

    @AfterAll
    static void close() {
        client.close();
        shop.close();
    }

    private static ConfigurableApplicationContext service(String database) {
        return new SpringApplicationBuilder(FusewrightApplication.class)
                .initializers(TestDatabase.newOne(database))
                .run("--server.port=0");
    }

    private static Answer keepAJob() throws IOException, InterruptedException {
        Answer made =
                post(
                        "/api/jobs",
                        "",
                        """
                        {"reference": "BU-%d", "title": "Größe \\"XL\\", 2,5 mm²",
                         "supply": {"nominalV": 12},
                         "feeds": [{"id": "battery", "terminal": "30", "lengthM": 0.6,
                                    "sourceDistanceM": 0.1}],
                         "circuits": [{"id": "lamp", "feed": "battery", "runM": 1.5,
                                       "loads": [{"kind": "led", "watts": 24}]}]}
                        """
                                .formatted(NUMBER.incrementAndGet()));
        assertThat(made.status()).isEqualTo(201);
        return made;
    }

    private static void order() throws IOException, InterruptedException {
        Answer proposal = get("/api/orders/proposal?currency=EUR");
        JsonNode order =
                post("/api/orders", proposal.etag(), "{\"currency\": \"EUR\"}").json().at("/0");
        String path = "/api/orders/" + order.at("/id").longValue();
        Answer sent = post(path + "/send", get(path).etag(), "");
        String parcel =
                "{\"note\": \"N-1\", \"lines\": [{\"part\": \"%s\", \"quantity\": 1}]}"
                        .formatted(sent.json().at("/lines/0/part").stringValue());
        assertThat(post(path + "/deliveries", sent.etag(), parcel).status()).isEqualTo(200);
    }

    private static void count(String job) throws IOException, InterruptedException {
        String count =
                post("/api/counts", "", "{\"jobId\": %s, \"by\": \"Ada\"}".formatted(job))
                        .location();
        String part = get(count).json().at("/lines/0/part").stringValue();
        String tap = "{\"part\": \"%s\", \"pieces\": 1, \"by\": \"Ada\"}".formatted(part);
        assertThat(post(count + "/pieces", "", tap).status()).isEqualTo(200);
    }

    private static Answer get(String path) throws IOException, InterruptedException {
        return send(HttpRequest.newBuilder().GET(), path);
    }

    private static Answer post(String path, String etag, String body)
            throws IOException, InterruptedException {
        HttpRequest.Builder request =
                HttpRequest.newBuilder()
                        .header("Content-Type", "application/json")
                        .POST(BodyPublishers.ofString(body));
        if (!etag.isEmpty()) {
            request.header("If-Match", etag);
        }
        return send(request, path);
    }

    private static Answer restore(byte[] file) throws IOException, InterruptedException {
        return restore(file, "");
    }

    private static Answer restore(byte[] file, String parameters)
            throws IOException, InterruptedException {
        return send(
                HttpRequest.newBuilder()
                        .header("Content-Type", "application/zip")
                        .POST(BodyPublishers.ofByteArray(file)),
                "/api/restore" + parameters);
    }

    private static Answer send(HttpRequest.Builder request, String path)
            throws IOException, InterruptedException {
        String port = shop.getEnvironment().getRequiredProperty("local.server.port");
        String absolute = path.startsWith("http") ? path : "http://127.0.0.1:" + port + path;
        HttpResponse<byte[]> answer =
                client.send(request.uri(URI.create(absolute)).build(), BodyHandlers.ofByteArray());
        return new Answer(
                answer.statusCode(),
                answer.headers().firstValue("ETag").orElse(""),
                answer.headers().firstValue("Location").orElse(""),
                answer.body());
    }

    /**
     * Each row of each table but the migrations' own and those that need not outlive a crash, by
     * the database's text of a row. What tells of restores is left aside.
     */
    private static Map<String, List<String>> rows(String database) throws SQLException {
        Map<String, List<String>> rows = new TreeMap<>();
        try (Connection connection = TestDatabase.connectTo(database);
                Statement statement = connection.createStatement()) {
            List<String> tables =
                    strings(
                            statement,
                            "select relname from pg_class where relkind = 'r' and relpersistence ="
                                    + " 'p' and relnamespace = 'public'::regnamespace"
                                    + " and relname not in ('flyway_schema_history',"
                                    + " 'restored_backup')");
            for (String table : tables) {
                rows.put(
                        table,
                        strings(
                                statement,
                                "select t::text from "
                                        + table
                                        + " t where to_jsonb(t) ->> 'kind' is distinct from"
                                        + " 'restore' order by 1"));
            }
        }
        return rows;
    }

    private static List<String> strings(Statement statement, String query) throws SQLException {
        List<String> found = new ArrayList<>();
        try (ResultSet result = statement.executeQuery(query)) {
            while (result.next()) {
                found.add(result.getString(1));
            }
        }
        return found;
    }

    @Test
    void bringsBackEachRowOfEachTable() throws Exception {
        Map<String, List<String>> before = rows(SHOP);
        assertThat(before.keySet().stream().filter(table -> before.get(table).isEmpty()))
                .isSubsetOf("count_substitute", "count_weighing", "count_withdrawal");
        Answer backup = get("/api/backup");
        assertThat(backup.status()).isEqualTo(200);
        int restoresTold = restoresTold(SHOP);

        Answer later = keepAJob();
        assertThat(
                        send(
                                        HttpRequest.newBuilder().header("If-Match", "*").DELETE(),
                                        "/api/jobs/1")
                                .status())
                .isEqualTo(204);
        assertThat(rows(SHOP)).isNotEqualTo(before);

        Answer restored = restore(backup.body());
        assertThat(restored.status()).isEqualTo(200);
        assertThat(rows(SHOP)).isEqualTo(before);
        assertThat(restored.json().at("/rows").longValue())
                .isEqualTo(before.values().stream().mapToInt(List::size).sum() + 2 * restoresTold);

        assertThat(get("/api/jobs/1").status()).isEqualTo(200);
        assertThat(get(later.location()).status()).isEqualTo(404);
        assertThat(keepAJob().location()).isEqualTo(later.location());
        assertThat(formerJobs(restored.json().at("/formerData").stringValue()))
                .contains("BU-" + (NUMBER.get() - 1));
        assertThatThrownBy(() -> execute("delete from stock_move"))
                .isInstanceOf(SQLException.class);
        restore(backup.body());
    }

    private static int restoresTold(String database) throws SQLException {
        try (Connection connection = TestDatabase.connectTo(database);
                Statement statement = connection.createStatement()) {
            return strings(statement, "select id from restored_backup").size();
        }
    }

    /** Rows that are put back are no changes, else the trail would tell each of them twice. */
    @Test
    void tellsInTheTrailOfTheRestoreAlone() throws Exception {
        byte[] file = get("/api/backup").body();
        JsonNode newest = get("/api/changes?limit=1").json().at("/changes/0");
        keepAJob();

        Answer restored = restore(file, "?by=Ada");

        JsonNode told = get("/api/changes?limit=2").json().at("/changes");
        assertThat(told.at("/1")).isEqualTo(newest);
        assertThat(told.at("/0/what").stringValue()).isEqualTo("restore");
        assertThat(told.at("/0/by").stringValue()).isEqualTo("Ada");
        assertThat(told.at("/0/after/former_data")).isEqualTo(restored.json().at("/formerData"));
        assertThatThrownBy(() -> execute("delete from change_entry"))
                .hasMessageContaining("stays as it is written");
        keepAJob();
        assertThat(get("/api/changes?limit=1").json().at("/changes/0/what").stringValue())
                .isEqualTo("job");
        restore(file);
    }

    private static List<String> formerJobs(String schema) throws SQLException {
        try (Connection connection = TestDatabase.connectTo(SHOP);
                Statement statement = connection.createStatement()) {
            return strings(statement, "select reference from " + schema + ".job");
        }
    }

    private static void execute(String sql) throws SQLException {
        try (Connection connection = TestDatabase.connectTo(SHOP);
                Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    @Test
    void movesAShopToAnotherDatabase() throws Exception {
        byte[] file = get("/api/backup").body();
        try (ConfigurableApplicationContext elsewhere = service(ELSEWHERE)) {
            elsewhere.getBean(Backups.class).restore(new ByteArrayInputStream(file), "Ines");
            assertThat(rows(ELSEWHERE)).isEqualTo(rows(SHOP));
        }
    }

    @Test
    void holdsNoHalfOfWhatIsWrittenMeanwhile() throws Exception {
        byte[] before = get("/api/backup").body();
        Thread writer =
                new Thread(
                        () -> {
                            try {
                                while (!Thread.currentThread().isInterrupted()) {
                                    keepAJob();
                                }
                            } catch (IOException | InterruptedException e) {
                                Thread.currentThread().interrupt();
                            }
                        });
        writer.start();
        List<byte[]> files = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            files.add(get("/api/backup").body());
        }
        writer.interrupt();
        writer.join();
        assertThat(jobs(files.getLast())).isGreaterThan(jobs(before));
        for (byte[] file : files) {
            assertThat(restore(file).status()).isEqualTo(200);
            try (Connection connection = TestDatabase.connectTo(SHOP);
                    Statement statement = connection.createStatement()) {
                assertThat(
                                strings(
                                        statement,
                                        "select reference from job where not exists (select from"
                                                + " job_revision r where r.job_id = job.id)"))
                        .isEmpty();
            }
        }
        restore(before);
    }

    private static int jobs(byte[] backup) throws IOException {
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(backup))) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                if (entry.getName().equals("job.csv")) {
                    return (int)
                            new String(zip.readAllBytes(), StandardCharsets.UTF_8)
                                    .lines()
                                    .filter(line -> line.matches("\\d+,.*"))
                                    .count();
                }
            }
        }
        throw new AssertionError("no jobs");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "empty",
                "text",
                "cut off",
                "without a table",
                "without its content",
                "with a row less",
                "with a broken row",
                "of a newer program"
            })
    void changesNothingForAFileThatIsNoWholeBackup(String wrong) throws Exception {
        byte[] file = get("/api/backup").body();
        Map<String, List<String>> before = rows(SHOP);
        Answer refused = restore(spoiled(file, wrong));
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.json().at("/detail").stringValue())
                .isNotEmpty()
                .doesNotContain("xception");
        assertThat(rows(SHOP)).isEqualTo(before);
        try (Connection connection = TestDatabase.connectTo(SHOP);
                Statement statement = connection.createStatement()) {
            assertThat(
                            strings(
                                    statement,
                                    "select nspname from pg_namespace where nspname like"
                                            + " 'restoring%'"))
                    .isEmpty();
        }
    }

    @Test
    void takesNoFileThatIsTooLarge() throws Exception {
        byte[] file = get("/api/backup").body();
        Map<String, List<String>> before = rows(SHOP);
        Backups wary =
                new Backups(
                        shop.getBean(BackupWriter.class),
                        shop.getBean(BackupReader.class),
                        DataSize.ofBytes(file.length - 1L));
        assertThatThrownBy(() -> wary.restore(new ByteArrayInputStream(file), "Ada"))
                .isInstanceOf(UnusableBackupException.class);
        assertThat(rows(SHOP)).isEqualTo(before);
    }

    private static byte[] spoiled(byte[] file, String wrong) throws IOException {
        return switch (wrong) {
            case "empty" -> new byte[0];
            case "text" -> "reference,title".getBytes(StandardCharsets.UTF_8);
            case "cut off" -> Arrays.copyOf(file, file.length / 2);
            case "without a table" -> rewritten(file, "job.csv", text -> null);
            case "without its content" -> rewritten(file, "content.txt", text -> null);
            case "with a row less" ->
                    rewritten(
                            file,
                            "supplier.csv",
                            text -> text.substring(0, text.stripTrailing().lastIndexOf('\n') + 1));
            case "with a broken row" ->
                    rewritten(file, "supplier.csv", text -> text + "one field only\n");
            case "of a newer program" ->
                    rewritten(
                            file,
                            "content.txt",
                            text -> text.replaceFirst("schema \\S+", "schema 9999"));
            default -> throw new IllegalArgumentException(wrong);
        };
    }

    private interface Change {
        /** Null to leave the entry out. */
        @org.jspecify.annotations.Nullable
        String of(String text);
    }

    private static byte[] rewritten(byte[] file, String name, Change change) throws IOException {
        ByteArrayOutputStream changed = new ByteArrayOutputStream();
        try (InputStream bytes = new ByteArrayInputStream(file);
                ZipInputStream zip = new ZipInputStream(bytes);
                ZipOutputStream out = new ZipOutputStream(changed)) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                String text = new String(zip.readAllBytes(), StandardCharsets.UTF_8);
                String now = entry.getName().equals(name) ? change.of(text) : text;
                if (now != null) {
                    out.putNextEntry(new ZipEntry(entry.getName()));
                    out.write(now.getBytes(StandardCharsets.UTF_8));
                }
            }
        }
        return changed.toByteArray();
    }
}
