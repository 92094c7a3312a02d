package dev.reelproof.api.access;

import static dev.reelproof.api.access.TestPerson.PASSWORD;
import static dev.reelproof.api.access.TestPerson.signIn;
import static dev.reelproof.api.access.TestPerson.with;
import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.notNullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.access.AccountChange;
import dev.reelproof.access.AuditEntry;
import dev.reelproof.access.AuditFilter;
import dev.reelproof.access.LockoutPolicy;
import dev.reelproof.access.Role;
import dev.reelproof.access.Secrets;
import dev.reelproof.digest.Sha256;
import dev.reelproof.store.access.AuditTrail;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.http.ContentType;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Signing in, wrong passwords, and what a session is good for. */
@QuarkusTest
class SignInTest {
    private static final String WRONG = "wrong horse battery";

    @Inject
    TestClock clock;

    @Inject
    AuditTrail audit;

    @BeforeEach
    void letTimePass() {
        clock.freshMinute();
    }

    @AfterEach
    void timeGoesOn() {
        clock.run();
    }

    private static void problem(Response answer, int status) {
        answer.then()
                .statusCode(status)
                .contentType("application/problem+json")
                .body("status", equalTo(status))
                .body("title", notNullValue())
                .body("detail", notNullValue())
                .body("errors[0].where", notNullValue())
                .body("errors[0].message", notNullValue());
    }

    private static void isRefused(String cookie) {
        problem(with(cookie).get("/api/v1/session"), 401);
        problem(with(cookie).get("/api/v1/reels"), 401);
    }

    private void change(String name, AccountChange change) {
        TestAccounts.change(name, change);
    }

    private List<String> trail(String subject) {
        return audit.entries("north", new AuditFilter(subject, null, null, null), 100).stream()
                .map(AuditEntry::action)
                .toList();
    }

    @Test
    void theRightPasswordOpensASession() {
        String name = TestPerson.account(Role.TECHNICIAN, Role.ENGINEER);
        Response answer = signIn(name, PASSWORD);
        answer.then().statusCode(204);
        String cookie = answer.getHeader("Set-Cookie");
        for (String part : List.of(SessionCookie.NAME + "=", "HttpOnly", "Secure", "SameSite=Strict", "Path=/")) {
            assertTrue(cookie.toLowerCase().contains(part.toLowerCase()), part);
        }
        with(answer.getCookie(SessionCookie.NAME))
                .get("/api/v1/session")
                .then()
                .statusCode(200)
                .header("Cache-Control", "no-store")
                .body("name", equalTo(name))
                .body("displayName", equalTo("A Person"))
                .body("kind", equalTo("person"))
                .body("roles", equalTo(List.of("technician", "engineer")))
                .body("may", hasItems("upload", "register", "hold"))
                .body("may", not(hasItems("manage-users")))
                .body("csrf", notNullValue())
                .body("demo", equalTo(false));
        assertEquals(List.of("signed-in"), trail("account/" + name).subList(0, 1));
    }

    @Test
    void whatIsWrongIsNotTold() {
        String name = TestPerson.account(Role.TECHNICIAN);
        String closed = TestPerson.account(Role.TECHNICIAN);
        change(closed, new AccountChange(null, null, false, null));
        List<Response> refusals = List.of(
                signIn(name, WRONG),
                signIn("nobody " + UUID.randomUUID(), PASSWORD),
                signIn(closed, PASSWORD),
                signIn(name, PASSWORD + "x".repeat(72)),
                signIn(name, "x"));
        refusals.forEach(refusal -> problem(refusal, 401));
        assertEquals(
                1,
                refusals.stream().map(Response::asString).distinct().count(),
                "an answer that differs tells a name from no name");
        refusals.forEach(refusal -> assertEquals(null, refusal.getHeader("Set-Cookie")));
        assertEquals("sign-in-failed", trail("account/" + name).get(0));
        assertFalse(trail("account/unknown").isEmpty());
    }

    @Test
    void whatIsNoSignInIsRefused() {
        problem(given().contentType(ContentType.JSON).body("{").post("/api/v1/session"), 400);
        problem(given().contentType(ContentType.JSON).body("{\"name\": \"a\"}").post("/api/v1/session"), 422);
        problem(given().contentType(ContentType.TEXT).body("{}").post("/api/v1/session"), 415);
    }

