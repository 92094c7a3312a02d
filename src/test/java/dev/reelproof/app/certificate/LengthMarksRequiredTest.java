package dev.reelproof.app.certificate;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;

import dev.reelproof.api.TestPlant;
import dev.reelproof.api.access.SignedIn;
import dev.reelproof.api.result.SampleResult;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** A plant whose inspection certificates state the length marks issues none without. */
@QuarkusTest
@TestProfile(LengthMarksRequiredTest.MarkingPlant.class)
@ExtendWith(SignedIn.class)
class LengthMarksRequiredTest {

    /** A plant that declares inspection certificates with length marks. */
    public static class MarkingPlant implements QuarkusTestProfile {
        @Override
        public Map<String, String> getConfigOverrides() {
            return Map.of(
                    "reelproof.data", "target/test-data-marking",
                    "reelproof.plant.north.name", "Northfield Cable Works (invented)",
                    "reelproof.plant.north.certificate-type", "inspection-certificate-3-1",
                    "reelproof.plant.north.authorised-by", "A. Example",
                    "reelproof.plant.north.authorised-as", "quality manager",
                    "reelproof.plant.north.length-marks-required", "true");
        }
    }

    @Test
    void aReelGetsItsCertificateOnceItsLengthMarksAreStated() {
        String reel = TestPlant.newReel(100);
        TestPlant.test(reel, new SampleResult().json()).statusCode(201);
        String certificates = "/api/v1/reels/" + reel + "/certificates";
        given().post(certificates)
                .then()
                .statusCode(409)
                .body("detail", containsString("inspection-certificate-3-1 must state the length marks of the reel."));
        TestPlant.putReel(
                        reel,
                        "{\"product\": \"HD6A-4P\", \"length\": {\"value\": 100, \"unit\": \"m\"},"
                                + " \"lengthMarks\": {\"first\": 1350, \"last\": 1250, \"unit\": \"m\"},"
                                + " \"order\": \"SO-1\", \"customer\": \"Example Networks (invented)\"}")
                .statusCode(200);
        given().post(certificates).then().statusCode(201);
    }
}
