package dev.reelproof.demo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import dev.reelproof.app.access.DemoAccount;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The loading of the demo, against a service that only listens. */
class DemoLoadingTest {
    private static final String RECORD =
            """
            {"verdict": "rejected", "findings": [
              {"property": "next", "outcome": "pass", "value": 50, "limit": 44.3, "unit": "dB"},
              {"property": "return-loss", "outcome": "fail", "value": 11.93, "limit": 16.07, "unit": "dB", "pair": 3,
               "partner": null, "end": "far", "frequency": {"value": 378.0, "unit": "MHz"}}]}""";

    private static final String TOKEN = "reelproof_0123456789abcdef_secret";

    private final Set<String> authorizations = new TreeSet<>();
    private final List<String> requests = new ArrayList<>();
    private final List<String> digests = new ArrayList<>();
    private HttpServer server;
    private int notReadyYet = 2;
    private String refusedPath = "";

    @BeforeEach
    void listen() throws IOException {
        // Without it the JDK's server waits 40 ms at every answer for an acknowledgement.
        System.setProperty("sun.net.httpserver.nodelay", "true");
        server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        server.createContext("/", this::answer);
        server.start();
    }

    @AfterEach
    void stop() {
        server.stop(0);
    }

    private void answer(HttpExchange exchange) throws IOException {
        byte[] body = exchange.getRequestBody().readAllBytes();
        String path = exchange.getRequestURI().getPath();
        int status = 201;
        String text = "{}";
        if (path.equals("/q/health/ready")) {
            status = notReadyYet-- > 0 ? 503 : 200;
        } else {
            String type = exchange.getRequestHeaders().getFirst("Content-Type");
            requests.add(exchange.getRequestMethod() + " " + path + " " + type.replaceAll(";.*", ""));
            digests.add(sha256(body));
            authorizations.add(exchange.getRequestHeaders().getFirst("Authorization"));
            if (path.equals(refusedPath)) {
                status = 422;
                text = "{\"title\": \"Not taken\", \"detail\": \"the length is missing\"}";
            } else if (path.endsWith("/tests")) {
                text = RECORD;
            }
        }
        byte[] answer = text.getBytes(StandardCharsets.UTF_8);
        exchange.sendResponseHeaders(status, answer.length);
        exchange.getResponseBody().write(answer);
        exchange.close();
    }

    private static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (java.security.NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    private URI address() {
        return URI.create("http://localhost:" + server.getAddress().getPort());
    }

    private static String load(URI address) {
        ByteArrayOutputStream printed = new ByteArrayOutputStream();
        new DemoLoading(
                        address,
                        TOKEN,
                        Path.of("data", "demo-token"),
                        new PrintStream(printed, true, StandardCharsets.UTF_8))
                .run();
        return printed.toString(StandardCharsets.UTF_8);
    }

    @Test
    void productsThenReelsThenLotsThenTestsAreSentOnceTheServiceIsReady() {
        String printed = load(address());
        assertTrue(notReadyYet < 0);
        List<String> kinds = requests.stream()
                .map(request -> request.replaceAll("/api/v1/(products|reels|lots)(/[^/ ]+)?(/tests)?", "$1$3"))
                .distinct()
                .toList();
        assertEquals(
                List.of(
                        "PUT products application/json",
                        "PUT reels application/json",
                        "POST lots application/json",
                        "POST reels/tests application/json",
                        "POST reels/tests multipart/form-data"),
                kinds);
        assertTrue(printed.contains(address().toString()), printed);
        assertEquals(Set.of("Bearer " + TOKEN), authorizations);
        assertTrue(printed.contains(Path.of("data", "demo-token").toString()), printed);
        assertFalse(printed.contains(TOKEN), printed);
        for (DemoAccount person : DemoAccount.ALL) {
            assertTrue(
                    printed.lines()
                            .anyMatch(line -> line.startsWith(person.name())
                                    && line.contains(person.password())
                                    && line.contains(person.role().word())),
                    printed);
        }
        assertTrue(printed.contains("Invented data"), printed);
        assertTrue(
                printed.lines()
                        .anyMatch(
                                line -> line.matches(
                                        "R-26006 +HD6A-4P +305 m +rejected +return-loss, pair 3, far end: 11.93 against 16.07 dB at 378.0 MHz")),
                printed);
        assertFalse(printed.contains("not taken"), printed);
    }

    @Test
    void loadingAgainSendsTheSameBytes() {
        load(address());
        List<String> first = List.copyOf(digests);
        digests.clear();
        load(address());
        assertEquals(first, digests);
    }

    @Test
    void aRefusalIsASentenceAndTheRestIsLoaded() {
        load(address());
        int all = requests.size();
        requests.clear();
        refusedPath = "/api/v1/reels/R-26002/tests";
        String printed = load(address());
        assertTrue(printed.contains(
                "The demo's POST /api/v1/reels/R-26002/tests was answered with 422: the length is missing"));
        assertTrue(printed.lines().anyMatch(line -> line.startsWith("R-26002") && line.contains("not taken")), printed);
        assertEquals(all, requests.size());
    }

    @Test
    void aServiceThatIsGoneIsSaidSo() {
        server.stop(0);
        String printed = load(address());
        assertTrue(printed.startsWith("The demo plant was not loaded: "), printed);
    }

    @Test
    void whatIsNotTestedIsGivenWhenNothingFails() throws IOException {
        String findings =
                """
                [{"property": "next", "outcome": "pass"},
                 {"property": "return-loss", "outcome": "not-tested", "reason": "the sweeps stop at 400 MHz; pair 3 too"}]""";
        assertEquals(
                "return-loss not tested: the sweeps stop at 400 MHz",
                DemoLoading.firstReason(new ObjectMapper().readTree(findings)));
        assertEquals("", DemoLoading.firstReason(new ObjectMapper().readTree("[]")));
    }
}
