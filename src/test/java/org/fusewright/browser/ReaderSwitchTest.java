package org.fusewright.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Page.GetByRoleOptions;
import com.microsoft.playwright.options.AriaRole;

import org.fusewright.ServiceTest;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.http.MediaType;
import org.springframework.web.client.RestClient;

import tools.jackson.databind.json.JsonMapper;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;

/** A reader picks a language and units: the page follows, the job's document stays as it is. */
@ServiceTest
@ExtendWith(Browser.class)
class ReaderSwitchTest {
    private static final AtomicInteger NUMBER = new AtomicInteger();
    private static final Path PICTURES = Path.of("target/screenshots");
    private static final JsonMapper MAPPER = new JsonMapper();

    @LocalServerPort private int port;
    private final List<String> complaints = new ArrayList<>();

    private String address(String path) {
        return "http://127.0.0.1:" + port + path;
    }

    @BeforeEach
    void listen(Page page) {
        page.setViewportSize(1440, 1000);
        page.onPageError(complaints::add);
    }

    @AfterEach
    void complainsOfNothing() {
        assertThat(complaints).isEmpty();
    }

    /** A job of its own, made from a sample. */
    private String create(String sample) throws IOException {
        String document =
                Files.readString(Path.of("catalog-sample", "jobs", sample + ".json"))
                        .replaceFirst(
                                "(\"reference\"\\s*:\\s*\")[^\"]*",
                                "$1TONGUE-" + NUMBER.incrementAndGet());
        String location =
                String.valueOf(
                        RestClient.create(address(""))
                                .post()
                                .uri("/api/jobs")
                                .contentType(MediaType.APPLICATION_JSON)
                                .body(document)
                                .retrieve()
                                .toBodilessEntity()
                                .getHeaders()
                                .getLocation());
        return location.substring(location.lastIndexOf('/') + 1);
    }

    private double kept(String id, String pointer) {
        return MAPPER.readTree(
                        RestClient.create(address(""))
                                .get()
                                .uri("/api/jobs/" + id)
                                .accept(MediaType.APPLICATION_JSON)
                                .retrieve()
                                .body(String.class))
                .at(pointer)
                .doubleValue();
    }

    private static Locator field(Page page, String name) {
        return page.locator("[name=\"" + name + "\"]");
    }

    private static void press(Page page, String button) {
        page.getByRole(AriaRole.BUTTON, new GetByRoleOptions().setName(button).setExact(true))
                .click();
    }

    @Test
    void followsThePickAndKeepsTheDocument(Page page) throws IOException {
        String id = create("01-trail-quad");
        page.navigate(address("/jobs/" + id));
        assertThat(field(page, "/circuits/0/runM")).hasValue("1.1");

        press(page, "Deutsch");
        assertThat(page.locator("html")).hasAttribute("lang", "de");
        assertThat(page).hasURL(address("/jobs/" + id));
        assertThat(page.locator("#circuits-title")).hasText("Stromkreise");
        assertThat(field(page, "/circuits/0/runM")).hasValue("1,1");

        press(page, "imperial");
        assertThat(page.locator("#circuits thead")).containsText("Weg, ft");
        assertThat(field(page, "/circuits/0/runM")).hasValue("3,61");
        assertThat(page.locator("#heading")).containsText("Revision 1");

        field(page, "/circuits/0/runM").fill("4,5");
        field(page, "/circuits/0/runM").press("Tab");
        assertThat(page.locator("#heading")).containsText("Revision 2");
        assertThat(field(page, "/circuits/0/runM")).hasValue("4,5");
        assertThat(kept(id, "/circuits/0/runM")).isEqualTo(1.372);
        assertThat(kept(id, "/circuits/0/relay/triggerM")).isEqualTo(0.8);
        assertThat(kept(id, "/feeds/0/lengthM")).isEqualTo(0.6);

        press(page, "Rückgängig");
        assertThat(page.locator("#heading")).containsText("Revision 3");
        assertThat(field(page, "/circuits/0/runM")).hasValue("3,61");
        assertThat(kept(id, "/circuits/0/runM")).isEqualTo(1.1);

        press(page, "English");
        press(page, "metric");
        assertThat(field(page, "/circuits/0/runM")).hasValue("1.1");
        assertThat(page.locator("#heading")).containsText("revision 3");
    }

