package dev.reelproof.api.access;

import static dev.reelproof.api.access.TestPerson.PASSWORD;
import static io.restassured.RestAssured.given;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.notNullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.access.AuditFilter;
import dev.reelproof.access.LockoutPolicy;
import dev.reelproof.access.Password;
import dev.reelproof.access.Role;
import dev.reelproof.access.Secrets;
import dev.reelproof.access.TokenSecret;
import dev.reelproof.access.WebSession;
import dev.reelproof.app.Plants;
import dev.reelproof.app.Settings;
import dev.reelproof.app.access.AccessSettings;
import dev.reelproof.app.access.Attempt;
import dev.reelproof.app.access.AuthenticateCaller;
import dev.reelproof.app.access.CompanySettings;
import dev.reelproof.app.access.CompanySignIn;
import dev.reelproof.app.access.CountAttempt;
import dev.reelproof.app.access.DemoAccount;
import dev.reelproof.app.access.DemoTokenFile;
import dev.reelproof.app.access.MakeDemoAccounts;
import dev.reelproof.app.access.ManageTokens;
import dev.reelproof.app.access.PasswordHashing;
import dev.reelproof.app.access.SetUp;
import dev.reelproof.app.access.SignIn;
import dev.reelproof.store.access.Accounts;
import dev.reelproof.store.access.AuditTrail;
import dev.reelproof.store.access.Sessions;
import dev.reelproof.store.access.SetUpLinks;
import dev.reelproof.store.access.SignInThrottle;
import dev.reelproof.store.access.Tokens;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.runtime.StartupEvent;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.vertx.http.HttpServerStart;
import io.restassured.response.Response;
import io.restassured.response.ValidatableResponse;
import io.vertx.core.http.HttpServerOptions;
import jakarta.inject.Inject;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublisher;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.logging.Handler;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import java.util.logging.SimpleFormatter;
import org.hibernate.Session;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The first start, the demo's accounts, headers, large bodies before sign-in, and what a log must not hold. */
@QuarkusTest
class AuthenticationTest {
    private static final int BEFORE_SIGN_IN = 64 * 1024;

    @Inject
    TestClock clock;

    @Inject
    Session session;

    @Inject
    Accounts accounts;

    @Inject
    Sessions sessions;

    @Inject
    Tokens tokens;

    @Inject
    SetUpLinks links;

    @Inject
    SignInThrottle throttle;

    @Inject
    CountAttempt attempts;

    @Inject
    ManageTokens manageTokens;

    @Inject
    Settings settings;

    @Inject
    AccessSettings access;

    @Inject
    CompanySettings company;

    @Inject
    Plants plants;

    @Inject
    PasswordHashing hashing;

    @Inject
    AuditTrail audit;

    @Inject
    SetUp setUp;

    @TestHTTPResource
    URI service;

    @TempDir
    Path folder;

    @BeforeEach
    void letTimePass() {
        clock.freshMinute();
    }

    @AfterEach
    void timeGoesOn() {
        clock.run();
    }

    /** As the service's own, but for what a test changes. */
    private record OwnSettings(Settings service, Path data, boolean demo) implements Settings {
        @Override
        public List<String> plants() {
            return service.plants();
        }

        @Override
        public Optional<String> homePlant() {
            return service.homePlant();
        }

        @Override
        public Optional<Path> limits() {
            return service.limits();
        }

        @Override
        public String uncertainty() {
            return service.uncertainty();
        }

        @Override
        public boolean demoForAnyoneOnTheNetwork() {
            return service.demoForAnyoneOnTheNetwork();
        }

        @Override
        public Map<String, Signature> signatures() {
            return service.signatures();
        }
    }

    /** As the service's own, but for the set-up secret. */
    private record OwnAccess(AccessSettings service, Optional<String> setupToken) implements AccessSettings {
        @Override
        public Session session() {
            return service.session();
        }

