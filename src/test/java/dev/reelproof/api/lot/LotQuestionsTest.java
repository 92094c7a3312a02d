package dev.reelproof.api.lot;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;

import dev.reelproof.api.access.SignedIn;
import dev.reelproof.measurement.Product;
import dev.reelproof.quantity.Length;
import dev.reelproof.record.RegisteredReel;
import dev.reelproof.store.reel.Products;
import dev.reelproof.store.reel.Reels;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import io.restassured.config.JsonConfig;
import io.restassured.path.json.config.JsonPathConfig;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** What is asked of a small plant: a cable of one pair, cut to three reels, and one reel of another cable. */
@QuarkusTest
@ExtendWith(SignedIn.class)
class LotQuestionsTest {
    @Inject
    Products products;

    @Inject
    Reels reels;

    /** Makes the identifiers of one test its own: lots are kept for ever. */
    private final String own = "-" + UUID.randomUUID().toString().substring(0, 8);

    @BeforeEach
    void makeCable() {
        String lots =
                """
                {"id": "AC", "kind": "annealed-conductor", "quantity": {"value": 5, "unit": "km"}, "made": "2019-02-11T06:00:00Z", "step": "drawing", "machine": "DRW-1"}
                {"id": "PE", "kind": "insulation-compound", "quantity": {"value": 1, "unit": "t"}, "made": "2019-02-11T06:00:00Z", "step": "compound-receipt"}
                {"id": "IA", "kind": "insulated-conductor", "quantity": {"value": 1100, "unit": "m"}, "made": "2019-02-11T07:00:00Z", "step": "insulating", "machine": "INS", "run": "RUN", "operator": "op-1", "started": "2019-02-11T06:10:00Z", "finished": "2019-02-11T07:30:00Z", "inputs": [{"lot": "AC", "quantity": {"value": 1100, "unit": "m"}, "position": {"from": {"value": 0, "unit": "m"}, "to": {"value": 1100, "unit": "m"}, "onParentFrom": {"value": 5000, "unit": "m"}, "onParentTo": {"value": 3900, "unit": "m"}}}, {"lot": "PE", "quantity": {"value": 2, "unit": "kg"}}]}
                {"id": "IB", "kind": "insulated-conductor", "quantity": {"value": 1100, "unit": "m"}, "made": "2019-02-11T07:30:00Z", "step": "insulating", "machine": "INS", "run": "RUN", "operator": "op-1", "started": "2019-02-11T06:10:00Z", "finished": "2019-02-11T07:30:00Z", "inputs": [{"lot": "AC", "quantity": {"value": 1100, "unit": "m"}}]}
                {"id": "TP", "kind": "twisted-pair", "quantity": {"value": 1000, "unit": "m"}, "made": "2019-02-11T08:00:00Z", "step": "twisting", "machine": "TWN", "inputs": [{"lot": "IA", "quantity": {"value": 1050, "unit": "m"}, "position": {"from": {"value": 0, "unit": "m"}, "to": {"value": 1000, "unit": "m"}, "onParentFrom": {"value": 1050, "unit": "m"}, "onParentTo": {"value": 0, "unit": "m"}}}, {"lot": "IB", "quantity": {"value": 1050, "unit": "m"}, "position": {"from": {"value": 0, "unit": "m"}, "to": {"value": 1000, "unit": "m"}, "onParentFrom": {"value": 0, "unit": "m"}, "onParentTo": {"value": 1050, "unit": "m"}}}]}
                {"id": "JK", "kind": "jacketed-cable", "quantity": {"value": 1000, "unit": "m"}, "made": "2019-02-11T09:00:00Z", "step": "jacketing", "machine": "JKT", "inputs": [{"lot": "TP", "quantity": {"value": 1000, "unit": "m"}, "position": {"from": {"value": 0, "unit": "m"}, "to": {"value": 1000, "unit": "m"}, "onParentFrom": {"value": 0, "unit": "m"}, "onParentTo": {"value": 1000, "unit": "m"}}}]}
                {"id": "R1", "kind": "reel", "quantity": {"value": 1000, "unit": "ft"}, "made": "2019-02-12T09:00:00Z", "step": "cutting", "inputs": [{"lot": "JK", "quantity": {"value": 304.8, "unit": "m"}, "position": {"from": {"value": 0, "unit": "ft"}, "to": {"value": 1000, "unit": "ft"}, "onParentFrom": {"value": 304.8, "unit": "m"}, "onParentTo": {"value": 0, "unit": "m"}}}]}
                {"id": "R2", "kind": "reel", "quantity": {"value": 300, "unit": "m"}, "made": "2019-02-13T09:00:00Z", "step": "cutting", "inputs": [{"lot": "JK", "quantity": {"value": 300, "unit": "m"}}]}
                {"id": "R3", "kind": "reel", "quantity": {"value": 300, "unit": "m"}, "made": "2019-02-14T09:00:00Z", "step": "cutting", "inputs": [{"lot": "JK", "quantity": {"value": 300, "unit": "m"}}]}
                {"id": "OTHER", "kind": "jacketed-cable", "quantity": {"value": 1, "unit": "km"}, "made": "2019-02-11T09:00:00Z", "step": "jacketing", "machine": "JKT", "inputs": [{"lot": "PE", "quantity": {"value": 1, "unit": "kg"}}]}
                {"id": "R4", "kind": "reel", "quantity": {"value": 300, "unit": "m"}, "made": "2019-02-14T09:00:00Z", "step": "cutting", "inputs": [{"lot": "OTHER", "quantity": {"value": 300, "unit": "m"}}]}
                {"id": "BARE", "kind": "reel", "quantity": {"value": 300, "unit": "m"}, "made": "2019-02-14T09:00:00Z", "step": "cutting"}
                """
                        .replaceAll("(\"id\"|\"lot\"|\"run\"|\"machine\"): \"([^\"]*)\"", "$1: \"$2" + own + "\"");
        given().contentType("application/x-ndjson")
                .body(lots.getBytes(StandardCharsets.UTF_8))
                .post("/api/v1/lots/bulk")
                .then()
                .statusCode(200)
                .body("refused", empty())
                .body("accepted", equalTo(12));
    }

