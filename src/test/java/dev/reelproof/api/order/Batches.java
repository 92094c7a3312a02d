package dev.reelproof.api.order;

import static io.restassured.RestAssured.given;

import io.restassured.path.json.JsonPath;
import java.time.Duration;
import java.time.Instant;

/** Waits for certificates that were asked for by order. */
final class Batches {
    private static final Duration PATIENCE = Duration.ofSeconds(60);
    private static final int PAUSE_MS = 100;

    private Batches() {}

    /** The batch, once it is finished. */
    static JsonPath finished(String batch) throws InterruptedException {
        Instant end = Instant.now().plus(PATIENCE);
        while (Instant.now().isBefore(end)) {
            JsonPath now = given().get("/api/v1/certificate-batches/" + batch)
                    .then()
                    .statusCode(200)
                    .extract()
                    .jsonPath();
            if (now.getBoolean("finished")) {
                return now;
            }
            Thread.sleep(PAUSE_MS);
        }
        throw new AssertionError("batch " + batch + " is not finished");
    }
}