        @Override
        public Password password() {
            return service.password();
        }
    }

    private void removeAccounts() {
        QuarkusTransaction.requiringNew().run(() -> {
            session.createNativeMutationQuery("delete from web_session").executeUpdate();
            session.createNativeMutationQuery("delete from account").executeUpdate();
        });
    }

    private static ValidatableResponse setUp(String token, String name) {
        return given().contentType("application/json")
                .body(Map.of("token", token, "name", name, "displayName", "First", "password", PASSWORD))
                .post("/api/v1/set-up")
                .then();
    }

    @Test
    void theSetUpLinkMakesOneAdministratorOnce() {
        removeAccounts();
        String link = setUp.makeLink().orElseThrow();
        setUp(Secrets.random(), "thief").statusCode(403).contentType("application/problem+json");
        setUp(link, "first").statusCode(201).body("name", equalTo("first"));
        setUp(link, "second").statusCode(403);
        assertEquals(Optional.empty(), setUp.makeLink());
        TestPerson.signedIn("first").asks().get("/api/v1/accounts").then().statusCode(200);
        assertEquals(
                "set-up",
                audit.entries("north", new AuditFilter("account/first", null, "set-up", null), 1)
                        .get(0)
                        .action());
    }

    @Test
    void theSetUpLinkEndsAfterADay() {
        removeAccounts();
        String link = setUp.makeLink().orElseThrow();
        clock.forward(Duration.ofHours(24));
        setUp(link, "late").statusCode(403);
        setUp(setUp.makeLink().orElseThrow(), "in time").statusCode(201);
    }

    @Test
    void aLinkIsRefusedOnceSomebodyCanSignIn() {
        removeAccounts();
        String link = setUp.makeLink().orElseThrow();
        TestPerson.account(Role.TECHNICIAN);
        setUp(link, "late").statusCode(403);
    }

    @Test
    void theEnvironmentsSecretIsTakenAndNotPrinted() {
        removeAccounts();
        String secret = Secrets.random();
        assertEquals(Optional.empty(), fromEnvironment(secret));
        setUp(secret, "first").statusCode(201);
        assertThrows(IllegalStateException.class, () -> fromEnvironment("too short"));
    }

    private Optional<String> fromEnvironment(String secret) {
        SetUp own = new SetUp(
                accounts,
                links,
                hashing,
                attempts,
                settings,
                new OwnAccess(access, Optional.of(secret)),
                plants,
                audit,
                clock);
        return QuarkusTransaction.requiringNew().call(own::makeLink);
    }

    @Test
    void theSetUpLinkIsPrintedOnceTheServiceListens() {
        removeAccounts();
        ByteArrayOutputStream printed = new ByteArrayOutputStream();
        FirstStart start = new FirstStart(setUp, null, settings, 8080, new PrintStream(printed, true, UTF_8));
        start.start(new StartupEvent());
        assertEquals("", printed.toString(UTF_8), "the port may be another program's");
        start.listening(new HttpServerStart(new HttpServerOptions().setPort(8081)));
        String link = printed.toString(UTF_8).replaceAll("(?s).*http://localhost:8081/set-up.html#(\\S+)\\s*", "$1");
        setUp(link, "first").statusCode(201);
    }

    @Test
    void setUpLinksAreThrottled() {
        for (int attempt = 0; attempt < LockoutPolicy.FAILURES_A_MINUTE; attempt++) {
            setUp(Secrets.random(), "thief").statusCode(403);
        }
        setUp(Secrets.random(), "thief").statusCode(429).header("Retry-After", equalTo("60"));
    }

