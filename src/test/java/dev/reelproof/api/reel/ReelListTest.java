package dev.reelproof.api.reel;

import static dev.reelproof.api.access.TestSignIn.person;
import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.reelproof.access.Role;
import dev.reelproof.api.TestPlant;
import dev.reelproof.api.access.SignedIn;
import dev.reelproof.api.result.SampleResult;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** What a line of the list of reels says: the time of the test, not of its receipt, and whether the reel is on hold. */
@QuarkusTest
@ExtendWith(SignedIn.class)
class ReelListTest {
    private final String own = "-" + UUID.randomUUID().toString().substring(0, 8);

    private static ValidatableResponse list(String query) {
        return given().queryParam("query", query).get("/api/v1/reels").then().statusCode(200);
    }

    private static String hold(String key, String name) {
        return person("anna", Role.ENGINEER)
                .contentType("application/json")
                .body("{\"" + key + "\": \"" + name + "\", \"reason\": \"bare spots\"}")
                .post("/api/v1/holds")
                .then()
                .statusCode(201)
                .extract()
                .path("id");
    }

    private static void release(String hold, String more) {
        person("Ben", Role.QUALITY_MANAGER)
                .contentType("application/json")
                .body("{\"reason\": \"measured again\"" + more + "}")
                .post("/api/v1/holds/" + hold + "/release")
                .then()
                .statusCode(200);
    }

    private static void lot(String id, String kind, String more) {
        given().contentType("application/json")
                .body("{\"id\": \"" + id + "\", \"kind\": \"" + kind
                        + "\", \"quantity\": {\"value\": 600, \"unit\": \"m\"}, \"made\": \"2026-02-11T09:00:00Z\""
                        + more
                        + "}")
                .post("/api/v1/lots")
                .then()
                .statusCode(201);
    }

    /** The reels that the list marks are those that say themselves that they are held. */
    private void assertHeld(List<String> reels, String... held) {
        for (String reel : reels) {
            boolean isHeld = List.of(held).contains(reel);
            list(reel).body("reels.held", contains(isHeld));
            given().get("/api/v1/reels/" + reel).then().body("held", isHeld ? not(empty()) : empty());
        }
    }

    @Test
    void aLineSaysWhenTheReelWasTested() {
        String reel = TestPlant.newReel();
        list(reel)
                .body("reels", hasSize(1))
                .body("reels[0].finished", nullValue())
                .body("reels[0].tested", nullValue())
                .body("reels[0].verdict", nullValue())
                .body("reels[0].held", equalTo(false));
        TestPlant.test(reel, new SampleResult().json()).statusCode(201);
        String finished = given().get("/api/v1/reels/" + reel).then().extract().path("records[0].finished");
        String received = given().get("/api/v1/reels/" + reel).then().extract().path("records[0].received");
        list(reel)
                .body("reels[0].finished", equalTo(finished))
                .body("reels[0].tested", equalTo(received))
                .body("reels[0].verdict", equalTo("accepted"));
    }

    @Test
    void aLineSaysWhetherTheReelIsHeld() {
        String machine = "INS" + own;
        String run = "RUN" + own;
        lot(
                "AC" + own,
                "annealed-conductor",
                ", \"step\": \"drawing\", \"run\": \"" + run + "\", \"machine\": \"" + machine
                        + "\", \"started\": \"2026-02-11T07:00:00Z\", \"finished\": \"2026-02-11T09:00:00Z\"");
        String below = TestPlant.newReel();
        String beside = TestPlant.newReel();
        lot(
                below,
                "reel",
                ", \"inputs\": [{\"lot\": \"AC" + own + "\", \"quantity\": {\"value\": 600, \"unit\": \"m\"}}]");
        List<String> both = List.of(below, beside);
        assertHeld(both);
        String ofReel = hold("reel", beside);
        assertHeld(both, beside);
        String ofLot = hold("lot", "AC" + own);
        assertHeld(both, below, beside);
        release(ofReel, "");
        assertHeld(both, below);
        release(ofLot, "");
        assertHeld(both);
        String ofRun = hold("run", run);
        assertHeld(both, below);
        release(ofRun, "");
        String ofMachine =
                hold("machine", machine + "\", \"from\": \"2026-02-11T08:00:00Z\", \"to\": \"2026-02-11T08:30:00Z");
        assertHeld(both, below);
        release(ofMachine, "");
        assertHeld(both);
    }

    /** Two reels of one lot, side by side; the stretch of one of them is released. */
    @Test
    void aReelThatAReleaseByLengthFreesIsNotMarked() {
        lot("IC" + own, "insulated-conductor", "");
        String first = TestPlant.newReel();
        String second = TestPlant.newReel();
        for (int i = 0; i < 2; i++) {
            lot(
                    List.of(first, second).get(i),
                    "reel",
                    ", \"inputs\": [{\"lot\": \"IC" + own
                            + "\", \"quantity\": {\"value\": 300, \"unit\": \"m\"}, \"position\": {\"from\": {\"value\": 0,"
                            + " \"unit\": \"m\"}, \"to\": {\"value\": 600, \"unit\": \"m\"}, \"onParentFrom\": {\"value\": "
                            + 300 * i + ", \"unit\": \"m\"}, \"onParentTo\": {\"value\": " + 300 * (i + 1)
                            + ", \"unit\": \"m\"}}}]");
        }
        String hold = hold("lot", "IC" + own);
        assertHeld(List.of(first, second), first, second);
        release(
                hold,
                ", \"range\": {\"from\": {\"value\": 0, \"unit\": \"m\"}, \"to\": {\"value\": 300, \"unit\": \"m\"}}");
        assertHeld(List.of(first, second), second);
    }

    @Test
    void theNewestTestedComeFirstAndTheListIsAsLongAsAsked() {
        String customer = "customer" + own;
        TestPlant.putProduct("HD6A-4P", "category-6a-cable", 4);
        for (int i = 0; i < 3; i++) {
            TestPlant.putReel(
                            "R" + i + own,
                            "{\"product\": \"HD6A-4P\", \"length\": {\"value\": 305, \"unit\": \"m\"}, \"customer\": \""
                                    + customer + "\"}")
                    .statusCode(201);
        }
        TestPlant.test("R1" + own, new SampleResult().json()).statusCode(201);
        list(customer).body("reels.reel", contains("R1" + own, "R2" + own, "R0" + own));
        given().queryParam("query", customer)
                .queryParam("limit", 2)
                .get("/api/v1/reels")
                .then()
                .body("reels.reel", contains("R1" + own, "R2" + own));
        assertEquals(
                422,
                given().queryParam("limit", 501)
                        .get("/api/v1/reels")
                        .then()
                        .extract()
                        .statusCode());
    }

    /** The database holds no such character and cannot be asked for one. */
    @Test
    void aControlCharacterIsRefusedAndNotLookedFor() {
        given().queryParam("query", "R\u0000")
                .get("/api/v1/reels")
                .then()
                .statusCode(422)
                .body("errors[0].where", equalTo("query"))
                .body("errors[0].message", containsString("control character"));
    }
}
