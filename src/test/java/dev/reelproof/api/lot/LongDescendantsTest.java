package dev.reelproof.api.lot;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.reelproof.api.access.SignedIn;
import dev.reelproof.store.DatabaseOwner;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** Answers that are sent while they are found. */
@QuarkusTest
@ExtendWith(SignedIn.class)
class LongDescendantsTest {
    private static final int PIECE = 1 << 16;
    private static final int ROUNDS = 10;

    @TestHTTPResource("/api/v1/lots/")
    URI service;

    private final String own = "-" + UUID.randomUUID().toString().substring(0, 8);

    @Test
    void hasTheShapeOfAShortOne() throws Exception {
        int cables = 1_500;
        insert(cables, 4);
        tell("R1", "{\"state\": \"shipped\", \"to\": \"A-Works\"}");
        tell("R2", "{\"state\": \"shipped\", \"to\": \"B-Works\"}");
        tell("R3", "{\"state\": \"scrapped\", \"reason\": \"drowned\"}");
        JsonNode answer = new ObjectMapper().readTree(read(request("PE" + own)));
        assertEquals(1 + cables + 4, answer.at("/lots").size());
        assertEquals("PE" + own, answer.at("/lots/0/id").textValue());
        assertEquals("jacket-compound", answer.at("/lots/0/kind").textValue());
        int depth = 0;
        for (JsonNode lot : answer.at("/lots")) {
            assertTrue(lot.at("/depth").intValue() >= depth, "nearest first");
            depth = lot.at("/depth").intValue();
        }
        assertEquals(2, depth);
        assertEquals(cables + 4, answer.at("/links").size());
        assertEquals("PE" + own, answer.at("/links/0/from").textValue());
        assertEquals(4, answer.at("/reels/count").intValue());
        assertEquals("R4" + own, answer.at("/reels/inStock/0/reel").textValue());
        assertEquals(1, answer.at("/reels/inStock").size());
        assertEquals("R3" + own, answer.at("/reels/scrapped/0/reel").textValue());
        assertEquals(
                "drowned", answer.at("/reels/scrapped/0/disposition/reason").textValue());
        assertEquals(2, answer.at("/reels/shipped").size());
        assertEquals("A-Works", answer.at("/reels/shipped/0/to").textValue());
        assertEquals("R1" + own, answer.at("/reels/shipped/0/reels/0/reel").textValue());
        assertEquals("B-Works", answer.at("/reels/shipped/1/to").textValue());
        // below the first cable there is little: the short answer has the same fields
        JsonNode few = new ObjectMapper().readTree(read(request("J1" + own)));
        assertEquals(2, few.at("/lots").size());
        for (String place : new String[] {"", "/lots/0", "/links/0", "/reels", "/reels/shipped/0/reels/0"}) {
            assertEquals(fields(few.at(place)), fields(answer.at(place)), place);
        }
    }

    @Test
    void doesNotLookWholeWhenTheDatabaseBreaksOff() throws Exception {
        insert(60_000, 0);
        // More than once: how the connection ends must not be a matter of luck.
        for (int round = 0; round < ROUNDS; round++) {
            HttpResponse<InputStream> answer = request("PE" + own);
            assertEquals(200, answer.statusCode());
            ByteArrayOutputStream sent = new ByteArrayOutputStream();
            sent.write(answer.body().readNBytes(PIECE));
            // What the network does not hold waits for us, and the database for it.
            endSearch();
            assertThrows(IOException.class, () -> answer.body().transferTo(sent), "round " + round);
            assertThrows(JsonProcessingException.class, () -> new ObjectMapper()
                    .readTree(sent.toString(StandardCharsets.UTF_8)));
        }
    }

    private static void endSearch() throws SQLException {
        try (Connection connection = DatabaseOwner.connect();
                Statement statement = connection.createStatement();
                ResultSet ended = statement.executeQuery(
                        """
                        select count(pg_terminate_backend(pid)) from pg_stat_activity
                        where query like '%recursive relative%' and state <> 'idle' and pid <> pg_backend_pid()""")) {
            assertTrue(ended.next());
            assertEquals(1, ended.getInt(1), "the answer was over before it could be broken off");
        }
    }

    private static Set<String> fields(JsonNode node) {
        Set<String> names = new TreeSet<>();
        node.fieldNames().forEachRemaining(names::add);
        return names;
    }

    private void tell(String reel, String state) {
        given().contentType("application/json")
                .body(state)
                .post("/api/v1/reels/" + reel + own + "/disposition")
                .then()
                .statusCode(201);
    }

    private HttpResponse<InputStream> request(String lot) throws IOException, InterruptedException {
        return HttpClient.newHttpClient()
                .send(
                        HttpRequest.newBuilder(service.resolve(lot + "/descendants"))
                                .header("Authorization", SignedIn.authorization())
                                .build(),
                        HttpResponse.BodyHandlers.ofInputStream());
    }

    private static String read(HttpResponse<InputStream> answer) throws IOException {
        assertEquals(200, answer.statusCode());
        return new String(answer.body().readAllBytes(), StandardCharsets.UTF_8);
    }

    /**
     * A compound, cables of which each has some, and a reel of each of the first cables; made long after what other tests ask for by
     * time, whose lists of incomplete lots they would fill.
     */
    private void insert(int cables, int reels) throws SQLException {
        String lot = "insert into lot select 'north', %s, '%s', 1, 'km', '2036-02-11T09:00:00Z', null, null, '', now()"
                + " from generate_series(1, %d) n";
        String link = "insert into lot_input select 'north', %s, %s, 0, 1, 'm', 1 from generate_series(1, %d) n";
        String compound = "'PE" + own + "'";
        String cable = "'J' || n || '" + own + "'";
        String reel = "'R' || n || '" + own + "'";
        try (Connection connection = DatabaseOwner.connect();
                Statement statement = connection.createStatement()) {
            statement.execute(lot.formatted(compound, "jacket-compound", 1));
            statement.execute(lot.formatted(cable, "jacketed-cable", cables));
            statement.execute(link.formatted(cable, compound, cables));
            statement.execute(lot.formatted(reel, "reel", reels));
            statement.execute(link.formatted(reel, cable, reels));
        }
    }
}
