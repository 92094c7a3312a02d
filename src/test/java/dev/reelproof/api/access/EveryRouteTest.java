package dev.reelproof.api.access;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.reelproof.access.Role;
import dev.reelproof.app.access.AuthenticateCaller;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Stream;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;

/** Asks every route of the API's description and every page, as nobody, as a person and as a token of each role. */
@QuarkusTest
class EveryRouteTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final Path RESOURCES = Path.of("src", "main", "resources");

    /** What pages are made of, each file at the address that is its path from here; and the pages' frames likewise. */
    private static final List<Path> PAGES = List.of(
            RESOURCES.resolve(Path.of("META-INF", "resources")), RESOURCES.resolve(Path.of("templates", "pages")));

    private static final String PAGE = "page";
    private static final String IN = "in";
    private static final String SAME = "same";
    private static final List<String> COLUMNS = Stream.of(
                    Stream.of("method", "path", "none"), Role.words().stream(), Stream.of("tokens"))
            .flatMap(words -> words)
            .toList();

    /** Served beside the API, and not in its description. */
    private static final Set<String> BESIDE =
            Set.of("get /q/openapi", "get /q/health", "get /q/health/live", "get /q/health/ready");

    /** A request leaves marks here alone; the log seals each audit entry, a moment later. */
    private static final Set<String> MARKS =
            Set.of("web_session", "audit_entry", "seal_pending", "seal_leaf", "seal_node", "seal_head");

    @Inject
    AuthenticateCaller authenticate;

    @Inject
    DataSource database;

    private record Line(String method, String path, Map<String, String> expected) {
        String route() {
            return method + " " + path;
        }
    }

    private static List<Line> table() throws Exception {
        try (InputStream file = EveryRouteTest.class.getResourceAsStream("/access-table.csv")) {
            List<List<String>> rows = new String(file.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.startsWith("#"))
                    .map(line -> Arrays.asList(line.split(",")))
                    .toList();
            assertEquals(COLUMNS, rows.get(0));
            List<Line> lines = new ArrayList<>();
            for (List<String> row : rows.subList(1, rows.size())) {
                assertEquals(COLUMNS.size(), row.size(), row.toString());
                Map<String, String> expected = new TreeMap<>();
                for (int column = 2; column < COLUMNS.size(); column++) {
                    assertTrue(Set.of(IN, "401", "403", SAME).contains(row.get(column)), row.toString());
                    expected.put(COLUMNS.get(column), row.get(column));
                }
                lines.add(new Line(row.get(0), row.get(1), expected));
            }
            return lines;
        }
    }

    private static JsonNode description() throws Exception {
        return JSON.readTree(
                given().queryParam("format", "json").get("/q/openapi").asString());
    }

    @Test
    void theTableHasEveryRouteAndPageAndNothingElse() throws Exception {
        Set<String> served = new TreeSet<>(BESIDE);
        description().get("paths").properties().forEach(path -> path.getValue()
                .fieldNames()
                .forEachRemaining(method -> served.add(method + " " + path.getKey())));
        served.add(PAGE + " /");
        for (Path root : PAGES) {
            try (Stream<Path> files = Files.walk(root)) {
                files.filter(Files::isRegularFile)
                        .forEach(file -> served.add(
                                PAGE + " /" + root.relativize(file).toString().replace('\\', '/')));
            }
        }
        List<String> inTable = table().stream().map(Line::route).toList();
        assertEquals(served, new TreeSet<>(inTable), "what is served, and what the table has");
        assertEquals(served.size(), inTable.size(), "a line of the table stands there twice");
    }

    @Test
    void everyRouteAnswersWhomTheTableSaysAndNobodyElse() throws Exception {
        Map<Role, String> persons = new TreeMap<>();
        Map<Role, String> tokens = new TreeMap<>();
        for (Role role : Role.values()) {
            persons.put(role, account(role));
            tokens.put(role, SignedIn.authorization(null, role));
        }
        JsonNode paths = description().get("paths");
        Map<String, Long> before = rows();
        List<String> wrong = new ArrayList<>();
        int asked = 0;
        for (Line line : table()) {
            JsonNode operation = paths.path(line.path()).path(line.method());
            check(line, "none", line.expected().get("none"), ask(given(), line, operation), wrong);
            for (Role role : Role.values()) {
                String expected = line.expected().get(role.word());
                check(line, "person, " + role.word(), expected, ask(person(persons.get(role)), line, operation), wrong);
                String ofTokens = line.expected().get("tokens");
                check(
                        line,
                        "token, " + role.word(),
                        ofTokens.equals(SAME) ? expected : ofTokens,
                        ask(given().header("Authorization", tokens.get(role)), line, operation),
                        wrong);
                asked += 2;
            }
            asked++;
        }
        assertEquals(List.of(), wrong);
        assertEquals(table().size() * (1 + 2 * Role.values().length), asked);
        assertEquals(before, rows(), "a request changed something");
    }

    private String account(Role role) {
        return TestAccounts.make("walker " + UUID.randomUUID(), "Walker", Set.of(role), "walks everywhere")
                .key();
    }

    /** In a session of its own, since one of the requests ends it. */
    private RequestSpecification person(String account) {
        String secret = TestAccounts.session(account);
        return given().cookie(SessionCookie.NAME, secret)
                .header(
                        CrossSiteRequestFilter.HEADER,
                        authenticate.bySession(secret).orElseThrow().csrf());
    }

    /** Asks for what does not exist, and sends nothing that could be taken. */
    private static Response ask(RequestSpecification request, Line line, JsonNode operation) {
        String path = line.path().replaceAll("\\{(id|n)}", "0").replaceAll("\\{[a-z]+}", "NO-SUCH");
        JsonNode bodies = operation.path("requestBody").path("content");
        if (!bodies.isEmpty() || Set.of("post", "put", "patch").contains(line.method())) {
            request.contentType("application/json").body("{}");
        }
        return request.redirects()
                .follow(false)
                .request(line.method().equals(PAGE) ? "GET" : line.method().toUpperCase(Locale.ROOT), path);
    }

    private static void check(Line line, String who, String expected, Response answer, List<String> wrong) {
        int status = answer.statusCode();
        String got = status == 401 || status == 403 ? String.valueOf(status) : IN;
        boolean isServed = !line.method().equals(PAGE) || status == 200;
        if (!got.equals(expected) || !isServed || status >= 500) {
            wrong.add(line.route() + " as " + who + ": " + status + " where the table says " + expected);
        } else if (!got.equals(IN) && !isProblem(answer, status)) {
            wrong.add(line.route() + " as " + who + ": no problem document with its " + status);
        }
    }

    private static boolean isProblem(Response answer, int status) {
        return answer.contentType().startsWith("application/problem+json")
                && answer.jsonPath().getInt("status") == status
                && !answer.jsonPath().getList("errors").isEmpty();
    }

    /** How many rows each table has, but those where a request leaves a mark. */
    private Map<String, Long> rows() throws Exception {
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            Set<String> names = new TreeSet<>();
            try (ResultSet tables = statement.executeQuery(
                    "select relname from pg_class where relnamespace = current_schema()::regnamespace"
                            + " and relkind in ('r', 'p') and not relispartition")) {
                while (tables.next()) {
                    names.add(tables.getString(1));
                }
            }
            names.removeAll(MARKS);
            assertTrue(names.containsAll(Set.of("account", "api_token", "approval")), names.toString());
            Map<String, Long> rows = new TreeMap<>();
            for (String name : names) {
                try (ResultSet count = statement.executeQuery("select count(*) from " + name)) {
                    count.next();
                    rows.put(name, count.getLong(1));
                }
            }
            return rows;
        }
    }

    @Test
    void whatAProxySaysCountsOnlyWhereOneIsSetUp() {
        Response answer = given().header("X-Forwarded-Proto", "https").get("/api/v1/status");
        assertEquals(null, answer.header("Strict-Transport-Security"), "believed whoever asked");
    }
}
