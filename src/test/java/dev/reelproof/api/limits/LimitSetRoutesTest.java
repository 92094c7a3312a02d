package dev.reelproof.api.limits;

import static io.restassured.RestAssured.get;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;

import dev.reelproof.api.access.SignedIn;
import io.quarkus.test.junit.QuarkusTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

@QuarkusTest
@ExtendWith(SignedIn.class)
class LimitSetRoutesTest {

    @Test
    void listsThem() {
        get("/api/v1/limit-sets")
                .then()
                .statusCode(200)
                .body("limitSets.id", hasItems("category-5e-cable", "us-buried-wire-24awg"))
                .body("limitSets[0].sha256.length()", equalTo(64));
    }

    @Test
    void givesOneWhole() {
        get("/api/v1/limit-sets/category-6a-cable")
                .then()
                .statusCode(200)
                .body("referenceLength.value", equalTo(100f))
                .body("network.differential.value", equalTo(100f))
                .body("network.common.value", equalTo(25f))
                .body("network.acrFLoss", equalTo("disturbed"))
                .body("requirements.requirement", hasItem("return-loss"))
                .body("requirements.find { it.property == 'insertion-loss' }.upper", containsString("·√f"))
                .body("requirements.find { it.property == 'insertion-loss' }.domain.to", equalTo(500f))
                .body("requirements.find { it.property == 'insertion-loss' }.source", notNullValue());
    }

    @Test
    void saysWhatARequirementSaysBeyondItsLimit() {
        get("/api/v1/limit-sets/us-terminating-cable-24awg?revision=2")
                .then()
                .statusCode(200)
                .body("revision", equalTo(2))
                .body(
                        "requirements.find { it.requirement == 'insulation-faults-large' }.beyondTheLimit.required",
                        equalTo(false))
                .body(
                        "requirements.find { it.requirement == 'insulation-faults-large' }.beyondTheLimit"
                                + ".leastTestedLengthToReject.value",
                        equalTo(6000f))
                .body(
                        "requirements.find { it.requirement == 'mutual-capacitance-mean' && it.pairs.from == 13 }.beyondTheLimit"
                                + ".sample.pairs",
                        equalTo(100))
                .body(
                        "requirements.find { it.requirement == 'insulation-resistance' }.beyondTheLimit.warmerPassStands",
                        equalTo(true))
                .body("requirements.find { it.requirement == 'fext' }.beyondTheLimit.required", equalTo(true));
    }

    /** The figures are those of the table in the issue: 44.3 − 15 log(f/100), 9.38 ohm/100 m. */
    @Test
    void givesALimitAtAFrequency() {
        get("/api/v1/limit-sets/category-6a-cable/next?frequency=100&unit=MHz")
                .then()
                .statusCode(200)
                .body("limit", equalTo(44.3f))
                .body("unit", equalTo("dB"))
                .body("upper", nullValue());
        get("/api/v1/limit-sets/category-6a-cable/next?frequency=10000&unit=kHz")
                .then()
                .body("limit", equalTo(59.3f));
        get("/api/v1/limit-sets/category-6a-cable/conductor-resistance")
                .then()
                .body("limit", equalTo(9.38f))
                .body("unit", equalTo("ohm/100 m"));
    }
}
