package org.fusewright.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Download;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Page.GetByRoleOptions;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.BoundingBox;

import org.fusewright.ServiceTest;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.springframework.boot.test.web.server.LocalServerPort;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.regex.Pattern;

/** Counting on a phone: by thumb, by keyboard and by a scanner that types. */
@ServiceTest
@ExtendWith(Browser.class)
class CountPageTest {
    private static final AtomicInteger NUMBER = new AtomicInteger();
    private static final int THUMB = 44;

    @LocalServerPort private int port;
    private final List<String> complaints = new ArrayList<>();

    private String address(String path) {
        return "http://127.0.0.1:" + port + path;
    }

    /** On the page that the test itself is given. */
    private void beginACount(Page page) {
        page.onConsoleMessage(
                message -> {
                    if (message.type().equals("error")
                            && !message.text().startsWith("Failed to load resource")) {
                        complaints.add(message.text());
                    }
                });
        page.onPageError(complaints::add);
        page.setViewportSize(390, 844);
        page.navigate(address("/jobs"));
        page.getByText("New job", new Page.GetByTextOptions().setExact(true)).click();
        page.getByLabel("Reference").fill("PHONE-" + NUMBER.incrementAndGet());
        page.getByLabel("Title").fill("Counted by thumb");
        page.getByRole(AriaRole.BUTTON, new GetByRoleOptions().setName("Create the job")).click();
        page.locator("[name='do'][value='add /circuits']").click();
        assertThat(page.locator("svg.wires")).hasCount(1);
        page.getByRole(AriaRole.LINK, new GetByRoleOptions().setName("Count a bag")).click();
        page.getByLabel("Who counts").fill("Ada");
        page.getByLabel("Bagged sets").selectOption("opened");
        page.getByRole(AriaRole.BUTTON, new GetByRoleOptions().setName("Begin")).click();
        assertThat(page.locator("#sign")).isVisible();
    }

    @AfterEach
    void hearsNoComplaint() {
        assertThat(complaints).isEmpty();
    }

    /** The first line that expects more than one piece. */
    private static String partOfSeveral(Page page) {
        for (Locator line : page.locator("li.line").all()) {
            if (line.locator(".of").textContent().matches("of [2-9]\\d*")) {
                return line.locator(".number").textContent();
            }
        }
        throw new AssertionError("no line of several pieces");
    }

    private static Locator pieces(Page page, String part) {
        return page.locator("[id='have-" + part + "']");
    }

    @Test
    void countsByThumbWithoutLosingATap(Page page) {
        beginACount(page);
        String part = partOfSeveral(page);
        for (int tap = 0; tap < 12; tap++) {
            page.evaluate("part => document.getElementById('more-' + part).click()", part);
        }
        assertThat(pieces(page, part)).hasValue("12");
        page.locator("[id='less-" + part + "']").click();
        assertThat(pieces(page, part)).hasValue("11");
        page.reload();
        assertThat(pieces(page, part)).hasValue("11");
        assertThat(page.locator("[id='line-" + part + "'] .state")).containsText("too many");
    }

    @Test
    void takesANumberThatIsTyped(Page page) {
        beginACount(page);
        String part = partOfSeveral(page);
        pieces(page, part).fill("7");
        pieces(page, part).press("Enter");
        assertThat(page.locator("[id='line-" + part + "'] .state")).containsText("too many");
        assertThat(pieces(page, part)).hasValue("7");
        pieces(page, part).fill("1");
        page.locator("h1").click();
        assertThat(page.locator("[id='line-" + part + "'] .state")).containsText("short");
        page.reload();
        assertThat(pieces(page, part)).hasValue("1");
        pieces(page, part).fill("many");
        pieces(page, part).press("Enter");
        assertThat(page.locator(".heard")).containsText("must be a whole number");
        assertThat(pieces(page, part)).hasValue("1");
    }

    @Test
    void takesWhatAScannerTypesFasterThanTheService(Page page) {
        beginACount(page);
        String part = partOfSeveral(page);
        assertThat(page.locator("#code")).isFocused();
        for (int scan = 0; scan < 5; scan++) {
            page.keyboard().type(part);
            page.keyboard().press("Enter");
        }
        assertThat(pieces(page, part)).hasValue("5");
        assertThat(page.locator("#code")).isFocused();
        assertThat(page.locator("#code")).hasValue("");

        page.keyboard().type("4006381333931");
        page.keyboard().press("Enter");
        assertThat(page.locator(".heard.fail")).containsText("Nothing was counted");
        assertThat(page.locator("#code")).isFocused();
        page.keyboard().type("OSR-24");
        page.keyboard().press("Enter");
        assertThat(page.locator(".heard.fail")).containsText("does not belong in this bag");
        assertThat(page.locator(".wrong")).containsText("OSR-24");
    }

    @Test
    void takesAScanWhereverTheFocusIs(Page page) {
        beginACount(page);
        String part = partOfSeveral(page);
        page.locator("[id='more-" + part + "']").click();
        assertThat(pieces(page, part)).hasValue("1");
        page.keyboard().type(part);
        page.keyboard().press("Enter");
        assertThat(pieces(page, part)).hasValue("2");
    }

    @Test
    void hasTargetsForAThumbAndNothingBeyondTheEdge(Page page) {
        beginACount(page);
        page.getByText("Weigh it").click();
        page.getByText("Somebody else counts").click();
        int seen = 0;
        for (Locator target :
                page.locator(".counting :is(button, input:not([type=hidden]), select, summary)")
                        .all()) {
            BoundingBox box = target.boundingBox();
            if (target.isVisible() && box != null && box.width > 1) {
                seen++;
                assertThat(Math.min(box.height, box.width))
                        .describedAs(target.toString())
                        .isGreaterThanOrEqualTo(THUMB);
            }
        }
        assertThat(seen).isGreaterThan(20);
        assertThat(page.evaluate("document.documentElement.scrollWidth")).isEqualTo(390);
        assertThat(page.content()).doesNotContain("style=\"");
    }

    @Test
    void weighsAgreesAndSigns(Page page) {
        beginACount(page);
        for (Locator more : page.locator("li.line [id^='more-']").all()) {
            String part = more.getAttribute("id").substring("more-".length());
            String of = page.locator("[id='line-" + part + "'] .of").textContent();
            pieces(page, part).fill(of.replaceAll("\\D", ""));
            pieces(page, part).press("Enter");
            assertThat(page.locator("[id='line-" + part + "'] .state")).containsText("complete");
        }
        assertThat(page.locator(".progress")).containsText("the bag is complete");
        page.getByText("Weigh it").click();
        page.getByLabel("Step of the scale, g").fill("0,1");
        page.getByText("What can it see?").click();
        assertThat(page.locator("#statement")).containsText("The whole bag should weigh");
        assertThat(page.getByLabel("Step of the scale, g")).hasValue("0,1");
        page.getByText("Finish and sign").scrollIntoViewIfNeeded();
        page.getByRole(
                        AriaRole.BUTTON,
                        new GetByRoleOptions().setName(Pattern.compile("^Sign: it cannot")))
                .click();
        assertThat(page.locator(".verdict.pass")).containsText("✓ Complete. Signed by Ada");
        assertThat(page.locator("#code")).hasCount(0);
        Download record = page.waitForDownload(() -> page.getByText("Record (PDF, A4)").click());
        assertThat(record.suggestedFilename()).matches("PHONE-\\d+ count \\d+\\.pdf");
    }
}
