package org.fusewright.web;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;

import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.text.PDFTextStripper;
import org.fusewright.Shop;
import org.fusewright.Shop.Answer;
import org.fusewright.TestDatabase;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;

import tools.jackson.databind.JsonNode;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;

import javax.xml.parsers.DocumentBuilderFactory;

/** Names stay names, whatever signs they have, on pages, in tables, documents and papers. */
class InjectionTest {
    /** Would end an attribute, be a tag, and be a formula where it begins a cell. */
    private static final String HOSTILE = "=1+1\"><b id=inj>&'";

    private static final Pattern ATTRIBUTE = Pattern.compile("=\"[^\"]*\"|='[^']*'");
    private static final Pattern FORMULA = Pattern.compile("[=+\\-@\t\r].*", Pattern.DOTALL);
    private static final Pattern NUMBER = Pattern.compile("-?[0-9.,]+");
    private static final String BOUNDARY = "part-of-a-test";

    private static Shop shop;
    private static final Map<String, String> papers = new LinkedHashMap<>();
    private static final Map<String, String> pages = new LinkedHashMap<>();
    private static final Map<String, String> tables = new LinkedHashMap<>();
    private static String order;

    @BeforeAll
    static void fillAShopWithHostileNames() throws IOException {
        shop = Shop.open(TestDatabase.newOne("fusewright_injection"));
        importHostileCatalog();
        String quoted = json(HOSTILE);
        String job =
                made(
                        "/api/jobs",
                        """
                        {"reference": "INJ", "title": %1$s, "customer": %1$s,
                         "supply": {"nominalV": 12},
                         "feeds": [{"id": "battery", "terminal": "30", "lengthM": 0.6,
                                    "sourceDistanceM": 0.1}],
                         "circuits": [{"id": "lamp", "title": %1$s, "feed": "battery", "runM": 1.5,
                                       "location": %1$s,
                                       "loads": [{"title": %1$s, "kind": "led", "watts": 24}]}]}
                        """
                                .formatted(quoted));
        String id = job.substring(job.lastIndexOf('/') + 1);
        String quote =
                made(
                        "/api/quotes",
                        """
                        {"job": %s, "kits": 40, "variants": ["fuses", "solid-state"],
                         "customerKind": "private"}
                        """
                                .formatted(id));
        step(quote + "/send", quote, "");
        step(quote + "/accept", quote, "{\"variant\": \"fuses\"}");
        Answer proposal = shop.get("/api/orders/proposal?currency=EUR", Shop.JSON);
        Answer orders =
                shop.post("/api/orders", proposal.etag(), Shop.JSON, "{\"currency\": \"EUR\"}");
        assertThat(orders.status()).as(orders.text()).isEqualTo(201);
        for (JsonNode each : orders.json()) {
            String path = "/api/orders/" + each.at("/id").asString();
            step(path + "/send", path, "");
            order = path.substring("/api".length());
        }
        assertThat(order).as(orders.text()).isNotNull();
        String count = made("/api/counts", "{\"jobId\": %s, \"by\": %s}".formatted(id, quoted));
        step(count + "/signature", count, "{\"name\": %s, \"remark\": %1$s}".formatted(quoted));

        String jobPage = "/jobs/" + id;
        String quotePage = quote.substring("/api".length());
        String countPage = count.substring("/api".length());
        for (String page :
                List.of(
                        "/jobs",
                        jobPage,
                        jobPage + "/revisions",
                        jobPage + "/revisions/1",
                        jobPage + "/arrangements",
                        "/quotes",
                        "/quotes/new?job=" + id,
                        quotePage,
                        "/orders",
                        order,
                        "/counts",
                        countPage,
                        "/catalog?q=WDB-4",
                        "/catalog/parts/WDB-4",
                        "/changes",
                        "/jobs?q=" + java.net.URLEncoder.encode(HOSTILE, StandardCharsets.UTF_8))) {
            pages.put(page, ok(shop.get(page, "text/html")).text());
        }
        for (String table :
                List.of(jobPage + "/parts.csv", quotePage + "/quote.csv", order + "/order.csv")) {
            tables.put(table, ok(shop.get(table, "*/*")).text());
        }
        for (String paper :
                List.of(
                        jobPage + "/papers/kit-list.pdf",
                        jobPage + "/papers/assembly-sheet.pdf",
                        jobPage + "/papers/bag-label.pdf",
                        quotePage + "/quote.pdf",
                        order + "/order.pdf",
                        countPage + "/record.pdf")) {
            papers.put(paper, "");
        }
    }

