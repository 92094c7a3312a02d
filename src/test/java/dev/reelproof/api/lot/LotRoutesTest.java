package dev.reelproof.api.lot;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.reelproof.api.access.SignedIn;
import dev.reelproof.measurement.Product;
import dev.reelproof.quantity.Length;
import dev.reelproof.record.RegisteredReel;
import dev.reelproof.store.reel.Products;
import dev.reelproof.store.reel.Reels;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

@QuarkusTest
@ExtendWith(SignedIn.class)
class LotRoutesTest {
    private static final String PROBLEM = "application/problem+json";
    private static final OffsetDateTime MORNING = OffsetDateTime.parse("2026-02-11T09:00:00Z");

    @Inject
    Products products;

    @Inject
    Reels reels;

    /** Makes the identifiers of one test its own: lots are kept for ever. */
    private final String own = "-" + UUID.randomUUID().toString().substring(0, 8);

    @Test
    void registersALotAndGivesItBack() {
        register(material("AC", "annealed-conductor", 50_000, "m"));
        register(material("PE", "insulation-compound", 1, "t"));
        post("""
                {"id": "IC%1$s", "plant": "north", "kind": "insulated-conductor",
                 "quantity": {"value": 42, "unit": "km"},
                 "made": "2026-02-11T04:12:00.5-06:00", "step": "insulating", "machine": "INS-2",
                 "inputs": [{"lot": "PE%1$s", "quantity": {"value": 84.9, "unit": "lb"}},
                            {"lot": "AC%1$s", "quantity": {"value": 42000, "unit": "m"}}]}"""
                        .formatted(own))
                .statusCode(201)
                .header("Location", endsWith("/api/v1/lots/IC" + own))
                .body("id", equalTo("IC" + own));
        get("/lots/IC" + own)
                .statusCode(200)
                .body("plant", equalTo("north"))
                .body("kind", equalTo("insulated-conductor"))
                .body("quantity", equalTo(Map.of("value", 42.0f, "unit", "km")))
                .body("made", equalTo("2026-02-11T10:12:00.5Z"))
                .body("step", equalTo("insulating"))
                .body("machine", equalTo("INS-2"))
                .body("inputs.lot", contains("PE" + own, "AC" + own))
                .body("inputs[0].quantity", equalTo(Map.of("value", 84.9f, "unit", "lb")));
        get("/lots/AC" + own).body("inputs", empty()).body("machine", nullValue());
    }

    @Test
    void takesTheSameLotAgainThoughItsParentIsUsedUp() {
        register(material("PE", "jacket-compound", 100, "kg"));
        String whole = lot("J", "jacketed-cable", "PE", 100, "kg");
        post(whole).statusCode(201);
        post(whole.replace(",", " ,\n").replace("09:00:00Z", "10:00:00+01:00"))
                .statusCode(200)
                .body("id", equalTo("J" + own));
    }

    @Test
    void meansTheHomePlantWhereNoneIsNamed() {
        register(material("PE", "jacket-compound", 1, "kg").replace("\"plant\": \"north\", ", ""));
        get("/lots/PE" + own).statusCode(200).body("plant", equalTo("north"));
    }

    @Test
    void refusesOtherContentUnderTheSameIdentifier() {
        String lot = material("PE", "jacket-compound", 100, "kg");
        register(lot);
        post(lot.replace("100", "101"))
                .statusCode(409)
                .contentType(PROBLEM)
                .body("status", equalTo(409))
                .body("detail", containsString("(quantity)"))
                .body("errors", hasSize(1));
        get("/lots/PE" + own).body("quantity.value", equalTo(100.0f));
    }

    @Test
    void refusesAnUnknownParentAndKeepsNothing() {
        post(lot("J", "jacketed-cable", "NOWHERE", 1, "kg"))
                .statusCode(422)
                .contentType(PROBLEM)
                .body("errors", hasSize(1))
                .body("errors[0].where", equalTo("/inputs/0/lot"))
                .body("errors[0].message", containsString("unknown lot NOWHERE" + own));
        get("/lots/J" + own).statusCode(404);
    }

