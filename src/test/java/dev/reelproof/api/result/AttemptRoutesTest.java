package dev.reelproof.api.result;

import static dev.reelproof.api.TestPlant.newReel;
import static dev.reelproof.api.TestPlant.test;
import static io.restassured.RestAssured.get;
import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;

import dev.reelproof.api.access.SignedIn;
import io.quarkus.test.junit.QuarkusTest;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** What could send bad cable out: another reel's file, a file sent again, a test that comes in late. */
@QuarkusTest
@ExtendWith(SignedIn.class)
class AttemptRoutesTest {
    private static final String FINISHED = "2026-03-02T14:09:30Z";

    private static String passing(String finished) {
        return at(finished, new SampleResult().json());
    }

    private static String failing(String finished) {
        return at(finished, new SampleResult().resistance(12).json());
    }

    private static String at(String time, String json) {
        return json.replace("2026-03-02T14:05:00Z", time).replace(FINISHED, time);
    }

    private static String ofReel(String reel, String json) {
        return "{\"reel\": \"" + reel + "\", " + json.substring(1);
    }

    private static void noCertificate(String reel) {
        given().post("/api/v1/reels/" + reel + "/certificates").then().statusCode(409);
    }

    @Test
    void aFileOfAnotherReelIsRefusedWithBothNumbersAndNothingIsKept() {
        String reel = newReel(100);
        String other = newReel(100);
        test(reel, ofReel(other, passing(FINISHED)))
                .statusCode(422)
                .body("errors[0].where", equalTo("/reel"))
                .body("errors[0].message", containsString(reel))
                .body("errors[0].message", containsString(other));
        get("/api/v1/reels/" + reel).then().body("records", empty());
        test(reel, ofReel("]C1" + reel, passing(FINISHED))).statusCode(201).body("reel", equalTo(reel));
    }

    @Test
    void aCsvFileOfAnotherReelIsRefused() {
        String reel = newReel(100);
        String csv = "property,pair,partner,conductor,end,frequency,frequencyUnit,value,unit,reel\n"
                + "spark-faults,,,,,,,0,count,R-OTHER\n";
        given().multiPart(
                        "result",
                        "result.json",
                        new SampleResult().jsonWithoutBulk().getBytes(StandardCharsets.UTF_8))
                .multiPart("bay", "bay.csv", csv.getBytes(StandardCharsets.UTF_8))
                .post("/api/v1/reels/" + reel + "/tests")
                .then()
                .statusCode(422)
                .body("errors[0].where", equalTo("bay.csv:2"))
                .body("errors[0].message", containsString("R-OTHER"))
                .body("errors[0].message", containsString(reel));
        get("/api/v1/reels/" + reel).then().body("records", empty());
    }

    @Test
    void aFileTakenBeforeShowsItsOwnRecordAndThatItIsOlder() {
        String reel = newReel(100);
        String good = passing("2026-03-02T10:00:00Z");
        String first = test(reel, good)
                .statusCode(201)
                .body("order", equalTo(1))
                .body("attempts", equalTo(1))
                .body("newest", equalTo(true))
                .body("earlierVerdicts", empty())
                .body("olderSentence", nullValue())
                .extract()
                .path("id");
        test(reel, failing("2026-03-02T12:00:00Z"))
                .statusCode(201)
                .body("newest", equalTo(true))
                .body("earlierVerdicts", contains("accepted"))
                .body("attemptSummary", equalTo("rejected at attempt 2; accepted once"));
        test(reel, good)
                .statusCode(200)
                .body("id", equalTo(first))
                .body("attempt", equalTo(1))
                .body("newest", equalTo(false))
                .body("attempts", equalTo(2))
                .body("olderSentence", containsString("attempt 2, came to: rejected"))
                .body("verdictSentence", not(containsString("may be shipped")));
        noCertificate(reel);
    }

    @Test
    void anOlderTestThatComesInLateIsKeptAsOlder() {
        String reel = newReel(100);
        test(reel, failing("2026-03-02T12:00:00Z")).statusCode(201);
        String late = test(reel, passing("2026-03-02T10:00:00Z"))
                .statusCode(201)
                .body("attempt", equalTo(2))
                .body("order", equalTo(1))
                .body("newest", equalTo(false))
                .body("attemptSummary", equalTo("accepted at attempt 2, test 1 of 2 by time"))
                .body("warnings", hasItem(containsString("kept as an older test")))
                .extract()
                .path("id");
        get("/api/v1/reels/" + reel)
                .then()
                .body("records", hasSize(2))
                .body("records[0].verdict", equalTo("rejected"))
                .body("records[0].attempt", equalTo(1))
                .body("records[0].order", equalTo(2))
                .body("records[1].id", equalTo(late));
        given().queryParam("query", reel)
                .get("/api/v1/reels")
                .then()
                .body("reels[0].verdict", equalTo("rejected"))
                .body("reels[0].finished", equalTo("2026-03-02T12:00:00Z"));
        noCertificate(reel);
    }

    /** A bay whose clock is years fast must not decide on the reel from then on. */
    @Test
    void aTestFromTheFutureIsNotTheNewestForEver() {
        String reel = newReel(100);
        test(reel, passing("2098-03-02T12:00:00Z")).statusCode(201).body("warnings", hasItem(containsString("clock")));
        // The clock of the tests may be moved: what came in last counts, as both ended later than they came in.
        String last = test(reel, failing("2097-03-02T12:00:00Z"))
                .statusCode(201)
                .body("newest", equalTo(true))
                .extract()
                .path("id");
        get("/api/v1/reels/" + reel).then().body("records[0].id", equalTo(last));
    }

    @Test
    void whatAScannerSendsFindsTheReel() {
        String reel = newReel(100);
        for (String scanned : new String[] {"]C1" + reel, "*" + reel + "*", reel + "\t", "]A0*" + reel + "*\r\n"}) {
            given().queryParam("query", scanned)
                    .get("/api/v1/reels")
                    .then()
                    .statusCode(200)
                    .body("query", equalTo(reel))
                    .body("reels.reel", contains(reel));
        }
        given().get("/api/v1/reels/{reel}", "]C1" + reel).then().statusCode(200).body("reel", equalTo(reel));
        given().contentType("application/json")
                .body(passing(FINISHED))
                .post("/api/v1/reels/{reel}/tests", "]C1" + reel)
                .then()
                .statusCode(201)
                .body("reel", equalTo(reel));
    }

    @Test
    void aReasonOfARetestIsKeptAndMakesTheUploadNoOther() {
        String reel = newReel(100);
        test(reel, failing("2026-03-02T10:00:00Z")).statusCode(201);
        byte[] again = passing("2026-03-02T12:00:00Z").getBytes(StandardCharsets.UTF_8);
        given().multiPart("result", "result.json", again)
                .multiPart("retestReason", "lead was loose")
                .post("/api/v1/reels/" + reel + "/tests")
                .then()
                .statusCode(201)
                .body("retestReason", equalTo("lead was loose"))
                .body("original", hasSize(1))
                .body("awaitsEngineer", equalTo(false))
                .body("attemptSummary", equalTo("accepted at attempt 2; rejected once"));
        test(reel, new String(again, StandardCharsets.UTF_8))
                .statusCode(200)
                .body("retestReason", equalTo("lead was loose"));
        given().queryParam("subject", "reel/" + reel)
                .queryParam("action", "test-taken")
                .get("/api/v1/audit")
                .then()
                .statusCode(200)
                .body("entries[0].reason", equalTo("lead was loose"));
    }
}
