package dev.reelproof.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.access.Role;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** The first page in a real browser, as a technician uses it: scan, drop, read. */
@QuarkusTest
class FirstPageTest {
    private static Browser browser;
    private static People people;

    @TestHTTPResource("/")
    URI page;

    @TempDir
    Path files;

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

    private void open(String address) {
        browser.signIn(page, people.named(Role.TECHNICIAN), People.PASSWORD, address);
    }

    private void register(String reel) {
        people.put(
                "/api/v1/products/PAGE-4P",
                "{\"description\": \"page test\", \"limitSet\": \"category-6a-cable\", \"pairs\": 4, \"gauge\": \"23 AWG\"}");
        people.put(
                "/api/v1/reels/" + reel,
                "{\"plant\": \"north\", \"product\": \"PAGE-4P\", \"length\": {\"value\": 305, \"unit\": \"m\"},"
                        + " \"order\": \"SO-PAGE\", \"customer\": \"Invented Customer <b>&\"}");
    }

    private static String result(double resistance) {
        StringBuilder readings = new StringBuilder();
        for (int pair = 1; pair <= 4; pair++) {
            for (String conductor : List.of("a", "b")) {
                readings.append(readings.isEmpty() ? "" : ",")
                        .append("{\"property\": \"conductor-resistance\", \"pair\": ")
                        .append(pair)
                        .append(", \"conductor\": \"")
                        .append(conductor)
                        .append("\", \"value\": ")
                        .append(pair == 3 && conductor.equals("b") ? resistance : 7.0)
                        .append(", \"unit\": \"ohm/100 m\"}");
            }
        }
        return "{\"product\": \"PAGE-4P\", \"length\": {\"value\": 305, \"unit\": \"m\"},"
                + " \"temperature\": {\"value\": 20, \"unit\": \"°C\"}, \"finished\": \"2026-03-02T14:09:30Z\","
                + " \"equipment\": [{\"id\": \"br-1\", \"calibrationDue\": \"2026-12-31\"}],"
                + " \"grids\": {\"g\": {\"unit\": \"MHz\", \"values\": [1, 10, 100, 500]}},"
                + " \"sweeps\": [{\"property\": \"return-loss\", \"pair\": 1, \"end\": \"near\", \"grid\": \"g\", \"unit\": \"dB\","
                + " \"values\": [30, 30, 30, 30]}], \"readings\": [" + readings + "]}";
    }

    private void scan(String text) {
        WebElement query = browser.shown("query");
        query.clear();
        query.sendKeys(text, Keys.ENTER);
    }

    private void drop(String name, String content) throws IOException {
        Path file = Files.writeString(files.resolve(name), content);
        browser.driver().findElement(By.id("files")).sendKeys(file.toString());
    }

    @Test
    void theTechnicianScansDropsAndReadsTheVerdict() throws IOException {
        register("PAGE-1");
        open("/");
        assertEquals(
                "query", browser.driver().switchTo().activeElement().getAttribute("id"), "the scanner types at once");
        scan("page-1");
        browser.says("reel-number", "PAGE-1");
        assertTrue(browser.shown("reel-facts").getText().contains("Invented Customer <b>&"), "text is shown as text");
        browser.says("untested", "not been tested");

        drop("incomplete.json", result(7.1));
        browser.says("verdict-word", "INCOMPLETE");
        browser.says("reasons", "not tested: no data");
        browser.says("upload-state", "Taken and judged");

        drop("rejected.json", result(9.5));
        browser.says("verdict-word", "REJECTED");
        browser.says("reasons", "Conductor resistance");
        assertTrue(browser.driver().findElement(By.id("reasons")).getText().contains("pair 3, wire b"));
        assertTrue(browser.shown("next-step").getText().contains("hand it over to the engineer"));
        assertEquals(
                2,
                browser.driver().findElements(By.cssSelector("#attempt option")).size());
        assertTrue(browser.driver().findElements(By.id("issue")).isEmpty(), "no certificate for a rejected reel");

        drop("rejected.json", result(9.5));
        browser.says("upload-state", "taken before");
        browser.assertNoConsoleErrors();
    }

    @Test
    void aLineExplainsItsFigureFromTheKeyboard() throws IOException {
        register("PAGE-2");
        open("/#/reel/PAGE-2");
        browser.says("reel-number", "PAGE-2");
        drop("result.json", result(9.5));
        browser.says("verdict-word", "REJECTED");
        browser.driver().findElement(By.cssSelector("#requirements tr")).sendKeys(Keys.ENTER);
        browser.says("explain", "/readings/5");
        browser.says("explain", "Source:");
        browser.driver().switchTo().activeElement().sendKeys(Keys.ESCAPE);
        browser.hidden("explain");
        browser.assertNoConsoleErrors();
    }

    @Test
    void aFaultyFileIsAnsweredInSentences() throws IOException {
        register("PAGE-3");
        open("/#/reel/PAGE-3");
        browser.says("reel-number", "PAGE-3");
        drop("faulty.json", result(9.1).replace("\"ohm/100 m\"", "\"nF\""));
        browser.says("faults", "/readings/0/unit");
        drop("empty.json", "");
        browser.says("faults", "empty");
        browser.says("untested", "not been tested");
        browser.assertNoConsoleErrors();
    }

    @Test
    void anUnknownReelIsSaid() {
        open("/");
        scan("NO-SUCH-REEL");
        browser.says("notice", "NO-SUCH-REEL");
        assertEquals(
                "query", browser.driver().switchTo().activeElement().getAttribute("id"), "ready for the next scan");
    }
}
