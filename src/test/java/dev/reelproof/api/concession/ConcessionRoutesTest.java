package dev.reelproof.api.concession;

import static dev.reelproof.api.access.TestSignIn.person;
import static dev.reelproof.api.access.TestSignIn.token;
import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;
import static org.hamcrest.Matchers.oneOf;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.access.Role;
import dev.reelproof.api.TestPlant;
import dev.reelproof.api.access.SignedIn;
import dev.reelproof.api.result.SampleResult;
import io.agroal.api.AgroalDataSource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The life of a concession: one asks, another decides, and what was approved is done. */
@QuarkusTest
@ExtendWith(SignedIn.class)
class ConcessionRoutesTest {
    private static final String CHECK_VIOLATION = "23514";
    private static final String RESTRICT_VIOLATION = "23001";
    private static final String USE_AS_IS = "{\"kind\": \"use-as-is\", \"reason\": \"for our own yard\"}";
    private static final String SHORTEN =
            "{\"kind\": \"shorten\", \"length\": {\"value\": 60, \"unit\": \"m\"}, \"reason\": \"the end is bad\"}";

    /** Ohm in 100 m: beyond what the sets of the sample's construction allow. */
    private static final double FAILING_OHMS = 12;

    @Inject
    AgroalDataSource database;

    @Inject
    Clock clock;

    private static RequestSpecification anna() {
        return person("anna", Role.ENGINEER);
    }

    private static RequestSpecification ben() {
        return person("Ben", Role.QUALITY_MANAGER);
    }

    private static String rejectedReel() {
        String reel = TestPlant.newReel(100);
        TestPlant.test(reel, new SampleResult().resistance(FAILING_OHMS).json())
                .statusCode(201)
                .body("verdict", equalTo("rejected"));
        return reel;
    }

    private static ValidatableResponse ask(RequestSpecification caller, String reel, String body) {
        return caller.contentType("application/json")
                .body(body)
                .post("/api/v1/reels/" + reel + "/concessions")
                .then();
    }

    private static int asked(String reel, String body) {
        return ask(anna(), reel, body)
                .statusCode(201)
                .body("state", equalTo("open"))
                .extract()
                .path("id");
    }

    private static ValidatableResponse decide(RequestSpecification caller, int id, String decision) {
        return caller.contentType("application/json")
                .body("{\"reason\": \"looked at\"}")
                .post("/api/v1/concessions/" + id + "/" + decision)
                .then();
    }

    private static ValidatableResponse certify(String reel) {
        return given().post("/api/v1/reels/" + reel + "/certificates").then();
    }

    private static String textOf(ValidatableResponse issued) throws Exception {
        String pdf = issued.statusCode(201).extract().path("pdf");
        try (PDDocument document = Loader.loadPDF(given().get(pdf).asByteArray())) {
            return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
        }
    }

    @Test
    void aRejectedReelIsUsedAsItIsOnceTwoPersonsAgree() throws Exception {
        String reel = rejectedReel();
        certify(reel).statusCode(409);
        int id = asked(reel, USE_AS_IS);
        certify(reel)
                .statusCode(409)
                .body("detail", containsString("concession " + id + ", which anna asked for, is not"));
        ben().queryParam("open", true).get("/api/v1/concessions").then().body("concessions.id", hasItem(id));
        ben().queryParam("reel", reel)
                .get("/api/v1/concessions")
                .then()
                .body("concessions.id", contains(id))
                .body("concessions[0].requirements", hasItem("conductor-resistance"))
                .body("concessions[0].effect", containsString("used as it is by concession " + id));
        decide(ben(), id, "approval")
                .statusCode(200)
                .body("state", equalTo("approved"))
                .body("requestedBy", equalTo("anna"))
                .body("decidedBy", equalTo("Ben"));
        String text = textOf(certify(reel));
        assertTrue(text.contains("By concession " + id + " it is used as it is"), text);
        assertTrue(text.contains("does not meet"), text);
        assertTrue(text.contains("asked for by anna (engineer) on"), text);
        assertTrue(text.contains("approved by Ben (quality manager) on"), text);
        assertTrue(text.contains("for our own yard"), text);
        given().get("/api/v1/reels/" + reel).then().body("records.verdict", contains("rejected"));
        ben().queryParam("subject", "concession/" + id)
                .get("/api/v1/audit")
                .then()
                .body("entries.action", contains("concession-approved", "concession-requested"))
                .body("entries.actor", contains("Ben", "anna"));
    }

