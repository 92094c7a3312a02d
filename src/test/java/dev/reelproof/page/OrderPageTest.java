package dev.reelproof.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.access.Role;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.net.URI;
import java.util.UUID;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;

/** The order page in a real browser, as customer service uses it: scan the order, issue, hand over. */
@QuarkusTest
class OrderPageTest {
    private static Browser browser;
    private static People people;

    @TestHTTPResource("/")
    URI page;

    private final String order = "SO-" + UUID.randomUUID().toString().substring(0, 8);

    @BeforeAll
    static void open() {
        browser = Browser.open();
        people = People.make();
    }

    @AfterAll
    static void close() {
        if (browser != null) {
            browser.close();
        }
    }

    private String reel(String name, String ofOrder) {
        String reel = name + "-" + ofOrder;
        people.register(reel);
        people.put(
                "/api/v1/reels/" + reel,
                "{\"plant\": \"north\", \"product\": \"PAGE-6A\", \"length\": {\"value\": 305, \"unit\": \"m\"}, \"order\": \""
                        + ofOrder + "\", \"customer\": \"Invented <b>& Sons\"}");
        return reel;
    }

    @Test
    void customerServiceIssuesOneCertificateForAllReelsOnceAllAreReady() throws IOException {
        for (String name : new String[] {"A", "B"}) {
            assertEquals("accepted", people.send(reel(name, order), People.GOOD_RESULT));
        }
        browser.signIn(page, people.named(Role.CUSTOMER_SERVICE), People.PASSWORD, "/");
        browser.shown("query").sendKeys(order, Keys.ENTER);
        browser.says("readiness", "0 of 2 reels");
        assertFalse(browser.driver().findElement(By.id("issue-collective")).isDisplayed(), "no reel is ready yet");
        browser.press("#issue-all");
        browser.says("readiness", "2 of 2 reels");
        browser.press("#issue-collective");
        browser.says("done", "stands for 2 reels of order " + order);
        browser.says("collectives-list", "2 reels, current");
    }

    @Test
    void customerServiceScansAnOrderIssuesAndHandsOver() throws IOException {
        String good = reel("A", order);
        assertEquals("accepted", people.send(good, People.GOOD_RESULT));
        String untested = reel("B", order);
        String other = "OTHER-" + order;
        reel("C", other);

        browser.signIn(page, people.named(Role.CUSTOMER_SERVICE), People.PASSWORD, "/");
        browser.shown("query").sendKeys(order.replace("-", " ").toLowerCase(java.util.Locale.ROOT), Keys.ENTER);
        browser.says("order-name", order);
        browser.says("readiness", "0 of 2 reels");
        browser.says("order-reels", good);
        browser.says("order-reels", "not tested; no certificate");
        assertTrue(browser.shown("order-facts").getText().contains("Invented <b>& Sons"), "text is shown as text");
        assertFalse(browser.driver().findElement(By.id("zip")).isDisplayed(), "nothing to download yet");

        browser.press("#issue-all");
        browser.says("batch-done", "Finished: 1 issued, 1 not issued.");
        browser.says("not-issued-reels", untested + ": Reel " + untested + " was never tested.");
        browser.says("readiness", "1 of 2 reels");
        browser.says("order-reels", "current");
        assertTrue(browser.shown("zip").getAttribute("href").endsWith("/certificates.zip"));
        browser.press("#copy-text");
        browser.shown("text");
        // Whether or not the browser gives its clipboard, the person is told how to go on, and of no fault.
        browser.says("done", "into the mail");
        assertFalse(browser.driver().findElement(By.id("notice")).isDisplayed(), "no fault is shown");
        assertTrue(browser.driver()
                .findElement(By.id("text"))
                .getAttribute("value")
                .contains("Reel: " + good));

        browser.shown("query").sendKeys(other, Keys.ENTER);
        browser.says("order-name", "Order " + other);
        browser.says("order-reels", "C-" + other);
        assertFalse(browser.shown("order-reels").getText().contains(good), "nothing of the order before is left");
        assertFalse(browser.driver().findElement(By.id("not-issued")).isDisplayed());
        assertFalse(browser.driver().findElement(By.id("text-section")).isDisplayed());

        browser.driver().get(page.resolve("/order.html#/NO-" + order).toString());
        browser.says("notice", "No reel is registered for order NO-" + order);
        assertFalse(browser.driver().findElement(By.id("order")).isDisplayed());
        browser.assertNoConsoleErrors();
    }
}
