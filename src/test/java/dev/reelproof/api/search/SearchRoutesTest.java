package dev.reelproof.api.search;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.api.TestPlant;
import dev.reelproof.api.access.SignedIn;
import dev.reelproof.api.result.SampleResult;
import io.agroal.api.AgroalDataSource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.sql.ResultSet;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** One search for all that has a name, and the list of certificates. */
@QuarkusTest
@ExtendWith(SignedIn.class)
class SearchRoutesTest {
    @Inject
    AgroalDataSource database;

    private final String mark = UUID.randomUUID().toString().substring(0, 6).toUpperCase(java.util.Locale.ROOT);

    private static void register(String reel, String order, String customer) {
        TestPlant.putProduct("HD6A-4P", "category-6a-cable", 4);
        TestPlant.putReel(
                        reel,
                        "{\"plant\": \"north\", \"product\": \"HD6A-4P\", \"length\": {\"value\": 100, \"unit\": \"m\"},"
                                + " \"order\": \"" + order + "\", \"customer\": \"" + customer + "\"}")
                .statusCode(201);
    }

    private static String certify(String reel) {
        TestPlant.test(reel, new SampleResult().json()).statusCode(201);
        return given().post("/api/v1/reels/" + reel + "/certificates")
                .then()
                .statusCode(201)
                .extract()
                .path("number");
    }

    private static ValidatableResponse search(String q) {
        return given().queryParam("q", q).get("/api/v1/search").then().statusCode(200);
    }

    @Test
    void spacesDashesAndCaseDoNotMatter() {
        register("Q-" + mark + "-1", "SO-" + mark, "Müller & Sons " + mark + " (invented)");
        for (String q :
                List.of("Q-" + mark + "-1", "q" + mark + "1", " q " + mark.toLowerCase(java.util.Locale.ROOT) + " 1")) {
            search(q)
                    .body("hits[0].kind", equalTo("reel"))
                    .body("hits[0].name", equalTo("Q-" + mark + "-1"))
                    .body("hits[0].match", equalTo("exact"))
                    .body("hits[0].reel.order", equalTo("SO-" + mark));
        }
        search("muller sons " + mark)
                .body("hits[0].kind", equalTo("customer"))
                .body("hits[0].match", equalTo("words"))
                .body("hits.find { it.kind == 'reel' }.name", equalTo("Q-" + mark + "-1"))
                .body("hits.find { it.kind == 'reel' }.match", equalTo("belonging"));
    }

    @Test
    void whatAScannerPutsAroundANumberDoesNotMatter() {
        register("S-" + mark + "-1", "SO-" + mark, "Seven " + mark);
        for (String scanned : List.of(
                "]C1S-" + mark + "-1",
                "*S-" + mark + "-1*",
                "]A0*S-" + mark + "-1*\r\n",
                "\u0002S-" + mark + "-1\u0003\t")) {
            search(scanned)
                    .body("query", equalTo("S-" + mark + "-1"))
                    .body("hits[0].name", equalTo("S-" + mark + "-1"))
                    .body("hits[0].match", equalTo("exact"));
        }
        given().queryParam("q", "S\u0007" + mark).get("/api/v1/search").then().statusCode(422);
    }

    @Test
    void dashesOfEveryKindAndOtherScriptsAreFolded() {
        String order = "Ж-" + mark + "-7";
        register("T-" + mark, order, "ΣΊΣΥΦΟΣ " + mark);
        for (String q : List.of(
                "ж" + mark + "7", "Ж\u2011" + mark + "\u20137", "ж " + mark + " \uFF17", "ж\u00A0" + mark + "_7")) {
            search(q)
                    .body("hits[0].kind", equalTo("order"))
                    .body("hits[0].name", equalTo(order))
                    .body("hits[0].match", equalTo("exact"));
        }
        search("σίσυφος " + mark).body("hits[0].kind", equalTo("customer")).body("hits[0].match", equalTo("exact"));
    }

    @Test
    void theExactComesFirst() {
        register("P" + mark + "9", "SO-" + mark + "A", "One " + mark);
        register("P" + mark + "91", "SO-" + mark + "A", "One " + mark);
        register("X-P" + mark + "9", "SO-" + mark + "A", "One " + mark);
        search("p" + mark + "9")
                .body("hits.name", contains("P" + mark + "9", "X-P" + mark + "9", "P" + mark + "91"))
                .body("hits.match", contains("exact", "words", "beginning"));
    }

