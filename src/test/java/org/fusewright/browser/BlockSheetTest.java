package org.fusewright.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Page.GetByRoleOptions;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.BoundingBox;

import org.fusewright.ServiceTest;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.boot.test.web.server.LocalServerPort;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.regex.Pattern;

/** The drawn blocks of a job's page: both sides, what lights up together, moving devices. */
@ServiceTest
@ExtendWith(Browser.class)
class BlockSheetTest {
    private static final AtomicInteger NUMBER = new AtomicInteger();
    private static final Path PICTURES = Path.of("target/screenshots");
    private static final Pattern LIT = Pattern.compile("(^| )lit( |$)");

    @LocalServerPort private int port;
    private final List<String> complaints = new ArrayList<>();

    @BeforeEach
    void listen(Page page) {
        page.setViewportSize(1440, 1000);
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

    private void openSample(Page page, String reference) {
        page.navigate("http://127.0.0.1:" + port + "/jobs?q=" + reference);
        page.getByRole(AriaRole.LINK, new GetByRoleOptions().setName(reference)).click();
        assertThat(page.locator("#heading")).containsText(reference);
        page.waitForLoadState();
    }

    /** A job of three circuits, of which the first has a relay. */
    private void createJob(Page page) {
        page.navigate("http://127.0.0.1:" + port + "/jobs");
        page.getByText("New job", new Page.GetByTextOptions().setExact(true)).click();
        page.getByLabel("Reference").fill("BLOCK-" + NUMBER.incrementAndGet());
        press(page, "Create the job");
        for (int circuits = 1; circuits <= 3; circuits++) {
            press(page, "Add a circuit");
            awaitRevision(page, circuits + 1);
        }
        page.locator("#drawer-circuits-0 > summary").click();
        field(page, "/circuits/0/relay/triggerFrom").selectOption("switched");
        field(page, "/circuits/0/relay/triggerM").fill("0.8");
        field(page, "/circuits/0/relay/groundM").fill("0.3");
        field(page, "/circuits/0/relay/groundM").press("Tab");
        awaitRevision(page, 5);
        page.locator("#drawer-circuits-0 > summary").click();
    }

    private static Locator field(Page page, String name) {
        return page.locator("[name=\"" + name + "\"]");
    }

    private static void press(Page page, String button) {
        page.getByRole(AriaRole.BUTTON, new GetByRoleOptions().setName(button).setExact(true))
                .click();
    }

    private static void awaitRevision(Page page, int revision) {
        assertThat(page.locator("#heading")).containsText("revision " + revision);
    }

    private static Locator seat(Page page, String row) {
        return page.locator("svg.devices .seat[data-row='" + row + "']");
    }

    private static Locator spot(Page page, int position) {
        return page.locator("svg.devices .spot[data-position='" + position + "']").first();
    }

    private static void drag(Page page, Locator seat, Locator spot) {
        seat.scrollIntoViewIfNeeded();
        BoundingBox from = seat.boundingBox();
        BoundingBox to = spot.boundingBox();
        page.mouse().move(from.x + 10, from.y + from.height / 2);
        page.mouse().down();
        page.mouse().move(to.x + to.width / 2, to.y + to.height / 2, steps());
        page.mouse().up();
    }

    private static com.microsoft.playwright.Mouse.MoveOptions steps() {
        return new com.microsoft.playwright.Mouse.MoveOptions().setSteps(5);
    }

    @ParameterizedTest
    @CsvSource({"desktop, 1440, 0.85", "tablet, 1024, 1", "phone, 390, 0.9"})
    void drawsBothSidesReadably(String name, int width, double least, Page page) {
        page.setViewportSize(width, 1000);
        openSample(page, "TM-12-001");
        int blocks = page.locator("#blocks figure").count();
        assertThat(page.locator("svg.wires")).hasCount(blocks);
        assertThat(page.locator("svg.devices")).hasCount(blocks);
        for (Locator figure : page.locator("#blocks figure").all()) {
            String part = figure.locator("figcaption").innerText();
            int positions = Integer.parseInt(part.replaceAll("(?s).*WDB-(\\d).*", "$1"));
            assertThat(figure.locator(".spot")).hasCount(positions);
            assertThat(figure.locator(".cavity")).hasCount(2 * positions);
            assertThat(figure.locator("svg.devices .pair")).hasCount(positions / 4 * 2);
            for (Locator svg : figure.locator("svg.block").all()) {
                double drawn = Double.parseDouble(svg.getAttribute("width"));
                assertThat(svg.boundingBox().width / drawn)
                        .describedAs("drawn at what share of its size")
                        .isGreaterThanOrEqualTo(least);
            }
        }
        page.locator("#blocks")
                .screenshot(
                        new Locator.ScreenshotOptions()
                                .setPath(PICTURES.resolve("blocks-" + name + ".png")));
    }

    @Test
    void coloursFusesByTheirRatingsAndLeadsByTheirCodes(Page page) {
        openSample(page, "TM-12-001");
        for (Locator fuse : page.locator("svg.devices .seat").all()) {
            String says = fuse.getAttribute("aria-label");
            if (says.contains("15 A fuse")) {
                assertThat(fuse).hasClass(Pattern.compile("body-blue"));
            } else if (says.contains("20 A fuse")) {
                assertThat(fuse).hasClass(Pattern.compile("body-yellow"));
            } else if (says.contains("10 A auto-reset")) {
                assertThat(fuse.locator(".band")).hasClass(Pattern.compile("body-red"));
            }
        }
        assertThat(page.locator("svg.devices .seat.body-blue").first()).containsText("15 A");
        Locator striped = page.locator("svg.wires .cavity:has(.stripe)").first();
        String code = striped.locator(".wire").textContent().split(" ")[0];
        assertThat(code).hasSize(4);
        assertThat(striped.locator(".swatch").first())
                .hasClass(Pattern.compile("lead-" + code.substring(0, 2)));
        assertThat(striped.locator(".stripe"))
                .hasClass(Pattern.compile("lead-" + code.substring(2)));
    }

    @Test
    void lightsWhatBelongsToACircuit(Page page) {
        openSample(page, "TQ-014");
        assertThat(page.locator(".lit")).hasCount(0);
        field(page, "/circuits/0/title").hover();
        assertThat(page.locator("#row-circuits-0")).hasClass(LIT);
        assertThat(page.locator("#row-circuits-1")).not().hasClass(LIT);
        assertThat(seat(page, "/circuits/0")).hasClass(LIT);
        assertThat(seat(page, "/circuits/0/relay")).hasClass(LIT);
        assertThat(seat(page, "/circuits/1")).not().hasClass(LIT);
        assertThat(page.locator("#cuts tr.lit")).not().hasCount(0);
        assertThat(page.locator("#cuts tr.lit").first()).containsText("pump/");
        assertThat(page.locator("#parts tr.lit")).not().hasCount(0);
        page.screenshot(new Page.ScreenshotOptions().setPath(PICTURES.resolve("job-lit.png")));

        page.locator("#heading").hover();
        assertThat(page.locator(".lit")).hasCount(0);
        field(page, "/circuits/1/runM").focus();
        assertThat(seat(page, "/circuits/1")).hasClass(LIT);
    }

    @Test
    void saysWhatIsOutOfSightTooAndKeepsItLit(Page page) {
        createJob(page);
        page.setViewportSize(1440, 420);
        Locator run = field(page, "/circuits/0/runM");
        Locator lead = page.locator("#cuts tr[data-of*='lead:circuit-1/out']");
        Locator wire = page.locator("#parts-wire tr.lit:has-text('circuit-1/out') .num").first();
        String cut = lead.textContent();
        run.focus();
        String metres = wire.textContent();

        run.fill("1.7");
        run.press("Tab");

        assertThat(lead).not().hasText(cut);
        assertThat(lead).hasClass(LIT);
        assertThat(wire).not().hasText(metres);
    }

    @Test
    void lightsWhatBelongsToACavityAPartALeadAndACheck(Page page) {
        openSample(page, "TQ-014");
        Locator cavity = page.locator("svg.wires .cavity.used[data-of*='lead:pump/out']").first();
        cavity.hover();
        assertThat(cavity).hasClass(LIT);
        assertThat(page.locator("#row-circuits-0")).hasClass(LIT);
        assertThat(page.locator("#cuts tr.lit")).hasCount(1);
        assertThat(page.locator("#cuts tr.lit")).containsText("pump/out");
        // Its terminal and its seal, loose or in a bag, and its wire.
        String told = cavity.locator("title").textContent();
        for (String kind : List.of("terminal", "seal")) {
            String number = told.replaceAll(".*, " + kind + " ([\\w-]+).*", "$1");
            assertThat(page.locator("#parts tr.lit").filter(having(number))).not().hasCount(0);
        }
        assertThat(page.locator("#parts-wire tr.lit")).hasCount(1);

        Locator line = page.locator("#cuts tr[data-of^='lead:pump/out']");
        line.hover();
        assertThat(cavity).hasClass(LIT);
        assertThat(page.locator("svg.wires .lit")).hasCount(1);

        Locator part = page.locator("#parts tr[data-of*='circuit:lamps']").first();
        part.hover();
        assertThat(page.locator("#row-circuits-1")).hasClass(LIT);

        page.locator("#said-circuits-0 > summary").click();
        page.locator("#said-circuits-0 .checks li").first().hover();
        assertThat(seat(page, "/circuits/0")).hasClass(LIT);
        assertThat(seat(page, "/circuits/1")).not().hasClass(LIT);
    }

    private static Locator.FilterOptions having(String text) {
        return new Locator.FilterOptions().setHasText(text);
    }

    @Test
    void walksTheDrawingByKeyboard(Page page) {
        openSample(page, "TQ-014");
        Locator wires = page.locator("svg.wires");
        assertThat(wires.locator("[tabindex='0']")).hasCount(1);
        wires.locator("[tabindex='0']").focus();
        assertThat(page.locator("#cavity-B1-1a")).isFocused();
        page.keyboard().press("ArrowRight");
        assertThat(page.locator("#cavity-B1-2a")).isFocused();
        assertThat(page.locator("#cavity-B1-2a")).hasClass(LIT);
        page.keyboard().press("ArrowDown");
        assertThat(page.locator("#cavity-B1-2b")).isFocused();
        assertThat(wires.locator("[tabindex='0']")).hasCount(1);
        page.keyboard().press("Tab");
        assertThat(page.locator("svg.devices [tabindex='0']").first()).isFocused();
    }

    @Test
    void keepsADeviceWhereItIsDragged(Page page) {
        createJob(page);
        Locator seat = seat(page, "/circuits/2");
        String from = seat.getAttribute("data-position");
        int to = from.equals("1") ? 2 : 1;
        drag(page, seat, spot(page, to));
        awaitRevision(page, 6);
        assertThat(seat).hasAttribute("data-position", String.valueOf(to));
        assertThat(seat.locator("circle.pin")).hasCount(1);
        assertThat(page.locator("#moved-word")).containsText("B1-" + to + " now, and stays there");
        assertThat(page.locator(".placed")).hasCount(1);

        field(page, "/circuits/1/runM").fill("1.7");
        field(page, "/circuits/1/runM").press("Tab");
        awaitRevision(page, 7);
        assertThat(seat).hasAttribute("data-position", String.valueOf(to));
        page.locator(".placed .row-button").click();
        awaitRevision(page, 8);
        assertThat(page.locator(".placed")).hasCount(0);
        assertThat(page.locator("svg.devices .pin")).hasCount(0);
    }

    @Test
    void saysWhyARelayCannotSitWhereItIsSetDown(Page page) {
        createJob(page);
        Locator relay = seat(page, "/circuits/0/relay");
        relay.focus();
        page.keyboard().press("Space");
        assertThat(page.locator("#moved-word")).containsText("picked up");
        assertThat(relay).hasAttribute("aria-pressed", "true");
        page.keyboard().press("ArrowRight");
        page.keyboard().press("Escape");
        assertThat(page.locator("#moved-word")).containsText("stays where it was");
        assertThat(page.locator(".spot.aim")).hasCount(0);
        awaitRevision(page, 5);

        int position = Integer.parseInt(relay.getAttribute("data-position"));
        page.keyboard().press("Space");
        page.keyboard().press(position == 1 ? "ArrowRight" : "ArrowLeft");
        assertThat(page.locator(".spot.aim")).hasCount(1);
        page.keyboard().press("Space");
        awaitRevision(page, 6);
        Locator told = page.locator("#block-B1 .placed.fail");
        assertThat(told).containsText("✗ fail: place-kept");
        assertThat(told).containsText("No stocked block can be B1 and hold it at B1-2");
        assertThat(page.locator("#moved-word")).containsText("No stocked block can be B1");
        assertThat(page.locator("#moved-word")).hasAttribute("role", "status");
        assertThat(page.locator("#verdict")).containsText("Must not be built");
        page.locator("#blocks")
                .screenshot(
                        new Locator.ScreenshotOptions()
                                .setPath(PICTURES.resolve("blocks-refused.png")));

        told.getByRole(AriaRole.BUTTON).click();
        awaitRevision(page, 7);
        assertThat(page.locator(".placed")).hasCount(0);
        assertThat(page.locator("#verdict")).not().containsText("Must not be built");
    }

    @Test
    void movesADeviceByKeyboard(Page page) {
        createJob(page);
        Locator seat = seat(page, "/circuits/1");
        seat.focus();
        page.keyboard().press("Space");
        boolean first = seat.getAttribute("data-position").equals("1");
        page.keyboard().press(first ? "ArrowRight" : "ArrowLeft");
        String to = page.locator(".spot.aim").getAttribute("data-position");
        assertThat(page.locator("#moved-word")).containsText("B1-" + to);
        page.keyboard().press("Space");
        awaitRevision(page, 6);
        assertThat(seat).hasAttribute("data-position", to);
        assertThat(seat).isFocused();
    }
}
