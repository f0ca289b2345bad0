package org.fusewright.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Page.GetByRoleOptions;
import com.microsoft.playwright.options.AriaRole;

import org.fusewright.Shop;
import org.fusewright.TestDatabase;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

import java.util.regex.Pattern;

/** From a job to a quote, an order and a delivery, by what can be seen and clicked. */
@ExtendWith(Browser.class)
class OfficePagesTest {
    private static Shop shop;

    @BeforeAll
    static void open() {
        shop = Shop.open(TestDatabase.newOne("fusewright_office"));
    }

    @AfterAll
    static void close() {
        shop.close();
    }

    private static Locator button(Page page, String name) {
        return page.getByRole(
                AriaRole.BUTTON, new GetByRoleOptions().setName(Pattern.compile("^" + name)));
    }

    @Test
    void quotesOrdersAndReceivesByClicking(Page page) {
        page.navigate(shop.address() + "/jobs");
        page.getByRole(AriaRole.LINK, new GetByRoleOptions().setName("TQ-014")).click();
        page.navigate(page.url().replace("/jobs/", "/quotes/new?job="));
        page.getByLabel("Kits").fill("40");
        button(page, "Work the quote out").click();
        page.waitForURL(Pattern.compile("/quotes/\\d+$"));
        page.locator("details:has([name=kits]) > summary").click();
        page.getByLabel("Kits").fill("41");
        button(page, "Keep and work it out anew").click();
        assertThat(page.locator("main")).containsText("41");
        button(page, "Send: freeze it as it is").click();
        button(page, "Accepted").first().click();
        assertThat(button(page, "Accepted")).hasCount(0);

        page.navigate(shop.address() + "/orders");
        button(page, "Make").click();
        page.locator("main a[href^='/orders/']").first().click();
        page.waitForURL(Pattern.compile("/orders/\\d+$"));
        button(page, "Send: freeze it as it is").click();
        page.getByLabel("Number of the delivery note").fill("DN-1");
        page.locator("[name^='came-']").first().fill("1");
        button(page, "Book what came").click();
        assertThat(page.locator("main")).containsText("DN-1");
    }
}
