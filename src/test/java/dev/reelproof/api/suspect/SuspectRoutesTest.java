package dev.reelproof.api.suspect;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsInAnyOrder;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.lessThan;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;
import static org.hamcrest.Matchers.startsWith;

import dev.reelproof.api.TestPlant;
import dev.reelproof.api.access.SignedIn;
import dev.reelproof.api.result.SampleResult;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.config.JsonConfig;
import io.restassured.config.RestAssuredConfig;
import io.restassured.path.json.config.JsonPathConfig;
import io.restassured.response.ValidatableResponse;
import io.restassured.specification.RequestSpecification;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/**
 * Eight reels have a bad lot of compound in them, which one insulating line alone ran; sixteen have a good one. Six of the eight
 * fail, and one of the sixteen.
 */
@QuarkusTest
@ExtendWith(SignedIn.class)
class SuspectRoutesTest {
    private static final int BAD = 8;
    private static final int BAD_FAILING = 6;
    private static final int GOOD = 16;
    private static final double PASSING = 7;
    private static final double FAILING = 12;
    private static final String TESTED = "2026-03-02T14:09:30Z";

    /** Makes names of its own: what is recorded stays, and other tests' reels must stay out of the population. */
    private final String own = "-" + UUID.randomUUID().toString().substring(0, 8);

    private final String product = "SUSPECT" + own;

    private static RequestSpecification request() {
        return given().config(RestAssuredConfig.config()
                .jsonConfig(JsonConfig.jsonConfig().numberReturnType(JsonPathConfig.NumberReturnType.DOUBLE)));
    }

    private ValidatableResponse ask(String query) {
        return request()
                .get("/api/v1/suspects?product=" + product + "&" + query)
                .then();
    }

    private void lot(String id, String kind, String more) {
        given().contentType("application/json")
                .body("{\"id\": \"" + id + own + "\", \"plant\": \"north\", \"kind\": \"" + kind
                        + "\", \"quantity\": {\"value\": 100, \"unit\": \"km\"}, \"made\": \"2026-02-11T09:00:00Z\""
                        + more
                        + "}")
                .post("/api/v1/lots")
                .then()
                .statusCode(201);
    }

    private String input(String id) {
        return "{\"lot\": \"" + id + own + "\", \"quantity\": {\"value\": 1, \"unit\": \"m\"}}";
    }

    private void insulated(String side, String machine, String operator) {
        lot("PE" + side, "insulation-compound", "");
        for (String conductor : new String[] {"a", "b"}) {
            lot(
                    "IC" + side + conductor,
                    "insulated-conductor",
                    ", \"step\": \"insulating\", \"machine\": \"" + machine + own + "\", \"run\": \"RUN" + side
                            + conductor
                            + own + "\", \"operator\": \"" + operator + own
                            + "\", \"settings\": {\"die\": \"D" + side + own + "\", \"screw\": \"S1\"}, \"inputs\": ["
                            + input("PE" + side) + "]");
        }
    }

    private void registerReel(String reel) {
        TestPlant.putReel(
                        reel + own,
                        "{\"plant\": \"north\", \"product\": \"" + product
                                + "\", \"length\": {\"value\": 100, \"unit\": \"m\"}}")
                .statusCode(201);
    }

    private void test(String reel, double resistance, String finished) {
        test(reel, resistance, finished, "bay-1");
    }

    /** Every sample comes from a bay of its own; here a bay tests many reels. */
    private void test(String reel, double resistance, String finished, String bay) {
        TestPlant.test(
                        reel + own,
                        new SampleResult()
                                .product(product)
                                .resistance(resistance)
                                .json()
                                .replace(TESTED, finished)
                                .replaceFirst("bay-[0-9a-f-]{36}", bay + own))
                .statusCode(201);
    }

    private void reel(String reel, String side, double resistance) {
        reel(reel, side, resistance, "bay-1");
    }

    private void reel(String reel, String side, double resistance, String bay) {
        registerReel(reel);
        lot(
                reel,
                "reel",
                ", \"step\": \"cutting\", \"machine\": \"CUT" + own + "\", \"inputs\": [" + input("IC" + side + "a")
                        + ", " + input("IC" + side + "b") + "]");
        test(reel, resistance, TESTED, bay);
    }

