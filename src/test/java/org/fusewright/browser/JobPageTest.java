package org.fusewright.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Download;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Page.GetByRoleOptions;
import com.microsoft.playwright.options.AriaRole;

import org.fusewright.ServiceTest;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.springframework.boot.test.web.server.LocalServerPort;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.regex.Pattern;

@ServiceTest
@ExtendWith(Browser.class)
class JobPageTest {
    private static final AtomicInteger NUMBER = new AtomicInteger();

    @LocalServerPort private int port;
    private final List<String> complaints = new ArrayList<>();

    private String address(String path) {
        return "http://127.0.0.1:" + port + path;
    }

    @BeforeEach
    void listen(Page page) {
        page.onConsoleMessage(
                message -> {
                    // The browser itself reports every answer that is an error.
                    if (message.type().equals("error")
                            && !message.text().startsWith("Failed to load resource")) {
                        complaints.add(message.text());
                    }
                });
        page.onPageError(complaints::add);
    }

    @AfterEach
    void complainsOfNothing() {
        assertThat(complaints).isEmpty();
    }

    /** A job of its own, so that tests do not meet; opened in the page. */
    private void createJob(Page page) {
        page.navigate(address("/jobs"));
        page.getByText("New job", new Page.GetByTextOptions().setExact(true)).click();
        page.getByLabel("Reference").fill("HAND-" + NUMBER.incrementAndGet());
        page.getByLabel("Title").fill("Made by hand");
        page.getByRole(AriaRole.BUTTON, new GetByRoleOptions().setName("Create the job")).click();
        assertThat(page.locator("h1")).containsText("Made by hand");
        page.waitForLoadState();
    }

    /** Opens what the checks of a circuit say, with its device and why. */
    private static Locator openProof(Page page, int circuit) {
        Locator said = page.locator("#said-circuits-" + circuit);
        said.locator("> summary").click();
        return said.locator(".why");
    }

    private static void openDrawer(Page page, int circuit) {
        page.locator("#drawer-circuits-" + circuit + " > summary").click();
    }

    private static Locator field(Page page, String name) {
        return page.locator("[name=\"" + name + "\"]");
    }

    private static void press(Page page, String button) {
        page.getByRole(AriaRole.BUTTON, new GetByRoleOptions().setName(button).setExact(true))
                .click();
    }

    @Test
    void opensASampleChangesALoadAndSeesTheKitChange(Page page) throws IOException {
        page.navigate(address("/"));
        assertThat(page.locator("h1")).hasText("Jobs");
        page.getByLabel("Search").fill("TQ-014");
        press(page, "Search");
        page.getByRole(AriaRole.LINK, new GetByRoleOptions().setName("TQ-014")).click();
        assertThat(page.locator("#verdict")).containsText("Buildable");
        Locator why = openProof(page, 0);
        assertThat(why).containsText("pump: auto-reset 10 A");
        assertThat(page.locator("svg.wires")).hasCount(1);
        Locator chart =
                page.getByRole(
                        AriaRole.IMG,
                        new GetByRoleOptions()
                                .setName("Time-current chart of circuit pump, 10 A auto-reset"));
        assertThat(chart).hasCount(0);
        Locator curves = page.locator("#curves-pump");
        curves.locator("summary").click();
        assertThat(chart).isVisible();
        assertThat(chart).hasAccessibleDescription(Pattern.compile("dead short at the far end"));
        assertThat(chart).containsText("Current, A");
        assertThat(curves.locator("table.shorts")).isVisible();
        assertThat(curves.locator("table.shorts")).containsText("at the far end");

        field(page, "/circuits/0/loads/0/amount").fill("9,5");
        field(page, "/circuits/0/loads/0/amount").press("Tab");
        assertThat(why).containsText("runs 9.5 A");
        assertThat(why).not().containsText("pump: auto-reset 10 A");
        assertThat(page.locator("#heading")).containsText("revision 2");
        assertThat(field(page, "/circuits/0/loads/0/amount")).hasValue("9,5");

        Download download = page.waitForDownload(() -> page.getByLabel("Kit list, A4").click());
        assertThat(download.suggestedFilename()).isEqualTo("TQ-014 kit list.pdf");
        byte[] pdf = Files.readAllBytes(download.path());
        assertThat(new String(pdf, 0, 5, StandardCharsets.US_ASCII)).isEqualTo("%PDF-");

        page.reload();
        assertThat(field(page, "/circuits/0/loads/0/amount")).hasValue("9.5");
        field(page, "/circuits/0/loads/0/amount").fill("5.2");
        field(page, "/circuits/0/loads/0/amount").press("Tab");
        assertThat(page.locator("#device-circuits-0")).containsText("10\u00a0A auto-reset");
        assertThat(openProof(page, 0)).containsText("pump: auto-reset 10 A");
    }

