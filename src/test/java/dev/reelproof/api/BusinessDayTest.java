package dev.reelproof.api;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.oneOf;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;

import dev.reelproof.api.access.SignedIn;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** One day at final test, in order and in the trade's words; the invented plant's results stand for the bay's. */
@QuarkusTest
@ExtendWith(SignedIn.class)
class BusinessDayTest {
    private static final String REEL = "DAY-1";

    private static String bayFile(String name) throws IOException {
        try (InputStream file = BusinessDayTest.class.getResourceAsStream("/demo-data/results/" + name)) {
            return new String(file.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private static ValidatableResponse put(String path, String body) {
        return given().contentType("application/json")
                .body(body)
                .put("/api/v1" + path)
                .then();
    }

    private static ValidatableResponse post(String path, String body) {
        return given().contentType("application/json")
                .body(body)
                .post("/api/v1" + path)
                .then();
    }

    private static ValidatableResponse get(String path) {
        return given().get("/api/v1" + path).then();
    }

    private static String lot(String id, String kind, double value, String unit, String made, String inputs) {
        return "{\"id\": \"" + id + "\", \"plant\": \"north\", \"kind\": \"" + kind + "\", \"quantity\": {\"value\": "
                + value + ", \"unit\": \"" + unit + "\"}, \"made\": \"" + made + "\", \"inputs\": [" + inputs + "]}";
    }

    private static String input(String lot, double value, String unit) {
        return "{\"lot\": \"" + lot + "\", \"quantity\": {\"value\": " + value + ", \"unit\": \"" + unit + "\"}}";
    }

    @Test
    void aReelIsMadeTestedRejectedTestedAgainAndShipped() throws IOException {
        // The product and the order come in.
        put(
                        "/products/HD6A-4P",
                        "{\"description\": \"invented 4-pair cable\", \"limitSet\": \"category-6a-cable\", \"pairs\": 4,"
                                + " \"gauge\": \"23 AWG\"}")
                .statusCode(oneOf(200, 201));
        put(
                        "/reels/" + REEL,
                        "{\"plant\": \"north\", \"product\": \"HD6A-4P\", \"length\": {\"value\": 305, \"unit\": \"m\"},"
                                + " \"order\": \"SO-DAY\", \"customer\": \"Invented Customer\"}")
                .statusCode(201);

        // The shop floor reports what the reel was made from; a parent that nobody knows is refused.
        post("/lots", lot("DAY-ROD", "rod", 2268, "kg", "2026-02-01T06:00:00Z", ""))
                .statusCode(201);
        post("/lots", lot("DAY-CORE", "core", 5000, "m", "2026-02-20T06:00:00Z", input("DAY-NOBODY", 90, "kg")))
                .statusCode(422)
                .body("errors[0].where", equalTo("/inputs/0/lot"));
        post("/lots", lot("DAY-CORE", "core", 5000, "m", "2026-02-20T06:00:00Z", input("DAY-ROD", 90, "kg")))
                .statusCode(201);
        post("/lots", lot(REEL, "reel", 305, "m", "2026-03-01T06:00:00Z", input("DAY-CORE", 305, "m")))
                .statusCode(201);

        // Nothing ships before it is tested.
        post("/reels/" + REEL + "/certificates", "").statusCode(409).body("detail", containsString(REEL));

        // The bay's first file was cut short on the way: refused, and nothing is kept of it.
        String poor = bayFile("R-26006.json");
        post("/reels/" + REEL + "/tests", poor.substring(0, poor.length() / 2))
                .statusCode(400)
                .body("errors[0].message", containsString("cut short"));
        get("/reels/" + REEL).body("records", hasSize(0));

        // The whole file: return loss of pair 3 is poor at high frequency, so no certificate.
        String rejected = post("/reels/" + REEL + "/tests", poor)
                .statusCode(201)
                .body("verdict", equalTo("rejected"))
                .body("attempt", equalTo(1))
                .extract()
                .path("id");
        get("/records/" + rejected + "/findings/return-loss")
                .body("outcome", equalTo("fail"))
                .body("pair", equalTo(3))
                .body("explanation.title", hasItems("measured", "limit", "margin"));
        post("/reels/" + REEL + "/certificates", "").statusCode(409).body("detail", containsString("return-loss"));

        // A clean fixture, a second attempt an hour later: accepted; the first attempt stays.
        String clean = bayFile("R-26001.json").replace("2026-03-02T07:", "2026-03-02T12:");
        post("/reels/" + REEL + "/tests", clean)
                .statusCode(201)
                .body("verdict", equalTo("accepted"))
                .body("attempt", equalTo(2))
                .body("findings[0].uncertainty.coverageFactor", equalTo(2.0f));
        get("/reels/" + REEL).body("records.verdict", equalTo(List.of("accepted", "rejected")));

        // Customer service issues the certificate; asked again, it is the same one, byte for byte.
        String pdf = post("/reels/" + REEL + "/certificates", "")
                .statusCode(201)
                .body("issue", equalTo(1))
                .extract()
                .path("pdf");
        post("/reels/" + REEL + "/certificates", "").statusCode(200).body("pdf", equalTo(pdf));
        assertArrayEquals(
                given().get(pdf).then().statusCode(200).extract().asByteArray(),
                given().get(pdf).then().statusCode(200).extract().asByteArray());

        // The engineer goes from the reel up to the rod, and from the rod down to the reel.
        get("/reels/" + REEL + "/ancestors").body("lots.id", hasItems("DAY-CORE", "DAY-ROD"));
        get("/lots/DAY-ROD/descendants").body("lots.id", hasItems("DAY-CORE", REEL));
    }
}