    private static void importHostileCatalog() throws IOException {
        StringBuilder body = new StringBuilder();
        try (Stream<Path> files = Files.list(Path.of("catalog-sample"))) {
            for (Path file :
                    files.filter(each -> each.toString().endsWith(".csv")).sorted().toList()) {
                String cell = "\"" + HOSTILE.replace("\"", "\"\"") + "\"";
                String content =
                        switch (file.getFileName().toString()) {
                            case "suppliers.csv" ->
                                    Files.readString(file)
                                            .replaceAll("(?m)^([A-Z]+),[^,]*", "$1," + cell);
                            case "offers.csv", "stock.csv", "margins.csv" -> Files.readString(file);
                            default ->
                                    Files.readString(file)
                                            .replaceAll(
                                                    "(?m)^([A-Z]{3}-[^,]*),(\"[^\"]*\"|[^,]*)",
                                                    "$1," + cell);
                        };
                body.append("--" + BOUNDARY + "\r\nContent-Disposition: form-data; name=\"files\";")
                        .append(" filename=\"" + file.getFileName() + "\"\r\n")
                        .append("Content-Type: text/csv\r\n\r\n" + content + "\r\n");
            }
        }
        body.append("--" + BOUNDARY + "--\r\n");
        Answer known = shop.get("/api/catalog", Shop.JSON);
        Answer imported =
                shop.post(
                        "/api/catalog/import",
                        known.etag().isEmpty() ? "*" : known.etag(),
                        "multipart/form-data;boundary=" + BOUNDARY,
                        body.toString());
        assertThat(imported.status()).as(imported.text()).isEqualTo(200);
    }

    private static String json(String text) {
        return "\"" + text.replace("\"", "\\\"") + "\"";
    }

    private static String made(String path, String body) {
        Answer answer = shop.post(path, "", Shop.JSON, body);
        assertThat(answer.status()).as(answer.text()).isEqualTo(201);
        return answer.location();
    }

    private static void step(String path, String of, String body) {
        Answer answer =
                shop.post(
                        path,
                        shop.get(of, Shop.JSON).etag(),
                        body.isEmpty() ? "" : Shop.JSON,
                        body);
        assertThat(answer.status()).as(path + answer.text()).isEqualTo(200);
    }

    private static Answer ok(Answer answer) {
        assertThat(answer.status()).as(answer.text()).isEqualTo(200);
        return answer;
    }

    @AfterAll
    static void stop() {
        shop.close();
    }

    @Test
    void putsNoTagIntoAPage() {
        pages.forEach(
                (path, page) ->
                        assertThat(ATTRIBUTE.matcher(page).replaceAll(""))
                                .as(path)
                                .doesNotContain("<b id=inj>"));
        assertThat(pages.values())
                .filteredOn(page -> page.contains("&lt;b id=inj"))
                .hasSize(
                        (int)
                                pages.values().stream()
                                        .filter(page -> page.contains("id=inj"))
                                        .count());
        assertThat(pages.get("/jobs")).contains("&lt;b id=inj&gt;");
    }

    @Test
    void putsNoFormulaIntoATable() {
        tables.forEach(
                (path, table) -> {
                    assertThat(table).as(path).contains("'=1+1");
                    for (CsvRecord row : CsvReader.builder().ofCsvRecord(table)) {
                        for (String cell : row.getFields()) {
                            assertThat(
                                            FORMULA.matcher(cell).matches()
                                                    && !NUMBER.matcher(cell).matches())
                                    .as(path + ": " + cell)
                                    .isFalse();
                        }
                    }
                });
    }

    @Test
    void keepsNamesWholeInDocumentsForMachines() throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
        Document xml =
                factory.newDocumentBuilder()
                        .parse(
                                new ByteArrayInputStream(
                                        ok(shop.get(order + "/order.xml", "*/*")).body()));
        assertThat(xml.getDocumentElement().getTextContent()).contains(HOSTILE);
        assertThat(xml.getElementsByTagName("b").getLength()).isZero();
    }

    @Test
    void putsNothingActiveIntoAPaper() throws IOException {
        for (String path : papers.keySet()) {
            try (PDDocument paper = Loader.loadPDF(ok(shop.get(path, "*/*")).body())) {
                assertThat(paper.getDocumentCatalog().getOpenAction()).as(path).isNull();
                assertThat(paper.getDocumentCatalog().getActions().getWC()).as(path).isNull();
                assertThat(paper.getDocumentCatalog().getNames()).as(path).isNull();
                assertThat(paper.getDocumentCatalog().getAcroForm()).as(path).isNull();
                for (PDPage page : paper.getPages()) {
                    assertThat(page.getAnnotations()).as(path).isEmpty();
                }
                assertThat(new PDFTextStripper().getText(paper).replaceAll("\\s", ""))
                        .as(path)
                        .contains("=1+1\"><bid=inj>&'");
            }
        }
    }

    /** What is never read can hold no entity that reaches out. */
    @Test
    void readsNoXml() {
        noClasses()
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(
                        "javax.xml.parsers..",
                        "javax.xml.stream..",
                        "javax.xml.transform..",
                        "org.xml.sax..")
                .check(
                        new ClassFileImporter()
                                .withImportOption(new ImportOption.DoNotIncludeTests())
                                .importPackages("org.fusewright"));
    }
}
