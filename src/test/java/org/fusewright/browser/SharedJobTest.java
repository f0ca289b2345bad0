package org.fusewright.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser.NewContextOptions;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Page.GetByRoleOptions;
import com.microsoft.playwright.Response;
import com.microsoft.playwright.Route;
import com.microsoft.playwright.options.AriaRole;

import org.fusewright.ServiceTest;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.springframework.boot.test.web.server.LocalServerPort;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;

/** The job's page with several people, a bad connection, and slow answers. */
@ServiceTest
@ExtendWith(Browser.class)
class SharedJobTest {
    private static final AtomicInteger NUMBER = new AtomicInteger();
    private static final Path PICTURES = Path.of("target/screenshots");
    private static final String EDITS = "**/jobs/*";

    @LocalServerPort private int port;
    private final List<String> complaints = new ArrayList<>();
    private final List<BrowserContext> others = new ArrayList<>();

    private String address(String path) {
        return "http://127.0.0.1:" + port + path;
    }

    @BeforeEach
    void listen(Page page) {
        page.setViewportSize(1440, 1000);
        complainOf(page);
    }

    private void complainOf(Page page) {
        page.onConsoleMessage(
                message -> {
                    // The browser reports every answer that is an error, htmx each lost request.
                    if (message.type().equals("error")
                            && !message.text().startsWith("Failed to load resource")
                            && !message.text().startsWith("htmx:")) {
                        complaints.add(message.text());
                    }
                });
        page.onPageError(complaints::add);
    }

    @AfterEach
    void complainsOfNothing() {
        others.forEach(BrowserContext::close);
        assertThat(complaints).isEmpty();
    }

    /** A job with two circuits, opened in the page of "Ben". */
    private void createJob(Page page) {
        page.navigate(address("/jobs"));
        page.getByLabel("Your name").fill("Ben");
        page.getByLabel("Your name").press("Enter");
        page.waitForLoadState();
        page.getByText("New job", new Page.GetByTextOptions().setExact(true)).click();
        page.getByLabel("Reference").fill("TWO-" + NUMBER.incrementAndGet());
        page.getByLabel("Title").fill("Shared");
        press(page, "Create the job");
        page.waitForLoadState();
        for (int i = 0; i < 2; i++) {
            press(page, "Add a circuit");
            awaitRevision(page, i + 2);
        }
        field(page, "/circuits/0/title").fill("Pump");
        field(page, "/circuits/0/title").press("Tab");
        awaitRevision(page, 4);
        field(page, "/circuits/1/title").fill("Lamp");
        field(page, "/circuits/1/title").press("Tab");
        awaitRevision(page, 5);
        assertThat(page.locator("#heading")).containsText("by Ben");
    }

    /** The same job at another browser, by Ada. */
    private Page joinAsAda(Page page) {
        BrowserContext context =
                page.context().browser().newContext(new NewContextOptions().setLocale("en-GB"));
        others.add(context);
        Page other = context.newPage();
        complainOf(other);
        other.setViewportSize(1440, 1000);
        other.navigate(page.url());
        other.getByLabel("Your name").fill("Ada");
        other.getByLabel("Your name").press("Tab");
        other.waitForCondition(() -> context.cookies().size() == 1);
        return other;
    }

    private static Locator field(Page page, String name) {
        return page.locator("[name=\"" + name + "\"]:not([type=hidden])");
    }

    private static void change(Page page, String name, String text) {
        field(page, name).fill(text);
        field(page, name).press("Tab");
    }

    private static void press(Page page, String button) {
        page.getByRole(AriaRole.BUTTON, new GetByRoleOptions().setName(button).setExact(true))
                .click();
    }

    private static void awaitRevision(Page page, int revision) {
        assertThat(page.locator("#heading")).containsText("revision " + revision);
    }

    private static Locator.ScreenshotOptions picture(String name) {
        return new Locator.ScreenshotOptions().setPath(PICTURES.resolve(name + ".png"));
    }

    private static void screen(Page page, String name) {
        page.screenshot(new Page.ScreenshotOptions().setPath(PICTURES.resolve(name + ".png")));
    }