    @Test
    void aThousandGuessesGetNowhere() {
        String name = TestPerson.account(Role.ADMINISTRATOR);
        int lookedAt = 0;
        int turnedAway = 0;
        for (int guess = 0; guess < 1000; guess++) {
            Response answer = signIn(name, WRONG + guess);
            if (answer.statusCode() == 429) {
                turnedAway++;
            } else {
                problem(answer, 401);
                lookedAt++;
            }
            clock.forward(Duration.ofSeconds(1));
        }
        // Five in a row; then one each after 1, 2, 4 and 8 minutes: the next, after 15, lies beyond the 1,000 seconds.
        assertEquals(9, lookedAt);
        assertEquals(991, turnedAway);
        Response closed = signIn(name, PASSWORD);
        problem(closed, 429);
        long wait = Long.parseLong(closed.getHeader("Retry-After"));
        assertTrue(wait > 0 && wait <= 15 * 60, "Retry-After: " + wait);
        clock.forward(Duration.ofSeconds(wait - 1));
        problem(signIn(name, PASSWORD), 429);
        clock.forward(Duration.ofSeconds(1));
        signIn(name, PASSWORD).then().statusCode(204);
        problem(signIn(name, WRONG), 401);
        signIn(name, PASSWORD).then().statusCode(204);
    }

    @Test
    void aNameThatNobodyHasIsClosedTheSameWay() {
        String nobody = "nobody " + UUID.randomUUID();
        for (int guess = 0; guess < 5; guess++) {
            problem(signIn(guess % 2 == 0 ? nobody : nobody.toUpperCase(), WRONG), 401);
        }
        Response closed = signIn(nobody, WRONG);
        problem(closed, 429);
        assertEquals("60", closed.getHeader("Retry-After"));
    }

    @Test
    void anAddressGuessesSixtyTimesAMinute() {
        for (int guess = 0; guess < 60; guess++) {
            problem(signIn("nobody " + UUID.randomUUID(), WRONG), 401);
        }
        String name = TestPerson.account(Role.TECHNICIAN);
        clock.forward(Duration.ofSeconds(50));
        Response closed = signIn(name, PASSWORD);
        problem(closed, 429);
        assertEquals("10", closed.getHeader("Retry-After"));
        clock.forward(Duration.ofSeconds(10));
        signIn(name, PASSWORD).then().statusCode(204);
    }

    @Test
    void guessesSentAtOnceAreNoMoreThanGuessesInARow() throws Exception {
        String name = TestPerson.account(Role.TECHNICIAN);
        ExecutorService threads = Executors.newFixedThreadPool(8);
        try {
            List<Callable<Integer>> guesses = new ArrayList<>();
            for (int guess = 0; guess < 30; guess++) {
                guesses.add(() -> signIn(name, WRONG).statusCode());
            }
            int lookedAt = 0;
            for (Future<Integer> status : threads.invokeAll(guesses)) {
                lookedAt += status.get() == 401 ? 1 : 0;
            }
            assertEquals(LockoutPolicy.FAILURES_IN_A_ROW, lookedAt);
        } finally {
            threads.shutdown();
        }
    }

    @Test
    void rightPasswordsAreNotCounted() {
        String name = TestPerson.account(Role.TECHNICIAN);
        for (int time = 0; time < 70; time++) {
            signIn(name, PASSWORD).then().statusCode(204);
        }
    }

    @Test
    void aCookieBroughtAlongIsNeverAdopted() {
        String name = TestPerson.account(Role.TECHNICIAN);
        String fixed = Secrets.random();
        Response answer =
                with(fixed).body(Map.of("name", name, "password", PASSWORD)).post("/api/v1/session");
        answer.then().statusCode(204);
        assertNotEquals(fixed, answer.getCookie(SessionCookie.NAME));
        isRefused(fixed);

        String first = answer.getCookie(SessionCookie.NAME);
        String second = with(first)
                .body(Map.of("name", name, "password", PASSWORD))
                .post("/api/v1/session")
                .getCookie(SessionCookie.NAME);
        assertNotEquals(first, second);
        isRefused(first);
        with(second).get("/api/v1/session").then().statusCode(200);
    }

    @Test
    void aSessionEndsByItself() {
        TestPerson busy = TestPerson.signedIn(Role.TECHNICIAN);
        TestPerson idle = TestPerson.signedIn(Role.TECHNICIAN);
        clock.forward(Duration.ofMinutes(59));
        busy.asks().get("/api/v1/session").then().statusCode(200);
        clock.forward(Duration.ofMinutes(1));
        isRefused(idle.cookie);
        for (int hour = 0; hour < 11; hour++) {
            busy.asks().get("/api/v1/session").then().statusCode(200);
            clock.forward(Duration.ofMinutes(58));
        }
        busy.asks().get("/api/v1/session").then().statusCode(200);
        clock.forward(Duration.ofMinutes(21));
        busy.asks().get("/api/v1/session").then().statusCode(200);
        clock.forward(Duration.ofMinutes(1));
        isRefused(busy.cookie);
    }

