package dev.reelproof.api.access;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.matchesPattern;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertFalse;

import dev.reelproof.access.Role;
import dev.reelproof.access.Secrets;
import dev.reelproof.digest.Sha256;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.time.Duration;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
class TokenRoutesTest {
    @Inject
    TestClock clock;

    private TestPerson administrator;

    @BeforeEach
    void signIn() {
        clock.freshMinute();
        administrator = TestPerson.signedIn(Role.ADMINISTRATOR);
    }

    @AfterEach
    void timeGoesOn() {
        clock.run();
    }

    private static Response asks(String secret, String path) {
        return given().header("Authorization", "Bearer " + secret).get(path);
    }

    private static void isRefused(String secret) {
        asks(secret, "/api/v1/reels")
                .then()
                .statusCode(401)
                .contentType("application/problem+json")
                .body("status", equalTo(401))
                .body("errors[0].where", notNullValue());
    }

    private JsonPath make(Map<String, String> token) {
        return administrator
                .asks()
                .body(token)
                .post("/api/v1/tokens")
                .then()
                .statusCode(201)
                .body("secret", matchesPattern("reelproof_[0-9a-f]{16}_[A-Za-z0-9_-]{43}"))
                .extract()
                .jsonPath();
    }

    @Test
    void aTokenIsShownOnceAndMayWhatItsRoleMay() {
        JsonPath made = make(Map.of("name", "bench 3", "role", "technician"));
        String secret = made.getString("secret");
        asks(secret, "/api/v1/session")
                .then()
                .statusCode(200)
                .body("name", equalTo("bench 3"))
                .body("kind", equalTo("token"))
                .body("plant", equalTo("north"))
                .body("csrf", nullValue());
        asks(secret, "/api/v1/accounts").then().statusCode(403);
        String listed = administrator.asks().get("/api/v1/tokens").asString();
        assertFalse(listed.contains(secret.substring(secret.length() - Secrets.LENGTH)));
        assertFalse(listed.contains(Sha256.hex(secret)));
        given().header("Authorization", "Bearer " + secret)
                .delete("/api/v1/session")
                .then()
                .statusCode(403)
                .body("detail", containsString("/api/v1/tokens"));
    }

    @Test
    void aRevokedTokenIsRefused() {
        JsonPath made = make(Map.of("name", "bench", "role", "technician"));
        asks(made.getString("secret"), "/api/v1/reels").then().statusCode(200);
        String path = "/api/v1/tokens/" + made.getString("id");
        administrator.asks().delete(path).then().statusCode(422);
        administrator.asks().delete(path + "?reason=lost").then().statusCode(204);
        isRefused(made.getString("secret"));
        administrator.asks().delete(path + "?reason=again").then().statusCode(204);
        administrator.asks().delete("/api/v1/tokens/none?reason=lost").then().statusCode(404);
    }

    @Test
    void anExpiredTokenIsRefused() {
        String end = clock.instant().plus(Duration.ofHours(1)).toString();
        String secret = make(Map.of("name", "bench", "role", "technician", "expires", end))
                .getString("secret");
        asks(secret, "/api/v1/reels").then().statusCode(200);
        clock.forward(Duration.ofHours(1));
        isRefused(secret);
        administrator = TestPerson.signedIn(Role.ADMINISTRATOR);
        administrator
                .asks()
                .body(Map.of("name", "bench", "role", "technician", "expires", end))
                .post("/api/v1/tokens")
                .then()
                .statusCode(422)
                .body("errors[0].where", equalTo("/expires"));
    }

    @Test
    void aForgedTokenIsRefused() {
        String secret = make(Map.of("name", "bench", "role", "technician")).getString("secret");
        int last = secret.length() - 1;
        isRefused(secret.substring(0, last) + (secret.charAt(last) == 'A' ? 'B' : 'A'));
        isRefused(secret.substring(0, last));
        isRefused(secret + "A");
        isRefused(secret.toUpperCase());
        isRefused("reelproof_");
        isRefused("reelproof_0000000000000000_" + Secrets.random());
        isRefused("eyJhbGciOiJub25lIn0.e30.");
        isRefused(Sha256.hex(secret));
        given().header("Authorization", secret).get("/api/v1/reels").then().statusCode(401);
        given().auth().preemptive().basic("a", "b").get("/api/v1/reels").then().statusCode(401);
        given().header("Authorization", "Bearer x")
                .cookie(SessionCookie.NAME, administrator.cookie)
                .get("/api/v1/reels")
                .then()
                .statusCode(401);
    }

    @Test
    void aTokenActsAtItsPlantAlone() {
        String south = SignedIn.authorization("south", Role.TECHNICIAN, Role.ADMINISTRATOR);
        for (String path :
                new String[] {"reels", "products", "certificates", "lots/L-1", "records/none", "reels/R-1"}) {
            given().header("Authorization", south)
                    .get("/api/v1/" + path + "?plant=north")
                    .then()
                    .statusCode(403)
                    .contentType("application/problem+json")
                    .body("detail", containsString("south"));
        }
        given().header("Authorization", south)
                .contentType("application/json")
                .body("{\"plant\": \"north\", \"product\": \"P\", \"length\": {\"value\": 1, \"unit\": \"m\"}}")
                .put("/api/v1/reels/R-SOUTH")
                .then()
                .statusCode(403);
        given().header("Authorization", south)
                .contentType("application/json")
                .body(
                        "{\"id\": \"L-S\", \"plant\": \"north\", \"kind\": \"rod\", \"quantity\": {\"value\": 1, \"unit\":"
                                + " \"kg\"}, \"made\": \"2026-02-01T06:00:00Z\", \"inputs\": []}")
                .post("/api/v1/lots")
                .then()
                .statusCode(403);
        given().header("Authorization", south)
                .contentType("application/json")
                .body(Map.of("name", "bench", "role", "technician", "plant", "north"))
                .post("/api/v1/tokens")
                .then()
                .statusCode(403);
    }

    @Test
    void whatATokenCannotBe() {
        administrator
                .asks()
                .body(Map.of("name", "bench", "role", "king"))
                .post("/api/v1/tokens")
                .then()
                .statusCode(422)
                .body("errors[0].where", equalTo("/role"));
        administrator
                .asks()
                .body(Map.of("name", "bench", "role", "technician", "plant", "moon"))
                .post("/api/v1/tokens")
                .then()
                .statusCode(422)
                .body("errors[0].where", equalTo("/plant"));
        TestPerson.signedIn(Role.QUALITY_MANAGER)
                .asks()
                .body(Map.of("name", "bench", "role", "administrator"))
                .post("/api/v1/tokens")
                .then()
                .statusCode(403);
    }
}
