package org.fusewright.changes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.fusewright.FusewrightApplication;
import org.fusewright.TestDatabase;
import org.fusewright.catalogs.CatalogContent;
import org.fusewright.catalogs.Catalogs;
import org.fusewright.catalogs.SampleFiles;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.boot.builder.SpringApplicationBuilder;
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
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;

/** What each kind of change leaves in the trail: every entry that it should, and no other. */
class ChangesTest {
    private static final String DATABASE = "fusewright_changes";
    private static final JsonMapper MAPPER = new JsonMapper();
    private static final AtomicInteger NUMBER = new AtomicInteger();

    private static ConfigurableApplicationContext shop;
    private static HttpClient client;

    private long seen;

    private record Answer(int status, String etag, String location, byte[] body) {
        JsonNode json() {
            return MAPPER.readTree(body);
        }
    }

    @BeforeAll
    static void open() {
        shop =
                new SpringApplicationBuilder(FusewrightApplication.class)
                        .initializers(TestDatabase.newOne(DATABASE))
                        .run("--server.port=0");
        client = HttpClient.newHttpClient();
    }

    @AfterAll
    static void close() {
        client.close();
        shop.close();
    }

    @BeforeEach
    void seeAllThereIs() throws Exception {
        seen = newest();
    }

    private static long newest() throws Exception {
        return get("/api/changes?limit=1").json().at("/changes/0/id").longValue();
    }

    /** What the trail tells since it was last asked, oldest first. */
    private List<JsonNode> tell() throws Exception {
        List<JsonNode> told =
                get("/api/changes?limit=200")
                        .json()
                        .at("/changes")
                        .valueStream()
                        .filter(entry -> entry.at("/id").longValue() > seen)
                        .toList()
                        .reversed();
        seen = newest();
        return told;
    }

    /** As above, each entry as "table action by: fields", of many alike the first. */
    private List<String> tellShortly() throws Exception {
        return tell().stream().map(ChangesTest::shortly).distinct().toList();
    }

    private static String shortly(JsonNode entry) {
        String head =
                "%s %s %s"
                        .formatted(
                                entry.at("/table").stringValue(),
                                entry.at("/action").stringValue(),
                                entry.at("/by").stringValue());
        return entry.at("/action").stringValue().equals("changed")
                ? head + ": " + String.join(", ", entry.at("/after").propertyNames())
                : head;
    }

    private static String document(String reference, double runM) {
        return """
        {"reference": "%s", "title": "Trail test", "supply": {"nominalV": 12},
         "feeds": [{"id": "battery", "terminal": "30", "lengthM": 0.6,
                    "sourceDistanceM": 0.1}],
         "circuits": [{"id": "lamp", "feed": "battery", "runM": %s,
                       "loads": [{"kind": "led", "watts": 24}]}]}
        """
                .formatted(reference, runM);
    }

    private static Answer keepAJob(String by) throws Exception {
        Answer made =
                send(
                        "POST",
                        "/api/jobs?by=" + by,
                        "",
                        document("TR-" + NUMBER.incrementAndGet(), 1.5));
        assertThat(made.status()).isEqualTo(201);
        return made;
    }

    private static String reference(Answer job) {
        return job.json().at("/reference").stringValue();
    }

    private static String id(Answer made) {
        return made.location().substring(made.location().lastIndexOf('/') + 1);
    }

    private static Answer get(String path) throws Exception {
        return send("GET", path, "", "");
    }

