package dev.reelproof.page;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.logging.Level;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;
import org.openqa.selenium.support.ui.ExpectedConditions;
import org.openqa.selenium.support.ui.Select;
import org.openqa.selenium.support.ui.WebDriverWait;

/** The first page in a real browser, as a technician uses it: scan, drop, read. */
@QuarkusTest
class FirstPageTest {
    private static final File BROWSER = new File("/usr/bin/chromium");
    private static final File DRIVER = new File("/usr/bin/chromedriver");
    private static final Duration PATIENCE = Duration.ofSeconds(30);

    /** Insertion loss, NEXT and ACR-F with their power sums, return loss, delay, and delay skew. */
    private static final int SWEPT_PROPERTIES = 8;

    private static ChromeDriver browser;

    @TestHTTPResource("/")
    URI page;

    @TempDir
    Path files;

    @BeforeAll
    static void open() {
        boolean present = BROWSER.canExecute() && DRIVER.canExecute();
        if ("required".equals(System.getenv("REELPROOF_BROWSER"))) {
            assertTrue(present, "REELPROOF_BROWSER=required, but there is no Chromium with its driver in /usr/bin");
        }
        assumeTrue(present, "no Chromium with its driver in /usr/bin: the page was not tested");
        ChromeOptions options = new ChromeOptions();
        options.setBinary(BROWSER);
        options.addArguments(
                "--headless=new",
                "--no-sandbox",
                "--disable-gpu",
                "--disable-quic",
                "--no-first-run",
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-sync",
                "--window-size=1280,1000");
        LoggingPreferences logs = new LoggingPreferences();
        logs.enable(LogType.BROWSER, Level.ALL);
        options.setCapability("goog:loggingPrefs", logs);
        browser = new ChromeDriver(
                new ChromeDriverService.Builder().usingDriverExecutable(DRIVER).build(), options);
    }

    @AfterAll
    static void close() {
        if (browser != null) {
            browser.quit();
        }
    }

    private static WebElement shown(String id) {
        return new WebDriverWait(browser, PATIENCE).until(ExpectedConditions.visibilityOfElementLocated(By.id(id)));
    }

    private static void says(String id, String words) {
        new WebDriverWait(browser, PATIENCE)
                .until(ExpectedConditions.textToBePresentInElementLocated(By.id(id), words));
    }

    private void register(String reel) {
        put(
                "/api/v1/products/PAGE-4P",
                "{\"description\": \"page test\", \"limitSet\": \"category-6a-cable\", \"pairs\": 4, \"gauge\": \"23 AWG\"}");
        put(
                "/api/v1/reels/" + reel,
                "{\"plant\": \"north\", \"product\": \"PAGE-4P\", \"length\": {\"value\": 305, \"unit\": \"m\"},"
                        + " \"order\": \"SO-PAGE\", \"customer\": \"Invented Customer <b>&\"}");
    }

    private static void put(String path, String body) {
        int status =
                given().contentType("application/json").body(body).put(path).statusCode();
        assertTrue(status == 200 || status == 201, path + " answered " + status);
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
        WebElement query = shown("query");
        query.clear();
        query.sendKeys(text, Keys.ENTER);
    }

    private void drop(String name, String content) throws IOException {
        Path file = Files.writeString(files.resolve(name), content);
        browser.findElement(By.id("files")).sendKeys(file.toString());
    }

    private static void assertNoConsoleErrors() {
        List<LogEntry> errors = browser.manage().logs().get(LogType.BROWSER).getAll().stream()
                .filter(entry -> entry.getLevel().intValue() >= Level.SEVERE.intValue())
                // the browser itself reports every answer of 400 and above that the page asked for and handled
                .filter(entry -> !entry.getMessage().contains("Failed to load resource"))
                .toList();
        assertEquals(List.of(), errors);
    }

    @Test
    void theTechnicianScansDropsAndReadsTheVerdict() throws IOException {
        register("PAGE-1");
        browser.get(page.toString());
        given().get(page).then().header("Content-Security-Policy", "default-src 'self'");
        assertEquals("query", browser.switchTo().activeElement().getAttribute("id"), "the scanner types at once");
        scan("page-1");
        says("reel-number", "PAGE-1");
        assertTrue(browser.getCurrentUrl().endsWith("#/reel/PAGE-1"), "the address keeps the reel");
        assertTrue(shown("reel-facts").getText().contains("Invented Customer <b>&"), "text is shown as text");
        says("untested", "not been tested");

        drop("incomplete.json", result(7.1));
        says("verdict-word", "INCOMPLETE");
        says("reasons", "not tested: no data");
        says("upload-state", "Taken and judged");

        drop("rejected.json", result(9.5));
        says("verdict-word", "REJECTED");
        says("reasons", "Conductor resistance");
        assertTrue(browser.findElement(By.id("reasons")).getText().contains("pair 3, wire b"));
        assertTrue(shown("next-step").getText().contains("hand it over to the engineer"));
        assertTrue(shown("next-step").getText().contains("Also not tested"));
        assertEquals(2, browser.findElements(By.cssSelector("#attempt option")).size());
        assertTrue(browser.findElements(By.id("issue")).isEmpty(), "no certificate for a rejected reel");

        drop("rejected.json", result(9.5));
        says("upload-state", "taken before");

        new Select(shown("attempt")).selectByIndex(1);
        says("verdict-word", "INCOMPLETE");
        says("older", "The newest counts, and it is REJECTED");
        browser.navigate().refresh();
        says("verdict-word", "REJECTED");
        assertNoConsoleErrors();
    }