    @Test
    void aRegradedReelIsJudgedAgainAsItsNewProduct() throws Exception {
        TestPlant.putProduct("CONCEDED-5E", "category-5e-cable", 4).statusCode(oneOf(200, 201));
        String reel = TestPlant.newReel(100);
        marked(reel, 100, 1350).statusCode(200);
        TestPlant.test(reel, new SampleResult().crosstalkWorseBy(18).json())
                .statusCode(201)
                .body("verdict", equalTo("rejected"));
        String old = given().get("/api/v1/reels/" + reel).path("records[0].id");
        int id = asked(reel, "{\"kind\": \"regrade\", \"product\": \"CONCEDED-5E\", \"reason\": \"for an office\"}");
        String newer = decide(ben(), id, "approval")
                .statusCode(200)
                .body("newRecord", not(nullValue()))
                .extract()
                .path("newRecord");
        given().get("/api/v1/reels/" + reel)
                .then()
                .body("product", equalTo("CONCEDED-5E"))
                .body("printedLengthMarks", equalTo("1250 to 1350 m"))
                .body("records.id", contains(newer, old))
                .body("records.verdict", contains("accepted", "rejected"))
                .body("records.attempt", contains(1, 1))
                .body("records.newest", contains(true, false))
                .body("records.attempts", contains(1, 1))
                .body("records[1].olderSentence", containsString("The reel was regraded"))
                .body("records[0].original.size()", equalTo(1))
                .body("records[0].warnings", hasItem(containsString("Judged again as product CONCEDED-5E")));
        given().get("/api/v1/records/" + newer + "/original/0").then().statusCode(200);
        given().queryParam("query", reel)
                .get("/api/v1/reels")
                .then()
                .body("reels.verdict", contains("accepted"))
                .body("reels.record", contains(newer));
        String text = textOf(certify(reel));
        assertTrue(text.contains("regraded from product HD6A-4P to CONCEDED-5E"), text);
    }

    @Test
    void aReissueSaysTheConcessionToo() throws Exception {
        String reel = rejectedReel();
        int id = asked(reel, USE_AS_IS);
        decide(ben(), id, "approval").statusCode(200);
        String number = certify(reel).statusCode(201).extract().path("number");
        String text = textOf(ben().contentType("application/json")
                .body("{\"reason\": \"misspelt\", \"customer\": \"Another\"}")
                .post("/api/v1/certificates/" + number + "/reissues")
                .then());
        assertTrue(text.contains("By concession " + id + " it is used as it is"), text);
    }

    @Test
    void aConcessionOfANewerTestPutsTheCertificateOfTheEarlierInQuestion() {
        String reel = TestPlant.newReel(150);
        TestPlant.test(reel, new SampleResult().metres(150).json()).statusCode(201);
        String number = certify(reel).statusCode(201).extract().path("number");
        TestPlant.test(reel, justNow(new SampleResult().metres(150).resistance(FAILING_OHMS)))
                .statusCode(201);
        questionsOf(reel, "in-question", "newer-test");
        int id = asked(reel, SHORTEN.replace("60", "100"));
        questionsOf(reel, "in-question", "newer-test", "concession-open");
        decide(ben(), id, "approval").statusCode(200);
        questionsOf(reel, "in-question", "newer-test", "reel-changed");
        ben().queryParam("subject", "concession/" + id)
                .get("/api/v1/audit")
                .then()
                .body("entries[0].details.questionedCertificates", contains(number))
                .body("entries[1].details.questionedCertificates", contains(number));
        // Also once the shortened reel has passed: the certificate describes the whole.
        TestPlant.test(reel, justNow(new SampleResult())).statusCode(201).body("verdict", equalTo("accepted"));
        questionsOf(reel, "in-question", "reel-changed");
        certify(reel).statusCode(201);
        SignedIn.nobody()
                .get("/api/v1/certificates/" + number + "/verification")
                .then()
                .body("state", equalTo("superseded"));
    }

