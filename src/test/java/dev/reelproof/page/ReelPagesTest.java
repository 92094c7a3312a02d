package dev.reelproof.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.access.Role;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.support.ui.Select;

/** What the start list, the hits and the banner say of a reel, in a real browser. */
@QuarkusTest
@TestProfile(ReelPagesTest.OwnPlant.class)
class ReelPagesTest {
    /** A database of this test alone: the list shows what was tested last at the plant. */
    public static final class OwnPlant implements QuarkusTestProfile {}

    private static final Path REJECTED_RESULT = Path.of("demo-data/results/R-26006.json");
    private static final Path INCOMPLETE_RESULT = Path.of("demo-data/results/R-26010.json");

    private static Browser browser;
    private static People people;

    private final String reel = "R-" + UUID.randomUUID();

    @TestHTTPResource("/")
    URI service;

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

    private void signIn(String address) {
        browser.signIn(service, people.named(Role.TECHNICIAN), People.PASSWORD, address);
    }

    private void hold() {
        people.station()
                .contentType("application/json")
                .body("{\"reel\": \"" + reel + "\", \"reason\": \"bare spots\"}")
                .post("/api/v1/holds")
                .then()
                .statusCode(201);
    }

    private WebElement line() {
        browser.says("recent", reel);
        return browser.driver().findElements(By.cssSelector("#recent tr")).stream()
                .filter(row -> row.getText().contains(reel))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void theStartListShowsWhenAReelWasTestedAndThatItIsHeld() throws IOException {
        people.register(reel);
        assertEquals("accepted", people.send(reel, People.GOOD_RESULT));
        signIn("/");
        assertTrue(line().getText().contains("✓ accepted"), line().getText());
        OffsetDateTime finished = OffsetDateTime.parse(
                people.station().get("/api/v1/reels/" + reel).then().extract().path("records[0].finished"));
        assertEquals(
                finished.toInstant(),
                OffsetDateTime.parse(line().findElement(By.tagName("time")).getAttribute("datetime"))
                        .toInstant(),
                "the time of the test, not that at which it was sent");

        hold();
        browser.driver().navigate().refresh();
        assertTrue(line().getText().contains("accepted, on hold"), line().getText());
        browser.type("query", reel.substring(0, reel.length() - 1));
        browser.says("hits", "accepted, on hold");
    }

    @Test
    void theBannerSaysByHowMuchAReelFails() throws IOException {
        people.register(reel);
        assertEquals("rejected", people.send(reel, REJECTED_RESULT));
        signIn("/#/reel/" + reel);
        browser.says("verdict-word", "REJECTED");
        browser.says("verdict", "Return loss, pair 3, near end: 4.45 dB short at 378 MHz");
    }

    @Test
    void aReasonHalfTypedStaysWithItsRequest() {
        String other = people.hold("R-" + UUID.randomUUID());
        String held = people.hold(reel);
        browser.signIn(service, people.named(Role.QUALITY_MANAGER), People.PASSWORD, "/approvals.html");
        for (String subject : new String[] {other, held}) {
            browser.type("ask-subject", subject);
            browser.type("ask-reason", "test of the page");
            browser.press("#ask-send");
            browser.says("approvals", subject);
        }
        browser.signIn(service, people.named(Role.ENGINEER), People.PASSWORD, "/approvals.html");
        browser.says("approvals", other);
        reason(other).sendKeys("typed for the other");
        reason(held).sendKeys("seen at the bench", Keys.ENTER);
        browser.driver().switchTo().activeElement().sendKeys(Keys.ENTER);
        browser.says("done", "approved");
        assertEquals("typed for the other", reason(other).getDomProperty("value"));
    }

    @Test
    void aRejectedReelIsConcededByTwoPersons() throws IOException {
        people.register(reel);
        people.send(reel, REJECTED_RESULT);
        browser.signIn(service, people.named(Role.ENGINEER), People.PASSWORD, "/#/reel/" + reel);
        browser.says("concession", "Ask a quality manager to");
        browser.type("concession-reason", "for our own yard");
        browser.press("#concession-ask");
        browser.says("concession", "Use as it is, open: for our own yard");

        browser.signIn(service, people.named(Role.QUALITY_MANAGER), People.PASSWORD, "/approvals.html");
        browser.says("concessions", "Use as it is: reel " + reel);
        browser.says("concessions", "Reel " + reel + " stays what its test made it");
        WebElement card =
                browser.driver().findElement(By.xpath("//ul[@id='concessions']/li[contains(., '" + reel + "')]"));
        card.findElement(By.tagName("input")).sendKeys("looked at");
        card.findElement(By.cssSelector("button.main")).click();
        browser.says("done", "was approved");

        browser.signIn(service, people.named(Role.QUALITY_MANAGER), People.PASSWORD, "/#/reel/" + reel);
        browser.says("concession", "Use as it is, approved");
        browser.says("concession", "The reel may ship as it is, with a certificate that names this concession.");
        browser.says("verdict-word", "REJECTED");
        browser.press("#issue-conceded");
        browser.says("concession", "names this concession");
        browser.says("certificate", "Certificate");
    }

    @Test
    void aShorteningIsAskedForOnThePageAndSaysWhatIsToBeDone() throws IOException {
        people.register(reel);
        people.send(reel, REJECTED_RESULT);
        browser.signIn(service, people.named(Role.ENGINEER), People.PASSWORD, "/#/reel/" + reel);
        browser.says("concession", "Ask a quality manager to");
        new Select(browser.driver().findElement(By.id("concession-kind"))).selectByValue("shorten");
        browser.type("concession-length", "100000");
        browser.type("concession-reason", "the end is bad");
        browser.press("#concession-ask");
        browser.says("concession", "cannot be shortened");
        new Select(browser.driver().findElement(By.id("concession-kind"))).selectByValue("shorten");
        browser.type("concession-length", "50");
        browser.press("#concession-ask");
        browser.says("concession", "Shorten to 50 m, open: the end is bad");
    }

    private static WebElement reason(String subject) {
        return browser.driver()
                .findElement(By.xpath("//li[h3[normalize-space() = 'release: " + subject + "']]//input"));
    }

    @Test
    void aPhoneShowsTheVerdictWhole() throws IOException {
        people.register(reel);
        assertEquals("incomplete", people.send(reel, INCOMPLETE_RESULT));
        signIn("/#/reel/" + reel);
        browser.says("verdict-word", "INCOMPLETE");
        browser.driver()
                .executeCdpCommand(
                        "Emulation.setDeviceMetricsOverride",
                        Map.of("width", 360, "height", 700, "deviceScaleFactor", 1, "mobile", false));
        try {
            assertIsWhole("verdict-word");
            assertIsWhole("upload");
            browser.driver().get(service.resolve("/#/").toString());
            browser.says("recent", reel);
            assertIsWhole("recent");
        } finally {
            browser.driver().executeCdpCommand("Emulation.clearDeviceMetricsOverride", Map.of());
        }
    }

    private static void assertIsWhole(String part) {
        assertEquals(
                Boolean.TRUE,
                browser.driver()
                        .executeScript(
                                "const part = document.getElementById(arguments[0]);"
                                        + "return part.scrollWidth <= part.clientWidth"
                                        + " && part.getBoundingClientRect().right <= document.documentElement.clientWidth",
                                part),
                part + " is cut off");
    }
}
