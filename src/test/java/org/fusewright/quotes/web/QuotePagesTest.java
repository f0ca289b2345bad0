package org.fusewright.quotes.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.ServiceTest;
import org.fusewright.TestDatabase;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.client.EntityExchangeResult;
import org.springframework.test.web.servlet.client.RestTestClient;

import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The pages of quotes as plain forms. */
@ServiceTest
class QuotePagesTest {
    private static final AtomicInteger NUMBER = new AtomicInteger();
    private static final String WISHES =
            "&kits=2&variants=fuses&variants=solid-state&customerKind=private&validDays=30"
                    + "&shipping=true&terms=Cash.&notIncluded=Fitting.";

    @Autowired private RestTestClient client;

    private record Answer(int status, String location, String page) {}

    @AfterEach
    void emptyTheTables() throws SQLException {
        try (Connection connection = TestDatabase.connect();
                Statement statement = connection.createStatement()) {
            statement.execute("truncate quote, quote_revision, quote_demand, quote_count");
        }
    }

    private Answer get(String path) {
        return answer(client.get().uri(path).header(HttpHeaders.ACCEPT, "text/html"));
    }

    private Answer post(String path, String form) {
        return answer(
                client.post()
                        .uri(path)
                        .header(HttpHeaders.ACCEPT, "text/html")
                        .contentType(MediaType.APPLICATION_FORM_URLENCODED)
                        .body(form));
    }

    private static Answer answer(RestTestClient.RequestHeadersSpec<?> request) {
        EntityExchangeResult<byte[]> result = request.exchange().expectBody().returnResult();
        byte[] body = result.getResponseBody();
        return new Answer(
                result.getStatus().value(),
                String.valueOf(result.getResponseHeaders().getLocation())
                        .replaceFirst("^https?://[^/]+", ""),
                body == null ? "" : new String(body, StandardCharsets.UTF_8));
    }

    private String job(String title) {
        String document =
                """
                {"reference": "QP-%d", "title": "%s", "supply": {"nominalV": 12},
                 "feeds": [{"id": "battery", "terminal": "30", "lengthM": 0.6,
                            "sourceDistanceM": 0.1}],
                 "circuits": [{"id": "lamp", "feed": "battery", "runM": 1.5,
                               "loads": [{"kind": "led", "watts": 24}]}]}
                """
                        .formatted(NUMBER.incrementAndGet(), title);
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

    private String create(String title) {
        Answer created = post("/quotes", "job=" + job(title) + WISHES);
        assertThat(created.status()).isEqualTo(302);
        return created.location();
    }

    private static String version(String page) {
        Matcher found = Pattern.compile("name=\"version\" value=\"(\\d+)\"").matcher(page);
        assertThat(found.find()).isTrue();
        return "version=" + found.group(1);
    }

    @Test
    void leadsFromTheJobToItsQuote() {
        String job = job("Bench test");
        assertThat(get("/jobs/" + job).page()).contains("/quotes/new?job=" + job);
        String form = get("/quotes/new?job=" + job).page();
        assertThat(form)
                .contains("name=\"job\" value=\"" + job + "\"")
                .contains("Private customer, tax 20 %")
                .contains("value=\"as-asked\" checked");
        Answer created = post("/quotes", "job=" + job + WISHES);
        assertThat(created.status()).isEqualTo(302);
        assertThat(get(created.location()).page()).contains("Side by side");
        assertThat(get("/quotes?job=" + job).page()).contains(created.location());
    }

    @Test
    void showsEachStateWithItsButtons() {
        String path = create("Bench test");
        String draft = get(path).page();
        assertThat(draft)
                .contains(path + "/send", path + "/refresh", path + "/discard", "Devices that")
                .contains("All fuses", "Solid-state", "auto-reset", "fuse ")
                .doesNotContain(path + "/accept", path + "/revise", path + "/fulfil");
        assertThat(post(path + "/send", version(draft)).status()).isEqualTo(302);
        String sent = get(path).page();
        assertThat(sent)
                .contains(path + "/accept", path + "/decline", path + "/revise")
                .doesNotContain(path + "/send", "Change what it offers");
        assertThat(post(path + "/accept", version(sent) + "&variant=fuses").status())
                .isEqualTo(302);
        String accepted = get(path).page();
        assertThat(accepted).contains("Accepted: All fuses", path + "/fulfil");
        assertThat(post(path + "/fulfil", version(accepted)).status()).isEqualTo(302);
        assertThat(get(path).page()).contains("delivered").doesNotContain(path + "/fulfil");
    }

    @Test
    void showsWhatIsWrongBesideWhatWasTyped() {
        String path = create("Bench test");
        Answer refused =
                post(
                        path,
                        version(get(path).page())
                                + "&kits=many&variants=fuses&customerKind=private&validDays=9999"
                                + "&terms=Keep+this.");
        assertThat(refused.status()).isEqualTo(400);
        assertThat(refused.page())
                .contains("2 entries need another look", "kits: ", "validDays: ")
                .contains("value=\"many\"", "Keep this.");
    }

    @Test
    void saysWhenSomebodyElseWasFasterOrTheQuoteIsSent() {
        String path = create("Bench test");
        String old = version(get(path).page());
        assertThat(post(path + "/refresh", old).status()).isEqualTo(302);
        Answer stale = post(path + "/send", old);
        assertThat(stale.status()).isEqualTo(412);
        assertThat(stale.page()).contains("Somebody changed this quote");
        assertThat(post(path + "/send", version(stale.page())).status()).isEqualTo(302);
        Answer refused = post(path, version(get(path).page()) + WISHES);
        assertThat(refused.status()).isEqualTo(409);
        assertThat(refused.page()).contains("is sent and cannot be changed.");
    }

    @Test
    void escapesWhatPeopleTyped() {
        String path = create("<script>x</script>");
        assertThat(get(path).page())
                .contains("&lt;script&gt;x")
                .doesNotContain("<script>x", "style=\"", "onclick");
        assertThat(get("/quotes?q=%3Cb%3E").page()).doesNotContain("<b>");
    }

    @Test
    void offersPaperAndTableForDownload() {
        String path = create("Bench test");
        for (String file : new String[] {"/quote.pdf", "/quote.pdf?paper=letter", "/quote.csv"}) {
            EntityExchangeResult<byte[]> result =
                    client.get().uri(path + file).exchange().expectBody().returnResult();
            assertThat(result.getStatus().value()).isEqualTo(200);
            assertThat(result.getResponseHeaders().getContentDisposition().getFilename())
                    .matches("Q-\\d{4}-\\d{4} revision 1\\.(pdf|csv)");
        }
    }
}