    private static ValidatableResponse get(String path) {
        return given().config(RestAssured.config()
                        .jsonConfig(JsonConfig.jsonConfig().numberReturnType(JsonPathConfig.NumberReturnType.DOUBLE)))
                .urlEncodingEnabled(false)
                .get("/api/v1" + path)
                .then();
    }

    private ValidatableResponse tell(String reel, String body) {
        return given().contentType("application/json")
                .body(body)
                .post("/api/v1/reels/" + reel + own + "/disposition")
                .then();
    }

    private static final double MICROMETRE = 1e-6;

    @Test
    void leadsFromAPlaceOnAReelToStretchesOfBothConductors() {
        // 700 ft from the reel's beginning are 304.8 − 213.36 = 91.44 m from the cable's
        get("/reels/R1" + own + "/positions?at=700&unit=ft")
                .statusCode(200)
                .body("lots.id", contains("R1" + own, "JK" + own, "TP" + own, "IA" + own, "IB" + own, "AC" + own))
                .body("lots[0].stretches[0].from.unit", equalTo("ft"))
                .body("lots[1].stretches[0].from.value", closeTo(91.44, MICROMETRE))
                .body("lots[3].stretches[0].from.value", closeTo(1050 - 1.05 * 91.44, MICROMETRE))
                .body("lots[3].run", equalTo("RUN" + own))
                .body("lots[3].through", contains("TP" + own))
                .body("lots[4].stretches[0].to.value", closeTo(1.05 * 91.44, MICROMETRE))
                .body("lots[5].stretches", hasSize(1))
                .body("lots[5].stretches[0].from.value", closeTo((5000 - 1050 + 1.05 * 91.44) / 1000, MICROMETRE))
                .body("notKnown.lot", contains("AC" + own, "PE" + own));
        get("/reels/R1" + own + "/positions?at=0&within=2")
                .body("lots[1].stretches[0].from.value", closeTo(302.8, MICROMETRE))
                .body("lots[1].stretches[0].to.value", closeTo(304.8, MICROMETRE));
        get("/reels/R2" + own + "/positions?at=5")
                .body("lots.id", contains("R2" + own))
                .body("notKnown[0].reason", containsString("does not say which stretch"));
        for (String wrong : List.of(
                "", "?at=x", "?at=-1", "?at=NaN", "?at=301", "?at=1&unit=kg", "?at=1&unit=ohm", "?at=1&within=-1")) {
            get("/reels/R2" + own + "/positions" + wrong).statusCode(422);
        }
        get("/reels/JK" + own + "/positions?at=1").statusCode(404);
    }