    private static Answer send(String method, String path, String etag, String body)
            throws Exception {
        String port = shop.getEnvironment().getRequiredProperty("local.server.port");
        HttpRequest.Builder request =
                HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path))
                        .header("Content-Type", "application/json")
                        .method(method, BodyPublishers.ofString(body));
        if (!etag.isEmpty()) {
            request.header("If-Match", etag);
        }
        HttpResponse<byte[]> answer = client.send(request.build(), BodyHandlers.ofByteArray());
        return new Answer(
                answer.statusCode(),
                answer.headers().firstValue("ETag").orElse(""),
                answer.headers().firstValue("Location").orElse(""),
                answer.body());
    }

    /** Sends what must work, and answers what came of it. */
    private static Answer done(String method, String path, String etag, String body)
            throws Exception {
        Answer answer = send(method, path, etag, body);
        assertThat(answer.status()).as("%s %s", method, path).isBetween(200, 299);
        return answer;
    }

    private static void execute(String sql) throws SQLException {
        try (Connection connection = TestDatabase.connectTo(DATABASE);
                Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    private static List<String> ask(String query) throws SQLException {
        try (Connection connection = TestDatabase.connectTo(DATABASE);
                Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(query)) {
            List<String> found = new ArrayList<>();
            while (rows.next()) {
                found.add(rows.getString(1));
            }
            return found;
        }
    }

    @Test
    void namesTheServiceForWhatItDidByItself() throws Exception {
        assertThat(
                        ask(
                                "select distinct made_by from change_entry where id <= (select"
                                        + " max(id) from change_entry where kind = 'catalog' and"
                                        + " record = (select version from catalog_release where id"
                                        + " = 1))"))
                .containsExactly("service");
        assertThat(
                        ask("select count(*) from change_entry where table_name = 'part' and"
                                        + " action = 'added'")
                                .getFirst())
                .isEqualTo(ask("select count(*) from part").getFirst());
    }

    @Test
    void tellsWhoMadeChangedAndDeletedAJobAndFromWhatToWhat() throws Exception {
        Answer job = keepAJob("Ada");
        assertThat(tellShortly()).containsExactly("job added Ada", "job_revision added Ada");

        Answer longer =
                done(
                        "PUT",
                        job.location() + "?by=Bo%20%C3%98",
                        job.etag(),
                        document(reference(job), 2.5));
        List<JsonNode> told = tell();
        assertThat(told.stream().map(ChangesTest::shortly))
                .containsExactly(
                        "job changed Bo Ø: document, revision, changed_by",
                        "job_revision added Bo Ø");
        JsonNode entry = told.getFirst();
        assertThat(entry.at("/what").stringValue()).isEqualTo("job");
        assertThat(entry.at("/record").stringValue()).isEqualTo(id(job));
        assertThat(entry.at("/before/revision").intValue()).isEqualTo(1);
        assertThat(entry.at("/after/revision").intValue()).isEqualTo(2);
        assertThat(entry.at("/before/document/circuits/0/runM").doubleValue()).isEqualTo(1.5);
        assertThat(entry.at("/after/document/circuits/0/runM").doubleValue()).isEqualTo(2.5);
        assertThat(told.getLast().at("/row").stringValue()).isEqualTo(id(job) + " / 2");
        assertThat(told.getLast().at("/after/document/sha256").stringValue()).hasSize(64);

        done("DELETE", job.location() + "?by=Cy", longer.etag(), "");
        told = tell();
        assertThat(told.stream().map(ChangesTest::shortly))
                .containsExactlyInAnyOrder(
                        "job removed Cy", "job_revision removed Cy", "job_revision removed Cy");
        assertThat(told)
                .filteredOn(gone -> gone.at("/table").stringValue().equals("job"))
                .singleElement()
                .satisfies(
                        gone -> {
                            assertThat(gone.at("/before/document/circuits/0/runM").doubleValue())
                                    .isEqualTo(2.5);
                            assertThat(gone.at("/after").isNull()).isTrue();
                        });
    }

    @Test
    void tellsTheWayOfAQuoteItsPapersByDigest() throws Exception {
        String job = id(keepAJob("Ada"));
        tell();
        Answer quote =
                done(
                        "POST",
                        "/api/quotes?by=Ada",
                        "",
                        "{\"job\": %s, \"kits\": 4, \"customerKind\": \"private\"}".formatted(job));
        assertThat(tellShortly()).containsExactly("quote added Ada", "quote_revision added Ada");

        Answer more =
                done(
                        "PUT",
                        quote.location() + "?by=Bo",
                        quote.etag(),
                        "{\"kits\": 5, \"customerKind\": \"private\"}");
        assertThat(tellShortly()).containsExactly("quote_revision changed Bo: wishes, document");

        Answer sent = done("POST", quote.location() + "/send?by=Cy", more.etag(), "");
        List<JsonNode> told = tell();
        assertThat(told.stream().map(ChangesTest::shortly))
                .containsExactly(
                        "quote_revision changed Cy: csv, state, pdf_a4, sent_at, pdf_letter");
        byte[] pdf = paper(quote.location());
        assertThat(told.getFirst().at("/after/pdf_a4/bytes").intValue()).isEqualTo(pdf.length);
        assertThat(told.getFirst().at("/after/pdf_a4/sha256").stringValue()).isEqualTo(sha256(pdf));
        assertThat(told.getFirst().at("/before/pdf_a4").isNull()).isTrue();

        String variant = sent.json().at("/quote/variants/0/kind").stringValue();
        Answer accepted =
                done(
                        "POST",
                        quote.location() + "/accept?by=Dee",
                        sent.etag(),
                        "{\"variant\": \"%s\"}".formatted(variant));
        assertThat(tellShortly())
                .containsExactly(
                        "quote_revision changed Dee: state, variant, decided_at",
                        "quote_demand added Dee");
        done("POST", quote.location() + "/fulfil?by=Eve", accepted.etag(), "");
        assertThat(tellShortly())
                .contains("quote changed Eve: fulfilled_at", "quote_demand removed Eve")
                .allMatch(each -> each.contains(" Eve"));
        assertThat(
                        get("/api/changes?what=quote&limit=200&record=" + id(quote))
                                .json()
                                .at("/changes")
                                .valueStream()
                                .map(each -> each.at("/by").stringValue())
                                .distinct())
                .containsExactly("Eve", "Dee", "Cy", "Bo", "Ada");
    }

    private static byte[] paper(String path) throws IOException, InterruptedException {
        String port = shop.getEnvironment().getRequiredProperty("local.server.port");
        return client.send(
                        HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path))
                                .header("Accept", "application/pdf")
                                .build(),
                        BodyHandlers.ofByteArray())
                .body();
    }

    private static String sha256(byte[] bytes) throws NoSuchAlgorithmException {
        return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    }

    @Test
    void tellsTheWayOfAnOrderAndWhatItsDeliveryPutsOnTheShelf() throws Exception {
        needMuch();
        tell();
        Answer proposal = get("/api/orders/proposal?currency=EUR");
        JsonNode order =
                done("POST", "/api/orders?by=Ada", proposal.etag(), "{\"currency\": \"EUR\"}")
                        .json()
                        .at("/0");
        assertThat(tellShortly())
                .containsExactly("purchase_order added Ada", "purchase_order_line added Ada");
        String path = "/api/orders/" + order.at("/id").longValue();
        Answer sent = done("POST", path + "/send?by=Bo", get(path).etag(), "");
        assertThat(tellShortly())
                .containsExactly(
                        "purchase_order changed Bo: csv, ubl, state, pdf_a4, ordered_on,"
                                + " pdf_letter");
        String part = sent.json().at("/lines/0/part").stringValue();
        Answer came =
                done(
                        "POST",
                        path + "/deliveries?by=Cy",
                        sent.etag(),
                        "{\"note\": \"N-1\", \"lines\": [{\"part\": \"%s\", \"quantity\": 1}]}"
                                .formatted(part));
        List<JsonNode> told = tell();
        assertThat(told.stream().map(ChangesTest::shortly))
                .containsExactlyInAnyOrder(
                        "delivery added Cy",
                        "delivery_line added Cy",
                        "stock_move added Cy",
                        "purchase_order changed Cy: state");
        assertThat(told)
                .filteredOn(each -> each.at("/table").stringValue().equals("stock_move"))
                .singleElement()
                .satisfies(
                        move -> {
                            assertThat(move.at("/record").stringValue()).isEqualTo(part);
                            assertThat(move.at("/after/quantity").doubleValue()).isEqualTo(1);
                        });
        done("POST", path + "/cancel?by=Dee", came.etag(), "");
        assertThat(tellShortly()).containsExactly("purchase_order changed Dee: state");
    }

    private static void needMuch() throws Exception {
        Answer quote =
                done(
                        "POST",
                        "/api/quotes",
                        "",
                        "{\"job\": %s, \"kits\": 400, \"customerKind\": \"private\"}"
                                .formatted(id(keepAJob("Ada"))));
        Answer sent = done("POST", quote.location() + "/send", quote.etag(), "");
        done(
                "POST",
                quote.location() + "/accept",
                sent.etag(),
                "{\"variant\": \"%s\"}"
                        .formatted(sent.json().at("/quote/variants/0/kind").stringValue()));
    }

    @Test
    void tellsTheWayOfACount() throws Exception {
        String job = id(keepAJob("Ada"));
        tell();
        String count =
                done(
                                "POST",
                                "/api/counts?by=Ada",
                                "",
                                "{\"jobId\": %s, \"by\": \"Ada\"}".formatted(job))
                        .location();
        assertThat(tellShortly()).containsExactly("bag_count added Ada", "count_line added Ada");
        String part = get(count).json().at("/lines/0/part").stringValue();
        done(
                "POST",
                count + "/pieces?by=Bo",
                "",
                "{\"part\": \"%s\", \"pieces\": 1, \"by\": \"Bo\"}".formatted(part));
        assertThat(tellShortly()).containsExactly("count_tap added Bo");
        done(
                "POST",
                count + "/weighings?by=Cy",
                "",
                "{\"resolutionG\": 0.1, \"grossG\": 5, \"by\": \"Cy\"}");
        assertThat(tellShortly()).containsExactly("count_weighing added Cy");
        done("POST", count + "/signature?by=Dee", get(count).etag(), "{\"name\": \"Dee\"}");
        assertThat(tellShortly())
                .containsExactly(
                        "bag_count changed Dee: record_a4, signed_at, signed_by, record_letter");

        String other =
                done("POST", "/api/counts", "", "{\"jobId\": %s, \"by\": \"Ada\"}".formatted(job))
                        .location();
        tell();
        done("DELETE", other + "?by=Eve", get(other).etag(), "");
        assertThat(tellShortly())
                .containsExactlyInAnyOrder("bag_count removed Eve", "count_line removed Eve");
    }

    @Test
    void tellsOfAnImportOnlyWhatDiffers() throws Exception {
        Catalogs catalogs = shop.getBean(Catalogs.class);
        CatalogContent sample = new SampleFiles().read();
        catalogs.importCatalog(sample, version(catalogs));
        assertThat(tell())
                .filteredOn(each -> !each.at("/table").stringValue().equals("stock_move"))
                .extracting(ChangesTest::shortly)
                .containsExactly("catalog_release added service");

        SampleFiles files = new SampleFiles();
        files.replaceFirst("blocks.csv", "Wendlebrook,26.8", "Wendlebrook,27");
        String offer =
                files.texts()
                        .get("offers.csv")
                        .lines()
                        .filter(line -> line.startsWith("SKERROW,WDC-3-LOW,"))
                        .findFirst()
                        .orElseThrow();
        // All offers behind the first move up by a place.
        files.replaceFirst("offers.csv", offer + "\n", "");
        catalogs.importCatalog(files.read(), version(catalogs));
        List<JsonNode> told = tell();
        assertThat(told.stream().map(ChangesTest::shortly))
                .containsExactlyInAnyOrder(
                        "catalog_release added service",
                        "part changed service: mass_g",
                        "offer removed service");
        assertThat(told)
                .filteredOn(each -> each.at("/table").stringValue().equals("part"))
                .singleElement()
                .satisfies(
                        heavier -> {
                            assertThat(heavier.at("/record").stringValue()).isEqualTo("WDB-4");
                            assertThat(heavier.at("/before").toString())
                                    .isEqualTo("{\"mass_g\":26.8}");
                            assertThat(heavier.at("/after").toString())
                                    .isEqualTo("{\"mass_g\":27}");
                        });
        assertThat(told)
                .filteredOn(each -> each.at("/table").stringValue().equals("offer"))
                .singleElement()
                .satisfies(
                        gone -> {
                            assertThat(gone.at("/record").stringValue()).isEqualTo("WDC-3-LOW");
                            assertThat(
                                            gone.at(
                                                            "/before/SKERROW ~1 EUR ~1 "
                                                                    + offer.split(",")[2]
                                                                    + "/prices")
                                                    .isEmpty())
                                    .isFalse();
                        });

        catalogs.tryImport(sample);
        assertThat(tell()).isEmpty();
        catalogs.importCatalog(sample, version(catalogs));
    }

    private static Optional<String> version(Catalogs catalogs) {
        return Optional.of(catalogs.current().version());
    }

    /** Not only the import: whoever changes a table of the catalog, by whatever way. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '"',
            value = {
                "update part set title = upper(title) where number = 'WDB-4' | part | title",
                "update offer set prices = jsonb_set(prices, '{1}', '7.77') where part_number ="
                        + " 'WDB-4' and supplier_code = 'SKERROW' | offer | SKERROW / EUR / 1",
                "update offer set lead_time_days = lead_time_days + 1 where part_number = 'WDB-4'"
                        + " and supplier_code = 'SKERROW' | offer |"
                        + " SKERROW / EUR / 1",
                "update supplier set name = upper(name) where code = 'SKERROW' | supplier | name",
                "update stock_entry set minimum = minimum + 1 where part_number = 'WDB-3' |"
                        + " stock_entry | minimum",
                "update labour_rate set minutes = minutes + 1 where code = (select min(code) from"
                        + " labour_rate) | labour_rate | minutes",
                "update mark_up set percent = percent + 1 where line_group is null and part is null"
                        + " | mark_up | percent",
                "update shipping_class set price = price + 1 where (code, currency) = (select code,"
                        + " currency from shipping_class order by 1, 2 limit 1) | shipping_class |"
                        + " price",
                "update tax_kind set percent = percent + 1 where code = (select min(code) from"
                        + " tax_kind) | tax_kind | percent",
            })
    void tellsOfEachTableOfTheCatalogByWhateverWay(String change, String table, String field)
            throws Exception {
        execute(change);
        assertThat(tellShortly()).containsExactly("%s changed service: %s".formatted(table, field));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "update change_entry set made_by = 'Eve'",
                "update change_entry set made_by = 'Eve' where false",
                "delete from change_entry",
                "delete from change_entry where id = 1",
                "truncate change_entry",
                "truncate change_entry cascade",
                "insert into change_entry (made_at, made_by, kind, record, table_name, row_key,"
                        + " action, after) values (now(), 'Eve', 'job', '1', 'job', '1', 'added',"
                        + " '{}')",
                "merge into change_entry using (values (1)) v (id) on change_entry.id = v.id when"
                        + " matched then delete",
            })
    void refusesToChangeWhatTheTrailHolds(String change) throws Exception {
        List<String> before = ask("select t::text from change_entry t order by id");
        assertThatThrownBy(() -> execute(change))
                .isInstanceOf(SQLException.class)
                .hasMessageContaining("stays as it is written");
        assertThat(ask("select t::text from change_entry t order by id")).isEqualTo(before);
    }

    @Test
    void tellsNothingOfWhatWasTakenBackOrRefused() throws Exception {
        Answer job = keepAJob("Ada");
        Answer other = keepAJob("Ada");
        tell();
        String changed = document(reference(job), 2.5);
        assertThat(send("PUT", job.location(), "\"99\"", changed).status()).isEqualTo(412);
        assertThat(
                        send("PUT", job.location(), job.etag(), document(reference(other), 2.5))
                                .status())
                .isEqualTo(409);
        assertThat(send("PUT", job.location(), job.etag(), "{}").status()).isEqualTo(400);
        execute("begin; update job set title = 'x' where id = " + id(job) + "; rollback");
        execute("begin; update part set title = 'x'; rollback");
        execute("update job set title = title, version = version + 1 where id = " + id(job));
        assertThat(tell()).isEmpty();
    }

    @Test
    void keepsWhatATruncateTakes() throws Exception {
        String quote =
                done(
                                "POST",
                                "/api/quotes",
                                "",
                                "{\"job\": %s, \"kits\": 4, \"customerKind\": \"private\"}"
                                        .formatted(id(keepAJob("Ada"))))
                        .location();
        tell();
        execute("truncate quote cascade");
        assertThat(tellShortly())
                .contains("quote removed service", "quote_revision removed service");
        assertThat(get(quote).status()).isEqualTo(404);
    }

    @Test
    void namesEachOfTwoWhoWriteAtOnce() throws Exception {
        int rounds = 20;
        try (ExecutorService pool = Executors.newFixedThreadPool(2)) {
            List<Future<List<String>>> writers =
                    List.of("Ada", "Bo").stream()
                            .map(name -> pool.submit(() -> edit(name, rounds)))
                            .toList();
            for (Future<List<String>> writer : writers) {
                List<String> jobAndName = writer.get();
                JsonNode told =
                        get("/api/changes?what=job&limit=200&record=" + jobAndName.getFirst())
                                .json()
                                .at("/changes");
                assertThat(told).hasSize(2 * (rounds + 1));
                assertThat(told.valueStream().map(each -> each.at("/by").stringValue()))
                        .containsOnly(jobAndName.getLast());
            }
        }
    }

    private static List<String> edit(String name, int rounds) throws Exception {
        Answer job = keepAJob(name);
        Answer last = job;
        for (int i = 1; i <= rounds; i++) {
            last =
                    done(
                            "PUT",
                            job.location() + "?by=" + name,
                            last.etag(),
                            document(reference(job), 1.5 + i / 10.0));
        }
        return List.of(id(job), name);
    }

    @Test
    void pagesByKeyAndFiltersByWhatAndWho() throws Exception {
        Answer job = keepAJob("Fay");
        String last = job.etag();
        for (int i = 1; i <= 3; i++) {
            last =
                    done(
                                    "PUT",
                                    job.location() + "?by=Gus",
                                    last,
                                    document(reference(job), 1.5 + i / 10.0))
                            .etag();
        }
        String ofJob = "/api/changes?what=job&record=" + id(job);
        List<Long> all = ids(get(ofJob).json());
        assertThat(all).hasSize(8).isSortedAccordingTo((a, b) -> Long.compare(b, a));
        List<Long> paged = new ArrayList<>();
        String after = "";
        for (int page = 0; page < 3; page++) {
            JsonNode some = get(ofJob + "&limit=3" + after).json();
            paged.addAll(ids(some));
            // What comes meanwhile moves nothing on the pages to come.
            keepAJob("Fay");
            assertThat(some.at("/next").isNull()).isEqualTo(page == 2);
            after = "&after=" + some.at("/next");
        }
        assertThat(paged).isEqualTo(all);
        assertThat(ids(get(ofJob + "&who=Gus").json())).isEqualTo(all.subList(0, 6));
        assertThat(ids(get(ofJob + "&who=Nobody").json())).isEmpty();
        assertThat(get("/api/changes/" + all.getFirst()).json())
                .isEqualTo(get(ofJob).json().at("/changes/0"));
        assertThat(get("/api/changes/999999999").status()).isEqualTo(404);
    }

    private static List<Long> ids(JsonNode page) {
        return page.at("/changes").valueStream().map(each -> each.at("/id").longValue()).toList();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "what=nonsense | what must be one of job, quote,",
                "record=5 | record must be given together with",
                "limit=0 | limit must be 1 to",
                "after=x | after",
            })
    void saysWhatMayBeAsked(String asked, String says) throws Exception {
        Answer refused = get("/api/changes?" + asked);
        assertThat(refused.status()).isEqualTo(400);
        assertThat(refused.json().at("/detail").stringValue()).contains(says);
    }

    @ParameterizedTest
    @ValueSource(strings = {"POST", "PUT", "PATCH", "DELETE"})
    void offersNoWayToWriteTheTrail(String method) throws Exception {
        for (String path : List.of("/api/changes", "/api/changes/1", "/changes", "/changes/1")) {
            assertThat(send(method, path, "*", "{}").status()).as(path).isEqualTo(405);
        }
    }

    @Test
    void describesTheKindsOfRecordAsTheyAre() throws Exception {
        JsonNode parameters = get("/v3/api-docs").json().at("/paths/~1api~1changes/get/parameters");
        assertThat(parameters.at("/0/schema/enum").valueStream().map(JsonNode::stringValue))
                .containsExactlyElementsOf(
                        IntStream.range(0, RecordKind.values().length)
                                .mapToObj(i -> RecordKind.values()[i].code())
                                .toList());
    }
}
