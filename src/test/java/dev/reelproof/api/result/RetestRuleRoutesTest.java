package dev.reelproof.api.result;

import static dev.reelproof.api.TestPlant.newReel;
import static dev.reelproof.api.TestPlant.test;
import static dev.reelproof.api.access.TestSignIn.person;
import static io.restassured.RestAssured.get;
import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.nullValue;
import static org.hamcrest.Matchers.oneOf;

import dev.reelproof.access.Role;
import dev.reelproof.api.AskingPlants;
import dev.reelproof.api.access.SignedIn;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.response.ValidatableResponse;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** What a plant may ask of tests: the reel's number, a reason, a number of attempts, an engineer. */
@QuarkusTest
@TestProfile(AskingPlants.class)
@ExtendWith(SignedIn.class)
class RetestRuleRoutesTest {
    private static String passing(int hour) {
        return finished(hour, new SampleResult().json());
    }

    private static String failing(int hour) {
        return finished(hour, new SampleResult().resistance(12).json());
    }

    private static String finished(int hour, String json) {
        String time = "2026-03-02T%02d:00:00Z".formatted(hour);
        return json.replace("2026-03-02T14:05:00Z", time).replace("2026-03-02T14:09:30Z", time);
    }

    private static String with(String keys, String json) {
        return "{" + keys + ", " + json.substring(1);
    }

    private static ValidatableResponse accept(String record, Role role, String body) {
        return person("Eva", role)
                .contentType("application/json")
                .body(body)
                .post("/api/v1/records/" + record + "/acceptance")
                .then();
    }

    private static ValidatableResponse ship(String reel) {
        return given().contentType("application/json")
                .body("{\"state\": \"shipped\", \"to\": \"Invented Customer\"}")
                .post("/api/v1/reels/" + reel + "/disposition")
                .then();
    }

    private static ValidatableResponse certify(String reel) {
        return given().post("/api/v1/reels/" + reel + "/certificates").then();
    }

    @Test
    void aPassAfterTwoFailuresWaitsForAnEngineer() {
        String reel = newReel(100);
        test(reel, failing(10)).statusCode(201);
        test(reel, failing(11)).statusCode(201);
        String pass = test(reel, passing(12))
                .statusCode(201)
                .body("verdict", equalTo("accepted"))
                .body("awaitsEngineer", equalTo(true))
                .body("earlierVerdicts", contains("rejected", "rejected"))
                .body("attemptSummary", equalTo("accepted at attempt 3; rejected twice"))
                .body("verdictSentence", containsString("Do not ship"))
                .body("retestAcceptance", nullValue())
                .extract()
                .path("id");
        certify(reel).statusCode(409).body("detail", containsString("passed after a failure"));
        given().contentType("application/json")
                .body("{\"kind\": \"reel\", \"id\": \"" + reel
                        + "\", \"quantity\": {\"value\": 100, \"unit\": \"m\"}, \"made\": \"2026-03-01T09:00:00Z\"}")
                .post("/api/v1/lots")
                .then()
                .statusCode(oneOf(200, 201));
        ship(reel).statusCode(409).body("detail", containsString("passed after a failure"));
        given().queryParam("query", reel).get("/api/v1/reels").then().body("reels[0].awaitsEngineer", equalTo(true));

        accept(pass, Role.TECHNICIAN, "{\"reason\": \"it passes\"}").statusCode(403);
        accept(pass, Role.ENGINEER, "{}").statusCode(422);
        accept(pass, Role.ENGINEER, "{\"reason\": \"lead was loose\"}")
                .statusCode(201)
                .body("awaitsEngineer", equalTo(false))
                .body("retestAcceptance.by", equalTo("Eva"))
                .body("retestAcceptance.reason", equalTo("lead was loose"));
        accept(pass, Role.ENGINEER, "{\"reason\": \"once more\"}").statusCode(409);
        given().queryParam("subject", "reel/" + reel)
                .queryParam("action", "retest-accepted")
                .get("/api/v1/audit")
                .then()
                .body("entries", hasSize(1))
                .body("entries[0].actor", equalTo("Eva"))
                .body("entries[0].reason", equalTo("lead was loose"));
        certify(reel).statusCode(201);
        ship(reel).statusCode(201);

        // A failure of an earlier hour that comes in only now: the engineer could not know of it.
        test(reel, failing(9)).statusCode(201).body("newest", equalTo(false));
        certify(reel).statusCode(409);
        accept(pass, Role.ENGINEER, "{\"reason\": \"known now\"}").statusCode(201);
        certify(reel).statusCode(200);
    }