    /** What is copied in feet is pasted as the same length, whatever units the reader has then. */
    @Test
    void copiesRowsWithTheirUnit(Page page) throws IOException {
        String id = create("01-trail-quad");
        page.navigate(address("/jobs/" + id));
        press(page, "imperial");
        page.getByLabel("Pick circuit 1").click();
        String table =
                (String)
                        page.evaluate(
                                """
                                () => {
                                  const clipboardData = new DataTransfer();
                                  document.activeElement.dispatchEvent(new ClipboardEvent('copy',
                                      {clipboardData, bubbles: true, cancelable: true}));
                                  return clipboardData.getData('text/plain');
                                }
                                """);
        assertThat(table).contains("\tRun, ft\t").contains("\t3.61\t").contains("triggerM, ft");

        press(page, "Deutsch");
        press(page, "metrisch");
        press(page, "Stromkreis hinzufügen");
        assertThat(page.locator("#heading")).containsText("Revision 2");
        field(page, "/circuits/2/title").focus();
        page.evaluate(
                """
                text => {
                  const clipboardData = new DataTransfer();
                  clipboardData.setData('text/plain', text);
                  document.activeElement.dispatchEvent(new ClipboardEvent('paste',
                      {clipboardData, bubbles: true, cancelable: true}));
                }
                """,
                table);

        assertThat(page.locator("#heading")).containsText("Revision 3");
        assertThat(kept(id, "/circuits/2/runM")).isEqualTo(1.1);
        assertThat(kept(id, "/circuits/2/relay/triggerM")).isEqualTo(0.8);
    }

    @ParameterizedTest
    @CsvSource({"desktop, 1440", "phone, 390"})
    void fitsGermanWordsOnThePage(String name, int width, Page page) throws IOException {
        String id = create("06-touring-twelve");
        page.setViewportSize(width, 900);
        page.navigate(address("/jobs/" + id));
        press(page, "Deutsch");
        page.locator("#drawer-circuits-0 > summary").click();
        assertThat(page.locator("#drawn-circuits-0 .grid").first()).isVisible();

        assertThat(page.evaluate("document.documentElement.scrollWidth")).isEqualTo(width);
        assertThat((List<?>) page.evaluate(CUT_OFF)).as("words that do not fit").isEmpty();
        page.screenshot(
                new Page.ScreenshotOptions()
                        .setPath(PICTURES.resolve("job-german-" + name + ".png"))
                        .setFullPage(true));
        assertThat(
                        new AxeBuilder(page)
                                .withTags(List.of("wcag2a", "wcag2aa", "wcag21aa", "wcag22aa"))
                                .analyze()
                                .getViolations())
                .isEmpty();
    }

    /** Headings and buttons whose text is wider than they are, or that lie over their neighbour. */
    private static final String CUT_OFF =
            """
            [...document.querySelectorAll('thead th, button, summary, .chip, label')]
                .filter(e => e.offsetParent && !e.closest('.pick') && e.scrollWidth > e.clientWidth + 1
                    && getComputedStyle(e).display !== 'inline')
                .map(e => e.textContent.trim())
            """;

    @ParameterizedTest
    @CsvSource({"/jobs", "/quotes", "/orders", "/counts", "/catalog", "/catalog/import"})
    void isAccessibleInGerman(String path, Page page) {
        page.navigate(address(path));
        press(page, "Deutsch");

        assertThat(page.locator("html")).hasAttribute("lang", "de");
        assertThat(
                        new AxeBuilder(page)
                                .withTags(List.of("wcag2a", "wcag2aa", "wcag21aa", "wcag22aa"))
                                .analyze()
                                .getViolations())
                .isEmpty();
    }
}
