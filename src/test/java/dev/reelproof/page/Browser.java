package dev.reelproof.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.net.URI;
import java.time.Duration;
import java.util.List;
import java.util.logging.Level;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;
import org.openqa.selenium.support.ui.ExpectedConditions;
import org.openqa.selenium.support.ui.WebDriverWait;

/** A real browser, and what the tests of the pages do in it. */
final class Browser implements AutoCloseable {
    private static final File CHROMIUM = new File("/usr/bin/chromium");
    private static final File DRIVER = new File("/usr/bin/chromedriver");
    private static final Duration PATIENCE = Duration.ofSeconds(30);

    private final ChromeDriver driver;

    private Browser(ChromeDriver driver) {
        this.driver = driver;
    }

    /** A browser of its own; the test is skipped where there is none, unless REELPROOF_BROWSER=required. */
    static Browser open() {
        boolean present = CHROMIUM.canExecute() && DRIVER.canExecute();
        if ("required".equals(System.getenv("REELPROOF_BROWSER"))) {
            assertTrue(present, "REELPROOF_BROWSER=required, but there is no Chromium with its driver in /usr/bin");
        }
        assumeTrue(present, "no Chromium with its driver in /usr/bin: the page was not tested");
        ChromeOptions options = new ChromeOptions();
        options.setBinary(CHROMIUM);
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
        return new Browser(new ChromeDriver(
                new ChromeDriverService.Builder().usingDriverExecutable(DRIVER).build(), options));
    }

    ChromeDriver driver() {
        return driver;
    }

    @Override
    public void close() {
        driver.quit();
    }

    /** Forgets who was signed in; a page of the service must be open. */
    void forget() {
        driver.manage().deleteAllCookies();
    }

    WebElement shown(String id) {
        return patiently().until(ExpectedConditions.visibilityOfElementLocated(By.id(id)));
    }

    void hidden(String id) {
        patiently().until(ExpectedConditions.invisibilityOfElementLocated(By.id(id)));
    }

    void says(String id, String words) {
        patiently().until(ExpectedConditions.textToBePresentInElementLocated(By.id(id), words));
    }

    void at(String address) {
        patiently().until(ExpectedConditions.urlToBe(address));
    }

    void press(String selector) {
        patiently()
                .until(ExpectedConditions.elementToBeClickable(By.cssSelector(selector)))
                .click();
    }

    void type(String id, String text) {
        WebElement field = shown(id);
        field.clear();
        field.sendKeys(text);
    }

    /** Fills in the sign-in page that is open. */
    void enter(String name, String password) {
        type("name", name);
        type("password", password);
        driver.findElement(By.id("password")).sendKeys(Keys.ENTER);
    }

    /** Opens a page as this person, by way of the sign-in page. */
    void signIn(URI service, String name, String password, String next) {
        driver.get(service.resolve("/sign-in.html").toString());
        forget();
        driver.get(service.resolve(next).toString());
        patiently().until(ExpectedConditions.urlContains("/sign-in.html?next="));
        enter(name, password);
        at(service.resolve(next).toString());
        shown("who-name");
    }

    /** No error of a script and no breach of the content-security policy since the last look. */
    void assertNoConsoleErrors() {
        List<LogEntry> errors = driver.manage().logs().get(LogType.BROWSER).getAll().stream()
                .filter(entry -> entry.getLevel().intValue() >= Level.SEVERE.intValue()
                        || entry.getMessage().contains("Content Security Policy")
                        || entry.getMessage().contains("Content-Security-Policy"))
                // the browser itself reports every answer of 400 and above that the page asked for and handled
                .filter(entry -> !entry.getMessage().contains("Failed to load resource"))
                .toList();
        assertEquals(List.of(), errors);
    }

    private WebDriverWait patiently() {
        return new WebDriverWait(driver, PATIENCE);
    }
}