    @Test
    void theDemosAccountsAndTokenAreGoodForNothingOutsideTheDemo() throws IOException {
        Settings demo = new OwnSettings(settings, folder, true);
        AuthenticateCaller inDemo = new AuthenticateCaller(sessions, tokens, demo, access, company, clock);
        DemoTokenFile file = new DemoTokenFile(demo);
        MakeDemoAccounts making = new MakeDemoAccounts(accounts, manageTokens, inDemo, file, clock);
        QuarkusTransaction.requiringNew().run(making::make);
        String token = file.read().orElseThrow();
        QuarkusTransaction.requiringNew().run(making::make);
        assertEquals(token, file.read().orElseThrow(), "the next start keeps it");
        assertEquals(
                "rw-------",
                PosixFilePermissions.toString(Files.getPosixFilePermissions(folder.resolve("demo-token"))));

        SignIn signInOfDemo =
                new SignIn(accounts, sessions, attempts, throttle, hashing, demo, access, plants, audit, clock);
        for (DemoAccount person : DemoAccount.ALL) {
            Attempt.Right right = assertRight(signInOfDemo.signIn(person.name(), person.password(), "192.0.2.1", null));
            assertTrue(QuarkusTransaction.requiringNew()
                    .call(() -> inDemo.bySession(right.secret()).isPresent()));
            TestPerson.signIn(person.name(), person.password()).then().statusCode(401);
            TestPerson.with(right.secret()).get("/api/v1/session").then().statusCode(401);
        }
        assertTrue(inDemo.byToken(token).isPresent());
        given().header("Authorization", "Bearer " + token)
                .get("/api/v1/reels")
                .then()
                .statusCode(401);
    }

