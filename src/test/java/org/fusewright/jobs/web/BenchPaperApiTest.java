package org.fusewright.jobs.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.fusewright.ServiceTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.client.EntityExchangeResult;
import org.springframework.test.web.servlet.client.RestTestClient;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

@ServiceTest
class BenchPaperApiTest {

    @Autowired private RestTestClient client;

    private static String quad(String reference) throws IOException {
        return Files.readString(Path.of("catalog-sample/jobs/01-trail-quad.json"))
                .replace("TQ-014", reference);
    }

    private static String newReference() {
        return "BP-" + UUID.randomUUID().toString().substring(0, 8);
    }

    /** Keeps a job and gives its address. */
    private String create(String reference) throws IOException {
        return client.post()
                .uri("/api/jobs")
                .contentType(MediaType.APPLICATION_JSON)
                .body(quad(reference))
                .exchange()
                .expectStatus()
                .isCreated()
                .expectBody()
                .returnResult()
                .getResponseHeaders()
                .getLocation()
                .toString();
    }

    private EntityExchangeResult<byte[]> get(String path) {
        return client.get().uri(path).exchange().expectBody().returnResult();
    }

    private EntityExchangeResult<byte[]> post(String path, String body) {
        return client.post()
                .uri(path)
                .contentType(MediaType.APPLICATION_JSON)
                .body(body)
                .exchange()
                .expectBody()
                .returnResult();
    }