    private static void questionsOf(String reel, String state, String... kinds) {
        given().get("/api/v1/reels/" + reel)
                .then()
                .body("certificates[0].state", equalTo(state))
                .body("certificates[0].questions.kind", contains(kinds));
    }

    @Test
    void aReelDoesNotLeaveBeforeItsConcessionIsDecidedAndDone() {
        String reel = rejectedReel();
        int id = asked(reel, SHORTEN);
        String open = "Do not ship this reel: concession " + id + ", which anna asked for, is not approved yet.";
        given().get("/api/v1/reels/" + reel).then().body("concessionSentence", equalTo(open));
        ship(reel, "").statusCode(409).body("detail", containsString(open));
        decide(ben(), id, "approval")
                .statusCode(200)
                .body("allows", equalTo("Cut the reel to 60 m and test it again. Until then it gets no certificate."));
        given().queryParam("query", reel)
                .get("/api/v1/reels")
                .then()
                .body("reels.concessionUnfinished", contains(true));
        ship(reel, "").statusCode(409).body("detail", containsString("was shortened by concession " + id));
        ship(reel, ", \"reason\": \"it left before\"").statusCode(201);
        String used = rejectedReel();
        decide(ben(), asked(used, USE_AS_IS), "approval")
                .statusCode(200)
                .body("allows", containsString("may ship as it is"));
        given().get("/api/v1/reels/" + used).then().body("concessionSentence", nullValue());
        ship(used, "").statusCode(201);
    }

    private static ValidatableResponse ship(String reel, String more) {
        return given().contentType("application/json")
                .body("{\"state\": \"shipped\", \"to\": \"a yard\"" + more + "}")
                .post("/api/v1/reels/" + reel + "/disposition")
                .then();
    }

    @Test
    void aRegradeToWhatTheReelDoesNotMeetIsRefused() {
        TestPlant.putProduct("CONCEDED-6A", "iec-category-6a-cable", 4).statusCode(oneOf(200, 201));
        ask(anna(), rejectedReel(), "{\"kind\": \"regrade\", \"product\": \"CONCEDED-6A\", \"reason\": \"r\"}")
                .statusCode(409)
                .body("detail", containsString("whose limit set it meets"));
    }

    @Test
    void aShortenedReelIsTestedAgainAtItsNewLength() throws Exception {
        String reel = TestPlant.newReel(150);
        TestPlant.test(
                        reel,
                        new SampleResult().metres(150).resistance(FAILING_OHMS).json())
                .statusCode(201)
                .body("verdict", equalTo("rejected"));
        int id = asked(reel, SHORTEN.replace("60", "100"));
        decide(ben(), id, "approval").statusCode(200);
        given().get("/api/v1/reels/" + reel).then().body("length.value", equalTo(100f));
        certify(reel).statusCode(409).body("detail", containsString("once it was tested at its new length"));
        // What was measured before it was cut is of the whole reel, whatever its length says.
        TestPlant.test(reel, new SampleResult().json()).statusCode(201).body("verdict", equalTo("accepted"));
        certify(reel).statusCode(409).body("detail", containsString("once it was tested at its new length"));
        TestPlant.test(reel, justNow(new SampleResult())).statusCode(201).body("verdict", equalTo("accepted"));
        String text = textOf(certify(reel));
        assertTrue(text.contains("shortened from 150 m to 100 m"), text);
    }