    @Test
    void buildsAJobByHand(Page page) {
        createJob(page);
        assertThat(page.locator("#kit")).containsText("add a circuit");
        press(page, "Add a circuit");
        assertThat(page.locator("svg.wires")).hasCount(1);
        openDrawer(page, 0);
        field(page, "/circuits/0/id").fill("horn");
        field(page, "/circuits/0/title").fill("Horn");
        field(page, "/circuits/0/loads/0/title").fill("Horn");
        field(page, "/circuits/0/loads/0/kind").selectOption("coil");
        field(page, "/circuits/0/loads/0/unit").selectOption("A");
        field(page, "/circuits/0/loads/0/amount").fill("3.5");
        field(page, "/circuits/0/runM").fill("0.8");
        field(page, "/circuits/0/runM").blur();
        assertThat(openProof(page, 0)).containsText("horn");
        assertThat(page.locator(".why")).containsText("runs 4.14 A");
        press(page, "Add a load to circuit 1");
        assertThat(page.locator("tr.load")).hasCount(1);
        press(page, "Remove load 2 of circuit 1");
        assertThat(page.locator("tr.load")).hasCount(0);
        press(page, "Remove circuit 1");
        assertThat(page.locator(".circuit")).hasCount(0);
    }

    @Test
    void showsEachErrorBesideItsFieldAndChangesNothing(Page page) {
        createJob(page);
        press(page, "Add a circuit");
        assertThat(page.locator("svg.wires")).hasCount(1);
        assertThat(page.locator("#cut-list")).containsText("circuit-1/out");
        String kit = page.locator("#kit").textContent();
        field(page, "/circuits/0/runM").fill("far");
        field(page, "/circuits/0/loads/0/amount").fill("");
        field(page, "/circuits/0/loads/0/amount").blur();
        assertThat(page.locator("#f-circuits-0-runM-fault")).containsText("number above 0");
        assertThat(page.locator("#f-circuits-0-loads-0-amount-fault"))
                .containsText("watts and amps");
        assertThat(page.locator("#problems")).containsText("Nothing was changed");
        assertThat(field(page, "/circuits/0/runM")).hasValue("far");
        assertThat(page.locator("#kit").textContent()).isEqualTo(kit);
        assertThat(page.locator("#heading")).containsText("revision 2");

        field(page, "/circuits/0/runM").fill("2");
        field(page, "/circuits/0/loads/0/amount").fill("30");
        field(page, "/circuits/0/loads/0/amount").blur();
        assertThat(page.locator("#f-circuits-0-runM-fault")).isEmpty();
        assertThat(page.locator("#problems li")).hasCount(0);
        assertThat(page.locator("#heading")).containsText("revision 3");
    }

    @Test
    void joinsAChangeWithOneOfSomebodyElse(Page page) {
        createJob(page);
        Page other = page.context().newPage();
        other.navigate(page.url());
        field(other, "/title").evaluate("field => field.closest('details').open = true");
        field(other, "/title").fill("Changed by the other");
        field(other, "/title").blur();
        assertThat(other.locator("#heading")).containsText("Changed by the other");

        press(page, "Add a circuit");
        assertThat(page.locator(".circuit")).hasCount(1);
        assertThat(page.locator("#heading")).containsText("Changed by the other");
        assertThat(page.locator("#meanwhile"))
                .containsText("shop changed title Made by hand → Changed by the other");
        assertThat(page.locator("#heading")).containsText("revision 3");
    }

    @Test
    void followsAFeedThatGetsAnotherName(Page page) {
        createJob(page);
        press(page, "Add a circuit");
        assertThat(field(page, "/circuits/0/feed")).hasValue("battery");
        field(page, "/feeds/0/id").fill("main-feed");
        field(page, "/feeds/0/id").blur();
        assertThat(field(page, "/circuits/0/feed")).hasValue("main-feed");
        assertThat(page.locator("#problems li")).hasCount(0);
    }