    private static String text(EntityExchangeResult<byte[]> result) throws IOException {
        assertThat(result.getStatus().value()).isEqualTo(200);
        assertThat(result.getResponseHeaders().getContentType())
                .isEqualTo(MediaType.APPLICATION_PDF);
        try (PDDocument document = Loader.loadPDF(result.getResponseBody())) {
            return new PDFTextStripper().getText(document);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "kit-list, Kit list, Parts",
        "assembly-sheet, Assembly sheet, Order of work",
        "lid-legend, Lid legend, What the label of B1 says",
        "cut-list, Cut list, 'Markers, one for each end of each lead'",
        "bag-label, Bag label, FW1|TQ-014|",
        "part-labels, Part labels, Goes to",
    })
    void printsEachPaperOfAJobThatIsNotKept(String name, String title, String holds)
            throws IOException {
        EntityExchangeResult<byte[]> result =
                post("/api/kits/papers/" + name + "?paper=letter", quad("TQ-014"));
        assertThat(text(result)).contains(title, holds).doesNotContain("Revision");
        assertThat(result.getResponseHeaders().getFirst(HttpHeaders.CONTENT_DISPOSITION))
                .startsWith("attachment")
                .contains("filename=\"TQ-014 " + title.toLowerCase(Locale.ROOT) + ".pdf\"");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "kit-list",
                "assembly-sheet",
                "lid-legend",
                "cut-list",
                "bag-label",
                "part-labels"
            })
    void printsEachPaperOfAKeptJobWithItsRevision(String name) throws IOException {
        String reference = newReference();
        String path = create(reference);
        assertThat(text(get(path + "/papers/" + name))).contains(reference + ", revision 1");
        client.put()
                .uri(path)
                .contentType(MediaType.APPLICATION_JSON)
                .header(HttpHeaders.IF_MATCH, "*")
                .body(quad(reference).replace("Trail patrol quad", "Another quad"))
                .exchange()
                .expectStatus()
                .isOk();
        assertThat(text(get(path + "/papers/" + name + "?paper=letter")))
                .contains(reference + ", revision 2", "Another quad");
    }

    @Test
    void putsTheRevisionIntoTheBagsCode() throws IOException {
        String reference = newReference();
        assertThat(text(get(create(reference) + "/papers/bag-label")))
                .containsPattern("FW1\\|" + reference + "\\|1\\|[0-9a-f]{12}\\b");
    }

    @Test
    void rejectsAPaperThatThereIsNot() throws IOException {
        String path = create(newReference());
        for (EntityExchangeResult<byte[]> result :
                List.of(
                        get(path + "/papers/wiring"),
                        post("/api/kits/papers/wiring", quad("TQ-014")))) {
            assertThat(result.getStatus().value()).isEqualTo(404);
            assertThat(new String(result.getResponseBody(), StandardCharsets.UTF_8))
                    .contains("kit-list, assembly-sheet, lid-legend, cut-list, bag-label");
        }
        assertThat(get("/api/jobs/999999/papers/cut-list").getStatus().value()).isEqualTo(404);
    }

    @Test
    void rejectsASheetThatThereIsNot() throws IOException {
        EntityExchangeResult<byte[]> result =
                get(create(newReference()) + "/papers/cut-list?paper=a5");
        assertThat(result.getStatus().value()).isEqualTo(400);
        assertThat(new String(result.getResponseBody(), StandardCharsets.UTF_8))
                .contains("paper must be a4 or letter");
    }

    @Test
    void rejectsALanguageThatThereIsNot() throws IOException {
        String path = create(newReference());
        for (EntityExchangeResult<byte[]> result :
                List.of(
                        get(path + "/papers/cut-list?language=fr"),
                        post("/api/kits/papers/cut-list?language=DE", quad("TQ-014")))) {
            assertThat(result.getStatus().value()).isEqualTo(400);
            assertThat(new String(result.getResponseBody(), StandardCharsets.UTF_8))
                    .contains("language must be en or de");
        }
    }

    @Test
    void printsInTheLanguageThatIsAskedFor() throws IOException {
        String path = create(newReference());
        for (String language : List.of("", "?language=en")) {
            assertThat(text(get(path + "/papers/cut-list" + language))).contains("Cut, mm");
        }
        EntityExchangeResult<byte[]> german = get(path + "/papers/cut-list?language=de");
        assertThat(text(german))
                .contains("Zuschnittliste", "Abisolieren")
                .doesNotContain("Cut, mm");
        assertThat(german.getResponseHeaders().getFirst(HttpHeaders.CONTENT_DISPOSITION))
                .contains("Zuschnittliste.pdf");
        assertThat(text(post("/api/kits/papers/bag-label?language=de", quad("TQ-014"))))
                .contains("Beuteletikett");
    }

    /** As picked in the page head; a request for a document does not ask who reads. */
    @Test
    void printsForTheReaderOfThePage() throws IOException {
        String path = create(newReference());
        String page = "/jobs/" + path.replaceAll(".*/", "") + "/papers/cut-list.pdf";
        String cookies = "fusewright-language=de; fusewright-units=imperial";
        assertThat(text(getWith(cookies, page))).contains("Zuschnittliste", " ft");
        assertThat(text(getWith(cookies, path + "/papers/cut-list"))).contains("Cut, mm");
    }

    private EntityExchangeResult<byte[]> getWith(String cookies, String path) {
        return client.get()
                .uri(path)
                .header(HttpHeaders.COOKIE, cookies)
                .exchange()
                .expectBody()
                .returnResult();
    }

    @Test
    void tellsEverythingThatIsWrongWithAJob() throws IOException {
        EntityExchangeResult<byte[]> result =
                post(
                        "/api/kits/papers/cut-list",
                        quad("TQ-014")
                                .replace("\"nominalV\": 12", "\"nominalV\": -1")
                                .replace("\"kind\": \"pump\"", "\"kind\": \"pomp\""));
        assertThat(result.getStatus().value()).isEqualTo(400);
        assertThat(new String(result.getResponseBody(), StandardCharsets.UTF_8))
                .contains("/supply/nominalV", "/kind");
    }

    @Test
    void offersEachPaperOnTheJobsPage() throws IOException {
        String page = "/jobs/" + create(newReference()).replaceAll(".*/", "");
        String shown = new String(get(page).getResponseBody(), StandardCharsets.UTF_8);
        List<String> links =
                Pattern.compile("href=\"(" + page + "/papers/[^\"]+)\"")
                        .matcher(shown)
                        .results()
                        .map((MatchResult match) -> match.group(1))
                        .toList();
        assertThat(links).hasSize(12);
        for (String link : links) {
            assertThat(text(get(link))).contains("revision 1");
        }
    }
}