    @Test
    void showsAChangeBySomebodyElseAtOnceAndLeavesWhatIsTyped(Page page) {
        createJob(page);
        Page ada = joinAsAda(page);
        field(page, "/circuits/1/title").focus();
        page.keyboard().press("End");
        page.keyboard().type(" left");
        page.keyboard().press("ArrowLeft");
        page.keyboard().press("ArrowLeft");
        page.evaluate(
                """
                () => {
                  window.shownAfter = new Promise(done => {
                    new MutationObserver(() => {
                      if (document.querySelector('#f-circuits-0-runM').defaultValue === '2.5') {
                        done(Date.now());
                      }
                    }).observe(document.getElementById('work'),
                        {subtree: true, attributes: true, childList: true});
                  });
                }
                """);
        change(ada, "/circuits/0/runM", "2.5");
        awaitRevision(ada, 6);
        double kept = System.currentTimeMillis();
        double shown = ((Number) page.evaluate("window.shownAfter")).doubleValue();
        System.out.println("shown to the other after " + (shown - kept) + " ms");
        assertThat(field(page, "/circuits/0/runM")).hasValue("2.5");
        assertThat(page.locator("#heading")).containsText("by Ada");
        assertThat(page.locator("#meanwhile"))
                .containsText("Ada changed circuit pump: run 1 m → 2.5 m");
        assertThat(field(page, "/circuits/1/title")).hasValue("Lamp left");
        assertThat(field(page, "/circuits/1/title")).isFocused();
        assertThat(page.evaluate("document.activeElement.selectionStart")).isEqualTo(7);
        screen(page, "job-changed-by-another");

        page.keyboard().press("Tab");
        awaitRevision(page, 7);
        assertThat(field(ada, "/circuits/1/title")).hasValue("Lamp left");
        assertThat(field(ada, "/circuits/0/runM")).hasValue("2.5");
    }

    @Test
    void keepsBothChangesOfDifferentFieldsMadeAtOnce(Page page) {
        createJob(page);
        Page ada = joinAsAda(page);
        AtomicInteger held = new AtomicInteger();
        List<Route> routes = new ArrayList<>();
        page.route(
                EDITS,
                route -> {
                    if (route.request().method().equals("POST") && held.getAndIncrement() == 0) {
                        routes.add(route);
                    } else {
                        route.resume();
                    }
                });
        change(page, "/circuits/0/loads/0/amount", "30");
        page.waitForCondition(() -> !routes.isEmpty());
        change(ada, "/circuits/0/runM", "2.5");
        awaitRevision(ada, 6);
        routes.getFirst().resume();
        awaitRevision(page, 7);
        assertThat(field(page, "/circuits/0/runM")).hasValue("2.5");
        assertThat(field(page, "/circuits/0/loads/0/amount")).hasValue("30");
        assertThat(page.locator("#meanwhile")).containsText("Ada changed circuit pump: run");
        assertThat(field(ada, "/circuits/0/loads/0/amount")).hasValue("30");
        assertThat(ada.locator("#meanwhile"))
                .containsText("Ben changed circuit pump: draws 10 W → 30 W");
        assertThat(page.locator(".clash")).hasCount(0);
    }

    @Test
    void showsBothValuesOfAClashAndLetsThePersonPick(Page page) {
        createJob(page);
        Page ada = joinAsAda(page);
        field(page, "/circuits/0/runM").fill("1.3");
        change(ada, "/circuits/0/runM", "1.5");
        awaitRevision(page, 6);
        assertThat(field(page, "/circuits/0/runM")).hasValue("1.3");
        assertThat(field(page, "/circuits/0/runM")).isFocused();
        page.keyboard().press("Tab");
        Locator clash = page.locator(".clash");
        assertThat(clash).containsText("You and Ada both changed the run of circuit pump");
        assertThat(clash).containsText("Take mine: 1.3 m");
        assertThat(clash).containsText("Leave Ada’s: 1.5 m");
        assertThat(field(page, "/circuits/0/runM")).hasValue("1.5");
        awaitRevision(page, 6);
        screen(page, "job-clash");

        press(page, "Take mine: 1.3 m");
        awaitRevision(page, 7);
        assertThat(clash).hasCount(0);
        assertThat(field(page, "/circuits/0/runM")).hasValue("1.3");
        assertThat(field(ada, "/circuits/0/runM")).hasValue("1.3");

        field(page, "/circuits/0/runM").fill("4");
        change(ada, "/circuits/0/runM", "3");
        awaitRevision(page, 8);
        page.keyboard().press("Tab");
        page.getByRole(AriaRole.LINK, new GetByRoleOptions().setName("Leave Ada’s: 3 m")).click();
        assertThat(clash).hasCount(0);
        assertThat(field(page, "/circuits/0/runM")).hasValue("3");
        awaitRevision(page, 8);
    }

