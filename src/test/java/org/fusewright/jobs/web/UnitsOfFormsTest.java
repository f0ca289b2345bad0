package org.fusewright.jobs.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.ServiceTest;
import org.fusewright.web.JobFormFields;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.client.RestTestClient;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;

/** The form of a job in other units and with another decimal sign: its document stays SI. */
@ServiceTest
class UnitsOfFormsTest {
    private static final JsonMapper MAPPER = new JsonMapper();
    private static final AtomicInteger NUMBER = new AtomicInteger();
    private static final String FEET = "fusewright-units=imperial";

    @Autowired private RestTestClient client;

    private String create(String sample) throws IOException {
        String document =
                Files.readString(Path.of("catalog-sample", "jobs", sample + ".json"))
                        .replaceFirst(
                                "(\"reference\"\\s*:\\s*\")[^\"]*",
                                "$1UF-" + NUMBER.incrementAndGet());
        String location =
                String.valueOf(
                        client.post()
                                .uri("/api/jobs")
                                .contentType(MediaType.APPLICATION_JSON)
                                .body(document)
                                .exchange()
                                .returnResult()
                                .getResponseHeaders()
                                .getLocation());
        return location.substring(location.lastIndexOf('/') + 1);
    }

    private Map<String, String> fields(String id, String language, String cookie) {
        return JobFormFields.of(
                client.get()
                        .uri("/jobs/" + id)
                        .header(HttpHeaders.ACCEPT_LANGUAGE, language)
                        .header(HttpHeaders.COOKIE, cookie)
                        .exchange()
                        .expectBody(String.class)
                        .returnResult()
                        .getResponseBody());
    }

    private void send(String id, Map<String, String> fields, String cookie) {
        client.post()
                .uri("/jobs/" + id)
                .header(HttpHeaders.COOKIE, cookie)
                .contentType(MediaType.APPLICATION_FORM_URLENCODED)
                .body(JobFormFields.print(fields))
                .exchange()
                .expectStatus()
                .is3xxRedirection();
    }

    private JsonNode kept(String id) {
        return MAPPER.readTree(
                client.get()
                        .uri("/api/jobs/" + id)
                        .accept(MediaType.APPLICATION_JSON)
                        .exchange()
                        .expectBody(String.class)
                        .returnResult()
                        .getResponseBody());
    }

    @ParameterizedTest
    @CsvSource({
        "01-trail-quad, en",
        "03-injected-twin, de",
        "05-oldtimer-6v, en",
        "06-touring-twelve, de"
    })
    void comesBackUntouched(String sample, String language) throws IOException {
        String id = create(sample);
        JsonNode before = kept(id);
        String version = fields(id, language, FEET).get("version");

        send(id, fields(id, language, FEET), FEET);

        assertThat(kept(id)).isEqualTo(before);
        assertThat(fields(id, language, FEET)).containsEntry("version", version);
    }

    @Test
    void keepsWhatIsTypedInFeetInchesAndFahrenheitAsMetricValues() throws IOException {
        String id = create("01-trail-quad");
        Map<String, String> fields = fields(id, "en", FEET);
        assertThat(fields).containsEntry("/circuits/0/runM", "3.61");
        fields.put("/circuits/0/runM", "4");
        fields.put("/circuits/1/runM", "2 m");
        fields.put("/choices/endAllowanceMm", "1,5");
        fields.put("/surroundings/ambientC", "113");

        send(id, fields, FEET);

        JsonNode document = kept(id);
        assertThat(document.at("/circuits/0/runM").doubleValue()).isEqualTo(1.219);
        assertThat(document.at("/circuits/1/runM").doubleValue()).isEqualTo(2);
        assertThat(document.at("/choices/endAllowanceMm").intValue()).isEqualTo(38);
        assertThat(document.at("/surroundings/ambientC").doubleValue()).isEqualTo(45);
    }

    /** Another tab may have picked other units since the form was shown. */
    @Test
    void takesAFormInTheUnitsThatItWasShownIn() throws IOException {
        String id = create("01-trail-quad");
        Map<String, String> fields = fields(id, "en", FEET);
        fields.put("/circuits/0/runM", "4");

        send(id, fields, "fusewright-units=metric");

        assertThat(kept(id).at("/circuits/0/runM").doubleValue()).isEqualTo(1.219);
        assertThat(kept(id).at("/feeds/0/lengthM").doubleValue()).isEqualTo(0.6);
    }

    @Test
    void showsAndReadsADecimalComma() throws IOException {
        String id = create("01-trail-quad");
        Map<String, String> fields = fields(id, "de", "");
        assertThat(fields).containsEntry("/circuits/0/runM", "1,1");
        fields.put("/circuits/0/runM", "1,25");

        send(id, fields, "");

        assertThat(kept(id).at("/circuits/0/runM").doubleValue()).isEqualTo(1.25);
    }

    @Test
    void startsAJobOfAnImperialReaderWithGauges() {
        String form = "%2Freference=UF-AWG&%2Fsupply%2FnominalV=12";
        String location =
                String.valueOf(
                        client.post()
                                .uri("/jobs")
                                .header(HttpHeaders.COOKIE, FEET)
                                .contentType(MediaType.APPLICATION_FORM_URLENCODED)
                                .body(form)
                                .exchange()
                                .expectBody(Void.class)
                                .returnResult()
                                .getResponseHeaders()
                                .getLocation());

        String id = location.substring(location.lastIndexOf('/') + 1);

        assertThat(kept(id).at("/choices/wireFamily").asString()).isEqualTo("awg-tinned");
    }
}
