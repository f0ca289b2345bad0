package org.fusewright.web;

import static org.assertj.core.api.Assertions.assertThat;

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

import java.util.List;

/** Who reads a page, and that documents do not care. */
@ServiceTest
class ReaderTest {
    @Autowired private RestTestClient client;

    private String page(String path, String acceptLanguage, String cookies) {
        return client.get()
                .uri(path)
                .header(HttpHeaders.ACCEPT, "text/html")
                .header(HttpHeaders.ACCEPT_LANGUAGE, acceptLanguage)
                .header(HttpHeaders.COOKIE, cookies)
                .exchange()
                .expectBody(String.class)
                .returnResult()
                .getResponseBody();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
                    ''                    | ''                                              | en | metric
                    de                    | ''                                              | de | metric
                    de-AT,en-US;q=0.7     | ''                                              | de | metric
                    fr,de;q=0.5,en;q=0.3  | ''                                              | de | metric
                    fr                    | ''                                              | en | metric
                    en-GB,en;q=0.9        | ''                                              | en | metric
                    en-US,en;q=0.9        | ''                                              | en | imperial
                    de;q=0,en             | ''                                              | en | metric
                    broken;;q=x           | ''                                              | en | metric
                    en-US                 | fusewright-language=de; fusewright-units=metric | de | metric
                    de                    | fusewright-language=en                          | en | metric
                    de                    | fusewright-units=imperial                       | de | imperial
                    de                    | fusewright-language=xx; fusewright-units=xx     | de | metric
                    """)
    void followsWhatWasPickedThenWhatTheBrowserAsksFor(
            String acceptLanguage, String cookies, String language, String units) {
        assertThat(page("/jobs", acceptLanguage, cookies))
                .contains("<html lang=\"" + language + "\"")
                .contains("lang=\"" + language + "\" aria-pressed=\"true\"")
                .contains("value=\"" + units + "\" aria-pressed=\"true\"");
    }

    @Test
    void tellsErrorsInTheReadersLanguage() {
        assertThat(page("/jobs/999999", "de", "")).contains("<h1>Nicht gefunden</h1>");
        assertThat(page("/no/such/page", "de", ""))
                .contains("Unter dieser Adresse gibt es nichts.")
                .contains("<html lang=\"de\"");
    }

    @ParameterizedTest
    @ValueSource(strings = {"/api/jobs/999999", "/api/jobs?limit=9999", "/api/catalog/parts/none"})
    void answersProgramsInEnglish(String path) {
        assertThat(problem(path, "de")).isNotEmpty().isEqualTo(problem(path, "en"));
    }

    private String problem(String path, String acceptLanguage) {
        return client.get()
                .uri(path)
                .accept(MediaType.APPLICATION_JSON)
                .header(HttpHeaders.ACCEPT_LANGUAGE, acceptLanguage)
                .exchange()
                .expectBody(String.class)
                .returnResult()
                .getResponseBody();
    }

    @ParameterizedTest
    @CsvSource({
        "language=de&back=/jobs?q=a%26b, fusewright-language=de, /jobs?q=a&b",
        "units=imperial&back=/catalog, fusewright-units=imperial, /catalog",
        "language=de&back=//example.org/, fusewright-language=de, /jobs",
        "language=de&back=https://example.org/, fusewright-language=de, /jobs",
        "language=de&back=///example.org/, fusewright-language=de, /jobs",
        "language=de&back=/%5Cexample.org/, fusewright-language=de, /jobs",
        "language=de&back=/jobs?q=%25_, fusewright-language=de, /jobs",
        "language=de, fusewright-language=de, /jobs",
    })
    void keepsWhatIsPickedAndGoesBack(String form, String cookie, String back) {
        EntityExchangeResult<Void> answer = pick(form);

        assertThat(answer.getStatus().value()).isEqualTo(303);
        assertThat(answer.getResponseHeaders().getFirst(HttpHeaders.LOCATION)).isEqualTo(back);
        assertThat(answer.getResponseHeaders().getFirst(HttpHeaders.SET_COOKIE))
                .startsWith(cookie + ";")
                .contains("HttpOnly", "SameSite=Lax", "Path=/");
    }

    @Test
    void keepsNothingThatThereIsNot() {
        assertThat(pick("language=xx&units=cubits").getResponseHeaders())
                .satisfies(
                        headers ->
                                assertThat(headers.getOrEmpty(HttpHeaders.SET_COOKIE))
                                        .isEqualTo(List.of()));
    }

    private EntityExchangeResult<Void> pick(String form) {
        return client.post()
                .uri("/reader")
                .contentType(MediaType.APPLICATION_FORM_URLENCODED)
                .body(form)
                .exchange()
                .expectBody(Void.class)
                .returnResult();
    }
}
