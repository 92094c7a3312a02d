package dev.reelproof.api.lot;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.hasSize;
import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.reelproof.api.access.SignedIn;
import dev.reelproof.genealogy.Amount;
import io.agroal.api.AgroalDataSource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Lots that by their positions took the same stretch of one parent are flagged, all of them, in whatever order they came. */
@QuarkusTest
@ExtendWith(SignedIn.class)
class OverlappingCutsRoutesTest {
    @Inject
    AgroalDataSource database;

    /** Makes the identifiers of one test its own: lots are kept for ever. */
    private final String own = "-" + UUID.randomUUID().toString().substring(0, 8);

    private String cable(String id) {
        return "{\"id\": \"" + id + own
                + "\", \"kind\": \"jacketed-cable\", \"quantity\": {\"value\": 2, \"unit\": \"km\"},"
                + " \"made\": \"2026-02-11T09:00:00Z\"}";
    }

    /** A piece that lay on a cable between two places. */
    private String piece(String id, String cable, double from, double to, String unit) {
        double length = Math.abs(to - from);
        return "{\"id\": \"" + id + own + "\", \"kind\": \"reel\", \"quantity\": {\"value\": " + length
                + ", \"unit\": \""
                + unit + "\"}, \"made\": \"2026-02-12T09:00:00Z\", \"inputs\": [{\"lot\": \"" + cable + own
                + "\", \"quantity\": {\"value\": " + length + ", \"unit\": \"" + unit + "\"}, \"position\": {\"from\": "
                + at(0, unit) + ", \"to\": " + at(length, unit) + ", \"onParentFrom\": " + at(from, unit)
                + ", \"onParentTo\": " + at(to, unit) + "}}]}";
    }

    private static String at(double value, String unit) {
        return "{\"value\": " + value + ", \"unit\": \"" + unit + "\"}";
    }

    private static void load(List<String> lots) {
        given().contentType("application/x-ndjson")
                .body(String.join("\n", lots).getBytes(StandardCharsets.UTF_8))
                .post("/api/v1/lots/bulk")
                .then()
                .statusCode(200)
                .body("refused", empty());
    }

    private static void post(String lot) {
        given().contentType("application/json")
                .body(lot)
                .post("/api/v1/lots")
                .then()
                .statusCode(201);
    }

    private ValidatableResponse lot(String id) {
        return given().get("/api/v1/lots/" + id + own).then().statusCode(200);
    }

    private List<String> doubts(String id) {
        return lot(id).extract().jsonPath().getList("implausible.message", String.class);
    }

    /** What each of these says that can hardly be so, without what makes the identifiers those of one order. */
    private Map<String, List<String>> doubts(String order, List<String> ids) {
        Map<String, List<String>> doubts = new TreeMap<>();
        ids.forEach(id -> doubts.put(
                id,
                doubts(id + order).stream()
                        .map(message -> message.replace(order + own, ""))
                        .toList()));
        return doubts;
    }

    private static List<List<Integer>> orders(int of) {
        List<List<Integer>> orders = List.of(List.of());
        for (int next = 0; next < of; next++) {
            List<List<Integer>> longer = new ArrayList<>();
            for (List<Integer> order : orders) {
                for (int place = 0; place <= order.size(); place++) {
                    List<Integer> with = new ArrayList<>(order);
                    with.add(place, next);
                    longer.add(with);
                }
            }
            orders = longer;
        }
        return orders;
    }

    /** A is cut in feet and runs backwards, B overlaps A and C; what comes before the cable waits for it. */
    @ParameterizedTest
    @ValueSource(ints = {1, 4})
    void theFlagsAreTheSameInWhateverOrderTheReportsCome(int atOnce) {
        Map<String, List<String>> expected = null;
        for (List<Integer> order : orders(4)) {
            String name = "." + order.stream().map(String::valueOf).collect(Collectors.joining()) + atOnce;
            List<String> lots = List.of(
                    cable("JK" + name),
                    piece("A" + name, "JK" + name, 1000, 0, "ft"),
                    piece("B" + name, "JK" + name, 290, 590, "m"),
                    piece("C" + name, "JK" + name, 580, 880, "m"));
            List<String> inOrder = order.stream().map(lots::get).toList();
            for (int from = 0; from < inOrder.size(); from += atOnce) {
                load(inOrder.subList(from, from + atOnce));
            }
            Map<String, List<String>> found = doubts(name, List.of("A", "B", "C"));
            if (expected == null) {
                expected = found;
                assertEquals(
                        List.of(1, 1, 1),
                        found.values().stream().map(List::size).toList(),
                        found.toString());
            }
            assertEquals(expected, found, "in the order " + order);
        }
    }

