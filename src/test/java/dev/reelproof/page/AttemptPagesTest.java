package dev.reelproof.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.access.Role;
import dev.reelproof.api.AskingPlants;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.interactions.Actions;

/** What could send bad cable out, as a person at the bench meets it: each must look like what it is. */
@QuarkusTest
@TestProfile(AskingPlants.class)
class AttemptPagesTest {
    private static final Path REJECTED_RESULT = Path.of("demo-data/results/R-26006.json");

    private static Browser browser;
    private static People people;

    private final String reel = "R-" + UUID.randomUUID();

    @TestHTTPResource("/")
    URI service;

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

    @AfterEach
    void thePagesRanWithoutErrors() {
        browser.assertNoConsoleErrors();
    }

    private void openReel(Role role) {
        browser.signIn(service, people.named(role), People.PASSWORD, "/#/reel/" + reel);
        browser.says("reel-number", reel);
    }

    /** A result of the demo, as one of the product of these tests, finished at another time. */
    private static String result(Path demo, int hour) throws IOException {
        return Files.readString(demo)
                .replace("HD6A-4P", "PAGE-6A")
                .replaceFirst("\"started\": \"[^\"]*\"", "\"started\": \"2026-03-02T00:00:00Z\"")
                .replaceFirst("\"finished\": \"[^\"]*\"", "\"finished\": \"2026-03-02T" + hour + ":00:00Z\"");
    }

    private void drop(String content) throws IOException {
        Path file = Files.writeString(files.resolve(UUID.randomUUID() + ".json"), content);
        browser.driver().findElement(By.id("files")).sendKeys(file.toString());
    }

    private static List<String> looks() {
        return Arrays.asList(browser.driver()
                .findElement(By.id("verdict"))
                .getAttribute("class")
                .split(" "));
    }

    private static void assertNothingLetsItGo() {
        assertFalse(looks().equals(List.of("verdict", "accepted")), "it looks like a reel that may go");
        assertTrue(browser.driver().findElements(By.id("issue")).isEmpty(), "no certificate is offered");
        assertTrue(browser.driver().findElements(By.id("certificate-link")).isEmpty());
    }

    @Test
    void anotherReelsFileIsNotTaken() throws IOException {
        people.register(reel);
        openReel(Role.QUALITY_MANAGER);
        drop(result(People.GOOD_RESULT, 10).replaceFirst("\\{", "{\"reel\": \"R-OTHER\","));
        browser.says("faults", "R-OTHER");
        browser.says("faults", "Not taken for reel " + reel);
        assertTrue(browser.driver().findElement(By.id("untested")).isDisplayed());
    }

    @Test
    void aFileTakenBeforeIsShownAsOlderWhileANewerAttemptFailed() throws IOException {
        people.register(reel);
        openReel(Role.QUALITY_MANAGER);
        String good = result(People.GOOD_RESULT, 10);
        drop(good);
        browser.says("verdict-word", "ACCEPTED");
        drop(result(REJECTED_RESULT, 11));
        browser.says("verdict-word", "REJECTED");
        drop(good);
        browser.says("older", "This very file was taken before. Older attempt 1 of 2.");
        browser.says("older", "The newest counts, and it is REJECTED");
        browser.says("upload-state", "taken before");
        assertTrue(looks().contains("older"), looks().toString());
        assertNothingLetsItGo();
    }

    @Test
    void anOlderTestThatComesInLateIsShownAsOlder() throws IOException {
        people.register(reel);
        openReel(Role.QUALITY_MANAGER);
        drop(result(REJECTED_RESULT, 11));
        browser.says("verdict-word", "REJECTED");
        drop(result(People.GOOD_RESULT, 10));
        browser.says("older", "Older attempt 2 of 2. The newest counts, and it is REJECTED");
        browser.says("upload-state", "It is an older test");
        browser.says("warnings", "kept as an older test");
        assertTrue(looks().contains("older"), looks().toString());
        assertNothingLetsItGo();
        browser.driver().navigate().refresh();
        browser.says("verdict-word", "REJECTED");
    }

    @Test
    void aPassAfterTwoFailuresSaysSoAndWaitsForAnEngineer() throws IOException {
        people.register(reel);
        openReel(Role.TECHNICIAN);
        drop(result(REJECTED_RESULT, 10));
        browser.says("verdict-word", "REJECTED");
        browser.type("retest-reason", "contacts cleaned");
        drop(result(REJECTED_RESULT, 11));
        browser.says("verdict", "Tested again because: contacts cleaned");
        drop(result(People.GOOD_RESULT, 12));
        browser.says("attempt-summary", "accepted at attempt 3; rejected twice");
        browser.says("verdict-word", "ACCEPTED, WAITS FOR AN ENGINEER");
        browser.says("verdict-line", "Do not ship it until an engineer has accepted this test");
        browser.says("awaits-engineer", "No certificate");
        assertTrue(looks().contains("held"), looks().toString());
        assertNothingLetsItGo();

        browser.signIn(service, people.named(Role.QUALITY_MANAGER), People.PASSWORD, "/#/reel/" + reel);
        browser.type("accept-reason", "adapter was worn");
        browser.press("#accept-retest");
        browser.says("retest-accepted", "adapter was worn");
        browser.shown("issue");
        assertEquals(List.of("verdict", "accepted"), looks());
        browser.says("attempt-summary", "accepted at attempt 3; rejected twice");
    }

    /** A scanner types the number, with what it puts around it, and ends with Tab or Enter. */
    @Test
    void aScannedCodeOpensItsReel() throws IOException {
        people.register(reel);
        browser.signIn(service, people.named(Role.TECHNICIAN), People.PASSWORD, "/");
        browser.type("query", "]C1" + reel);
        // Both at once, as a scanner sends them, however busy the machine of the test is.
        browser.driver()
                .executeScript(
                        """
                        for (const key of ['x', 'Tab']) {
                          document.getElementById('query').dispatchEvent(new KeyboardEvent('keydown', { key, cancelable: true }));
                        }""");
        browser.says("reel-number", reel);
        browser.driver().get(service.resolve("/#/").toString());
        browser.shown("recent");
        new Actions(browser.driver()).sendKeys("*" + reel + "*" + Keys.ENTER).perform();
        browser.says("reel-number", reel);
    }
}