    /** One bay fails seven of its eight reels, the other none of twelve; most of the first bay's reels are of one lot. */
    @Test
    void saysFirstThatTheTestIsTheLikelierCause() {
        TestPlant.putProduct(product, "category-6a-cable", 4).statusCode(201);
        insulated("1", "INS-1", "OP-1");
        insulated("2", "INS-2", "OP-1");
        for (int i = 0; i < 20; i++) {
            boolean inBadBay = i < 8;
            boolean ofFirstLot = inBadBay ? i < 6 : i < 10;
            reel(
                    "T" + i,
                    ofFirstLot ? "1" : "2",
                    inBadBay && i != 7 ? FAILING : PASSING + i / 100.0,
                    inBadBay ? "bay-1" : "bay-2");
        }
        ask("property=conductor-resistance")
                .statusCode(200)
                .body("reels", equalTo(20))
                .body("failing", equalTo(7))
                .body("testIsLikelierCause", equalTo(true))
                .body("testCause.group", contains(Map.of("factor", "station", "value", "bay-1" + own)))
                .body("testCause.explains", hasItem(Map.of("factor", "lot", "value", "IC1a" + own)))
                .body(
                        "testCause.sentence",
                        startsWith("The test itself is the likelier cause: of 8 reels tested at bay bay-1"))
                .body("suspects[0].factor", equalTo("station"))
                .body("suspects[0].side", equalTo("test"))
                .body("suspects[0].named", equalTo(true))
                .body("suspects[0].onlyInTime", equalTo(false))
                // Fisher by hand: C(8,7) / C(20,7) = 8 / 77520; all tests lie in one week.
                .body("suspects[0].p", closeTo(8.0 / 77_520, 1e-12))
                .body("suspects[0].pWithinStrata", closeTo(8.0 / 77_520, 1e-12))
                .body("suspects[0].dose", nullValue())
                .body("suspects[1].factor", equalTo("lot"))
                .body("suspects[1].side", equalTo("upstream"))
                .body("suspects[1].explainedBy", contains(Map.of("factor", "station", "value", "bay-1" + own)))
                .body("strata", equalTo("week"))
                .body("strataCount", equalTo(1))
                .body("strataMethod", containsString("Cochran-Mantel-Haenszel"));
        ask("property=conductor-resistance&strata=none").statusCode(200).body("strata", equalTo("none"));
    }

    private void plantWithABadLot() {
        TestPlant.putProduct(product, "category-6a-cable", 4).statusCode(201);
        insulated("1", "INS-1", "OP-1");
        insulated("2", "INS-2", "OP-1");
        for (int i = 0; i < BAD; i++) {
            reel("B" + i, "1", i < BAD_FAILING ? FAILING : PASSING + i / 100.0);
        }
        for (int i = 0; i < GOOD; i++) {
            reel("G" + i, "2", i == 0 ? FAILING : PASSING - i / 100.0);
        }
    }

    @Test
    void namesTheBadLotTogetherWithWhatIsInseparableFromIt() {
        plantWithABadLot();
        registerReel("UNTRACED");
        test("UNTRACED", FAILING, TESTED);
        registerReel("BARE");
        TestPlant.test(
                        "BARE" + own,
                        new SampleResult()
                                .product(product)
                                .jsonWithoutBulk()
                                .replaceFirst(
                                        "}$",
                                        ", \"readings\": [{\"property\": \"spark-faults\", \"value\": 0, \"unit\": \"count\"}]}"))
                .statusCode(201);
        ask("property=conductor-resistance&from=2026-03-02T00:00:00Z&to=2026-03-03T00:00:00Z")
                .statusCode(200)
                .body("reels", equalTo(BAD + GOOD))
                .body("failing", equalTo(BAD_FAILING + 1))
                .body("leftOut.untraced", equalTo(1))
                .body("leftOut.notTested", equalTo(1))
                .body("suspects[0].factor", equalTo("lot"))
                .body("suspects[0].value", equalTo("IC1a" + own))
                .body(
                        "suspects[0].inseparableFrom",
                        containsInAnyOrder(
                                "IC1b" + own, "PE1" + own, "INS-1" + own, "RUN1a" + own, "RUN1b" + own, "D1" + own))
                .body("suspects[0].group", hasItem(Map.of("factor", "die", "value", "D1" + own)))
                .body("suspects[0].group", hasItem(Map.of("factor", "step-run", "value", "RUN1a" + own)))
                .body("suspects[0].exposed", equalTo(BAD))
                .body("suspects[0].exposedFailing", equalTo(BAD_FAILING))
                .body("suspects[0].others", equalTo(GOOD))
                .body("suspects[0].othersFailing", equalTo(1))
                // Fisher by hand: [C(8,6) C(16,1) + C(8,7)] / C(24,7) = 456 / 346104
                .body("suspects[0].p", closeTo(456.0 / 346_104, 1e-12))
                .body("suspects[0].named", equalTo(true))
                .body("suspects[0].riskDifference.estimate", closeTo(0.75 - 1.0 / GOOD, 1e-12))
                .body("suspects[0].oddsRatio", closeTo(45, 1e-9))
                .body("suspects[0].margins", nullValue())
                .body("testIsLikelierCause", equalTo(false))
                .body("testCause", nullValue())
                // The good side is one group too, without evidence; cutting, the operator and the product met every
                // reel.
                .body("suspects", hasSize(2))
                .body("suspects[1].inseparableFrom", hasItem("INS-2" + own))
                .body("suspects[1].named", equalTo(false))
                .body("tested", equalTo(2))
                .body("suspects[0].q", closeTo(2 * 456.0 / 346_104, 1e-12))
                .body("method", containsString("Fisher's exact test"))
                .body("correction", containsString("Benjamini-Hochberg"))
                .body("level", closeTo(0.05, 0))
                .body("note", startsWith("An association, not proof of a cause"));
        ask("property=conductor-resistance&from=2026-03-02&to=2026-03-02&limit=1")
                .body("suspects", hasSize(1));
        ask("property=conductor-resistance&minimumExposed=9")
                .body("suspects.exposed", contains(GOOD))
                .body("metByTooFew", equalTo(7));
        ask("property=mutual-capacitance")
                .body("failing", equalTo(0))
                .body("tested", equalTo(0))
                .body("suspects.q", everyItem(closeTo(1, 0)));

        ask("property=conductor-resistance&evidence=margins")
                .statusCode(200)
                .body("suspects[0].value", equalTo("IC1a" + own))
                .body("suspects[0].q", lessThan(0.05))
                .body("suspects[0].margins.shift.estimate", lessThan(0.0))
                .body("suspects[0].margins.unit", notNullValue())
                .body("method", containsString("rank-sum"));
    }