    @Test
    void givesAncestorsWithQuantitiesAndPositions() {
        get("/reels/R1" + own + "/ancestors")
                .body(
                        "links.find { it.from == 'JK" + own + "' }.position.onParentFrom.value",
                        closeTo(304.8, MICROMETRE))
                .body("links.find { it.from == 'PE" + own + "' }.position", nullValue())
                .body("links.find { it.from == 'PE" + own + "' }.quantity.unit", equalTo("kg"))
                .body("lots.find { it.id == 'IA" + own + "' }.run", equalTo("RUN" + own));
    }

    @Test
    void splitsReelsByWhereTheyAre() {
        products.put(
                "north",
                new Product("P" + own, "one pair", "category-6a-cable", 4, "23 AWG", 0.68, Map.of(), List.of()),
                OffsetDateTime.parse("2019-02-11T09:00:00Z").toInstant());
        reels.put(new RegisteredReel(
                "north",
                "R2" + own,
                "P" + own,
                Length.of(300, "m"),
                300,
                "m",
                null,
                "SO-1",
                "Invented Networks",
                OffsetDateTime.parse("2019-02-14T10:00:00Z")));
        tell("R2", "{\"state\": \"shipped\", \"to\": \"Invented Networks\", \"reason\": \"order SO-1\"}")
                .statusCode(201)
                .body("state", equalTo("shipped"));
        tell("R3", "{\"state\": \"shipped\", \"to\": \"Somebody\"}").statusCode(201);
        tell("R3", "{\"state\": \"scrapped\", \"reason\": \"came back wet\"}").statusCode(201);
        get("/lots/AC" + own + "/descendants")
                .body("reels.count", equalTo(3))
                .body("reels.inStock.reel", contains("R1" + own))
                .body("reels.inStock[0].disposition", nullValue())
                .body("reels.shipped.to", contains("Invented Networks"))
                .body("reels.shipped[0].reels.reel", contains("R2" + own))
                .body("reels.shipped[0].reels[0].order", equalTo("SO-1"))
                .body("reels.scrapped.reel", contains("R3" + own))
                .body("reels.scrapped[0].disposition.reason", equalTo("came back wet"));
        get("/reels/R3" + own + "/disposition").body("dispositions.state", contains("scrapped", "shipped"));
        get("/reels/R1" + own + "/disposition").body("dispositions", empty());
        get("/audit?subject=reel/R3" + own).body("entries.action", contains("reel-scrapped", "reel-shipped"));
        for (String wrong : List.of(
                "{\"state\": \"lost\"}",
                "{}",
                "{\"state\": \"shipped\"}",
                "{\"state\": \"scrapped\", \"to\": \"x\"}",
                "{\"state\": \"in-stock\", \"colour\": \"x\"}")) {
            tell("R1", wrong).statusCode(422);
        }
        tell("NOWHERE", "{\"state\": \"in-stock\"}").statusCode(404);
        tell("JK", "{\"state\": \"in-stock\"}").statusCode(404);
    }

    @Test
    void findsWhatReelsHaveInCommon() {
        String names = String.join(",", "R1" + own, "R2" + own, "R4" + own);
        get("/lots/common-ancestors?reels=" + names)
                .statusCode(200)
                .body("reels", equalTo(3))
                .body("unknown", empty())
                // both conductors lead to it; a reel counts once
                .body("lots.id", contains("PE" + own, "AC" + own, "IA" + own, "IB" + own, "JK" + own, "TP" + own))
                .body("lots.reels", contains(3, 2, 2, 2, 2, 2))
                .body("lots.byAll", contains(true, false, false, false, false, false));
        given().contentType("application/json")
                .body("{\"reels\": [\"R1" + own + "\", \"R3" + own + "\", \"GONE" + own + "\"]}")
                .post("/api/v1/lots/common-ancestors")
                .then()
                .body("unknown", contains("GONE" + own))
                .body("lots.byAll", not(hasItem(false)))
                .body("lots.id", hasItems("JK" + own, "PE" + own));
        get("/lots/common-ancestors?reels=R1" + own)
                .body("lots.id", allOf(hasItem("AC" + own), not(hasItem("R1" + own))));
        get("/lots/common-ancestors").statusCode(422);
        get("/lots/common-ancestors?reels=a%20b").statusCode(422);
    }