    @Test
    void worksWithoutScripts(Page page) {
        createJob(page);
        com.microsoft.playwright.Browser browser = page.context().browser();
        try (BrowserContext plain =
                browser.newContext(
                        new com.microsoft.playwright.Browser.NewContextOptions()
                                .setLocale("en-GB")
                                .setJavaScriptEnabled(false))) {
            Page bare = plain.newPage();
            bare.navigate(page.url());
            press(bare, "Add a circuit");
            assertThat(bare.locator("svg.wires")).hasCount(1);
            field(bare, "/circuits/0/runM").fill("0");
            press(bare, "Keep the changes");
            assertThat(bare.locator("#f-circuits-0-runM-fault")).containsText("above 0");
            field(bare, "/circuits/0/runM").fill("1.25");
            press(bare, "Keep the changes");
            assertThat(bare.locator("#heading")).containsText("revision 3");
            assertThat(field(bare, "/circuits/0/runM")).hasValue("1.25");

            field(bare, "/circuits/0/runM").fill("1.5");
            openDrawer(bare, 0);
            press(bare, "All fields of circuit 1");
            assertThat(field(bare, "/circuits/0/runM")).hasValue("1.5");
            field(bare, "/circuits/0/gauge").fill("2.5 mm2");
            whatIf(bare).locator("summary").click();
            press(bare, "hotter");
            assertThat(whatIf(bare).locator("tr.own th")).containsText("40\u00a0°C");
            press(bare, "longer");
            assertThat(whatIf(bare).locator("tr.own th")).containsText("1.5\u00a0m");
            assertThat(field(bare, "/circuits/0/runM")).hasValue("1.5");
            assertThat(field(bare, "/circuits/0/gauge")).hasValue("2.5 mm2");
            assertThat(bare.locator("#heading")).containsText("revision 3");
        }
    }

    private static Locator whatIf(Page page) {
        return page.locator(".circuit").first().locator(".what-if");
    }

    @Test
    void tellsHowMuchLongerARunMayBe(Page page) {
        page.navigate(address("/jobs?q=TQ-014"));
        page.getByRole(AriaRole.LINK, new GetByRoleOptions().setName("TQ-014")).click();
        openDrawer(page, 0);
        whatIf(page).locator("summary").click();
        press(page, "longer");
        assertThat(whatIf(page).locator("caption")).containsText("a longer run");
        assertThat(whatIf(page).locator(".summed"))
                .containsText("Nothing gets worse up to 1.37\u00a0m");
        assertThat(whatIf(page).locator("tr.own th")).containsText("1.1\u00a0m");
        assertThat(whatIf(page).locator("tr.own th")).containsText("as designed");
        assertThat(whatIf(page).locator("tr.own")).containsText("! caution");
        assertThat(whatIf(page).locator("tbody tr")).hasCount(7);
        assertThat(whatIf(page).locator("tbody tr").last()).containsText("✗ fail");
        assertThat(whatIf(page).locator("tbody tr").last()).containsText("it may lose 3 %");

        press(page, "another kind");
        assertThat(whatIf(page).locator("tr.own th")).containsText("auto-reset 10\u00a0A");
        assertThat(whatIf(page).locator("tbody tr")).hasCount(3);
        assertThat(whatIf(page).locator(".summed")).containsText("Worse: fuse 10 A");
    }

    @Test
    void answersAnewWhatWasAskedWhenTheJobChanges(Page page) {
        createJob(page);
        press(page, "Add a circuit");
        openDrawer(page, 0);
        whatIf(page).locator("summary").click();
        press(page, "hotter");
        assertThat(whatIf(page).locator("tr.own th")).containsText("40\u00a0°C");
        press(page, "longer");
        assertThat(whatIf(page).locator("tr.own th")).containsText("1\u00a0m");

        field(page, "/circuits/0/runM").fill("2.5");
        field(page, "/circuits/0/runM").blur();
        assertThat(whatIf(page).locator("tr.own th")).containsText("2.5\u00a0m");

        field(page, "/circuits/0/runM").fill("far");
        field(page, "/circuits/0/runM").blur();
        assertThat(whatIf(page).locator(".summed")).containsText("no answer");
        assertThat(whatIf(page).locator("table")).hasCount(0);

        field(page, "/circuits/0/runM").fill("3");
        field(page, "/circuits/0/runM").blur();
        assertThat(whatIf(page).locator("tr.own th")).containsText("3\u00a0m");

        field(page, "/feeds/0/id").fill("other-feed");
        field(page, "/feeds/0/id").blur();
        assertThat(field(page, "/circuits/0/feed")).hasValue("other-feed");
        assertThat(whatIf(page).locator("tr.own th")).containsText("3\u00a0m");
        assertThat(whatIf(page).locator(".summed")).not().containsText("no answer");
        assertThat(page.locator("#heading")).containsText("revision 5");
    }

    @Test
    void deletesAJob(Page page) {
        createJob(page);
        String reference = page.locator("h1").innerText().split(" ")[0];
        page.getByText("Delete this job").click();
        press(page, "Delete " + reference);
        assertThat(page.locator("h1")).hasText("Jobs");
        assertThat(page.locator("main")).not().containsText(reference);
    }
}