    @Test
    void followsTheRowThatIsTypedInWhenAnotherOneGoes(Page page) {
        createJob(page);
        Page ada = joinAsAda(page);
        field(page, "/circuits/1/runM").fill("3.25");
        ada.locator("#drawer-circuits-0 > summary").click();
        press(ada, "Remove circuit 1");
        awaitRevision(page, 6);
        assertThat(page.locator("#circuits .circuit")).hasCount(1);
        assertThat(field(page, "/circuits/0/runM")).hasValue("3.25");
        assertThat(field(page, "/circuits/0/runM")).isFocused();
        page.keyboard().press("Tab");
        awaitRevision(page, 7);
        assertThat(field(ada, "/circuits/0/runM")).hasValue("3.25");
        assertThat(field(ada, "/circuits/0/title")).hasValue("Lamp");
    }

    @Test
    void bringsBackACircuitThatSomebodyElseRemovedMeanwhile(Page page) {
        createJob(page);
        Page ada = joinAsAda(page);
        field(page, "/circuits/0/runM").fill("3.25");
        ada.locator("#drawer-circuits-0 > summary").click();
        press(ada, "Remove circuit 1");
        Locator clash = page.locator(".clash");
        assertThat(clash).containsText("Ada removed circuit pump, which you changed meanwhile");
        press(page, "Bring circuit pump back as I had it");
        awaitRevision(page, 7);
        assertThat(field(page, "/circuits/1/title")).hasValue("Pump");
        assertThat(field(page, "/circuits/1/runM")).hasValue("3.25");
        assertThat(field(page, "/circuits/1/loads/0/amount")).hasValue("10");
    }

    @Test
    void undoesOnlyWhatWasMadeHere(Page page) {
        createJob(page);
        Page ada = joinAsAda(page);
        change(page, "/circuits/0/runM", "2");
        awaitRevision(page, 6);
        awaitRevision(ada, 6);
        change(ada, "/circuits/1/runM", "3");
        awaitRevision(page, 7);
        press(page, "Undo");
        awaitRevision(page, 8);
        assertThat(field(page, "/circuits/0/runM")).hasValue("1");
        assertThat(field(page, "/circuits/1/runM")).hasValue("3");
        press(page, "Redo");
        awaitRevision(page, 9);
        assertThat(field(page, "/circuits/0/runM")).hasValue("2");
        awaitRevision(ada, 9);
        change(ada, "/circuits/0/runM", "2.5");
        awaitRevision(page, 10);
        press(page, "Undo");
        assertThat(page.locator("#notice"))
                .containsText("Not undone: run of circuit pump, which Ada changed since");
        assertThat(field(page, "/circuits/0/runM")).hasValue("2.5");
        awaitRevision(page, 10);
        assertThat(ada.locator("#undo")).isEnabled();
        press(ada, "Undo");
        awaitRevision(ada, 11);
        assertThat(field(page, "/circuits/0/runM")).hasValue("2");
    }

