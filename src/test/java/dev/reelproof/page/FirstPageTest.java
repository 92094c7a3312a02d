package dev.reelproof.page;

import static org.hamcrest.Matchers.startsWith;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.access.Role;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.support.ui.ExpectedConditions;
import org.openqa.selenium.support.ui.Select;
import org.openqa.selenium.support.ui.WebDriverWait;

/** The first page in a real browser, as a technician uses it: scan, drop, read. */
@QuarkusTest
class FirstPageTest {
    private static final Duration PATIENCE = Duration.ofSeconds(30);

    /** Insertion loss, NEXT and ACR-F with their power sums, return loss, delay, and delay skew. */
    private static final int SWEPT_PROPERTIES = 8;

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

    /** The demo's accepted reel, as a result of the product of this test. */
    private static String completeResult() throws IOException {
        try (InputStream demo = FirstPageTest.class.getResourceAsStream("/demo-data/results/R-26001.json")) {
            return new String(demo.readAllBytes(), StandardCharsets.UTF_8).replace("\"HD6A-4P\"", "\"PAGE-4P\"");
        }
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
        RestAssured.given().get(page).then().header("Content-Security-Policy", startsWith("default-src 'self'"));
        assertEquals(
                "query", browser.driver().switchTo().activeElement().getAttribute("id"), "the scanner types at once");
        scan("page-1");
        browser.says("reel-number", "PAGE-1");
        assertTrue(browser.driver().getCurrentUrl().endsWith("#/reel/PAGE-1"), "the address keeps the reel");
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
        assertTrue(browser.shown("next-step").getText().contains("Also not tested"));
        browser.says("alternatives", "Cutting does not mend it: Conductor resistance is referred to a fixed length");
        browser.says("alternatives", "(category-6-cable): does not pass");
        browser.says("alternatives-section", "Advice only, for whoever has the authority");
        assertEquals(
                2,
                browser.driver().findElements(By.cssSelector("#attempt option")).size());
        assertTrue(browser.driver().findElements(By.id("issue")).isEmpty(), "no certificate for a rejected reel");

        drop("rejected.json", result(9.5));
        browser.says("upload-state", "taken before");

        new Select(browser.shown("attempt")).selectByIndex(1);
        browser.says("verdict-word", "INCOMPLETE");
        browser.says("older", "The newest counts, and it is REJECTED");
        browser.hidden("alternatives-section");
        browser.driver().navigate().refresh();
        browser.says("verdict-word", "REJECTED");
        browser.assertNoConsoleErrors();
    }

    @Test
    void anAcceptedReelGetsItsCertificate() throws IOException {
        register("PAGE-4");
        browser.signIn(page, people.named(Role.QUALITY_MANAGER), People.PASSWORD, "/#/reel/PAGE-4");
        browser.says("reel-number", "PAGE-4");
        drop("accepted.json", completeResult());
        browser.says("verdict-word", "ACCEPTED");
        assertTrue(browser.driver().findElements(By.cssSelector("#reasons li")).isEmpty());
        for (WebElement line : browser.driver().findElements(By.cssSelector("#requirements tr"))) {
            boolean highVoltage =
                    line.getText().startsWith("Spark") || line.getText().startsWith("Dielectric");
            assertEquals(highVoltage, line.getText().contains("follow local codes and licensed practice"));
        }
        new WebDriverWait(browser.driver(), PATIENCE)
                .until(ExpectedConditions.numberOfElementsToBe(By.cssSelector("#plots canvas"), SWEPT_PROPERTIES));
        browser.shown("issue").sendKeys(Keys.ENTER);
        WebElement link = browser.shown("certificate-link");
        people.station()
                .get(URI.create(link.getAttribute("href")))
                .then()
                .statusCode(200)
                .contentType("application/pdf");

        drop("faulty.json", "{\"product\"");
        browser.says("faults", "Not taken for reel PAGE-4");
        browser.says("older", "was not taken");
        browser.assertNoConsoleErrors();
    }

    @Test
    void aHeldReelSaysSoAndOffersNoCertificate() throws IOException {
        register("PAGE-8");
        browser.signIn(page, people.named(Role.QUALITY_MANAGER), People.PASSWORD, "/#/reel/PAGE-8");
        browser.says("reel-number", "PAGE-8");
        drop("accepted.json", completeResult());
        browser.says("verdict-word", "ACCEPTED");
        browser.shown("issue");
        assertFalse(browser.driver().findElement(By.id("held")).isDisplayed());
        people.station()
                .contentType("application/json")
                .body("{\"reel\": \"PAGE-8\", \"reason\": \"bare <b>spots\"}")
                .post("/api/v1/holds")
                .then()
                .statusCode(201);
        browser.shown("issue").sendKeys(Keys.ENTER);
        browser.says("certificate", "is on hold");
        browser.driver().navigate().refresh();
        browser.says("held", "On hold");
        browser.says("held", "bare <b>spots");
        browser.says("verdict-word", "ACCEPTED, ON HOLD");
        browser.says("verdict-line", "Do not ship it");
        assertTrue(browser.driver().findElements(By.id("issue")).isEmpty(), "no certificate for a held reel");
    }

    @Test
    void aPartOfANumberIsOfferedButNeverOpened() {
        register("PAGE-50");
        open("/");
        scan("PAGE-5");
        browser.says("hits-note", "Nothing has exactly the number");
        assertFalse(browser.driver().findElement(By.id("reel")).isDisplayed(), "a result would land on the wrong reel");
        browser.shown("query").sendKeys(Keys.ARROW_DOWN, Keys.ENTER);
        browser.says("reel-number", "PAGE-50");
        browser.assertNoConsoleErrors();
    }

    @Test
    void aScannerIsHeardWhereverTheFocusIs() throws IOException {
        register("PAGE-6");
        register("PAGE-7");
        open("/#/reel/PAGE-6");
        browser.says("reel-number", "PAGE-6");
        drop("result.json", result(9.5));
        browser.says("verdict-word", "REJECTED");
        browser.driver().findElement(By.cssSelector("#requirements tr")).sendKeys(Keys.ENTER);
        browser.shown("explain");
        new Actions(browser.driver()).sendKeys("PAGE-7", Keys.ENTER).perform();
        browser.says("reel-number", "PAGE-7");
        assertFalse(browser.driver().findElement(By.id("explain")).isDisplayed());
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
        assertFalse(browser.shown("faults").getText().contains("null"), "nothing absent is printed");
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
