package dev.reelproof.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.access.Role;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import java.io.IOException;
import java.net.URI;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** The pages of access in a real browser: signing in, accounts and tokens, approvals, verifying. */
@QuarkusTest
class AccessPagesTest {
    private static final String MARKUP = "<img src=x onerror=document.title='broken'>";
    private static final int UNAUTHORIZED = 401;

    private static Browser browser;
    private static People people;

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

    private String address(String path) {
        return service.resolve(path).toString();
    }

    private String text(String id) {
        return browser.driver().findElement(By.id(id)).getText();
    }

    private static String fresh(String beginning) {
        return beginning + "-" + UUID.randomUUID().toString().substring(0, 8);
    }

    @Test
    void aWrongPasswordIsSaidAndTheRightOneLeadsBack() {
        browser.driver().get(address("/sign-in.html"));
        browser.forget();
        browser.driver().get(address("/#/reel/NO-SUCH"));
        browser.shown("name");
        browser.enter(people.named(Role.TECHNICIAN), "not the right password");
        browser.says("notice", "Name or password is wrong");
        assertEquals(
                "password", browser.driver().switchTo().activeElement().getAttribute("id"), "ready for the next try");
        browser.enter(people.named(Role.TECHNICIAN), People.PASSWORD);
        browser.at(address("/#/reel/NO-SUCH"));
        browser.says("who-roles", "technician");
        browser.press("#sign-out");
        browser.at(address("/sign-in.html"));
        browser.driver().get(address("/"));
        browser.shown("name");
    }

    @Test
    void signInLeadsToNoOtherService() {
        for (String next : List.of("//elsewhere.invalid/", "/\\elsewhere.invalid/", "https://elsewhere.invalid/")) {
            browser.driver().get(address("/sign-in.html"));
            browser.forget();
            browser.driver().get(address("/sign-in.html?next=" + URLEncoder.encode(next, StandardCharsets.UTF_8)));
            browser.enter(people.named(Role.TECHNICIAN), People.PASSWORD);
            browser.at(address("/"));
        }
    }

    @Test
    void anAccountIsAddedItsNameIsTextAndItSignsIn() {
        browser.signIn(service, people.named(Role.ADMINISTRATOR), People.PASSWORD, "/accounts.html");
        String name = fresh("åse");
        browser.press("#add-account");
        browser.type("account-name", name);
        browser.type("account-display", MARKUP);
        browser.press("#role-customer-service");
        browser.type("account-password", "short");
        browser.press("#account-save");
        browser.says("account-fault", "at least 12");
        browser.type("account-password", People.PASSWORD);
        browser.press("#account-save");
        browser.says("done", name);
        browser.says("accounts", MARKUP);
        assertTrue(
                browser.driver().findElements(By.cssSelector("#accounts img")).isEmpty(), "text, not markup");

        browser.signIn(service, name, People.PASSWORD, "/");
        browser.says("who-name", MARKUP);
        browser.says("who-roles", "customer service");
    }

    @Test
    void aTokenIsShownOnceWorksAndIsRevoked() {
        browser.signIn(service, people.named(Role.ADMINISTRATOR), People.PASSWORD, "/accounts.html");
        String name = fresh("bench");
        browser.press("#add-token");
        browser.type("token-name", name);
        browser.press("#token-save");
        String secret = browser.shown("secret-text").getDomProperty("value");
        assertTrue(secret.startsWith("reelproof_"), "a secret is shown");
        assertEquals(200, statusWith(secret));
        browser.press("#secret-done");
        browser.hidden("secret");
        assertEquals("", browser.driver().findElement(By.id("secret-text")).getDomProperty("value"), "not kept");
        assertFalse(browser.driver().getPageSource().contains(secret), "not kept");
        browser.driver().navigate().refresh();
        browser.says("tokens", name);
        assertFalse(browser.driver().getPageSource().contains(secret), "shown once");
        assertEquals("", browser.driver().findElement(By.id("secret-text")).getDomProperty("value"));

        browser.press("[aria-label='Revoke " + name + "']");
        browser.type("revoke-reason", "test of the page");
        browser.press("#revoke-save");
        browser.says("done", name);
        assertEquals(UNAUTHORIZED, statusWith(secret));

        browser.type("audit-action", "token-revoked");
        browser.driver().findElement(By.id("audit-action")).sendKeys(Keys.ENTER);
        browser.says("audit", "test of the page");
    }

    private static int statusWith(String secret) {
        return RestAssured.given()
                .header("Authorization", "Bearer " + secret)
                .get("/api/v1/reels")
                .statusCode();
    }