    @Test
    void anOrderIsFoundWithItsReelsAndCertificates() {
        register("A-" + mark, "SO " + mark + "-7", "Two " + mark);
        String number = certify("A-" + mark);
        search("so" + mark + "7")
                .body("hits[0].kind", equalTo("order"))
                .body("hits[0].name", equalTo("SO " + mark + "-7"))
                .body("hits.find { it.kind == 'certificate' }.name", equalTo(number))
                .body("hits.find { it.kind == 'certificate' }.belongsTo", equalTo("SO " + mark + "-7"))
                .body("hits.find { it.kind == 'certificate' }.certificate.state", equalTo("current"))
                .body("hits.find { it.kind == 'reel' }.reel.verdict", equalTo("accepted"));
        search(number.replace("-", " ").toLowerCase(java.util.Locale.ROOT)).body("hits[0].name", equalTo(number));
        given().queryParam("q", "so" + mark + "7")
                .queryParam("kind", "order, reel")
                .get("/api/v1/search")
                .then()
                .body("hits.kind", everyItem(not(equalTo("certificate"))));
    }

    @Test
    void daysNarrowWhatIsFound() {
        register("D-" + mark, "SO-D" + mark, "Three " + mark);
        given().queryParam("q", "D-" + mark)
                .queryParam("to", "2001-01-01")
                .get("/api/v1/search")
                .then()
                .body("hits", empty());
        given().queryParam("q", "D-" + mark)
                .queryParam("from", "2001-01-01")
                .get("/api/v1/search")
                .then()
                .body("hits.name", hasItem("D-" + mark));
        given().queryParam("from", "2001-01-01")
                .queryParam("kind", "reel")
                .queryParam("limit", 3)
                .get("/api/v1/search")
                .then()
                .body("hits", hasSize(3));
    }

    @Test
    void anOrderThatNothingNamesAnyMoreIsNotFound() {
        register("O-" + mark, "OLD-" + mark, "Four " + mark);
        TestPlant.putReel(
                        "O-" + mark,
                        "{\"plant\": \"north\", \"product\": \"HD6A-4P\", \"length\": {\"value\": 100, \"unit\": \"m\"},"
                                + " \"order\": \"NEW-" + mark + "\"}")
                .statusCode(200);
        search("OLD-" + mark).body("hits", empty());
        search("NEW-" + mark).body("hits[0].kind", equalTo("order"));
    }

    @Test
    void refusesWhatItCannotUnderstand() {
        given().queryParam("kind", "lot")
                .get("/api/v1/search")
                .then()
                .statusCode(422)
                .body("errors[0].where", equalTo("kind"))
                .body("errors[0].message", containsString("certificate"));
        given().queryParam("from", "yesterday").get("/api/v1/search").then().statusCode(422);
        given().queryParam("query", "x").get("/api/v1/search").then().statusCode(400);
        search("%_' \" ; -- ").body("hits", not(nullValue()));
    }

    @Test
    void theListSaysTheStateAndGoesOnBehindAPage() {
        String order = "LIST-" + mark;
        for (int i = 1; i <= 3; i++) {
            register("L" + i + "-" + mark, order, "Five " + mark);
            certify("L" + i + "-" + mark);
        }
        TestPlant.test("L2-" + mark, new SampleResult().resistance(12).json()).statusCode(201);
        Map<String, Object> first = given().queryParam("order", order)
                .queryParam("limit", 2)
                .get("/api/v1/certificates")
                .then()
                .statusCode(200)
                .body("certificates.reel", contains("L3-" + mark, "L2-" + mark))
                .body("certificates.state", contains("current", "in-question"))
                .extract()
                .path("");
        given().queryParam("order", order)
                .queryParam("limit", 2)
                .queryParam("after", first.get("next"))
                .get("/api/v1/certificates")
                .then()
                .body("certificates.reel", contains("L1-" + mark))
                .body("next", nullValue());
        certifyAgain("L1-" + mark);
        given().queryParam("reel", "L1-" + mark)
                .get("/api/v1/certificates")
                .then()
                .body("certificates.state", contains("current", "superseded"));
        given().queryParam("customer", "Five " + mark)
                .queryParam("from", "2001-01-01")
                .queryParam("to", "2001-01-02")
                .get("/api/v1/certificates")
                .then()
                .body("certificates", empty());
        given().queryParam("after", "NORTH-2026-999999/7")
                .get("/api/v1/certificates")
                .then()
                .statusCode(422);
    }

    private static void certifyAgain(String reel) {
        certify(reel);
    }

    @Test
    void theIndexHoldsEveryRegisteredReelUnderItsKeys() throws Exception {
        String serial = Long.toString(100_000_000_000L + Long.parseLong(mark, 16));
        register("K-" + mark + "-00" + serial, "SO-K" + mark, "Six " + mark);
        try (var connection = database.getConnection();
                var statement = connection.createStatement();
                ResultSet missing = statement.executeQuery(
                        "select count(*) from reel r where not exists (select from search_key s where s.plant = r.plant"
                                + " and s.what = 'reel' and s.name = r.id and s.whole)")) {
            assertTrue(missing.next());
            assertEquals(0, missing.getInt(1));
        }
        search(serial).body("hits.name", contains("K-" + mark + "-00" + serial));
    }
}