    @Test
    void refusesALotMadeFromItself() {
        post(lot("J", "jacketed-cable", "J", 1, "m"))
                .statusCode(422)
                .body("errors.where", contains("/inputs/0/lot"))
                .body("errors[0].message", containsString("cannot go into itself"));
    }

    @Test
    void refusesMoreThanIsLeft() {
        register(material("AC", "annealed-conductor", 1, "km"));
        register(lot("IC1", "insulated-conductor", "AC", 700, "m"));
        post(lot("IC2", "insulated-conductor", "AC", 301, "m"))
                .statusCode(422)
                .body("errors[0].where", equalTo("/inputs/0/quantity"))
                .body("errors[0].message", containsString("had 1 km, of which 0.3 km are left; 301 m is too much"));
        register(lot("IC2", "insulated-conductor", "AC", 300, "m"));
        post(lot("IC3", "insulated-conductor", "AC", 1, "m"))
                .statusCode(422)
                .body("errors[0].message", containsString("of which 0 km are left"));
    }

    @Test
    void refusesWhatIsNoLot() {
        post("").statusCode(400).contentType(PROBLEM);
        post("{\"id\": \"A\"").statusCode(400).contentType(PROBLEM);
        post("{\"plant\": \"south\", \"kind\": \"wood\", \"quantity\": {\"value\": -1, \"unit\": \"m\"},"
                        + " \"made\": \"today\", \"colour\": \"blue\", \"inputs\": [{\"lot\": \"A\"}]}")
                .statusCode(422)
                .body(
                        "errors.where",
                        contains("/colour", "/id", "/plant", "/kind", "/quantity", "/made", "/inputs/0/quantity"));
        post(material("PE", "jacket-compound", 1, "ohm")).statusCode(422).body("errors.where", contains("/quantity"));
        given().contentType("text/plain").body("x").post("/api/v1/lots").then().statusCode(415);
    }

    @Test
    void asksForAKnownStepOnlyWhereMoreIsToldOfTheRun() {
        String lot = material("PE", "jacket-compound", 1, "kg").replace("\"made\"", "\"step\": \"baking\", \"made\"");
        register(lot);
        String more = lot.replace("PE" + own, "PF" + own).replace("\"step\"", "\"operator\": \"op-1\", \"step\"");
        post(more)
                .statusCode(422)
                .body("errors.where", contains("/step"))
                .body("errors[0].message", containsString("unknown step 'baking'; known steps: rod-receipt"));
        register(more.replace("baking", "Compound receipt"));
        get("/lots/PF" + own).body("run", equalTo("PF" + own)).body("operator", equalTo("op-1"));
    }

    @Test
    void isMadeWhenItsRunFinishedUnlessItSaysOtherwise() {
        String lot = material("PE", "jacket-compound", 1, "kg").replace("\"made\"", "\"finished\"");
        register(lot);
        get("/lots/PE" + own).body("made", equalTo("2026-02-11T09:00:00Z"));
        post(lot.replace("PE" + own, "PF" + own).replace("\"finished\"", "\"started\""))
                .statusCode(422)
                .body("errors.where", contains("/made"));
    }

    @Test
    void refusesAPositionThatIsNone() {
        register(material("AC", "annealed-conductor", 1, "km"));
        String lot = lot("IC", "insulated-conductor", "AC", 900, "m");
        for (String position : List.of(
                "{}",
                "5",
                "{\"from\": {\"value\": 0, \"unit\": \"m\"}}",
                place(0, "m", 0, "m", 0, 900, "m"),
                place(0, "m", 900, "ft", 0, 900, "m"),
                place(0, "m", -900, "m", 0, 900, "m"),
                place(0, "m", 900, "m", 500, 1400, "m"),
                place(0, "m", 1100, "m", 0, 900, "m"),
                place(0, "m", 900, "m", 0, 9, "kg"))) {
            post(lot.replace("}]}", "}, \"position\": " + position + "}]}").replace("}}, \"pos", "}, \"pos"))
                    .statusCode(422)
                    .body("errors[0].where", containsString("/inputs/0/position"));
        }
        register(lot.replace("}]}", "}, \"position\": " + place(0, "m", 900, "m", 900, 0, "m") + "}]}")
                .replace("}}, \"pos", "}, \"pos"));
    }

