package dev.reelproof.api.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.reelproof.access.Account;
import dev.reelproof.access.AuditEntry;
import dev.reelproof.access.AuditFilter;
import dev.reelproof.access.Role;
import dev.reelproof.app.ConflictException;
import dev.reelproof.store.access.AuditTrail;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import jakarta.inject.Inject;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.logging.Handler;
import java.util.logging.LogManager;
import java.util.logging.Logger;
import java.util.stream.Stream;
import org.jboss.logmanager.ExtHandler;
import org.jboss.logmanager.ExtLogRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Signing in with a company account: the authorization-code flow, over HTTP, with a provider of the tests. */
@QuarkusTest
@TestProfile(CompanySignInTest.WithProvider.class)
@QuarkusTestResource(value = TestProvider.class, restrictToAnnotatedClass = true)
class CompanySignInTest {
    private static final String PROVIDERS_COOKIE = "q_session";
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final HttpClient HTTP =
            HttpClient.newBuilder().followRedirects(HttpClient.Redirect.NEVER).build();

    @TestHTTPResource("/")
    URI service;

    @Inject
    AuditTrail audit;

    /** The settings that a plant gives, but for the provider's own. */
    public static class WithProvider implements QuarkusTestProfile {
        @Override
        public Map<String, String> getConfigOverrides() {
            return Map.of(
                    "reelproof.oidc", "true",
                    "reelproof.oidc.roles.quality-manager", "quality,head-of-quality",
                    "reelproof.behind-proxy", "true");
        }
    }

    /** A browser, as far as it matters here: it keeps cookies, and sends them where their path allows. */
    private final class TestBrowser {
        private final Map<String, String> values = new TreeMap<>();
        private final Map<String, String> paths = new TreeMap<>();
        private final Map<String, String> asSet = new TreeMap<>();

        HttpResponse<String> get(URI address, String... headers) throws Exception {
            return send(HttpRequest.newBuilder(address).GET(), headers);
        }

        HttpResponse<String> send(HttpRequest.Builder request, String... headers) throws Exception {
            if (headers.length > 0) {
                request.headers(headers);
            }
            URI address = request.copy().build().uri();
            StringBuilder cookies = new StringBuilder();
            values.forEach((name, value) -> {
                if (address.getPort() == service.getPort() && address.getPath().startsWith(paths.get(name))) {
                    cookies.append(cookies.isEmpty() ? "" : "; ")
                            .append(name)
                            .append('=')
                            .append(value);
                }
            });
            if (!cookies.isEmpty()) {
                request.header("Cookie", cookies.toString());
            }
            HttpResponse<String> answer = HTTP.send(request.build(), HttpResponse.BodyHandlers.ofString());
            answer.headers().allValues("set-cookie").forEach(this::keep);
            return answer;
        }

        private void keep(String header) {
            String[] parts = header.split("; ?");
            String[] pair = parts[0].split("=", 2);
            String path = "/";
            boolean gone = false;
            for (String part : parts) {
                path = part.startsWith("Path=") ? part.substring("Path=".length()) : path;
                gone |= part.equals("Max-Age=0");
            }
            if (gone) {
                values.remove(pair[0]);
            } else {
                values.put(pair[0], pair[1]);
                paths.put(pair[0], path);
                asSet.put(pair[0], header);
            }
        }

        /** Follows redirects, filling in the provider's form on the way, until the answer is none or leaves the sign-in. */
        HttpResponse<String> signIn(String next, String form) throws Exception {
            HttpResponse<String> answer = get(start(next));
            URI form1 = location(answer);
            return follow(get(URI.create(form1 + form)), Integer.MAX_VALUE);
        }

        HttpResponse<String> follow(HttpResponse<String> answer, int steps) throws Exception {
            HttpResponse<String> last = answer;
            for (int step = 0;
                    step < steps && last.headers().firstValue("location").isPresent();
                    step++) {
                if (!location(last).getPath().equals(CompanySignInResource.PATH)) {
                    return last;
                }
                last = get(location(last));
            }
            return last;
        }
    }

    private URI start(String next) {
        String query = next == null ? "" : "?next=" + URLEncoder.encode(next, StandardCharsets.UTF_8);
        return service.resolve(CompanySignInResource.PATH + query);
    }

