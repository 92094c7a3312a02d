package dev.reelproof.api.order;

import static dev.reelproof.api.TestPlant.test;
import static dev.reelproof.api.access.TestSignIn.person;
import static io.restassured.RestAssured.get;
import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;

import dev.reelproof.access.Role;
import dev.reelproof.api.AskingPlants;
import dev.reelproof.api.TestPlant;
import dev.reelproof.api.access.SignedIn;
import dev.reelproof.api.result.SampleResult;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** A reel that passed after a failure, at a plant that has an engineer accept such: nothing calls it ready before. */
@QuarkusTest
@TestProfile(AskingPlants.class)
@ExtendWith(SignedIn.class)
class AwaitedEngineerRoutesTest {
    private final String order = "ENG-" + UUID.randomUUID();
    private final String reel = "A-" + order;

    private static String finished(int hour, SampleResult result) {
        String time = "2026-03-02T%02d:00:00Z".formatted(hour);
        return result.json().replace("2026-03-02T14:05:00Z", time).replace("2026-03-02T14:09:30Z", time);
    }

    private void register() {
        TestPlant.putProduct("HD6A-4P", "category-6a-cable", 4);
        TestPlant.putReel(
                        reel,
                        "{\"plant\": \"north\", \"product\": \"HD6A-4P\", \"length\": {\"value\": 100, \"unit\": \"m\"},"
                                + " \"order\": \"" + order + "\"}")
                .statusCode(201);
    }

    private void stateIs(String number, String state) {
        SignedIn.nobody()
                .get("/api/v1/certificates/" + number + "/verification")
                .then()
                .body("state", equalTo(state))
                .body("current", equalTo(state.equals("current")));
        get("/api/v1/orders/" + order).then().body("reels[0].certificate.state", equalTo(state));
        given().queryParam("q", number).get("/api/v1/search").then().body("hits[0].certificate.state", equalTo(state));
        given().queryParam("order", order)
                .get("/api/v1/certificates")
                .then()
                .body("certificates.state", contains(state));
    }

    @Test
    void aFailureOfAnEarlierHourThatArrivesLatePutsTheCertificateInQuestionUntilAnEngineerAccepts() {
        register();
        String pass = test(reel, finished(12, new SampleResult())).extract().path("id");
        String number = given().post("/api/v1/reels/" + reel + "/certificates").path("number");
        stateIs(number, "current");
        test(reel, finished(9, new SampleResult().resistance(12)))
                .statusCode(201)
                .body("newest", equalTo(false));
        stateIs(number, "in-question");
        get("/api/v1/orders/" + order)
                .then()
                .body("ready", equalTo(0))
                .body("reels[0].needs", contains("engineer"))
                .body("reels[0].certificate.questions.kind", contains("awaits-engineer"));
        SignedIn.nobody()
                .get("/api/v1/certificates/" + number + "/verification")
                .then()
                .body("reasons", contains("the plant has not yet decided on a newer test of the reel"));
        person("Eva", Role.ENGINEER)
                .contentType("application/json")
                .body("{\"reason\": \"lead was loose\"}")
                .post("/api/v1/records/" + pass + "/acceptance")
                .then()
                .statusCode(201);
        stateIs(number, "current");
        get("/api/v1/orders/" + order).then().body("ready", equalTo(1));
    }

    @Test
    void theOrderIssuesNothingForItBefore() throws Exception {
        register();
        test(reel, finished(9, new SampleResult().resistance(12))).statusCode(201);
        test(reel, finished(12, new SampleResult())).statusCode(201);
        get("/api/v1/orders/" + order).then().body("reels[0].needs", contains("engineer", "certificate"));
        String batch = given().post("/api/v1/orders/" + order + "/certificates").path("id");
        Batches.finished(batch);
        get("/api/v1/certificate-batches/" + batch)
                .then()
                .body("issued", equalTo(0))
                .body("notIssued[0].reason", containsString("until an engineer accepts"));
    }
}