    @Test
    void nobodyDecidesOnARequestOfTheirOwn() {
        String subject = people.hold(fresh("R"));
        browser.signIn(service, people.named(Role.QUALITY_MANAGER), People.PASSWORD, "/approvals.html");
        browser.type("ask-subject", subject);
        browser.type("ask-reason", MARKUP);
        browser.press("#ask-send");
        browser.says("approvals", subject);
        WebElement own = card(subject);
        assertTrue(own.getText().contains(MARKUP), "text, not markup");
        assertTrue(own.getText().contains("another person has to decide"));
        assertEquals(2, own.findElements(By.cssSelector("button:disabled")).size());

        browser.signIn(service, people.named(Role.ENGINEER), People.PASSWORD, "/approvals.html");
        browser.says("approvals", subject);
        WebElement others = card(subject);
        others.findElement(By.tagName("input")).sendKeys("seen at the bench");
        others.findElement(By.cssSelector("button.main")).click();
        browser.says("done", "approved");
    }

    private static WebElement card(String subject) {
        return browser.driver().findElements(By.cssSelector("#approvals li")).stream()
                .filter(card -> card.getText().startsWith("release: " + subject + "\n"))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aRoleThatMayNotSendSeesNoUpload() {
        String reel = fresh("R");
        people.register(reel);
        browser.signIn(service, people.named(Role.CUSTOMER_SERVICE), People.PASSWORD, "/#/reel/" + reel);
        browser.says("reel-number", reel);
        assertFalse(browser.driver().findElement(By.id("upload")).isDisplayed());
        assertFalse(text("untested").contains("Drop"), "nobody is told to do what they may not");
        assertFalse(text("pages").contains("Accounts"));
        browser.driver().get(address("/accounts.html"));
        browser.says("notice", "administrators");

        browser.signIn(service, people.named(Role.TECHNICIAN), People.PASSWORD, "/#/reel/" + reel);
        browser.says("reel-number", reel);
        assertTrue(browser.driver().findElement(By.id("upload")).isDisplayed());
    }

    @Test
    void anyoneVerifiesACertificate() throws IOException {
        String reel = fresh("R");
        People.Issued certificate = people.issue(reel);
        browser.driver().get(address("/verify.html"));
        browser.forget();
        browser.driver().navigate().refresh();
        browser.type("number", certificate.number().toLowerCase(Locale.ROOT));
        browser.driver().findElement(By.id("number")).sendKeys(Keys.ENTER);
        browser.says("answer-word", "Genuine and current");
        browser.says("answer-facts", "number only");

        // Neither the file's name nor a number left in the form matters: both are wrong here.
        browser.type("number", "NORTH-2001-999999");
        Path issued = Files.write(files.resolve("NORTH-2002-000001.pdf"), certificate.pdf());
        browser.driver().findElement(By.id("file")).sendKeys(issued.toString());
        browser.says("answer-facts", "byte for byte");
        browser.says("answer-word", "Genuine and current");
        browser.says("answer-facts", certificate.number());

        byte[] altered = certificate.pdf().clone();
        altered[altered.length / 2] ^= 1;
        Path other = Files.write(files.resolve("altered.pdf"), altered);
        browser.driver().findElement(By.id("file")).sendKeys(other.toString());
        browser.says("answer-word", "Not genuine: altered");

        people.station()
                .contentType("application/json")
                .body("{\"reel\": \"" + reel + "\", \"reason\": \"bare spots\"}")
                .post("/api/v1/holds")
                .then()
                .statusCode(201);
        browser.driver().findElement(By.id("file")).sendKeys(issued.toString());
        browser.says("answer-word", "Genuine, but in question");
        browser.says("answer-reasons", "the plant holds the reel back");
        assertFalse(text("result").contains("bare spots"), "the reason is the plant's own affair");
        assertEquals(
                "verdict incomplete",
                browser.driver().findElement(By.id("answer")).getAttribute("class"),
                "amber, not green");
        browser.driver().get(address("/verify.html?number=" + certificate.number()));
        browser.says("answer-word", "Genuine, but in question");

        browser.driver().get(address("/verify.html?number=NORTH-2001-999999"));
        browser.says("answer-word", "Not genuine");
    }

    @Test
    void aPersonChangesTheOwnPassword() {
        String name = People.make().named(Role.TECHNICIAN);
        String next = "another invented passphrase";
        browser.signIn(service, name, People.PASSWORD, "/");
        browser.press("#who-name");
        browser.at(address("/password.html"));
        browser.type("current", "not the right password");
        browser.type("password", next);
        browser.type("again", "something else again");
        browser.press("#save");
        browser.says("notice", "differ");
        browser.type("again", next);
        browser.press("#save");
        browser.says("notice", "current password is wrong");
        browser.type("current", People.PASSWORD);
        browser.press("#save");
        browser.says("done", "is changed");
        browser.signIn(service, name, next, "/");
        browser.says("who-roles", "technician");
    }

    @Test
    void theSetUpPageSaysWhatItNeedsAndKeepsNoToken() {
        browser.driver().get(address("/set-up.html"));
        browser.says("notice", "one-time link");
        browser.driver().get("about:blank");
        browser.driver().get(address("/set-up.html#forged"));
        browser.at(address("/set-up.html"));
        browser.type("display-name", "Invented Person");
        browser.type("name", fresh("first"));
        browser.type("password", People.PASSWORD);
        browser.type("again", People.PASSWORD);
        browser.press("#make");
        browser.shown("notice");
        browser.at(address("/set-up.html"));
    }
}