    private static String place(
            double from, String unit, double to, String toUnit, double onFrom, double onTo, String onUnit) {
        return """
                {"from": {"value": %s, "unit": "%s"}, "to": {"value": %s, "unit": "%s"}, "onParentFrom": {"value": %s, "unit": "%7$s"}, "onParentTo": {"value": %6$s, "unit": "%7$s"}}"""
                .formatted(from, unit, to, toUnit, onFrom, onTo, onUnit);
    }

    @Test
    void doesNotKnowWhatWasNotRegistered() {
        for (String path : List.of(
                "/lots/NOWHERE",
                "/lots/NOWHERE/descendants",
                "/reels/NOWHERE/ancestors",
                "/lots/%00",
                "/reels/a%20b/ancestors")) {
            get(path)
                    .statusCode(404)
                    .contentType(PROBLEM)
                    .body("detail", containsString("is not registered at plant north"));
        }
        register(material("PE", "jacket-compound", 1, "kg"));
        get("/reels/PE" + own + "/ancestors").statusCode(404);
        get("/lots/PE" + own + "?plant=north").statusCode(200);
        get("/lots/PE" + own + "?plant=nowhere").statusCode(422).body("errors.where", contains("plant"));
    }

    @Test
    void countsADiamondOnceAtItsLeastDepth() {
        register(material("ROD", "rod", 5_000, "lb"));
        register(lot("AC1", "annealed-conductor", "ROD", 100, "kg"));
        register(lot("AC2", "annealed-conductor", "ROD", 200, "kg"));
        post("""
                {"id": "R%1$s", "plant": "north", "kind": "reel", "quantity": {"value": 1000, "unit": "ft"},
                 "made": "2026-02-11T09:00:00Z", "machine": "M-1",
                 "inputs": [{"lot": "AC1%1$s", "quantity": {"value": 300, "unit": "m"}},
                            {"lot": "AC2%1$s", "quantity": {"value": 1, "unit": "kft"}},
                            {"lot": "ROD%1$s", "quantity": {"value": 2, "unit": "g"}}]}"""
                        .formatted(own))
                .statusCode(201);
        get("/reels/R" + own + "/ancestors")
                .statusCode(200)
                .body("lots.id", contains("R" + own, "AC1" + own, "AC2" + own, "ROD" + own))
                .body("lots.depth", contains(0, 1, 1, 1))
                .body("lots.kind", contains("reel", "annealed-conductor", "annealed-conductor", "rod"))
                .body("lots[0].machine", equalTo("M-1"))
                .body("lots[0].made", equalTo("2026-02-11T09:00:00Z"))
                .body("lots[3].quantity", equalTo(Map.of("value", 5_000.0f, "unit", "lb")))
                .body("links.from", contains("AC1" + own, "AC2" + own, "ROD" + own, "ROD" + own, "ROD" + own))
                .body("links.to", contains("R" + own, "R" + own, "R" + own, "AC1" + own, "AC2" + own))
                .body("links[1].quantity", equalTo(Map.of("value", 1.0f, "unit", "kft")));
        get("/lots/ROD" + own + "/descendants")
                .statusCode(200)
                .body("lots.id", contains("ROD" + own, "AC1" + own, "AC2" + own, "R" + own))
                .body("lots.depth", contains(0, 1, 1, 1))
                .body("links", hasSize(5));
        // what went into the reel beside AC1 does not descend from AC1
        get("/lots/AC1" + own + "/descendants")
                .body("lots.id", contains("AC1" + own, "R" + own))
                .body("links.from", contains("AC1" + own));
    }