    private static Attempt.Right assertRight(Attempt attempt) {
        assertTrue(attempt instanceof Attempt.Right, attempt.toString());
        return (Attempt.Right) attempt;
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/",
                "/style.css",
                "/api/v1/status",
                "/api/v1/reels",
                "/api/v1/session",
                "/api/v1/no-such-route",
                "/no-such-page",
                "/q/health/ready",
                "/q/openapi"
            })
    void everyAnswerCarriesTheHeaders(String path) {
        Response answer = given().get(path);
        answer.then()
                .header("Content-Security-Policy", containsString("default-src 'self'"))
                .header("X-Content-Type-Options", equalTo("nosniff"))
                .header("Referrer-Policy", equalTo("same-origin"))
                .header("X-Frame-Options", equalTo("DENY"))
                .header("Cross-Origin-Opener-Policy", equalTo("same-origin"))
                .header("Permissions-Policy", containsString("camera=()"));
        assertFalse(answer.getHeader("Content-Security-Policy").contains("unsafe"));
        assertEquals(null, answer.getHeader("Strict-Transport-Security"), "over plain HTTP");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/api/v1/session",
                "/api/v1/accounts",
                "/api/v1/tokens",
                "/api/v1/audit",
                "/api/v1/approvals",
                "/api/v1/reels",
                "/api/v1/reels/R-1",
                "/api/v1/reels/R-1/ancestors",
                "/api/v1/products",
                "/api/v1/records/none",
                "/api/v1/lots/L-1",
                "/api/v1/limit-sets",
                "/api/v1/certificates",
                "/api/v1/certificates/none.pdf",
                "/api/v1/schemas/result"
            })
    void withoutACallerNothingIsRead(String path) {
        given().get(path)
                .then()
                .statusCode(401)
                .contentType("application/problem+json")
                .body("status", equalTo(401))
                .body("errors[0].message", notNullValue());
    }

    @Test
    void aBodyOverTheLimitBeforeSignInIsRefusedAtOnce() throws Exception {
        for (String path : List.of("/api/v1/session", "/api/v1/set-up", "/api/v1/reels/R-1/tests")) {
            byte[] large = new byte[BEFORE_SIGN_IN + 1];
            tooLarge(post(path, BodyPublishers.ofByteArray(large)));
            tooLarge(post(path, BodyPublishers.fromPublisher(BodyPublishers.ofByteArray(large))));
        }
        long start = System.nanoTime();
        tooLarge(post("/api/v1/session", BodyPublishers.ofByteArray(new byte[100 * 1024 * 1024])));
        assertTrue(Duration.ofNanos(System.nanoTime() - start).toSeconds() < 20);
        assertEquals(
                401,
                post("/api/v1/reels/R-1/tests", BodyPublishers.ofByteArray(new byte[1024]))
                        .statusCode());
    }

    private HttpResponse<String> post(String path, BodyPublisher body) throws Exception {
        return HttpClient.newHttpClient()
                .send(
                        HttpRequest.newBuilder(service.resolve(path))
                                .header("Content-Type", "application/json")
                                .POST(body)
                                .build(),
                        BodyHandlers.ofString());
    }

    private static void tooLarge(HttpResponse<String> answer) {
        assertEquals(413, answer.statusCode());
        assertEquals(
                "application/problem+json",
                answer.headers().firstValue("Content-Type").orElseThrow());
        assertTrue(answer.headers().firstValue("Content-Security-Policy").isPresent());
        assertTrue(answer.body().contains("At most " + BEFORE_SIGN_IN + " bytes"), answer.body());
    }

    @Test
    void theLogHoldsNothingSecretOrPersonal() {
        List<String> logged = new ArrayList<>();
        Handler handler = new Handler() {
            @Override
            public void publish(LogRecord entry) {
                if (entry.getLevel().intValue() >= Level.INFO.intValue()) {
                    synchronized (logged) {
                        logged.add(new SimpleFormatter().format(entry));
                    }
                }
            }

            @Override
            public void flush() {}

            @Override
            public void close() {}
        };
        Logger root = Logger.getLogger("");
        root.addHandler(handler);
        try {
            String mark = "marked-" + UUID.randomUUID();
            TestPerson administrator = TestPerson.signedIn(TestPerson.account(mark, Role.ADMINISTRATOR));
            TestPerson.signIn(mark, mark + " wrong").then().statusCode(401);
            TestPerson.signIn(mark + " nobody", mark).then().statusCode(401);
            setUp(mark, mark).statusCode(403);
            String secret = administrator
                    .asks()
                    .body(Map.of("name", mark, "role", "technician"))
                    .post("/api/v1/tokens")
                    .then()
                    .statusCode(201)
                    .extract()
                    .path("secret");
            given().header("Authorization", "Bearer " + secret + mark)
                    .get("/api/v1/reels/" + mark)
                    .then()
                    .statusCode(401);
            administrator
                    .asks()
                    .body(Map.of(
                            "name",
                            mark.toUpperCase(),
                            "displayName",
                            mark,
                            "roles",
                            List.of("engineer"),
                            "password",
                            mark))
                    .post("/api/v1/accounts")
                    .then()
                    .statusCode(409);
            Logger.getLogger("dev.reelproof").info("the handler hears");
            for (String entry : logged) {
                for (String kept :
                        List.of(mark, PASSWORD, secret, administrator.cookie, administrator.csrf, "127.0.0.1")) {
                    assertFalse(entry.toLowerCase().contains(kept.toLowerCase()), entry);
                }
            }
            assertTrue(logged.stream().anyMatch(entry -> entry.contains("the handler hears")), "nothing was heard");
        } finally {
            root.removeHandler(handler);
        }
    }

    @Test
    void secretsDoNotShowInTheWordsOfWhatHoldsThem() {
        assertFalse(Password.of(PASSWORD).toString().contains(PASSWORD));
        assertFalse(new Attempt.Right("secret-1").toString().contains("secret-1"));
        assertFalse(new CompanySignIn.SignedIn("secret-1").toString().contains("secret-1"));
        assertFalse(new TokenSecret("id", "secret-1").toString().contains("secret-1"));
        assertFalse(new WebSession(
                        "secret-2",
                        "secret-3",
                        "A",
                        "A",
                        Set.of(),
                        false,
                        true,
                        false,
                        Instant.EPOCH,
                        Instant.EPOCH,
                        null)
                .toString()
                .contains("secret"));
    }
}
