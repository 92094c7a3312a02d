package dev.reelproof.page;

import static org.junit.jupiter.api.Assertions.assertFalse;

import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import java.net.URI;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;

/** The first start in a real browser: the one-time link makes the administrator, once. */
@QuarkusTest
@TestProfile(SetUpPageTest.FirstStart.class)
class SetUpPageTest {
    private static final String SECRET = "0123456789abcdef0123456789abcdef";

    private static Browser browser;

    @TestHTTPResource("/")
    URI service;

    /** A start of its own, on a database without accounts, with the link's secret given by the environment. */
    public static class FirstStart implements QuarkusTestProfile {
        @Override
        public Map<String, String> getConfigOverrides() {
            return Map.of("reelproof.setup-token", SECRET);
        }
    }

    @BeforeAll
    static void open() {
        browser = Browser.open();
    }

    @AfterAll
    static void close() {
        if (browser != null) {
            browser.close();
        }
    }

    private void fillIn(String name) {
        browser.driver().get("about:blank");
        browser.driver().get(service.resolve("/set-up.html#" + SECRET).toString());
        browser.at(service.resolve("/set-up.html").toString());
        browser.type("display-name", "Invented Administrator");
        browser.type("name", name);
        browser.type("password", People.PASSWORD);
        browser.type("again", People.PASSWORD + "!");
        browser.press("#make");
        browser.says("notice", "differ");
        browser.type("again", People.PASSWORD);
        browser.press("#make");
    }

    @Test
    void theLinkMakesTheAdministratorOnce() {
        fillIn("first-administrator");
        browser.at(service.resolve("/sign-in.html?next=%2Faccounts.html").toString());
        browser.enter("first-administrator", People.PASSWORD);
        browser.at(service.resolve("/accounts.html").toString());
        browser.says("accounts", "first-administrator");

        fillIn("second-administrator");
        browser.shown("notice");
        browser.at(service.resolve("/set-up.html").toString());
        browser.driver().get(service.resolve("/accounts.html").toString());
        browser.says("accounts", "first-administrator");
        assertFalse(browser.driver().findElement(By.id("accounts")).getText().contains("second-administrator"));
        browser.assertNoConsoleErrors();
    }
}
