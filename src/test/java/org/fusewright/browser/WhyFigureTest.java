package org.fusewright.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Page.GetByRoleOptions;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.Media;

import org.fusewright.ServiceTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.boot.test.web.server.LocalServerPort;

import java.nio.file.Path;
import java.util.List;

/** Each figure of a job's page opens to the formula that it comes from. */
@ServiceTest
@ExtendWith(Browser.class)
class WhyFigureTest {
    private static final Path PICTURES = Path.of("target/screenshots");
    private static final String FIRST_CUT = "#cuts a.opens[href*='of=cut:']";
    private static final String FIRST_DROP = "#cuts a.opens[href*='of=drop:']";

    @LocalServerPort private int port;

    private String address(String path) {
        return "http://127.0.0.1:" + port + path;
    }

    private void openSample(Page page) {
        page.setViewportSize(1440, 1000);
        page.navigate(address("/jobs?q=TQ-014"));
        page.locator("main td a, main th a").first().click();
        assertThat(page.locator("#heading")).isVisible();
        page.waitForLoadState();
    }

    private static Locator open(Page page, String figure) {
        Locator link = page.locator(figure).first();
        link.scrollIntoViewIfNeeded();
        link.focus();
        page.keyboard().press("Enter");
        Locator panel = page.locator("#why");
        assertThat(panel).isVisible();
        return panel;
    }

    private static double number(String text) {
        return Double.parseDouble(text.strip().split("[\\s\\u00a0]")[0].replace(',', '.'));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '"',
            textBlock =
                    """
                    .cuts a.opens[href*='of=cut:']   | 0.5
                    .cuts a.opens[href*='of=drop:']  | 0.0005
                    .cuts a.opens[href*='=current:'] | 0.005
                    .parts tfoot a.opens             | 0.005
                    #price a.opens[href*='of=price'] | 0.005
                    #price a.opens[href*='of=mass']  | 0.5
                    .parts a.opens[href*='of=line:'] | 0.005
                    """)
    void showsHowTheFigureComesAbout(String figure, double rounded, Page page) {
        openSample(page);
        double shown = number(page.locator(figure).first().textContent());

        Locator panel = open(page, figure);

        assertThat(number(panel.locator(".formula strong").textContent()))
                .isCloseTo(shown, within(rounded + 1e-3 * shown));
    }

    @Test
    void opensTheRatingOfADeviceToWhatItCarries(Page page) {
        openSample(page);

        for (String table : List.of("#circuits", "#feeds")) {
            String rating = table + " .device a.opens";
            double shown = number(page.locator(rating).first().textContent());

            Locator panel = open(page, rating);

            assertThat(panel.locator("#why-title")).containsText("-load");
            assertThat(number(panel.locator("tr:has-text('rating of') td").first().textContent()))
                    .isEqualTo(shown);
            page.keyboard().press("Escape");
        }
    }

    @Test
    void opensAndClosesByKeyboardAndGivesTheFocusBack(Page page) {
        openSample(page);
        open(page, FIRST_CUT);
        assertThat(page.locator("#why")).isFocused();

        page.keyboard().press("Escape");

        assertThat(page.locator("#why")).isHidden();
        assertThat(page.locator(FIRST_CUT).first()).isFocused();
    }

    @Test
    void shiftsNothing(Page page) {
        openSample(page);
        Locator link = page.locator(FIRST_DROP).first();
        link.scrollIntoViewIfNeeded();
        var before = link.boundingBox();

        open(page, FIRST_DROP);

        assertThat(link.boundingBox().y).isEqualTo(before.y);
        assertThat(link.boundingBox().x).isEqualTo(before.x);
    }

    @Test
    void explainsBothFiguresOfAPassedCheck(Page page) {
        openSample(page);
        page.locator("details.said summary").first().click();
        Locator check = page.locator(".said a.opens[href*='voltage-drop']").first();
        String told = check.textContent();

        Locator panel = open(page, ".said a.opens[href*='voltage-drop']");

        assertThat(panel.locator("h2")).containsText("voltage-drop");
        double value = number(told.replaceFirst("^\\s*value ", ""));
        assertThat(number(panel.locator(".formula strong").first().textContent()))
                .isCloseTo(value, within(0.006 * value));
        page.screenshot(
                new Page.ScreenshotOptions().setPath(PICTURES.resolve("why-voltage-drop.png")));
    }

    @ParameterizedTest
    @CsvSource({"1440,LIGHT", "1440,DARK", "390,LIGHT", "390,DARK"})
    void barsNobody(int width, ColorScheme scheme, Page page) {
        openSample(page);
        page.setViewportSize(width, 800);
        page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(scheme));
        open(page, FIRST_DROP);

        page.screenshot(
                new Page.ScreenshotOptions()
                        .setPath(PICTURES.resolve("why-" + width + "-" + scheme + ".png")));
        assertThat(
                        new AxeBuilder(page)
                                .withTags(
                                        List.of(
                                                "wcag2a",
                                                "wcag2aa",
                                                "wcag21a",
                                                "wcag21aa",
                                                "wcag22aa"))
                                .analyze()
                                .getViolations())
                .isEmpty();
        assertThat(
                        page.evaluate(
                                "document.getElementById('why').scrollWidth"
                                        + " <= document.getElementById('why').clientWidth"))
                .isEqualTo(true);
    }

    @Test
    void speaksGermanAndPrintsNothing(Page page) {
        openSample(page);
        page.getByRole(AriaRole.BUTTON, new GetByRoleOptions().setName("Deutsch")).click();
        page.waitForLoadState();

        Locator panel = open(page, FIRST_DROP);

        assertThat(panel).containsText("Spannung, die");
        assertThat(panel).containsText("aus dem Katalog");
        page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.PRINT));
        assertThat(panel).isHidden();
    }

    @Test
    void isAPageWithoutScripts(Page page) {
        openSample(page);
        String href = page.locator(FIRST_DROP).first().getAttribute("href");
        String shown = page.locator(FIRST_DROP).first().textContent();

        page.navigate(address(href));

        assertThat(number(page.locator(".formula strong").textContent()))
                .isCloseTo(number(shown), within(0.00051));
    }
}
