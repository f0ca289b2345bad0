package org.fusewright.counts.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.ServiceTest;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.client.EntityExchangeResult;
import org.springframework.test.web.servlet.client.RestTestClient;

import java.util.concurrent.atomic.AtomicInteger;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The pages as plain forms, without their script. */
@ServiceTest
class CountPagesTest {
    private static final AtomicInteger NUMBER = new AtomicInteger();

    @Autowired private RestTestClient client;

    private record Answer(int status, String location, String page) {}

    private Answer post(String path, String form) {
        EntityExchangeResult<String> result =
                client.post()
                        .uri(path)
                        .contentType(MediaType.APPLICATION_FORM_URLENCODED)
                        .body(form)
                        .exchange()
                        .expectBody(String.class)
                        .returnResult();
        return new Answer(
                result.getStatus().value(),
                String.valueOf(result.getResponseHeaders().getLocation()),
                String.valueOf(result.getResponseBody()));
    }

    private String get(String path) {
        return String.valueOf(
                client.get()
                        .uri(path)
                        .exchange()
                        .expectStatus()
                        .isOk()
                        .expectBody(String.class)
                        .returnResult()
                        .getResponseBody());
    }

    private long createJob() {
        String document =
                """
                {"reference": "PAGE-%d", "title": "<b>Bench</b>", "supply": {"nominalV": 12},
                 "feeds": [{"id": "battery", "terminal": "30", "lengthM": 0.6,
                            "sourceDistanceM": 0.1}],
                 "circuits": [{"id": "lamp", "feed": "battery", "runM": 1.5, "ratingA": 10,
                               "loads": [{"kind": "led", "watts": 60}]}]}
                """
                        .formatted(NUMBER.incrementAndGet());
        String location =
                String.valueOf(
                        client.post()
                                .uri("/api/jobs")
                                .contentType(MediaType.APPLICATION_JSON)
                                .body(document)
                                .exchange()
                                .expectStatus()
                                .isCreated()
                                .expectBody()
                                .returnResult()
                                .getResponseHeaders()
                                .getLocation());
        return Long.parseLong(location.substring(location.lastIndexOf('/') + 1));
    }

    private String begin() {
        String form = "job=%d&revision=1&sets=closed&by=Ada".formatted(createJob());
        Answer begun = post("/counts", form);
        assertThat(begun.status()).isEqualTo(302);
        Matcher path = Pattern.compile("/counts/\\d+").matcher(begun.location());
        assertThat(path.find()).isTrue();
        return path.group();
    }

    private static String version(String page) {
        Matcher found = Pattern.compile("name=\"version\" value=\"(\\d+)\"").matcher(page);
        assertThat(found.find()).isTrue();
        return found.group(1);
    }

    @Test
    void tapsScansAndSignsWithoutAScript() {
        String count = begin();
        assertThat(get(count)).contains("&lt;b").doesNotContain("<b>Bench").contains("0 of ");
        Answer tapped = post(count + "/pieces", "part=PYF-10&pieces=1&by=Bo+Quill");
        assertThat(tapped.status()).isEqualTo(302);
        assertThat(tapped.location()).endsWith(count + "?by=Bo%20Quill");
        assertThat(get(count + "?by=Bo Quill")).contains("Bo Quill counts.");
        assertThat(post(count + "/scans", "code=PYF-10&by=Ada").page())
                .contains("PYF-10: 2 of 1, too many");
        String seen = version(get(count));
        post(count + "/pieces", "part=PYF-10&pieces=-1&by=Bo");
        Answer stale = post(count + "/signature", "version=" + seen + "&name=Ada");
        assertThat(stale.status()).isEqualTo(412);
        assertThat(stale.page()).contains("Somebody counted on in the meantime");
        Answer signed = post(count + "/signature", "version=" + version(get(count)) + "&name=Ada");
        assertThat(signed.status()).isEqualTo(302);
        assertThat(get(count))
                .contains("Not complete. Signed by Ada")
                .doesNotContain("id=\"sign\"");
        Answer late = post(count + "/pieces", "part=PYF-10&pieces=1&by=Bo");
        assertThat(late.status()).isEqualTo(409);
        assertThat(late.page()).contains("This count is signed and stays as it is");
    }