    @Test
    void keepsChangesThroughADroppedConnectionAndAReload(Page page) {
        createJob(page);
        AtomicInteger tries = new AtomicInteger();
        page.route(
                EDITS,
                route -> {
                    if (route.request().method().equals("POST")) {
                        tries.incrementAndGet();
                        route.abort();
                    } else {
                        route.resume();
                    }
                });
        change(page, "/circuits/0/runM", "2.5");
        assertThat(page.locator("#unkept")).containsText("Not kept yet: one change");
        change(page, "/circuits/1/runM", "3.5");
        assertThat(page.locator("#unkept")).containsText("Not kept yet: 2 changes");
        assertThat(field(page, "/circuits/0/runM")).hasValue("2.5");
        assertThat(field(page, "/circuits/0/runM")).isEditable();
        screen(page, "job-not-kept-yet");
        page.waitForCondition(() -> tries.get() >= 3);

        page.reload();
        assertThat(page.locator("#unkept")).containsText("Not kept yet: 2 changes");
        assertThat(field(page, "/circuits/0/runM")).hasValue("2.5");
        assertThat(field(page, "/circuits/1/runM")).hasValue("3.5");
        awaitRevision(page, 5);

        page.unroute(EDITS);
        awaitRevision(page, 6);
        assertThat(page.locator("#unkept")).isHidden();
        assertThat(page.evaluate("Object.keys(localStorage).filter(k => k.startsWith('unkept'))"))
                .isEqualTo(List.of());
        page.reload();
        assertThat(field(page, "/circuits/0/runM")).hasValue("2.5");
        assertThat(field(page, "/circuits/1/runM")).hasValue("3.5");
        awaitRevision(page, 6);
    }

    @Test
    void sendsUnkeptChangesAgainstTheRevisionThatTheyStartedFrom(Page page) {
        createJob(page);
        Page ada = joinAsAda(page);
        page.route(
                "**/jobs/*/**",
                route -> {
                    route.abort();
                });
        page.route(
                EDITS,
                route -> {
                    if (route.request().method().equals("POST")) {
                        route.abort();
                    } else {
                        route.resume();
                    }
                });
        change(page, "/circuits/0/runM", "2.5");
        change(page, "/circuits/1/runM", "3.5");
        assertThat(page.locator("#unkept")).containsText("Not kept yet: 2 changes");
        ada.locator("#drawer-circuits-0 > summary").click();
        press(ada, "Remove circuit 1");
        awaitRevision(ada, 6);
        page.unrouteAll();
        page.reload();
        awaitRevision(page, 7);
        assertThat(field(page, "/circuits/0/title")).hasValue("Lamp");
        assertThat(field(page, "/circuits/0/runM")).hasValue("3.5");
        assertThat(page.locator(".clash")).containsText("Ada removed circuit pump");
        assertThat(page.locator("#unkept")).isHidden();
    }

    @Test
    void saysThatAChangeTakesLongAndStopsIt(Page page) {
        createJob(page);
        List<Route> routes = new ArrayList<>();
        page.route(
                EDITS,
                route -> {
                    if (route.request().method().equals("POST")) {
                        routes.add(route);
                    } else {
                        route.resume();
                    }
                });
        change(page, "/circuits/0/runM", "2.5");
        page.waitForCondition(() -> !routes.isEmpty());
        assertThat(page.locator("#working")).isHidden();
        assertThat(page.locator("#working")).isVisible();
        assertThat(page.locator("#working")).hasAttribute("role", "status");
        screen(page, "job-still-working");
        Response stopping = page.waitForResponse("**/jobs/*/stop", () -> press(page, "Stop"));
        assertThat(stopping.status()).isEqualTo(204);
        assertThat(page.locator("#working")).isHidden();
        assertThat(page.locator("#unkept")).containsText("Stopped. Not kept: one change.");
        page.unrouteAll();
        awaitRevision(page, 5);
        assertThat(field(page, "/circuits/0/runM")).hasValue("2.5");
        press(page, "Put back");
        assertThat(page.locator("#unkept")).isHidden();
        assertThat(field(page, "/circuits/0/runM")).hasValue("1");
        change(page, "/circuits/0/runM", "3");
        awaitRevision(page, 6);
    }

    @Test
    void saysThatAFileTakesLongAndStopsIt(Page page) {
        createJob(page);
        List<Route> routes = new ArrayList<>();
        page.route("**/papers/**", routes::add);
        page.getByLabel("Kit list, A4").click();
        Locator slip = page.locator(".slip.working:not(#working)");
        assertThat(slip).containsText("Still making Kit list, A4");
        slip.getByText("Stop").click();
        assertThat(slip).hasCount(0);
        page.unrouteAll();
        assertThat(
                        page.waitForDownload(() -> page.getByLabel("Kit list, A4").click())
                                .suggestedFilename())
                .endsWith("kit list.pdf");
    }
}
