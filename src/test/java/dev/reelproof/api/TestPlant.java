package dev.reelproof.api;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.oneOf;

import io.restassured.response.ValidatableResponse;
import java.nio.charset.StandardCharsets;
import java.util.UUID;

/** A plant to test in: registers what a test needs under names of its own, since what is recorded stays. */
public final class TestPlant {
    private TestPlant() {}

    public static String newReel() {
        return newReel(305);
    }

    public static String newReel(double metres) {
        putProduct("HD6A-4P", "category-6a-cable", 4).statusCode(oneOf(200, 201));
        String reel = "R-" + UUID.randomUUID();
        putReel(
                        reel,
                        "{\"plant\": \"north\", \"product\": \"HD6A-4P\", \"length\": {\"value\": " + metres
                                + ", \"unit\": \"m\"}, \"order\": \"SO-4711\", \"customer\": \"Blåbær & Sons (invented)\"}")
                .statusCode(201);
        return reel;
    }

    public static ValidatableResponse putProduct(String product, String limitSet, int pairs) {
        return given().contentType("application/json")
                .body("{\"description\": \"4-pair 23 AWG, riser\", \"limitSet\": \"" + limitSet + "\", \"pairs\": "
                        + pairs
                        + ", \"gauge\": \"23 AWG\", \"nominalVelocity\": 0.68,"
                        + " \"lays\": [{\"pair\": 1, \"lay\": {\"value\": 9.1, \"unit\": \"mm\"}}]}")
                .put("/api/v1/products/" + product)
                .then();
    }

    public static ValidatableResponse putReel(String reel, String json) {
        return given().contentType("application/json")
                .body(json)
                .put("/api/v1/reels/" + reel)
                .then();
    }

    public static ValidatableResponse test(String reel, String json) {
        return given().contentType("application/json")
                .body(json.getBytes(StandardCharsets.UTF_8))
                .post("/api/v1/reels/" + reel + "/tests")
                .then();
    }
}
