package org.fusewright.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Page.GetByRoleOptions;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;

import org.fusewright.ServiceTest;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.springframework.boot.test.web.server.LocalServerPort;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.regex.Pattern;

/** Looking at revisions, comparing and restoring them, and the way back. */
@ServiceTest
@ExtendWith(Browser.class)
class RevisionPagesTest {
    private static final AtomicInteger NUMBER = new AtomicInteger();
    private static final Path PICTURES = Path.of("target/screenshots");

    @LocalServerPort private int port;
    private String job;

    /** A job of four revisions: made, a circuit added, its run changed, its load changed. */
    @BeforeEach
    void createJob(Page page) {
        page.setViewportSize(1440, 1000);
        page.navigate("http://127.0.0.1:" + port + "/jobs");
        page.getByLabel("Your name").fill("Ben");
        page.getByLabel("Your name").press("Enter");
        page.waitForLoadState();
        page.getByText("New job", new Page.GetByTextOptions().setExact(true)).click();
        page.getByLabel("Reference").fill("PAST-" + NUMBER.incrementAndGet());
        page.getByRole(AriaRole.BUTTON, new GetByRoleOptions().setName("Create the job")).click();
        page.waitForLoadState();
        job = page.url();
        page.getByText("Add a circuit", new Page.GetByTextOptions().setExact(true)).click();
        awaitRevision(page, 2);
        change(page, "/circuits/0/runM", "2.5");
        awaitRevision(page, 3);
        change(page, "/circuits/0/loads/0/amount", "150");
        awaitRevision(page, 4);
    }

    private static Locator field(Page page, String name) {
        return page.locator("[name=\"" + name + "\"]:not([type=hidden])");
    }

    private static void change(Page page, String name, String text) {
        field(page, name).fill(text);
        field(page, name).press("Tab");
    }

    private static void awaitRevision(Page page, int revision) {
        assertThat(page.locator("#heading")).containsText("revision " + revision);
    }

    private static void follow(Page page, String link) {
        page.getByRole(AriaRole.LINK, new GetByRoleOptions().setName(link).setExact(true)).click();
        page.waitForLoadState();
    }

    private static void screen(Page page, String name) {
        page.screenshot(
                new Page.ScreenshotOptions()
                        .setPath(PICTURES.resolve(name + ".png"))
                        .setFullPage(true));
    }

    @Test
    void listsWhatEachRevisionChanged(Page page) {
        follow(page, "revision 4");
        assertThat(page.locator("#revisions tbody tr")).hasCount(4);
        assertThat(page.locator("#revision-4")).containsText("draws 10 W → 150 W");
        assertThat(page.locator("#revision-3")).containsText("run 1 m → 2.5 m");
        assertThat(page.locator("#revision-3")).containsText("Ben");
        assertThat(page.locator("#revision-2")).containsText("circuit circuit-1 added");
        assertThat(page.locator("#revision-4")).containsText("newest");
        screen(page, "revisions");
    }

    @Test
    void showsARevisionWithItsKitToLookAtOnly(Page page) {
        page.navigate(job + "/revisions/2");
        assertThat(page.locator("#looking")).containsText("revision 2 of 4, to look at only");
        assertThat(page.locator("#circuits .cell.amount")).hasText("10");
        assertThat(page.locator("#circuits .cell.run")).hasText("1");
        assertThat(page.locator("svg.wires")).hasCount(1);
        assertThat(page.locator("#work :is(input, select):not([type=hidden])")).hasCount(0);
        page.locator("#said-circuits-0 > summary").click();
        assertThat(page.locator("#said-circuits-0 .why")).containsText("runs 0.9");
        screen(page, "revision");
        page.navigate(job + "/revisions/4");
        page.locator("#said-circuits-0 > summary").click();
        assertThat(page.locator("#said-circuits-0 .why")).containsText("runs 1");
    }

    @Test
    void comparesTwoRevisions(Page page) {
        page.navigate(job + "/revisions");
        page.getByLabel("Compare from revision 2").check();
        page.getByText("Compare the two picked").click();
        assertThat(page).hasURL(Pattern.compile("comparison\\?(from=2&to=4|to=4&from=2)$"));
        assertThat(page.locator("#fields tbody tr")).hasCount(2);
        assertThat(page.locator("#fields")).containsText("1 m");
        assertThat(page.locator("#fields")).containsText("2.5 m");
        assertThat(page.locator("#parts")).containsText("+ added");
        assertThat(page.locator("#dearer")).containsText(Pattern.compile("[+−]\\d+\\.\\d\\d EUR"));
        screen(page, "comparison");
    }

    @Test
    void restoresARevisionAndTakesThatBack(Page page) {
        page.navigate(job + "/revisions");
        page.locator("#revision-2").getByRole(AriaRole.BUTTON).click();
        page.waitForLoadState();
        awaitRevision(page, 5);
        assertThat(page.locator("#notice")).containsText("Revision 2 is restored");
        assertThat(field(page, "/circuits/0/runM")).hasValue("1");
        assertThat(page).hasURL(job);
        page.getByText("Undo", new Page.GetByTextOptions().setExact(true)).click();
        awaitRevision(page, 6);
        assertThat(field(page, "/circuits/0/runM")).hasValue("2.5");
        assertThat(field(page, "/circuits/0/loads/0/amount")).hasValue("150");
    }

    @Test
    void goesBackAndForwardThroughWhatWasLookedAt(Page page) {
        Object length = page.evaluate("history.length");
        page.locator("#drawer-circuits-0 > summary").click();
        page.locator("#machine > summary").click();
        change(page, "/circuits/0/runM", "3");
        awaitRevision(page, 5);
        assertThat(page.evaluate("history.length")).isEqualTo(length);

        follow(page, "revision 5");
        page.locator("#revision-3 th a").click();
        assertThat(page.locator("#looking")).containsText("revision 3 of 5");
        follow(page, "Revision 2");
        page.goBack();
        assertThat(page.locator("#heading")).containsText("revision 3");
        page.goBack();
        assertThat(page.locator("h1")).containsText("Revisions");
        page.goForward();
        assertThat(page.locator("#heading")).containsText("revision 3");
        page.goBack();
        page.goBack();
        assertThat(field(page, "/circuits/0/runM")).hasValue("3");
        awaitRevision(page, 5);
        change(page, "/circuits/0/runM", "3.5");
        awaitRevision(page, 6);
    }

    /** What axe finds by the rules of WCAG 2.2 AA, in both colour schemes. */
    @Test
    void barsNobody(Page page) {
        for (ColorScheme scheme : List.of(ColorScheme.LIGHT, ColorScheme.DARK)) {
            page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(scheme));
            for (String path : List.of("/revisions", "/revisions/2", "/comparison?from=1&to=4")) {
                page.navigate(job + path);
                page.evaluate(
                        "document.querySelectorAll('details').forEach(part => part.open = true)");
                page.waitForCondition(() -> page.locator(".htmx-request").count() == 0);
                assertThat(
                                new AxeBuilder(page)
                                        .withTags(
                                                List.of(
                                                        "wcag2a",
                                                        "wcag2aa",
                                                        "wcag21a",
                                                        "wcag21aa",
                                                        "wcag22aa",
                                                        "best-practice"))
                                        .analyze()
                                        .getViolations())
                        .extracting(
                                rule ->
                                        path
                                                + ": "
                                                + rule.getId()
                                                + " "
                                                + rule.getNodes().getFirst().getHtml())
                        .isEmpty();
            }
        }
    }
}