    @Test
    void theMarksOfAShortenedReelHoldNoLonger() throws Exception {
        String reel = TestPlant.newReel(150);
        marked(reel, 150, 1400).statusCode(200).body("printedLengthMarks", equalTo("1250 to 1400 m"));
        TestPlant.test(
                        reel,
                        new SampleResult().metres(150).resistance(FAILING_OHMS).json())
                .statusCode(201);
        int id = asked(reel, SHORTEN.replace("60", "100"));
        given().get("/api/v1/reels/" + reel).then().body("printedLengthMarks", equalTo("1250 to 1400 m"));
        decide(ben(), id, "approval")
                .statusCode(200)
                .body("effect", containsString("100 m instead of 150 m, without its length marks"));
        given().get("/api/v1/reels/" + reel).then().body("lengthMarks", nullValue());
        ben().queryParam("subject", "concession/" + id)
                .get("/api/v1/audit")
                .then()
                .body("entries[0].details.lengthMarksRemoved", equalTo("1250.0 to 1400.0 m"));
        TestPlant.test(reel, justNow(new SampleResult())).statusCode(201).body("verdict", equalTo("accepted"));
        // Registered anew, with the marks that its two ends have now.
        marked(reel, 100, 1350).statusCode(200);
        String text = textOf(certify(reel));
        assertTrue(text.contains("1250 to 1350 m"), text);
    }

    private static ValidatableResponse marked(String reel, int metres, int last) {
        return TestPlant.putReel(
                reel,
                "{\"product\": \"HD6A-4P\", \"length\": {\"value\": " + metres
                        + ", \"unit\": \"m\"}, \"lengthMarks\": {\"first\": 1250, \"last\": " + last
                        + ", \"unit\": \"m\"}}");
    }

    private String justNow(SampleResult result) {
        return result.json()
                .replace(
                        "\"finished\": \"2026-03-02T14:09:30Z\"", "\"finished\": \"" + OffsetDateTime.now(clock) + "\"")
                .replace("2026-12-31", "2099-12-31");
    }

    @Test
    void itLapsesWhenTheReelIsTestedAgainFirst() {
        String reel = rejectedReel();
        int id = asked(reel, USE_AS_IS);
        TestPlant.test(reel, justNow(new SampleResult().resistance(FAILING_OHMS)))
                .statusCode(201);
        ben().get("/api/v1/concessions/" + id).then().body("state", equalTo("lapsed"));
        ben().queryParam("open", true).get("/api/v1/concessions").then().body("concessions.id", not(hasItem(id)));
        decide(ben(), id, "approval").statusCode(409).body("detail", containsString("lapsed"));
        decide(ben(), id, "refusal").statusCode(409);
        certify(reel).statusCode(409);
        asked(reel, USE_AS_IS);
    }

    @Test
    void aRefusalChangesNothing() {
        String reel = rejectedReel();
        int id = asked(reel, USE_AS_IS);
        ask(anna(), reel, SHORTEN).statusCode(409).body("detail", containsString("is open already"));
        decide(ben(), id, "refusal").statusCode(200).body("state", equalTo("refused"));
        certify(reel).statusCode(409);
        decide(ben(), id, "approval").statusCode(409).body("detail", containsString("was refused by Ben"));
    }

    @Test
    void whoAskedDoesNotDecideHoweverTheNameIsSpelt() {
        int id = asked(rejectedReel(), USE_AS_IS);
        for (String name : List.of("anna", "ANNA", "ａｎｎａ")) {
            for (String decision : List.of("approval", "refusal")) {
                decide(person(name, Role.ENGINEER, Role.QUALITY_MANAGER), id, decision)
                        .statusCode(409)
                        .body("detail", containsString("somebody else must decide"));
            }
        }
        ben().get("/api/v1/concessions/" + id).then().body("state", equalTo("open"));
    }

    @Test
    void ofTwoDecisionsAtOnceOneCounts() throws Exception {
        ExecutorService persons = Executors.newFixedThreadPool(2);
        try {
            for (int round = 0; round < 5; round++) {
                String reel = rejectedReel();
                int id = asked(reel, round % 2 == 0 ? SHORTEN : USE_AS_IS);
                Callable<Integer> one =
                        () -> decide(ben(), id, "approval").extract().statusCode();
                Callable<Integer> other = () -> decide(person("carl", Role.QUALITY_MANAGER), id, "approval")
                        .extract()
                        .statusCode();
                int sum = 0;
                for (Future<Integer> answer : persons.invokeAll(List.of(one, other))) {
                    sum += answer.get();
                }
                assertEquals(200 + 409, sum, "round " + round);
                ben().queryParam("subject", "concession/" + id)
                        .get("/api/v1/audit")
                        .then()
                        .body("entries.size()", equalTo(2));
            }
        } finally {
            persons.shutdownNow();
        }
    }