    @Test
    void findsReelsThatShareARunOrAMachinesTime() {
        get("/runs/RUN" + own + "/reels")
                .statusCode(200)
                .body("outputs.id", contains("IA" + own, "IB" + own))
                .body("count", equalTo(3))
                .body("reels.reel", contains("R1" + own, "R2" + own, "R3" + own));
        get("/runs/RUN" + own + "/reels?from=2019-02-13T00:00:00Z&to=2019-02-13T23:00:00Z")
                .body("reels.reel", contains("R2" + own));
        get("/runs/RUN" + own + "/reels?from=yesterday").statusCode(422);
        get("/runs/NO" + own + "/reels").statusCode(404);
        get("/machines/JKT" + own + "/reels")
                .body("reels.reel", contains("R1" + own, "R2" + own, "R3" + own, "R4" + own));
        // the run went on from 6:10 to 7:30: IB was made at its end, and was on the machine at 6:30
        get("/machines/INS" + own + "/reels?from=2019-02-11T06:20:00Z&to=2019-02-11T06:30:00Z")
                .body("outputs.id", contains("IA" + own, "IB" + own));
        get("/machines/INS" + own + "/reels?from=2019-02-11T07:10:00Z").body("outputs.id", contains("IB" + own));
        get("/machines/INS" + own + "/reels?to=2019-02-11T06:00:00Z")
                .body("outputs", empty())
                .body("reels", empty());
    }

    @Test
    void whatIsIncompleteIsOfTheTimeAskedForOrOfAny() {
        String now = OffsetDateTime.now(ZoneOffset.UTC).minusMinutes(1).toString();
        Map<String, String> reels =
                Map.of("WITHIN", "2019-02-05T00:00:01Z", "BEFORE", "2019-02-04T23:59:59Z", "NEW", now);
        reels.forEach((reel, made) -> {
            given().contentType("application/json")
                    .body("{\"id\": \"" + reel + own
                            + "\", \"kind\": \"reel\", \"quantity\": {\"value\": 1, \"unit\": \"m\"}, \"made\": \""
                            + made + "\"}")
                    .post("/api/v1/lots")
                    .then()
                    .statusCode(201);
        });
        get("/lots/incomplete?from=2019-02-05T00:00:00Z&to=2019-02-12T00:00:00Z&limit=10000")
                .body("from", equalTo("2019-02-05T00:00:00Z"))
                .body("reelsWithoutInputs", hasItem("WITHIN" + own))
                .body("reelsWithoutInputs", not(hasItem("BEFORE" + own)))
                .body("lacking.id", hasItem("IB" + own));
        get("/lots/incomplete?limit=10000")
                .body("from", nullValue())
                .body("to", nullValue())
                .body("reelsWithoutInputs", hasItems("WITHIN" + own, "BEFORE" + own, "NEW" + own))
                .body("lacking.id", hasItem("IB" + own));
        get("/lots/incomplete?from=2019-02-04T00:00:00Z&limit=10000")
                .body("reelsWithoutInputs", hasItems("BEFORE" + own, "WITHIN" + own, "BARE" + own));
    }

    @Test
    void tellsWhatIsIncomplete() {
        String time = "from=2019-02-11T00:00:00Z&to=2019-02-15T00:00:00Z&limit=10000";
        get("/lots/incomplete?" + time)
                .statusCode(200)
                .body("reelsWithoutInputs", hasItem("BARE" + own))
                .body("reelsWithoutInputs", not(hasItem("R1" + own)))
                .body("lacking.find { it.id == 'IB" + own + "' }.missing", contains("insulation-compound"))
                .body("lacking.find { it.id == 'JK" + own + "' }.missing", contains("jacket-compound"))
                .body("lacking.find { it.id == 'AC" + own + "' }.missing", contains("rod or breakdown-wire"))
                .body("lacking.id", not(hasItem("IA" + own)))
                .body("lacking.id", not(hasItem("BARE" + own)));
        get("/lots/incomplete?" + time)
                .body("from", equalTo("2019-02-11T00:00:00Z"))
                .body("to", equalTo("2019-02-15T00:00:00Z"));
        get("/lots/incomplete?from=2019-03-01T00:00:00Z").body("lacking.id", not(hasItem("IB" + own)));
        get("/lots/incomplete?limit=0").statusCode(422);
        get("/lots/waiting?limit=100000").statusCode(422);
    }
}
