package dev.reelproof.api;

import static io.restassured.RestAssured.get;
import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;

import dev.reelproof.api.access.SignedIn;
import dev.reelproof.api.result.SampleResult;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A parameter that a route does not know is refused and named: passed over, it would answer another question. */
@QuarkusTest
@ExtendWith(SignedIn.class)
class UnknownParametersTest {

    private static ValidatableResponse refused(ValidatableResponse answer, String name) {
        return answer.statusCode(400)
                .contentType(Problem.MEDIA_TYPE)
                .body("errors[0].where", equalTo("?" + name))
                .body("errors[0].message", containsString("'" + name + "'"));
    }

    @ParameterizedTest
    @CsvSource({
        "/api/v1/certificates, bay, 7, query",
        "/api/v1/reels, verdict, rejected, query",
        "/api/v1/reels, Query, R-1, query",
        "/api/v1/audit, reel, R-1, subject",
        "/api/v1/limit-sets, id, x, it takes none"
    })
    void aQuestion(String path, String name, String value, String known) {
        refused(get(path + "?" + name + "=" + value).then(), name).body("errors[0].message", containsString(known));
    }

    @Test
    void aChangeToo() {
        String reel = TestPlant.newReel();
        String path = "/api/v1/reels/" + reel;
        refused(
                given().contentType("application/json")
                        .body(new SampleResult().json())
                        .post(path + "/tests?palnt=north")
                        .then(),
                "palnt");
        refused(given().post(path + "/certificates?issue=2").then(), "issue");
        refused(
                given().contentType("application/json")
                        .body("{}")
                        .put(path + "?plant=north")
                        .then(),
                "plant");
        get(path).then().body("records", empty());
    }

    @Test
    void eachIsNamed() {
        get("/api/v1/reels?verdict=rejected&query=R&order=1")
                .then()
                .statusCode(400)
                .body("errors.where", contains("?order", "?verdict"));
    }
}