    @Test
    void anAcceptedReelGetsItsCertificate() throws IOException {
        register("PAGE-4");
        browser.get(page + "#/reel/PAGE-4");
        says("reel-number", "PAGE-4");
        drop("accepted.json", completeResult());
        says("verdict-word", "ACCEPTED");
        assertTrue(browser.findElements(By.cssSelector("#reasons li")).isEmpty());
        for (WebElement line : browser.findElements(By.cssSelector("#requirements tr"))) {
            boolean highVoltage =
                    line.getText().startsWith("Spark") || line.getText().startsWith("Dielectric");
            assertEquals(highVoltage, line.getText().contains("follow local codes and licensed practice"));
        }
        new WebDriverWait(browser, PATIENCE)
                .until(ExpectedConditions.numberOfElementsToBe(By.cssSelector("#plots canvas"), SWEPT_PROPERTIES));
        shown("issue").sendKeys(Keys.ENTER);
        WebElement link = shown("certificate-link");
        given().get(URI.create(link.getAttribute("href")))
                .then()
                .statusCode(200)
                .contentType("application/pdf");

        drop("faulty.json", "{\"product\"");
        says("faults", "Not taken for reel PAGE-4");
        says("older", "was not taken");
        assertNoConsoleErrors();
    }

    @Test
    void aPartOfANumberIsOfferedButNeverOpened() {
        register("PAGE-50");
        browser.get(page.toString());
        scan("PAGE-5");
        says("hits-note", "No reel has exactly the number");
        assertFalse(browser.findElement(By.id("reel")).isDisplayed(), "a result would land on the wrong reel");
        shown("query").sendKeys(Keys.ARROW_DOWN, Keys.ENTER);
        says("reel-number", "PAGE-50");
        assertNoConsoleErrors();
    }

    @Test
    void aScannerIsHeardWhereverTheFocusIs() throws IOException {
        register("PAGE-6");
        register("PAGE-7");
        browser.get(page + "#/reel/PAGE-6");
        says("reel-number", "PAGE-6");
        drop("result.json", result(9.5));
        says("verdict-word", "REJECTED");
        browser.findElement(By.cssSelector("#requirements tr")).sendKeys(Keys.ENTER);
        shown("explain");
        new Actions(browser).sendKeys("PAGE-7", Keys.ENTER).perform();
        says("reel-number", "PAGE-7");
        assertFalse(browser.findElement(By.id("explain")).isDisplayed());
        assertNoConsoleErrors();
    }

    @Test
    void aLineExplainsItsFigureFromTheKeyboard() throws IOException {
        register("PAGE-2");
        browser.get(page + "#/reel/PAGE-2");
        says("reel-number", "PAGE-2");
        drop("result.json", result(9.5));
        says("verdict-word", "REJECTED");
        browser.findElement(By.cssSelector("#requirements tr")).sendKeys(Keys.ENTER);
        says("explain", "/readings/5");
        says("explain", "Source:");
        browser.switchTo().activeElement().sendKeys(Keys.ESCAPE);
        new WebDriverWait(browser, PATIENCE).until(ExpectedConditions.invisibilityOfElementLocated(By.id("explain")));
        assertNoConsoleErrors();
    }

    @Test
    void aFaultyFileIsAnsweredInSentences() throws IOException {
        register("PAGE-3");
        browser.get(page + "#/reel/PAGE-3");
        says("reel-number", "PAGE-3");
        drop("faulty.json", result(9.1).replace("\"ohm/100 m\"", "\"nF\""));
        says("faults", "/readings/0/unit");
        drop("empty.json", "");
        says("faults", "empty");
        assertFalse(shown("faults").getText().contains("null"), "nothing absent is printed");
        says("untested", "not been tested");
        assertNoConsoleErrors();
    }

    @Test
    void anUnknownReelIsSaid() {
        browser.get(page.toString());
        scan("NO-SUCH-REEL");
        says("notice", "NO-SUCH-REEL");
        assertEquals("query", browser.switchTo().activeElement().getAttribute("id"), "ready for the next scan");
    }
}