    private static URI location(HttpResponse<String> answer) {
        return answer.uri().resolve(answer.headers().firstValue("location").orElseThrow());
    }

    private static String form(String as, String subject, String groups) {
        return "&as=" + URLEncoder.encode(as, StandardCharsets.UTF_8) + "&subject=" + subject + "&groups=" + groups;
    }

    private static String fresh(String beginning) {
        return beginning + "-" + UUID.randomUUID().toString().substring(0, 8);
    }

    private JsonNode session(TestBrowser browser) throws Exception {
        HttpResponse<String> answer = browser.get(service.resolve("/api/v1/session"));
        assertEquals(200, answer.statusCode());
        return JSON.readTree(answer.body());
    }

    private HttpRequest.Builder signOut() {
        return HttpRequest.newBuilder(service.resolve("/api/v1/session")).DELETE();
    }

    @Test
    void theGroupsOfACompanyAccountOpenASessionOfOurs() throws Exception {
        TestBrowser browser = new TestBrowser();
        String name = fresh("jo");
        HttpResponse<String> in =
                browser.signIn("/?a=b#/reel/R-1", form(name, fresh("s"), "technician,quality,canteen"));
        assertEquals(303, in.statusCode());
        assertEquals(service.resolve("/?a=b#/reel/R-1"), location(in));

        JsonNode session = session(browser);
        assertEquals(name, session.get("name").asText());
        assertEquals("Someone at the company", session.get("displayName").asText());
        assertEquals("person", session.get("kind").asText());
        assertEquals(
                "[\"technician\",\"quality-manager\"]", session.get("roles").toString());
        String cookie = browser.asSet.get(SessionCookie.NAME);
        for (String attribute : Set.of("HttpOnly", "Secure", "SameSite=Strict", "Path=/")) {
            assertTrue(cookie.contains(attribute), attribute);
        }
        assertEquals(Set.of(SessionCookie.NAME), browser.values.keySet(), "nothing of the provider's is kept");

        assertEquals(403, browser.send(signOut()).statusCode(), "a change needs the session's secret");
        HttpResponse<String> out = browser.send(
                signOut(), CrossSiteRequestFilter.HEADER, session.get("csrf").asText());
        assertEquals(204, out.statusCode());
        assertEquals(401, browser.get(service.resolve("/api/v1/session")).statusCode());
    }