    @Test
    void onlyTheNewestTestCanBeAccepted() {
        String reel = newReel(100);
        String first = test(reel, failing(10)).statusCode(201).extract().path("id");
        accept(first, Role.ENGINEER, "{\"reason\": \"why not\"}").statusCode(409);
        String pass = test(reel, passing(11)).statusCode(201).extract().path("id");
        accept(first, Role.ENGINEER, "{\"reason\": \"why not\"}")
                .statusCode(409)
                .body("detail", containsString("not its newest"));
        test(reel, failing(12)).statusCode(201);
        accept(pass, Role.ENGINEER, "{\"reason\": \"why not\"}").statusCode(409);
        accept(UUID.randomUUID().toString(), Role.ENGINEER, "{\"reason\": \"why not\"}")
                .statusCode(404);
    }

    private static String reelOfSouth() {
        given().queryParam("plant", "south")
                .contentType("application/json")
                .body("{\"description\": \"four pairs\", \"limitSet\": \"category-6a-cable\","
                        + " \"pairs\": 4, \"gauge\": \"23 AWG\"}")
                .put("/api/v1/products/HD6A-4P")
                .then()
                .statusCode(oneOf(200, 201));
        String reel = "S-" + UUID.randomUUID();
        given().contentType("application/json")
                .body("{\"plant\": \"south\", \"product\": \"HD6A-4P\", \"length\": {\"value\": 100, \"unit\": \"m\"}}")
                .put("/api/v1/reels/" + reel)
                .then()
                .statusCode(201);
        return reel;
    }

    private static ValidatableResponse testAtSouth(String reel, String json) {
        return given().queryParam("plant", "south")
                .contentType("application/json")
                .body(json)
                .post("/api/v1/reels/" + reel + "/tests")
                .then();
    }

    @Test
    void aPlantMayDemandTheReelAReasonAndANumberOfTests() {
        String reel = reelOfSouth();
        String named = "\"reel\": \"" + reel + "\"";
        String again = named + ", \"retestReason\": \"lead was loose\"";
        testAtSouth(reel, failing(10))
                .statusCode(422)
                .body("errors[0].where", equalTo("/reel"))
                .body("errors[0].message", containsString(reel));
        testAtSouth(reel, with(named, failing(10))).statusCode(201);
        given().queryParam("plant", "south")
                .get("/api/v1/reels/" + reel)
                .then()
                .body("asksRetestReason", equalTo(true));
        testAtSouth(reel, with(named, failing(11))).statusCode(422).body("errors[0].where", equalTo("/retestReason"));
        testAtSouth(reel, with(again, failing(11))).statusCode(201).body("awaitsEngineer", equalTo(false));
        testAtSouth(reel, with(again, passing(12))).statusCode(409).body("detail", containsString("was tested twice"));
        testAtSouth(reel, with(again, failing(13))).statusCode(201);
        given().queryParam("plant", "south")
                .get("/api/v1/reels/" + reel)
                .then()
                .body("records", hasSize(3))
                .body("records[0].verdict", equalTo("rejected"));
        person("Eva", Role.ENGINEER)
                .queryParam("plant", "south")
                .contentType("application/json")
                .body(with(again, passing(14)))
                .post("/api/v1/reels/" + reel + "/tests")
                .then()
                .statusCode(201)
                .body("verdict", equalTo("accepted"));
    }

    @Test
    void aReelOfNorthNeedsNeitherANumberNorAReason() {
        String reel = newReel(100);
        test(reel, failing(10)).statusCode(201);
        test(reel, failing(11)).statusCode(201);
        get("/api/v1/reels/" + reel).then().body("asksRetestReason", equalTo(false));
    }
}