    @Test
    void takesATypedNumberAsTheDifferenceToWhatWasSeen() {
        String count = begin();
        post(count + "/pieces", "part=PYF-10&pieces=1&by=Bo");
        // Typed by somebody who still saw none: the other one's piece is kept.
        post(count + "/pieces", "part=PYF-10&pieces=typed&typed=3&seen=0&by=Ada");
        assertThat(get(count)).contains("id=\"have-PYF-10\" value=\"4\"");
        Answer wrong = post(count + "/pieces", "part=PYF-10&pieces=typed&typed=x&seen=4&by=Ada");
        assertThat(wrong.status()).isEqualTo(400);
        assertThat(wrong.page()).contains("must be a whole number");
    }

    @Test
    void offersSubstitutesAndTellsWhatAScaleSees() {
        String count = begin();
        String page = post(count + "/scans", "code=PYF-10&by=Ada").page();
        assertThat(page).doesNotContain("May stand in");
        page = post(count + "/scans", "code=PYF-10&by=Ada").page();
        assertThat(page).contains("May stand in, when you agree").contains("PYF-10 for TNA-10");
        Answer agreed =
                post(count + "/substitutes", "wanted=TNA-10&offered=PYF-10&pieces=1&by=Ada");
        assertThat(agreed.status()).isEqualTo(302);
        assertThat(get(count)).contains("agreed by Ada");
        assertThat(post(count + "/weighings", "resolutionG=0.1&by=Ada").page())
                .contains("What this scale can see", "common practice, no published source");
        assertThat(post(count + "/weighings", "resolutionG=x&by=Ada").page())
                .contains("Step of the scale: must be a number of grams");
        assertThat(
                        post(
                                        count + "/weighings",
                                        "do=keep&resolutionG=0.1&tareG=9&grossG=8&by=Ada")
                                .page())
                .contains("a full bag weighs no less than an empty one");
        assertThat(
                        post(count + "/weighings", "do=keep&resolutionG=0.1&grossG=9000&by=Ada")
                                .status())
                .isEqualTo(302);
        assertThat(get(count)).contains("✘ Too heavy");
    }

    @Test
    void withdrawsWhatWasAgreed() {
        String count = begin();
        post(count + "/pieces", "part=PYF-10&pieces=2&by=Ada");
        String pair = "wanted=TNA-10&offered=PYF-10&by=Bo";
        post(count + "/substitutes", pair + "&pieces=1");
        assertThat(get(count)).contains("1 × PYF-10 in place of TNA-10, agreed by Bo", "Withdraw");
        assertThat(post(count + "/withdrawals", pair).status()).isEqualTo(302);
        assertThat(get(count))
                .contains("Withdrawn by Bo", "May stand in, when you agree")
                .doesNotContain("Withdraw it");
    }

    @Test
    void takesTheScatterOfMassesFromThePage() {
        String count = begin();
        assertThat(get(count))
                .contains("name=\"scatter-fuse\" inputmode=\"decimal\" placeholder=\"1.5\"");
        String usual = post(count + "/weighings", "resolutionG=0.1&by=Ada").page();
        assertThat(usual).contains("no published source), their means");
        String own =
                post(
                                count + "/weighings",
                                "resolutionG=0.1&scatter-fuse=4%2C5&samplePieces=40&by=Ada")
                        .page();
        assertThat(own).contains("but fuse 4.5 %", "found from 40 pieces");
        assertThat(post(count + "/weighings", "resolutionG=0.1&scatter-fuse=x&by=Ada").page())
                .contains("Scatter of masses: fuse must be 0 to 100 %");
        assertThat(post(count + "/weighings", "resolutionG=0.1&samplePieces=0&by=Ada").page())
                .contains("Pieces that a mean mass is from: must be 1 to");
        post(count + "/weighings", "do=keep&resolutionG=0.1&grossG=9000&scatter-fuse=4.5&by=Ada");
        assertThat(get(count)).contains("Too heavy");
    }

    @Test
    void beginsNothingWithoutAName() {
        long job = createJob();
        Answer answer = post("/counts", "job=" + job + "&revision=1&by=+");
        assertThat(answer.status()).isEqualTo(400);
        assertThat(answer.page()).contains("say who you are");
        assertThat(get("/counts/new?job=" + job)).contains("Who counts");
        assertThat(get("/jobs/" + job)).contains("/counts/new?job=" + job);
        assertThat(get("/counts")).contains("Counts");
    }
}