    @Test
    void theAuditTrailNamesProviderAndSubject() throws Exception {
        String name = fresh("jo");
        String subject = fresh("s");
        new TestBrowser().signIn(null, form(name, subject, "engineer"));
        AuditEntry entry = audit.entries("north", new AuditFilter(null, name, "signed-in", null), 2)
                .get(0);
        JsonNode details = JSON.readTree(entry.detailsJson());
        assertEquals("person", entry.actorKind());
        assertEquals(subject, details.get("subject").asText());
        assertEquals("engineer", details.get("roles").asText());
        assertTrue(details.get("issuer").asText().startsWith("http://127.0.0.1:"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "canteen", "quality-manager", "Technician", "ADMINISTRATOR"})
    void groupsThatNobodyNamedGiveNoRole(String groups) throws Exception {
        TestBrowser browser = new TestBrowser();
        String subject = fresh("s");
        HttpResponse<String> refused = browser.signIn("/", form(fresh("jo"), subject, groups));
        assertEquals(service.resolve("/sign-in.html?provider=no-role"), location(refused));
        assertEquals(Set.of(), browser.values.keySet());
        assertTrue(audit.entries("north", new AuditFilter(null, null, "sign-in-failed", null), 1)
                .get(0)
                .detailsJson()
                .contains(subject));
    }

    @Test
    void aRoleThatTheProviderTookAwayIsGoneAtTheNextSignIn() throws Exception {
        String name = fresh("jo");
        String subject = fresh("s");
        TestBrowser browser = new TestBrowser();
        browser.signIn(null, form(name, subject, "engineer,technician"));
        String first = browser.values.get(SessionCookie.NAME);
        browser.signIn(null, form(name, subject, "technician"));
        assertEquals("[\"technician\"]", session(browser).get("roles").toString());
        assertNotEquals(first, browser.values.get(SessionCookie.NAME));
        browser.values.put(SessionCookie.NAME, first);
        assertEquals(401, browser.get(service.resolve("/api/v1/session")).statusCode(), "the session before ended");
    }

    @Test
    void aNameIsOnePersons() throws Exception {
        String local = fresh("Zoë");
        assertTrue(make(local).isPresent());
        HttpResponse<String> asLocal =
                new TestBrowser().signIn(null, form(local.toUpperCase(Locale.ROOT), fresh("s"), "engineer"));
        assertEquals(service.resolve("/sign-in.html?provider=name-taken"), location(asLocal));

        String name = fresh("jo");
        String subject = fresh("s");
        new TestBrowser().signIn(null, form(name, subject, "engineer"));
        HttpResponse<String> other = new TestBrowser().signIn(null, form(name, fresh("s"), "engineer"));
        assertEquals(service.resolve("/sign-in.html?provider=name-taken"), location(other));
        assertTrue(make(name).isEmpty(), "no account takes it either");

        TestBrowser renamed = new TestBrowser();
        renamed.signIn(null, form(fresh("renamed"), subject, "engineer"));
        assertEquals(name, session(renamed).get("name").asText(), "two persons are never one in two names");
    }

    private Optional<Account> make(String name) {
        try {
            return Optional.of(TestAccounts.make(name, name, Set.of(Role.ENGINEER), "twelve characters"));
        } catch (ConflictException e) {
            return Optional.empty();
        }
    }

    @Test
    void aNameThatCannotBeOneGivesWayToTheSubject() throws Exception {
        TestBrowser browser = new TestBrowser();
        String subject = fresh("s");
        browser.signIn(null, form("\u202Eadmin", subject, "engineer"));
        assertEquals(subject, session(browser).get("name").asText());
    }

    @ParameterizedTest
    @ValueSource(strings = {"signature", "issuer", "audience", "nonce", "expired"})
    void aTokenThatIsNotRightIsRefused(String flaw) throws Exception {
        TestBrowser browser = new TestBrowser();
        String name = fresh("jo");
        HttpResponse<String> answer;
        List<String> logged = new CopyOnWriteArrayList<>();
        Handler keeper = new ExtHandler() {
            @Override
            protected void doPublish(ExtLogRecord line) {
                StringWriter whole =
                        new StringWriter().append(line.getMessage()).append(Arrays.toString(line.getParameters()));
                if (line.getThrown() != null) {
                    line.getThrown().printStackTrace(new PrintWriter(whole, true));
                }
                logged.add(whole.toString());
            }
        };
        Logger root = LogManager.getLogManager().getLogger("");
        root.addHandler(keeper);
        try {
            answer = browser.signIn("/", form(name, fresh("s"), "engineer") + "&flaw=" + flaw);
        } finally {
            root.removeHandler(keeper);
        }
        assertEquals(401, answer.statusCode());
        assertEquals(
                "application/problem+json",
                answer.headers().firstValue("content-type").orElse("none"));
        assertFalse(JSON.readTree(answer.body()).get("errors").isEmpty());
        assertFalse(browser.values.containsKey(SessionCookie.NAME));
        assertFalse(browser.values.containsKey(PROVIDERS_COOKIE));
        assertEquals(
                List.of(),
                logged.stream()
                        .filter(line -> line.contains(name) || line.contains("eyJ"))
                        .toList(),
                "neither the person nor the token is in the log");
        assertTrue(logged.stream().anyMatch(line -> line.contains("identity provider failed")), "that it failed is");
    }

    @Test
    void whoTheProviderTurnsAwayIsToldOnTheSignInPage() throws Exception {
        TestBrowser browser = new TestBrowser();
        HttpResponse<String> back = browser.signIn("/", form("jo", "s", "engineer") + "&flaw=denied");
        assertEquals("/sign-in.html", location(back).getPath());
        assertFalse(browser.values.containsKey(SessionCookie.NAME));
    }

    @Test
    void anAnswerOfTheProviderToAnotherBrowserIsRefused() throws Exception {
        TestBrowser attacker = new TestBrowser();
        URI form = location(attacker.get(start("/")));
        URI back = location(attacker.get(URI.create(form + form(fresh("jo"), fresh("s"), "engineer"))));
        TestBrowser victim = new TestBrowser();
        HttpResponse<String> answer = victim.get(back);
        assertFalse(victim.values.containsKey(SessionCookie.NAME));
        assertFalse(victim.values.containsKey(PROVIDERS_COOKIE));
        assertTrue(answer.statusCode() == 302 || answer.statusCode() == 401, "asked anew, or refused");
    }

    @Test
    void whatTheProviderGaveCountsForNothingElsewhere() throws Exception {
        TestBrowser browser = new TestBrowser();
        URI form = location(browser.get(start("/")));
        HttpResponse<String> back =
                browser.get(URI.create(form + form(fresh("jo"), fresh("s"), "administrator,engineer")));
        browser.follow(back, 1);
        String provided = browser.values.get(PROVIDERS_COOKIE);
        assertTrue(provided != null && !provided.isEmpty(), "the code was exchanged");
        String cookie = PROVIDERS_COOKIE + "=" + provided;
        for (String path :
                Set.of("/api/v1/reels", "/api/v1/accounts", "/api/v1/session", CompanySignInResource.PATH + "/x")) {
            int status = new TestBrowser()
                    .get(service.resolve(path), "Cookie", cookie)
                    .statusCode();
            assertTrue(status == 401 || path.endsWith("/x") && status == 404, path + " answered " + status);
        }
    }

    @Test
    void aCompanyAccountsPasswordIsNotChangedHere() throws Exception {
        TestBrowser browser = new TestBrowser();
        browser.signIn(null, form(fresh("jo"), fresh("s"), "technician"));
        HttpResponse<String> answer = browser.send(
                HttpRequest.newBuilder(service.resolve("/api/v1/session/password"))
                        .POST(HttpRequest.BodyPublishers.ofString(
                                "{\"current\":\"something or other\",\"new\":\"something or another\"}")),
                "Content-Type",
                "application/json",
                CrossSiteRequestFilter.HEADER,
                session(browser).get("csrf").asText());
        assertEquals(403, answer.statusCode());
        assertTrue(answer.body().contains("identity provider"));
    }

    @ParameterizedTest
    @CsvSource({
        "//elsewhere.invalid/",
        "/\\elsewhere.invalid/",
        "https://elsewhere.invalid/",
        "elsewhere",
        "'/a b'",
        "'/\t/elsewhere.invalid'"
    })
    void signInLeadsToNoOtherService(String next) throws Exception {
        TestBrowser browser = new TestBrowser();
        HttpResponse<String> in = browser.signIn(next, form(fresh("jo"), fresh("s"), "technician"));
        assertEquals(service, location(in));
    }

    @Test
    void localAccountsAndTokensAreLetInBesideIt() throws Exception {
        String name = fresh("local");
        make(name);
        TestBrowser browser = new TestBrowser();
        HttpResponse<String> in = browser.send(
                HttpRequest.newBuilder(service.resolve("/api/v1/session"))
                        .POST(HttpRequest.BodyPublishers.ofString(
                                "{\"name\":\"%s\",\"password\":\"twelve characters\"}".formatted(name))),
                "Content-Type",
                "application/json");
        assertEquals(204, in.statusCode());
        assertEquals(name, session(browser).get("name").asText());
        HttpResponse<String> byToken = new TestBrowser()
                .get(
                        service.resolve("/api/v1/session"),
                        "Authorization",
                        SignedIn.authorization("north", Role.TECHNICIAN));
        assertEquals(200, byToken.statusCode());
        HttpResponse<String> status = new TestBrowser().get(service.resolve("/api/v1/status"));
        assertTrue(JSON.readTree(status.body()).get("identityProvider").asBoolean());
    }

    @ParameterizedTest
    @CsvSource({"443, https://localhost", "8443, https://localhost:8443"})
    void behindAProxyTheProviderLeadsBackToWhereTheBrowserIs(String port, String browsersService) throws Exception {
        HttpResponse<String> out =
                new TestBrowser().get(start("/"), "X-Forwarded-Proto", "https", "X-Forwarded-Port", port);
        String back = Stream.of(location(out).getQuery().split("&"))
                .filter(pair -> pair.startsWith("redirect_uri="))
                .findFirst()
                .orElseThrow();
        assertEquals("redirect_uri=" + browsersService + CompanySignInResource.PATH, back);
        assertTrue(out.headers().firstValue("strict-transport-security").isPresent());
        assertTrue(out.headers().firstValue("set-cookie").orElseThrow().contains("Secure"));
    }
}
