package dev.reelproof.api.result;

import static dev.reelproof.api.TestPlant.newReel;
import static dev.reelproof.api.TestPlant.test;
import static dev.reelproof.api.access.TestSignIn.person;
import static io.restassured.RestAssured.get;
import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.matchesPattern;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;
import static org.hamcrest.Matchers.startsWith;

import dev.reelproof.access.Role;
import dev.reelproof.api.access.SignedIn;
import io.quarkus.test.junit.QuarkusTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** What a page prints comes ready in the answers: it need know no property, no decimal and no sentence. */
@QuarkusTest
@ExtendWith(SignedIn.class)
class PrintedAnswersTest {

    private static String finding(String property, String field) {
        return "findings.find { it.property == '" + property + "' }." + field;
    }

    @Test
    void anAcceptedReel() {
        String reel = newReel(100);
        String id = test(reel, new SampleResult().celsius(22.77777777777778).json())
                .statusCode(201)
                .body("verdictText", equalTo("accepted"))
                .body("look", equalTo("accepted"))
                .body("verdictSentence", equalTo("Every requirement was measured and passes. The reel may be shipped."))
                .body("nextSteps", empty())
                .body("printedTemperature", equalTo("22.8 °C"))
                .body("printedLength", equalTo("100 m"))
                .body("counts.failing", equalTo(0))
                .body("counts.notTested", equalTo(0))
                .body("counts.passing", greaterThan(5))
                .body("findings.title", everyItem(notNullValue()))
                .body(finding("next", "title"), equalTo("NEXT"))
                .body(finding("next", "plain"), equalTo("crosstalk heard at the sending end"))
                .body(finding("next", "outcomeText"), equalTo("pass"))
                .body(finding("next", "outcomeSign"), equalTo("✓"))
                .body(finding("next", "place"), matchesPattern("pairs \\d and \\d, near end, [0-9.]+ MHz"))
                .body(finding("next", "printed.senseSign"), equalTo("≥"))
                .body(finding("next", "printed.value"), matchesPattern("[0-9]+[.][0-9]{2}"))
                .body(finding("next", "swept"), equalTo(true))
                .body(finding("next", "failing"), equalTo(false))
                .body(finding("next", "shortfall"), nullValue())
                .body(finding("spark-faults", "printed.value"), equalTo("0"))
                .body(finding("spark-faults", "printed.unit"), equalTo(""))
                .body(finding("spark-faults", "caution"), startsWith("High voltage"))
                .body(finding("spark-faults", "swept"), equalTo(false))
                .extract()
                .path("id");
        get("/api/v1/records/" + id + "/findings/conductor-resistance")
                .then()
                .body("title", equalTo("Conductor resistance"))
                .body("explanation.printed", hasItem(endsWith("ohm/100 m")));
        get("/api/v1/records/" + id + "/sweeps/acr-f")
                .then()
                .body("title", equalTo("ACR-F"))
                .body("axis", equalTo("frequency in MHz"))
                .body("sweeps.label", hasItems("1 from 2, near end", "2 from 1, near end"))
                .body("limits.label", contains("limit"));
        given().queryParam("query", reel)
                .get("/api/v1/reels")
                .then()
                .body("reels[0].verdictText", equalTo("accepted"))
                .body("reels[0].look", equalTo("accepted"));

        get("/api/v1/reels/" + reel).then().body("heldSentence", nullValue()).body("printedLength", equalTo("100 m"));
        person("anna", Role.ENGINEER)
                .contentType("application/json")
                .body("{\"reel\": \"" + reel + "\", \"reason\": \"bare spots\"}")
                .post("/api/v1/holds")
                .then()
                .statusCode(201);
        get("/api/v1/reels/" + reel)
                .then()
                .body("heldSentence", equalTo("The reel passed its test, but it is on hold. Do not ship it."));
    }

    @Test
    void aRejectedReel() {
        String id = test(newReel(100), new SampleResult().resistance(9.6).json())
                .statusCode(201)
                .body("look", equalTo("rejected"))
                .body("verdictSentence", equalTo("At least one requirement fails. Do not ship this reel."))
                .body("nextSteps[0]", startsWith("Do not ship."))
                .body("counts.failing", equalTo(1))
                .body(finding("conductor-resistance", "outcomeText"), equalTo("fail"))
                .body(finding("conductor-resistance", "failing"), equalTo(true))
                .body(finding("conductor-resistance", "printed.margin"), equalTo("−0.316"))
                .body(
                        finding("conductor-resistance", "sentence"),
                        equalTo(
                                "9.696 ohm/100 m at pair 1, wire b; the limit is at most 9.380 ohm/100 m, missed by 0.316"
                                        + " ohm/100 m"))
                .body(
                        finding("conductor-resistance", "shortfall"),
                        equalTo("Conductor resistance, pair 1, wire b: 0.316 ohm/100 m too much"))
                .extract()
                .path("id");
        get("/api/v1/records/" + id + "/alternatives")
                .then()
                .body(
                        "adviceLines[0]",
                        equalTo(
                                "Cutting does not mend it: Conductor resistance is referred to a fixed length of cable, so it"
                                        + " stays the same however long the reel is."))
                .body("adviceLines", hasItem(endsWith("does not pass; only Conductor resistance stands in the way.")));
    }

    @Test
    void anIncompleteReelSaysWhatStandsInTheWayAsDataAlsoWhenReadAgain() {
        String id = test(
                        newReel(100),
                        """
                        {"product": "HD6A-4P", "length": {"value": 100, "unit": "m"}, "temperature": {"value": 20, "unit": "°C"},
                         "finished": "2026-03-02T14:09:30Z",
                         "readings": [{"property": "spark-faults", "value": 0, "unit": "count"}]}""")
                .statusCode(201)
                .body("look", equalTo("incomplete"))
                .body(finding("next", "obstacles[0].kind"), equalTo("no-data"))
                .body(finding("next", "reason"), equalTo("no data: no next was measured"))
                .extract()
                .path("id");
        get("/api/v1/records/" + id)
                .then()
                .body(finding("next", "outcomeText"), equalTo("not tested"))
                .body(finding("next", "obstacles[0].kind"), equalTo("no-data"))
                .body(finding("next", "obstacles[0].parts.property"), equalTo("next"))
                .body(finding("next", "obstacles[0].sentence"), equalTo("no data: no next was measured"))
                .body(finding("next", "obstacles[0].remedy"), equalTo("measure what is missing"))
                .body(finding("next", "moreObstacles"), equalTo(0))
                .body(finding("next", "printed"), nullValue())
                .body(finding("next", "place"), equalTo("reel"))
                .body(
                        "nextSteps",
                        contains(
                                "Complete the measurement: measure what is missing. Then send the whole result again."));
    }
}