    @Test
    void onlyPersonsOfTheRoleAskAndDecide() {
        String reel = rejectedReel();
        ask(token("bay-1", Role.ENGINEER), reel, USE_AS_IS).statusCode(403);
        ask(ben(), reel, USE_AS_IS).statusCode(403);
        int id = asked(reel, USE_AS_IS);
        decide(token("bay-1", Role.QUALITY_MANAGER), id, "approval").statusCode(403);
        decide(person("carl", Role.ENGINEER), id, "approval").statusCode(403);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "/kind | {\"kind\": \"eat\", \"reason\": \"r\"}",
                "/reason | {\"kind\": \"use-as-is\"}",
                "/product | {\"kind\": \"regrade\", \"reason\": \"r\"}",
                "/product | {\"kind\": \"regrade\", \"product\": \"NO-SUCH\", \"reason\": \"r\"}",
                "/length | {\"kind\": \"shorten\", \"reason\": \"r\"}",
                "/length | {\"kind\": \"shorten\", \"length\": {\"value\": -1, \"unit\": \"m\"}, \"reason\": \"r\"}",
                "/length | {\"kind\": \"use-as-is\", \"length\": {\"value\": 1, \"unit\": \"m\"}, \"reason\": \"r\"}"
            })
    void refusesWhatCannotBeAskedFor(String where, String body) {
        ask(anna(), rejectedReel(), body).statusCode(422).body("errors.where", hasItem(containsString(where)));
    }

    @Test
    void saysWhatIsNotThereOrNotToBeConceded() {
        ask(anna(), "NO-SUCH-REEL", USE_AS_IS).statusCode(404);
        decide(ben(), Integer.MAX_VALUE, "approval").statusCode(404);
        ben().get("/api/v1/concessions/" + Integer.MAX_VALUE).then().statusCode(404);
        ask(anna(), TestPlant.newReel(100), USE_AS_IS).statusCode(409).body("detail", containsString("never tested"));
        String accepted = TestPlant.newReel(100);
        TestPlant.test(accepted, new SampleResult().json()).statusCode(201);
        ask(anna(), accepted, USE_AS_IS).statusCode(409).body("detail", containsString("is accepted"));
        for (String length : List.of("100", "250")) {
            ask(anna(), rejectedReel(), SHORTEN.replace("60", length))
                    .statusCode(409)
                    .body("detail", containsString("cannot be shortened"));
        }
    }

    /** Straight at the database, as the service's role, past the service's own checks. */
    @Test
    void theDatabaseItselfHoldsTheTwoApart() throws SQLException {
        int id = asked(rejectedReel(), USE_AS_IS);
        for (String same : List.of("anna", "ANNA", "ａｎｎａ")) {
            assertEquals(CHECK_VIOLATION, refusal(decision(same, id)));
        }
        run(decision("ben", id));
        assertTrue(refusal("update concession set reason = 'another' where id = " + id)
                .matches(RESTRICT_VIOLATION + "|42501"));
        assertTrue(refusal("delete from concession_decision where concession = " + id)
                .matches(RESTRICT_VIOLATION + "|42501"));
    }

    private static String decision(String by, int id) {
        return "insert into concession_decision (plant, concession, requested_by, approved, reason, decided_by, decided_role,"
                + " decided) values ('north', " + id + ", 'anna', true, 'r', '" + by + "', 'quality-manager', now())";
    }

    private String refusal(String attempt) {
        return assertThrows(SQLException.class, () -> run(attempt)).getSQLState();
    }

    private void run(String sql) throws SQLException {
        try (Connection service = database.getConnection();
                Statement statement = service.createStatement()) {
            statement.execute(sql);
        }
    }
}