    @Test
    void followsADeepChain() {
        int deep = 60;
        register(material("L0", "annealed-conductor", 1, "km"));
        for (int i = 1; i < deep; i++) {
            register(lot("L" + i, "unit", "L" + (i - 1), 1, "km"));
        }
        register(lot("L" + deep, "reel", "L" + (deep - 1), 1, "km"));
        List<Integer> up = get("/reels/L" + deep + own + "/ancestors")
                .body("lots", hasSize(deep + 1))
                .body("links", hasSize(deep))
                .extract()
                .path("lots.depth");
        List<Integer> down = get("/lots/L0" + own + "/descendants").extract().path("lots.depth");
        for (int i = 0; i <= deep; i++) {
            assertEquals(i, up.get(i));
            assertEquals(i, down.get(i));
        }
    }

    @Test
    void showsARegisteredReelAloneUntilItsMakingIsReported() {
        products.put(
                "north",
                new Product("P" + own, "four pairs", "category-6a-cable", 4, "23 AWG", 0.68, Map.of(), List.of()),
                MORNING.toInstant());
        reels.put(new RegisteredReel(
                "north", "R" + own, "P" + own, Length.of(1, "kft"), 1, "kft", null, null, null, MORNING));
        get("/reels/R" + own + "/ancestors")
                .statusCode(200)
                .body("lots.id", contains("R" + own))
                .body("lots.depth", contains(0))
                .body("lots.kind", contains("reel"))
                .body("lots[0].made", nullValue())
                .body("links", empty());
        post(material("R", "core", 1, "km"))
                .statusCode(422)
                .body("errors[0].where", equalTo("/id"))
                .body("errors[0].message", containsString("is the number of a registered reel"));
        register(material("CORE", "core", 1, "km"));
        register(lot("R", "reel", "CORE", 305, "m"));
        get("/reels/R" + own + "/ancestors").body("lots.id", contains("R" + own, "CORE" + own));
    }

    @Test
    void describesItsRoutes() {
        given().accept("application/json")
                .get("/q/openapi")
                .then()
                .statusCode(200)
                .body("components.schemas.LotReport.required", contains("id", "kind", "quantity", "made"))
                .body("paths.'/api/v1/lots'.post.responses.keySet()", hasItems("200", "201", "400", "409", "422"))
                .body(
                        "paths.keySet()",
                        hasItems(
                                "/api/v1/lots/{lot}",
                                "/api/v1/lots/{lot}/descendants",
                                "/api/v1/reels/{reel}/ancestors"));
    }

    private String material(String id, String kind, double value, String unit) {
        return """
                {"id": "%s%s", "plant": "north", "kind": "%s", "quantity": {"value": %s, "unit": "%s"},
                 "made": "2026-02-11T09:00:00Z"}"""
                .formatted(id, own, kind, value, unit);
    }

    private String lot(String id, String kind, String parent, double taken, String unit) {
        return """
                {"id": "%1$s%2$s", "plant": "north", "kind": "%3$s", "quantity": {"value": 1, "unit": "km"},
                 "made": "2026-02-11T09:00:00Z",
                 "inputs": [{"lot": "%4$s%2$s", "quantity": {"value": %5$s, "unit": "%6$s"}}]}"""
                .formatted(id, own, kind, parent, taken, unit);
    }

    private static void register(String lot) {
        post(lot).statusCode(201);
    }

    private static ValidatableResponse post(String lot) {
        return given().contentType("application/json")
                .body(lot)
                .post("/api/v1/lots")
                .then();
    }

    private static ValidatableResponse get(String path) {
        return given().urlEncodingEnabled(false).get("/api/v1" + path).then();
    }
}
