package org.fusewright.jobs.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;

import org.fusewright.ServiceTest;
import org.fusewright.jobs.load.JobMutations;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.client.EntityExchangeResult;
import org.springframework.test.web.servlet.client.RestTestClient;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;

@ServiceTest
class KitApiTest {
    private static final JsonMapper MAPPER = new JsonMapper();

    @Autowired private RestTestClient client;

    private static String sample(String name) throws IOException {
        return Files.readString(Path.of("catalog-sample/jobs", name));
    }

    private EntityExchangeResult<byte[]> post(String body, String type, String accept) {
        RestTestClient.RequestBodySpec request =
                client.post().uri("/api/kits").header("Content-Type", type);
        if (!accept.isEmpty()) {
            request.header("Accept", accept);
        }
        return request.body(body.getBytes(StandardCharsets.UTF_8))
                .exchange()
                .expectBody()
                .returnResult();
    }

    private static String text(EntityExchangeResult<byte[]> result) {
        return new String(result.getResponseBody(), StandardCharsets.UTF_8);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "01-trail-quad.json", "02-carburetted-single.json", "03-injected-twin.json",
                "04-utility-quad-24v.json", "05-oldtimer-6v.json", "06-touring-twelve.json"
            })
    void plansASampleJobThatCanBeBuilt(String name) throws IOException {
        JsonNode kit = MAPPER.readTree(text(post(sample(name), "application/json", "")));
        assertThat(kit.path("checks"))
                .filteredOn(check -> check.path("verdict").asString().equals("fail"))
                .isEmpty();
        assertThat(kit.path("buildable").asBoolean()).isTrue();
        assertThat(kit.path("blocks")).isNotEmpty();
    }

    @Test
    void answersTheSameBytesEachTime() throws IOException {
        String job = sample("06-touring-twelve.json");
        assertThat(text(post(job, "application/json", "application/json")))
                .isEqualTo(text(post(job, "application/json", "*/*")));
    }

    @Test
    void writesFiguresWithoutNoise() throws IOException {
        String kit = text(post(sample("06-touring-twelve.json"), "application/json", ""));
        assertThat(kit)
                .doesNotContainPattern("\\d\\.\\d{7,}")
                .doesNotContainPattern("[:,\\[]-?\\d+(\\.\\d+)?[eE]");
        assertThat(kit).doesNotContain("null");
        JsonNode tree = MAPPER.readTree(kit);
        assertThat(tree.at("/totals/parts").decimalValue().scale()).isLessThanOrEqualTo(2);
        assertThat(tree.path("circuits").get(0).path("leads"))
                .allSatisfy(
                        lead ->
                                assertThat(lead.path("cutM").decimalValue().scale())
                                        .isLessThanOrEqualTo(3));
    }

    @Test
    void tellsWhatAFeedCarriesAndWhatItLeaves() throws IOException {
        JsonNode kit =
                MAPPER.readTree(
                        text(post(sample("06-touring-twelve.json"), "application/json", "")));
        JsonNode feed = kit.path("feeds").get(1);

        assertThat(feed.path("runningA").asDouble())
                .isCloseTo(0.8 * feed.path("connectedA").asDouble(), within(1e-3));
        assertThat(feed.at("/remains/batteryV").asDouble()).isBetween(11.0, 12.2);
        assertThat(feed.at("/remains/busV").asDouble())
                .isLessThan(feed.at("/remains/batteryV").asDouble());
        assertThat(feed.at("/remains/busAtStartV").asDouble())
                .isLessThan(feed.at("/remains/busV").asDouble());
    }

    @Test
    void rejectsAFeedThatFixesWhatIsNotStocked() throws IOException {
        String job =
                sample("06-touring-twelve.json")
                        .replace("\"diversity\": 0.8", "\"ratingA\": 33, \"gauge\": \"123 mm2\"");
        EntityExchangeResult<byte[]> result = post(job, "application/json", "");

        assertThat(result.getStatus().value()).isEqualTo(400);
        assertThat(MAPPER.readTree(text(result)).path("errors"))
                .extracting(error -> error.path("pointer").asString())
                .containsExactlyInAnyOrder("/feeds/1/ratingA", "/feeds/1/gauge");
    }

    @ParameterizedTest
    @CsvSource({
        "application/pdf, application/pdf",
        "'text/csv', text/csv;charset=UTF-8",
        "'text/csv;q=0.5, application/pdf;q=0.4', text/csv;charset=UTF-8",
        "'application/*', application/json",
        "'text/*', text/csv;charset=UTF-8",
        "'*/*', application/json",
        "'application/pdf;q=0, */*', application/json",
    })
    void answersInTheFormAskedFor(String accept, String type) throws IOException {
        EntityExchangeResult<byte[]> result =
                post(sample("01-trail-quad.json"), "application/json", accept);
        assertThat(result.getStatus().value()).isEqualTo(200);
        assertThat(result.getResponseHeaders().getContentType())
                .isEqualTo(MediaType.parseMediaType(type));
    }

    @Test
    void listsThePartsAsATable() throws IOException {
        String job = sample("01-trail-quad.json");
        JsonNode kit = MAPPER.readTree(text(post(job, "application/json", "")));
        String table = text(post(job, "application/json", "text/csv"));
        assertThat(table)
                .startsWith("group,part,title,quantity,unit,unitPrice,extended,massG,usedAt\r\n");
        List<NamedCsvRecord> rows = CsvReader.builder().ofNamedCsvRecord(table).stream().toList();
        assertThat(rows).hasSameSizeAs(kit.path("parts"));
        for (int i = 0; i < rows.size(); i++) {
            JsonNode line = kit.path("parts").get(i);
            assertThat(rows.get(i).getField("part")).isEqualTo(line.path("part").asString());
            assertThat(new BigDecimal(rows.get(i).getField("quantity")))
                    .isEqualByComparingTo(line.path("quantity").decimalValue());
            assertThat(new BigDecimal(rows.get(i).getField("extended")))
                    .isEqualByComparingTo(line.path("extended").decimalValue());
        }
    }

    @ParameterizedTest
    @CsvSource({
        "text/plain, '', 415",
        "application/json, image/png, 406",
    })
    void rejectsWhatItCannotReadOrWrite(String type, String accept, int status) throws IOException {
        EntityExchangeResult<byte[]> result = post(sample("01-trail-quad.json"), type, accept);
        assertThat(result.getStatus().value()).isEqualTo(status);
        assertThat(result.getResponseHeaders().getContentType())
                .isEqualTo(MediaType.APPLICATION_PROBLEM_JSON);
    }

    @Test
    void rejectsAnUnknownPaper() throws IOException {
        client.post()
                .uri("/api/kits?paper=a3")
                .contentType(MediaType.APPLICATION_JSON)
                .accept(MediaType.APPLICATION_PDF)
                .body(sample("01-trail-quad.json"))
                .exchange()
                .expectStatus()
                .isBadRequest()
                .expectBody()
                .jsonPath("$.detail")
                .isEqualTo("paper must be a4 or letter");
    }

    @Test
    void rejectsABodyThatIsTooLong() {
        EntityExchangeResult<byte[]> result =
                post("[" + " ".repeat(2 * 1024 * 1024) + "]", "application/json", "");
        assertThat(result.getStatus().value()).isEqualTo(413);
        assertThat(text(result)).contains("2 MB");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
                    EUR      | JPY       | /currency
                    "VT"     | "XX"      | /circuits/0/colour
                    "ratingA": null | "ratingA": 11 | /circuits/0/ratingA
                    "wireFamily": null | "wireFamily": "gold" | /choices/wireFamily
                    """)
    void rejectsWhatIsNotStockedByItsPointer(String part, String instead, String pointer)
            throws IOException {
        EntityExchangeResult<byte[]> result =
                post(
                        sample("01-trail-quad.json").replace(part, instead),
                        "application/json",
                        "application/pdf");
        assertThat(result.getStatus().value()).isEqualTo(400);
        assertThat(result.getResponseHeaders().getContentType())
                .isEqualTo(MediaType.APPLICATION_PROBLEM_JSON);
        assertThat(MAPPER.readTree(text(result)).path("errors"))
                .extracting(error -> error.path("pointer").asString())
                .containsExactly(pointer);
    }

    /** Whatever arrives is either planned or named as wrong; nothing makes the service stumble. */
    @ParameterizedTest
    @ValueSource(strings = {"01-trail-quad.json", "06-touring-twelve.json"})
    void plansOrRejectsWhateverArrives(String name) throws IOException {
        Random random = new Random(4_711);
        JsonNode job = MAPPER.readTree(sample(name));
        int planned = 0;
        for (int i = 0; i < 400; i++) {
            JsonNode mutated = job.deepCopy();
            for (int j = random.nextInt(3); j >= 0; j--) {
                JobMutations.mutate(mutated, random);
            }
            String text = MAPPER.writeValueAsString(mutated);
            EntityExchangeResult<byte[]> result = post(text, "application/json", "");
            int status = result.getStatus().value();
            assertThat(status).describedAs(text).isIn(200, 400);
            if (status == 400) {
                assertThat(MAPPER.readTree(text(result)).path("errors"))
                        .describedAs(text)
                        .isNotEmpty();
            }
            planned += status == 200 ? 1 : 0;
        }
        assertThat(planned).isBetween(20, 300);
    }

    @Test
    void publishesTheSchema() {
        client.get()
                .uri("/api/schema/job")
                .exchange()
                .expectStatus()
                .isOk()
                .expectBody()
                .jsonPath("$.title")
                .isEqualTo("Job");
    }
}