    @Test
    void signingOutEndsIt() {
        TestPerson person = TestPerson.signedIn(Role.TECHNICIAN);
        Response answer = person.asks().delete("/api/v1/session");
        answer.then().statusCode(204);
        assertTrue(answer.getHeader("Set-Cookie").contains("Max-Age=0"), answer.getHeader("Set-Cookie"));
        isRefused(person.cookie);
        assertEquals("signed-out", trail("account/" + person.name).get(0));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "x", "reelproof", "..%2f", "AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA"})
    void aForgedCookieIsRefusedAndKeepsNobodyFromSigningIn(String forged) {
        isRefused(forged);
        with(forged).get("/api/v1/status").then().statusCode(200);
        with(forged).get("/").then().statusCode(200);
        String name = TestPerson.account(Role.TECHNICIAN);
        with(forged)
                .body(Map.of("name", name, "password", PASSWORD))
                .post("/api/v1/session")
                .then()
                .statusCode(204);
    }

    @Test
    void theDigestInTheDatabaseIsNoKey() {
        TestPerson person = TestPerson.signedIn(Role.TECHNICIAN);
        isRefused(Sha256.hex(person.cookie));
    }

    @Test
    void aRoleTakenAwayIsGoneAtTheNextRequest() {
        TestPerson person = TestPerson.signedIn(Role.ADMINISTRATOR, Role.TECHNICIAN);
        TestPerson.account(Role.ADMINISTRATOR);
        person.asks().get("/api/v1/accounts").then().statusCode(200);
        change(person.name, new AccountChange(null, Set.of(Role.TECHNICIAN), null, null));
        problem(person.asks().get("/api/v1/accounts"), 403);
        person.asks().get("/api/v1/session").then().statusCode(200).body("roles", equalTo(List.of("technician")));
    }

    @Test
    void closingAnAccountEndsItsSessionsForGood() {
        TestPerson person = TestPerson.signedIn(Role.TECHNICIAN);
        change(person.name, new AccountChange(null, null, false, null));
        isRefused(person.cookie);
        change(person.name, new AccountChange(null, null, true, null));
        isRefused(person.cookie);
    }

    @Test
    void aNewPasswordEndsTheOtherSessions() {
        TestPerson here = TestPerson.signedIn(Role.TECHNICIAN);
        TestPerson there = TestPerson.signedIn(here.name);
        problem(
                here.asks()
                        .body(Map.of("current", WRONG, "new", "another long password"))
                        .post("/api/v1/session/password"),
                422);
        there.asks().get("/api/v1/session").then().statusCode(200);
        here.asks()
                .body(Map.of("current", PASSWORD, "new", "another long password"))
                .post("/api/v1/session/password")
                .then()
                .statusCode(204);
        isRefused(there.cookie);
        here.asks().get("/api/v1/session").then().statusCode(200);
        problem(signIn(here.name, PASSWORD), 401);
        signIn(here.name, "another long password").then().statusCode(204);
        assertTrue(trail("account/" + here.name).contains("password-changed"));
    }

    @Test
    void theOwnPasswordIsNotGuessedFromAnOpenSession() {
        TestPerson person = TestPerson.signedIn(Role.TECHNICIAN);
        Map<String, String> guess = Map.of("current", WRONG, "new", "another long password");
        for (int time = 0; time < 5; time++) {
            problem(person.asks().body(guess).post("/api/v1/session/password"), 422);
        }
        problem(person.asks().body(guess).post("/api/v1/session/password"), 429);
        assertTrue(trail("account/" + person.name).contains("password-change-failed"));
    }

    @Test
    void aPageOfAnotherSiteSignsNobodyIn() {
        String name = TestPerson.account(Role.TECHNICIAN);
        Map<String, String> body = Map.of("name", name, "password", PASSWORD);
        for (String origin : List.of("https://other.invalid", "null", "http://localhost:1", "not an origin")) {
            problem(
                    given().contentType(ContentType.JSON)
                            .header("Origin", origin)
                            .body(body)
                            .post("/api/v1/session"),
                    403);
        }
        given().contentType(ContentType.JSON)
                .header("Origin", "http://localhost:" + io.restassured.RestAssured.port)
                .body(body)
                .post("/api/v1/session")
                .then()
                .statusCode(204);
    }

    @Test
    void aChangeByCookieNeedsTheSessionsOwnSecret() {
        TestPerson person = TestPerson.signedIn(Role.ADMINISTRATOR);
        TestPerson other = TestPerson.signedIn(Role.ADMINISTRATOR);
        Map<String, String> token = Map.of("name", "bench", "role", "technician");
        problem(with(person.cookie).body(token).post("/api/v1/tokens"), 403);
        problem(
                with(person.cookie)
                        .header(CrossSiteRequestFilter.HEADER, other.csrf)
                        .body(token)
                        .post("/api/v1/tokens"),
                403);
        problem(
                with(person.cookie)
                        .header(CrossSiteRequestFilter.HEADER, "")
                        .body(token)
                        .post("/api/v1/tokens"),
                403);
        problem(with(person.cookie).delete("/api/v1/session"), 403);
        person.asks().body(token).post("/api/v1/tokens").then().statusCode(201);
        with(person.cookie).get("/api/v1/tokens").then().statusCode(200);
    }
}