    @Test
    void aLotThatComesLaterByItselfFlagsTheEarlierOne() {
        post(cable("JK"));
        post(piece("A", "JK", 0, 300, "m"));
        post(piece("B", "JK", 300, 600, "m"));
        lot("A").body("implausible", empty());
        post(piece("C", "JK", 250, 290, "m"));
        lot("A").body("implausible.parent", contains("JK" + own))
                .body("implausible[0].message", containsString("from 0 m to 300 m of lot JK" + own));
        lot("B").body("implausible", empty());
        lot("C").body("implausible", hasSize(1));
        given().queryParam("limit", 2)
                .get("/api/v1/lots/implausible")
                .then()
                .statusCode(200)
                .body("lots.id", contains("A" + own, "C" + own));
        post(piece("D", "JK", 250, 300, "m"));
        lot("A").body("implausible", hasSize(1));
        given().get("/api/v1/lots/JK" + own + "/descendants")
                .then()
                .body("lots.find { it.id == 'A" + own + "' }.implausible", hasSize(1));
    }

    @Test
    void whatIsSentAgainAddsNothing() {
        List<String> lots = List.of(cable("JK"), piece("A", "JK", 0, 300, "m"), piece("B", "JK", 200, 500, "m"));
        load(lots);
        load(lots);
        lot("A").body("implausible", hasSize(1));
        lot("B").body("implausible", hasSize(1));
    }

    @Test
    void theSamePlacesOfAnotherCableAreOtherMetres() {
        load(List.of(cable("J1"), cable("J2"), piece("A", "J1", 0, 300, "m"), piece("B", "J2", 0, 300, "m")));
        lot("A").body("implausible", empty());
        lot("B").body("implausible", empty());
    }

    /** Such as when a bench sends the reel's own places as those on its parent. */
    @Test
    void manyWithOneStretchAreAllFlaggedOnceEach() {
        List<String> first = new ArrayList<>(List.of(cable("JK")));
        List<String> second = new ArrayList<>();
        List<String> ids = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            ids.add("R" + i);
            (i % 2 == 0 ? first : second).add(piece("R" + i, "JK", 0, 90, "m"));
        }
        load(first);
        load(second);
        load(List.of(piece("LAST", "JK", 80, 100, "m")));
        ids.add("LAST");
        assertEquals(
                List.of(1), ids.stream().map(id -> doubts(id).size()).distinct().toList());
    }

    @Test
    void materialWithoutPositionsIsSharedByAll() {
        String compound = "{\"id\": \"PE" + own
                + "\", \"kind\": \"jacket-compound\", \"quantity\": {\"value\": 1, \"unit\": \"t\"},"
                + " \"made\": \"2026-02-11T08:00:00Z\"}";
        String jacketed = cable("%s")
                .replace(
                        "\"made\"",
                        "\"inputs\": [{\"lot\": \"PE" + own
                                + "\", \"quantity\": {\"value\": 40, \"unit\": \"kg\"}}], \"made\"");
        load(List.of(compound, jacketed.formatted("J1"), jacketed.formatted("J2")));
        lot("J1").body("implausible", empty());
        lot("J2").body("implausible", empty());
    }

    @Test
    void theDatabaseCountsUnitsAsTheProgramDoes() throws Exception {
        try (Connection connection = database.getConnection();
                PreparedStatement query = connection.prepareStatement("select lot_unit(?)")) {
            for (String unit : List.of("m", "km", "ft", "kft", "mile", "kg", "g", "t", "lb")) {
                query.setString(1, unit);
                try (ResultSet row = query.executeQuery()) {
                    row.next();
                    assertEquals(Amount.baseOf(1, unit), row.getDouble(1), unit);
                }
            }
        }
    }
}