    @Test
    void countsTheNewestRecordWithinTheTime() {
        TestPlant.putProduct(product, "category-6a-cable", 4).statusCode(201);
        insulated("1", "INS-1", "OP-1");
        reel("R1", "1", FAILING);
        reel("R2", "1", PASSING);
        test("R1", PASSING, "2026-04-01T08:00:00Z");
        ask("property=conductor-resistance").body("reels", equalTo(2)).body("failing", equalTo(0));
        ask("property=conductor-resistance&to=2026-03-31")
                .body("reels", equalTo(2))
                .body("failing", equalTo(1));
        ask("property=conductor-resistance&from=2026-04-01T00:00:00Z").body("reels", equalTo(1));
        ask("property=conductor-resistance&from=" + TESTED + "&to=" + TESTED).body("reels", equalTo(2));
        ask("property=conductor-resistance&from=2026-05-01T00:00:00Z")
                .statusCode(200)
                .body("reels", equalTo(0))
                .body("suspects", empty());
    }

    @Test
    void refusesWithOneClearError() {
        refused("limit=50", "property", "name the property");
        refused("property=colour", "property", "unknown property 'colour'");
        refused("property=next&from=yesterday", "from", "not a time in ISO 8601");
        refused("property=next&to=2026-13-01", "to", "not a time in ISO 8601");
        refused("property=next&to=0001-01-01", "to", "must be in a year from 1900");
        refused("property=next&from=2026-03-02T00:00:00Z&to=2026-03-01T00:00:00Z", "from", "after its end");
        refused("property=next&minimumExposed=0", "minimumExposed", "from 1, not 0");
        refused("property=next&minimumExposed=few", "minimumExposed", "whole number");
        refused("property=next&level=NaN", "level", "not NaN");
        refused("property=next&level=much", "level", "must be a number");
        refused("property=next&limit=0", "limit", "must be a whole number from 1 to 1000");
        refused("property=next&evidence=rumour", "evidence", "failures or margins");
        refused("property=next&strata=month", "strata", "week or none");
        refused("property=next&plant=nowhere", "plant", "unknown plant");
        refused("property=next&product=%00", "product", "control character");
    }

    private static void refused(String query, String where, String message) {
        given().urlEncodingEnabled(false)
                .get("/api/v1/suspects?" + query)
                .then()
                .statusCode(422)
                .contentType("application/problem+json")
                .body("errors", hasSize(1))
                .body("errors[0].where", equalTo(where))
                .body("errors[0].message", containsString(message));
    }

    @Test
    void asksForOneProductWhereMarginsAreOfSeveral() {
        TestPlant.putProduct(product, "category-6a-cable", 4).statusCode(201);
        insulated("1", "INS-1", "OP-1");
        reel("R1", "1", PASSING);
        String first = product;
        TestPlant.putProduct("SECOND" + own, "category-6a-cable", 4).statusCode(201);
        given().contentType("application/json")
                .body("{\"plant\": \"north\", \"product\": \"SECOND" + own
                        + "\", \"length\": {\"value\": 100, \"unit\": \"m\"}}")
                .put("/api/v1/reels/R2" + own)
                .then()
                .statusCode(201);
        lot("R2", "reel", ", \"inputs\": [" + input("IC1a") + "]");
        TestPlant.test("R2" + own, new SampleResult().product("SECOND" + own).json())
                .statusCode(201);
        given().get("/api/v1/suspects?property=conductor-resistance&evidence=margins")
                .then()
                .statusCode(422)
                .body("errors[0].where", equalTo("product"))
                .body("errors[0].message", containsString(first));
        ask("property=conductor-resistance&evidence=margins")
                .statusCode(200)
                .body("suspects.value", not(hasItem("R1")));
    }
}
