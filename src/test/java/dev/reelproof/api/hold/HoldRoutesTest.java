package dev.reelproof.api.hold;

import static dev.reelproof.api.access.TestSignIn.person;
import static dev.reelproof.api.access.TestSignIn.personOf;
import static dev.reelproof.api.access.TestSignIn.token;
import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
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
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is on hold gets no certificate, with all that descends from it, until somebody else releases it. */
@QuarkusTest
@ExtendWith(SignedIn.class)
class HoldRoutesTest {
    private static final String ROUTE = "/api/v1/holds";
    private static final String CHECK_VIOLATION = "23514";
    private static final String FOREIGN_KEY_VIOLATION = "23503";
    private static final String UNIQUE_VIOLATION = "23505";

    @Inject
    AgroalDataSource database;

    /** Makes the identifiers of one test its own: lots are kept for ever. */
    private final String own = "-" + UUID.randomUUID().toString().substring(0, 8);

    private static RequestSpecification anna() {
        return person("anna", Role.ENGINEER);
    }

    private static RequestSpecification ben() {
        return person("Ben", Role.QUALITY_MANAGER);
    }

    private static ValidatableResponse place(RequestSpecification caller, String body) {
        return caller.contentType("application/json").body(body).post(ROUTE).then();
    }

    private String held(String key, String name) {
        return place(anna(), "{\"" + key + "\": \"" + name + "\", \"reason\": \"bare spots\"}")
                .statusCode(201)
                .extract()
                .path("id");
    }

    private static ValidatableResponse release(RequestSpecification caller, String id, String range) {
        return caller.contentType("application/json")
                .body("{\"reason\": \"measured again\"" + (range == null ? "" : ", \"range\": " + range) + "}")
                .post(ROUTE + "/" + id + "/release")
                .then();
    }

    private static String range(double from, double to, String unit) {
        return "{\"from\": {\"value\": " + from + ", \"unit\": \"" + unit + "\"}, \"to\": {\"value\": " + to
                + ", \"unit\": \"" + unit + "\"}}";
    }

    private static void register(String lot) {
        given().contentType("application/json")
                .body(lot)
                .post("/api/v1/lots")
                .then()
                .statusCode(201);
    }

    /** A lot of 2 km, an output of the run that stands in {@code more}. */
    private void bought(String id, String more) {
        register("{\"id\": \"" + id + own
                + "\", \"kind\": \"annealed-conductor\", \"quantity\": {\"value\": 2, \"unit\": \"km\"},"
                + " \"made\": \"2026-02-11T09:00:00Z\"" + more + "}");
    }

    private static void made(String id, String kind, String parent, double metres, String more) {
        register("{\"id\": \"" + id + "\", \"kind\": \"" + kind + "\", \"quantity\": {\"value\": " + metres
                + ", \"unit\": \"m\"}, \"made\": \"2026-02-12T09:00:00Z\", \"inputs\": [{\"lot\": \"" + parent
                + "\", \"quantity\": {\"value\": " + metres + ", \"unit\": \"m\"}" + more + "}]}");
    }

    private static String at(double from, double metres) {
        return ", \"position\": {\"from\": {\"value\": 0, \"unit\": \"m\"}, \"to\": {\"value\": " + metres
                + ", \"unit\": \"m\"}, \"onParentFrom\": {\"value\": " + from
                + ", \"unit\": \"m\"}, \"onParentTo\": {\"value\": " + (from + metres) + ", \"unit\": \"m\"}}";
    }

    private static ValidatableResponse reel(String reel) {
        return given().get("/api/v1/reels/" + reel).then().statusCode(200);
    }

    private static ValidatableResponse certify(String reel) {
        return given().post("/api/v1/reels/" + reel + "/certificates").then();
    }

    /** A reel with an accepted record, registered as a lot too. */
    private String testedReelOf(String parent) {
        String reel = testedReel();
        made(reel, "reel", parent, 300, "");
        return reel;
    }

    private static String testedReel() {
        String reel = TestPlant.newReel();
        TestPlant.test(reel, new SampleResult().json()).statusCode(201);
        return reel;
    }

    @Test
    void aHeldLotHoldsWhatDescendsFromItAlsoWhatComesLater() {
        bought("AC", "");
        made("IC" + own, "insulated-conductor", "AC" + own, 1000, "");
        String before = testedReelOf("IC" + own);
        String id = place(anna(), "{\"lot\": \"AC" + own + "\", \"reason\": \"bare spots\"}")
                .statusCode(201)
                .header("Location", containsString(ROUTE + "/"))
                .body("reels", equalTo(1))
                .body("open", equalTo(true))
                .body("lot", equalTo("AC" + own))
                .body("heldBy", equalTo("anna"))
                .extract()
                .path("id");
        String later = testedReelOf("IC" + own);
        String free = testedReel();
        for (String reel : List.of(before, later)) {
            reel(reel).body("held", contains(id)).body("holds[0].reason", equalTo("bare spots"));
            certify(reel)
                    .statusCode(409)
                    .body(
                            "detail",
                            allOf(containsString("bare spots"), containsString("hold " + id), containsString("anna")))
                    .body("errors[0].where", endsWith(ROUTE + "/" + id));
        }
        given().get(ROUTE + "/" + id).then().statusCode(200).body("reels", equalTo(2));
        made("MADE" + own, "reel", "IC" + own, 100, "");
        reel("MADE" + own)
                .body("product", nullValue())
                .body("length.value", equalTo(100f))
                .body("records", empty())
                .body("held", contains(id));
        given().get("/api/v1/reels/IC" + own).then().statusCode(404);
        given().get(ROUTE + "/" + id).then().statusCode(200).body("reels", equalTo(3));
        reel(free).body("held", empty());
        certify(free).statusCode(201);
        release(ben(), id, null)
                .statusCode(200)
                .body("open", equalTo(false))
                .body("reels", equalTo(0))
                .body("releases[0].releasedBy", equalTo("Ben"))
                .body("releases[0].reason", equalTo("measured again"))
                .body("releases[0].range", nullValue());
        reel(later).body("held", empty());
        certify(before).statusCode(201);
        certify(later).statusCode(201);
    }

    @Test
    void aHoldAfterTheCertificateSaysSo() {
        String reel = testedReel();
        String number = certify(reel).statusCode(201).extract().path("number");
        String id = held("reel", reel);
        certify(reel)
                .statusCode(409)
                .body("title", equalTo("The reel is on hold"))
                .body("detail", allOf(containsString(number), containsString("hold " + id)));
        reel(reel).body("held", contains(id)).body("certificates.number", contains(number));
        given().get("/api/v1/certificates/" + number + ".pdf").then().statusCode(200);
        release(ben(), id, null).statusCode(200);
        certify(reel).statusCode(200).body("number", equalTo(number));
    }

    @Test
    void everyOpenHoldCounts() {
        bought("AC", "");
        String reel = testedReelOf("AC" + own);
        String ofLot = held("lot", "AC" + own);
        String ofReel = held("reel", reel);
        reel(reel).body("held", contains(ofLot, ofReel));
        certify(reel).statusCode(409).body("errors", hasSize(2));
        release(ben(), ofLot, null).statusCode(200);
        certify(reel).statusCode(409).body("errors", hasSize(1));
        release(ben(), ofReel, null).statusCode(200);
        certify(reel).statusCode(201);
    }

    @Test
    void aRunHoldsItsOutputsAndWhatDescends() {
        String run = ", \"step\": \"drawing\", \"run\": \"RUN" + own
                + "\", \"machine\": \"D-1\", \"started\": \"2026-02-11T07:00:00Z\", \"finished\": \"2026-02-11T09:00:00Z\"";
        bought("AC1", run);
        bought("AC2", "");
        String of = testedReelOf("AC1" + own);
        String other = testedReelOf("AC2" + own);
        String id = held("run", "RUN" + own);
        bought("AC3", run);
        String later = testedReelOf("AC3" + own);
        reel(of).body("held", contains(id));
        reel(later).body("held", contains(id));
        reel(other).body("held", empty());
        given().get(ROUTE + "/" + id).then().body("reels", equalTo(2)).body("run", equalTo("RUN" + own));
    }

    @ParameterizedTest
    @CsvSource({
        "2026-02-11T06:00:00Z, 2026-02-11T06:59:59Z, false",
        "2026-02-11T06:00:00Z, 2026-02-11T07:00:00Z, true",
        "2026-02-11T08:00:00Z, 2026-02-11T08:01:00Z, true",
        "2026-02-11T10:00:00+01:00, 2026-02-12T00:00:00Z, true",
        "2026-02-11T09:00:01Z, 2026-02-12T00:00:00Z, false",
    })
    void aMachineHoldsWhatItMadeInTheTime(String from, String to, boolean isHeld) {
        String machine = "INS" + own;
        bought(
                "AC",
                ", \"step\": \"drawing\", \"machine\": \"" + machine
                        + "\", \"started\": \"2026-02-11T07:00:00Z\", \"finished\": \"2026-02-11T09:00:00Z\"");
        String reel = testedReelOf("AC" + own);
        String id = place(
                        anna(),
                        "{\"machine\": \"" + machine + "\", \"from\": \"" + from + "\", \"to\": \"" + to
                                + "\", \"reason\": \"worn die\"}")
                .statusCode(201)
                .body("reels", equalTo(isHeld ? 1 : 0))
                .body("machine", equalTo(machine))
                .extract()
                .path("id");
        reel(reel).body("held", isHeld ? contains(id) : empty());
        certify(reel).statusCode(isHeld ? 409 : 201);
        String later = testedReelOf("AC" + own);
        reel(later).body("held", isHeld ? contains(id) : empty());
        release(ben(), id, range(0, 1, "m")).statusCode(422).body("errors[0].where", equalTo("/range"));
    }

    @Test
    void aReleaseByLengthFreesWhatLiesInItAlone() {
        bought("AC", "");
        made("IC" + own, "insulated-conductor", "AC" + own, 1900, at(100, 1900));
        String within = testedReel();
        made(within, "reel", "IC" + own, 300, at(0, 300));
        String across = testedReel();
        made(across, "reel", "IC" + own, 300, at(300, 300));
        String unplaced = testedReelOf("IC" + own);
        String id = held("lot", "AC" + own);
        release(ben(), id, range(0, 1.5, "kft"))
                .statusCode(200)
                .body("open", equalTo(true))
                .body("reels", equalTo(2))
                .body("releases[0].range.to", equalTo(Map.of("value", 1.5f, "unit", "kft")));
        reel(within).body("held", empty());
        reel(across).body("held", contains(id));
        reel(unplaced).body("held", contains(id));
        certify(within).statusCode(201);
        certify(across).statusCode(409);
        String later = testedReel();
        made(later, "reel", "IC" + own, 100, at(600, 100));
        reel(later).body("held", contains(id));
        release(ben(), id, range(400, 2000, "m")).statusCode(200).body("reels", equalTo(1));
        certify(across).statusCode(201);
        certify(later).statusCode(201);
        certify(unplaced).statusCode(409);
        release(ben(), id, null).statusCode(200).body("reels", equalTo(0)).body("releases", hasSize(3));
        certify(unplaced).statusCode(201);
    }

    @Test
    void aReelIsReleasedByLengthWhenAllOfItIs() {
        String reel = testedReel();
        String id = held("reel", reel);
        release(ben(), id, range(0, 200, "m")).statusCode(200).body("reels", equalTo(1));
        certify(reel).statusCode(409);
        release(ben(), id, range(200, 305, "m")).statusCode(200).body("reels", equalTo(0));
        certify(reel).statusCode(201);
    }

    @ParameterizedTest
    @ValueSource(strings = {"anna", "ANNA", "ａｎｎａ"})
    void whoHoldsDoesNotRelease(String name) {
        String reel = testedReel();
        String id = held("reel", reel);
        release(person(name, Role.ENGINEER, Role.QUALITY_MANAGER), id, null)
                .statusCode(409)
                .body("detail", containsString("somebody else must release it"));
        release(person(name, Role.QUALITY_MANAGER), id, range(0, 305, "m")).statusCode(409);
        certify(reel).statusCode(409);
    }

    @Test
    void aTokenHoldsAndDoesNotRelease() {
        String reel = testedReel();
        String id = place(token("station", Role.ENGINEER), "{\"reel\": \"" + reel + "\", \"reason\": \"smells\"}")
                .statusCode(201)
                .extract()
                .path("id");
        release(token("station", Role.ENGINEER), id, null).statusCode(409);
        release(token("another", Role.QUALITY_MANAGER), id, null)
                .statusCode(403)
                .body("detail", containsString("sign in with an account"));
        String byPerson = held("reel", reel);
        release(token("station", Role.ENGINEER), byPerson, null).statusCode(403);
        reel(reel).body("held", contains(id, byPerson));
        release(person("station", Role.ENGINEER), id, null).statusCode(200);
        reel(reel).body("held", contains(byPerson));
    }

    @Test
    void aHoldIsReleasedOnce() throws Exception {
        String id = held("reel", testedReel());
        ExecutorService persons = Executors.newFixedThreadPool(2);
        try {
            Callable<Integer> one = () -> release(ben(), id, null).extract().statusCode();
            Callable<Integer> other = () ->
                    release(person("carl", Role.ENGINEER), id, null).extract().statusCode();
            int sum = 0;
            for (Future<Integer> answer : persons.invokeAll(List.of(one, other))) {
                sum += answer.get();
            }
            assertEquals(200 + 409, sum);
        } finally {
            persons.shutdownNow();
        }
        release(ben(), id, range(0, 1, "m")).statusCode(409).body("detail", containsString("was released by"));
    }

    @ParameterizedTest
    @EnumSource(Role.class)
    void isForEngineersAndQualityManagers(Role role) {
        boolean may = role == Role.ENGINEER || role == Role.QUALITY_MANAGER;
        String reel = TestPlant.newReel();
        String id = held("reel", reel);
        place(person("dora", role), "{\"reel\": \"" + reel + "\", \"reason\": \"r\"}")
                .statusCode(may ? 201 : 403);
        release(person("dora", role), id, null).statusCode(may ? 200 : 403);
        person("dora", role).get(ROUTE).then().statusCode(200);
        RequestSpecification eve = personOf("south", "eve", Role.ENGINEER);
        place(eve.queryParam("plant", "north"), "{\"reel\": \"" + reel + "\", \"reason\": \"r\"}")
                .statusCode(403);
        place(SignedIn.nobody(), "{}").statusCode(401);
    }

    @Test
    void listsTheNewestFirstAndTheOpenAlone() {
        String reel = TestPlant.newReel();
        String first = held("reel", reel);
        String second = held("reel", reel);
        release(ben(), first, null).statusCode(200);
        given().get(ROUTE)
                .then()
                .statusCode(200)
                .body("holds.id", hasItem(first))
                .body("holds[0].id", equalTo(second))
                .body("holds.find { it.id == '" + first + "' }.open", equalTo(false));
        given().queryParam("open", true)
                .get(ROUTE)
                .then()
                .body("holds.id", hasItem(second))
                .body("holds.id", not(hasItem(first)))
                .body("holds.open", not(hasItem(false)));
        given().queryParam("before", second)
                .queryParam("limit", 1)
                .get(ROUTE)
                .then()
                .body("holds.id", contains(first));
    }

    @Test
    void allOfItIsInTheTrail() {
        bought("AC", "");
        String id = held("lot", "AC" + own);
        release(ben(), id, range(0, 1, "km")).statusCode(200);
        release(ben(), id, null).statusCode(200);
        release(ben(), id, null).statusCode(409);
        given().queryParam("subject", "hold/" + id)
                .get("/api/v1/audit")
                .then()
                .body("entries.action", contains("hold-released", "hold-released-in-part", "hold-placed"))
                .body("entries.actor", contains("Ben", "Ben", "anna"))
                .body("entries.reason", contains("measured again", "measured again", "bare spots"))
                .body("entries.details.lot", contains("AC" + own, "AC" + own, "AC" + own))
                .body("entries[1].details.rangeTo", equalTo(1.0f));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "422 | /reason | {\"lot\": \"AC\"}",
                "422 | /reason | {\"lot\": \"AC\", \"reason\": \"  \"}",
                "422 | /reason | {\"lot\": \"AC\", \"reason\": 7}",
                "422 | hold | {\"reason\": \"r\"}",
                "422 | hold | {\"lot\": \"AC\", \"reel\": \"AC\", \"reason\": \"r\"}",
                "422 | /lot | {\"lot\": \"NOWHERE\", \"reason\": \"r\"}",
                "422 | /lot | {\"lot\": \"no identifier\", \"reason\": \"r\"}",
                "422 | /reel | {\"reel\": \"AC\", \"reason\": \"r\"}",
                "422 | /run | {\"run\": \"NOWHERE\", \"reason\": \"r\"}",
                "422 | /lot | {\"lot\": \"AC\", \"from\": \"2026-02-11T07:00:00Z\", \"reason\": \"r\"}",
                "422 | /machine | {\"machine\": \"NOWHERE\", \"from\": \"2026-02-11T07:00:00Z\", \"to\": \"2026-02-11T08:00:00Z\", \"reason\": \"r\"}",
                "422 | /machine | {\"machine\": \"M\", \"from\": \"2026-02-11T08:00:00Z\", \"to\": \"2026-02-11T07:00:00Z\", \"reason\": \"r\"}",
                "422 | /to | {\"machine\": \"M\", \"from\": \"2026-02-11T08:00:00Z\", \"reason\": \"r\"}",
                "422 | /from | {\"machine\": \"M\", \"from\": \"yesterday\", \"to\": \"2026-02-11T07:00:00Z\", \"reason\": \"r\"}",
                "422 | /plant | {\"lot\": \"AC\", \"plant\": \"south\", \"reason\": \"r\"}",
                "422 | /by | {\"lot\": \"AC\", \"by\": \"ben\", \"reason\": \"r\"}",
                "422 | hold | []",
                "400 | hold | no JSON",
                "400 | hold | {\"lot\": \"AC\""
            })
    void refusesWhatCannotBeHeld(int status, String where, String body) {
        bought("AC", ", \"machine\": \"M" + own + "\"");
        place(anna(), body.replace("\"AC\"", "\"AC" + own + "\"").replace("\"M\"", "\"M" + own + "\""))
                .statusCode(status)
                .contentType("application/problem+json")
                .body("errors.where", hasItem(containsString(where)));
        given().queryParam("open", true)
                .queryParam("limit", 500)
                .get(ROUTE)
                .then()
                .body("holds.lot", not(hasItem("AC" + own)));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "422 | /reason | {}",
                "422 | /reason | {\"reason\": \" \"}",
                "422 | /by | {\"reason\": \"r\", \"by\": \"zoe\"}",
                "422 | /range/to | {\"reason\": \"r\", \"range\": {\"from\": {\"value\": 0, \"unit\": \"m\"}}}",
                "422 | /range/to | {\"reason\": \"r\", \"range\": {\"from\": {\"value\": 0, \"unit\": \"m\"}, \"to\": {\"value\": 1, \"unit\": \"km\"}}}",
                "422 | /range | {\"reason\": \"r\", \"range\": {\"from\": {\"value\": 5, \"unit\": \"m\"}, \"to\": {\"value\": 5, \"unit\": \"m\"}}}",
                "422 | /range | {\"reason\": \"r\", \"range\": {\"from\": {\"value\": -1, \"unit\": \"m\"}, \"to\": {\"value\": 5, \"unit\": \"m\"}}}",
                "422 | /range | {\"reason\": \"r\", \"range\": {\"from\": {\"value\": 0, \"unit\": \"m\"}, \"to\": {\"value\": 2001, \"unit\": \"m\"}}}",
                "422 | /range | {\"reason\": \"r\", \"range\": {\"from\": {\"value\": 0, \"unit\": \"kg\"}, \"to\": {\"value\": 1, \"unit\": \"kg\"}}}",
                "422 | /range | {\"reason\": \"r\", \"range\": {\"from\": {\"value\": 0, \"unit\": \"ohm\"}, \"to\": {\"value\": 1, \"unit\": \"ohm\"}}}",
                "422 | /range | {\"reason\": \"r\", \"range\": \"all\"}",
                "400 | release | no JSON"
            })
    void refusesWhatCannotBeReleased(int status, String where, String body) {
        bought("AC", "");
        String id = held("lot", "AC" + own);
        ben().contentType("application/json")
                .body(body)
                .post(ROUTE + "/" + id + "/release")
                .then()
                .statusCode(status)
                .contentType("application/problem+json")
                .body("errors.where", hasItem(containsString(where)));
        given().get(ROUTE + "/" + id).then().body("open", equalTo(true)).body("releases", empty());
    }

    @ParameterizedTest
    @ValueSource(strings = {"0", "-1", "999999999999", "99999999999999999999", "one"})
    void doesNotKnowWhatIsNotHeld(String id) {
        given().get(ROUTE + "/" + id).then().statusCode(404).body("detail", containsString("has no hold"));
        release(ben(), id, null).statusCode(404);
    }

    @Test
    void holdsWhatWaitsForItsParentsOnceItIsThere() {
        String reports = "{\"id\": \"IC" + own
                + "\", \"kind\": \"insulated-conductor\", \"quantity\": {\"value\": 1, \"unit\": \"km\"},"
                + " \"made\": \"2026-02-11T09:30:00Z\", \"step\": \"insulating\", \"inputs\": [{\"lot\": \"AC" + own
                + "\", \"quantity\": {\"value\": 1, \"unit\": \"km\"}}]}\n";
        given().contentType("application/x-ndjson")
                .body(reports.getBytes(StandardCharsets.UTF_8))
                .post("/api/v1/lots/bulk")
                .then()
                .statusCode(200)
                .body("waiting", equalTo(1));
        String ofWaiting = held("lot", "IC" + own);
        String ofMissing = held("lot", "AC" + own);
        release(ben(), ofMissing, range(0, 1, "m"))
                .statusCode(422)
                .body("errors[0].message", containsString("not known yet"));
        bought("AC", "");
        String reel = testedReelOf("IC" + own);
        reel(reel).body("held", contains(ofWaiting, ofMissing));
    }

    private static ValidatableResponse ship(String reel, String reason) {
        return given().contentType("application/json")
                .body("{\"state\": \"shipped\", \"to\": \"Invented Networks\""
                        + (reason == null ? "" : ", \"reason\": \"" + reason + "\"") + "}")
                .post("/api/v1/reels/" + reel + "/disposition")
                .then();
    }

    private static ValidatableResponse dispositions(String reel) {
        return given().get("/api/v1/reels/" + reel + "/disposition").then().statusCode(200);
    }

    private static ValidatableResponse trail(String subject) {
        return given().queryParam("subject", subject)
                .get("/api/v1/audit")
                .then()
                .statusCode(200);
    }

    @Test
    void aHeldReelDoesNotLeave() {
        bought("AC", "");
        String reel = TestPlant.newReel();
        made(reel, "reel", "AC" + own, 300, "");
        String ofLot = held("lot", "AC" + own);
        String ofReel = held("reel", reel);
        ship(reel, null)
                .statusCode(409)
                .contentType("application/problem+json")
                .body("title", equalTo("The reel is on hold"))
                .body("detail", allOf(containsString("hold " + ofLot), containsString("hold " + ofReel)))
                .body("detail", allOf(containsString("must not leave"), containsString("bare spots")))
                .body("detail", allOf(containsString("Have it released"), containsString("'reason'")))
                .body("errors.where", contains(ROUTE + "/" + ofLot, ROUTE + "/" + ofReel));
        dispositions(reel).body("dispositions", empty());
        trail("reel/" + reel).body("entries.action", not(hasItem("reel-shipped")));
        release(ben(), ofLot, null).statusCode(200);
        ship(reel, null).statusCode(409).body("errors.where", contains(ROUTE + "/" + ofReel));
        release(ben(), ofReel, null).statusCode(200);
        ship(reel, null).statusCode(201);
        trail("reel/" + reel)
                .body("entries[0].action", equalTo("reel-shipped"))
                .body("entries[0].details.held", nullValue());
    }

    @Test
    void whatLeftBeforeItWasHeldIsTakenDownWithTheReason() {
        String reel = TestPlant.newReel();
        String first = held("reel", reel);
        String second = held("reel", reel);
        ship(reel, "left on Monday").statusCode(201).body("reason", equalTo("left on Monday"));
        dispositions(reel).body("dispositions.state", contains("shipped"));
        trail("reel/" + reel)
                .body("entries[0].action", equalTo("reel-shipped"))
                .body("entries[0].reason", equalTo("left on Monday"))
                .body("entries[0].details.held", contains(first, second));
    }

    @ParameterizedTest
    @ValueSource(strings = {"in-stock", "scrapped"})
    void aHoldKeepsNobodyFromScrappingOrTakingBack(String state) {
        String reel = TestPlant.newReel();
        held("reel", reel);
        given().contentType("application/json")
                .body("{\"state\": \"" + state + "\"}")
                .post("/api/v1/reels/" + reel + "/disposition")
                .then()
                .statusCode(201);
    }

    /** A certificate that is being issued keeps a hold waiting until it is there; the hold then says so. */
    @Test
    void aHoldWaitsForACertificateThatIsBeingIssued() throws Exception {
        certify(testedReel()).statusCode(201);
        String reel = testedReel();
        ExecutorService others = Executors.newFixedThreadPool(2);
        try (Connection numbering = database.getConnection();
                Statement statement = numbering.createStatement()) {
            numbering.setAutoCommit(false);
            statement.execute("select from certificate_serial where plant = 'north' for update");
            Future<Integer> issuing =
                    others.submit(() -> certify(reel).extract().statusCode());
            waitUntilSomebodyWaitsFor(statement);
            Future<String> placing = others.submit(() -> held("reel", reel));
            Thread.sleep(1_000);
            assertFalse(placing.isDone(), "the hold did not wait");
            numbering.rollback();
            assertEquals(201, issuing.get(30, TimeUnit.SECONDS));
            String id = placing.get(30, TimeUnit.SECONDS);
            reel(reel).body("held", contains(id)).body("certificates", hasSize(1));
        } finally {
            others.shutdownNow();
        }
    }

    private static void waitUntilSomebodyWaitsFor(Statement holder) throws Exception {
        long last = System.nanoTime() + TimeUnit.SECONDS.toNanos(30);
        boolean isAwaited = false;
        while (!isAwaited) {
            assertTrue(System.nanoTime() < last, "nobody waits for a number");
            Thread.sleep(20);
            try (ResultSet awaited = holder.executeQuery("select exists (select from pg_locks"
                    + " where not granted and pg_backend_pid() = any(pg_blocking_pids(pid)))")) {
                awaited.next();
                isAwaited = awaited.getBoolean(1);
            }
        }
    }

    /** A hold that is being placed keeps a certificate waiting, which then sees it. */
    @Test
    void aCertificateWaitsForAHoldThatIsBeingPlaced() throws Exception {
        String reel = testedReel();
        assertEquals(409, whileAHoldIsPlaced(reel, () -> certify(reel).extract().statusCode()));
        reel(reel).body("held", hasSize(1)).body("certificates", empty());
    }

    /** What is answered, once the hold is there, to a request that came while it was being placed. */
    private int whileAHoldIsPlaced(String reel, Callable<Integer> request) throws Exception {
        ExecutorService other = Executors.newSingleThreadExecutor();
        try (Connection placing = database.getConnection();
                Statement statement = placing.createStatement()) {
            placing.setAutoCommit(false);
            statement.execute("select pg_advisory_xact_lock(hashtextextended('north/holds', 0))");
            statement.execute("insert into hold (plant, what, lot, reason, held_by, held_by_kind, held)"
                    + " values ('north', 'reel', '" + reel + "', 'bare spots', 'anna', 'person', now())");
            Future<Integer> answer = other.submit(request);
            Thread.sleep(1_000);
            assertFalse(answer.isDone(), "the request did not wait");
            placing.commit();
            return answer.get(30, TimeUnit.SECONDS);
        } finally {
            other.shutdownNow();
        }
    }

    /** A reel that is being shipped keeps a hold waiting, which then finds it shipped. */
    @Test
    void aHoldWaitsForAReelThatIsBeingShipped() throws Exception {
        String reel = TestPlant.newReel();
        ExecutorService others = Executors.newFixedThreadPool(2);
        try (Connection keeping = database.getConnection();
                Statement statement = keeping.createStatement()) {
            keeping.setAutoCommit(false);
            statement.execute("select pg_advisory_xact_lock(hashtextextended('north/disposition/" + reel + "', 0))");
            Future<Integer> shipping =
                    others.submit(() -> ship(reel, null).extract().statusCode());
            Thread.sleep(1_000);
            Future<String> placing = others.submit(() -> held("reel", reel));
            Thread.sleep(1_000);
            assertFalse(shipping.isDone(), "the reel was shipped already");
            assertFalse(placing.isDone(), "the hold did not wait");
            keeping.commit();
            assertEquals(201, shipping.get(30, TimeUnit.SECONDS));
            placing.get(30, TimeUnit.SECONDS);
            dispositions(reel).body("dispositions.state", contains("shipped"));
        } finally {
            others.shutdownNow();
        }
    }

    /** A hold that is being placed keeps a reel from being shipped at the same moment. */
    @Test
    void shippingWaitsForAHoldThatIsBeingPlaced() throws Exception {
        String reel = TestPlant.newReel();
        assertEquals(
                409, whileAHoldIsPlaced(reel, () -> ship(reel, null).extract().statusCode()));
        dispositions(reel).body("dispositions", empty());
    }

    /** Straight at the database, as the service's role, past the service's own checks. */
    @Test
    void theDatabaseItselfHoldsTheTwoApart() throws SQLException {
        String id = held("reel", TestPlant.newReel());
        for (String same : List.of("anna", "ANNA", "ａｎｎａ")) {
            refused(CHECK_VIOLATION, releaseRow(id, 0, "anna", same));
        }
        refused(FOREIGN_KEY_VIOLATION, releaseRow(id, 0, "zoe", "anna"));
        run(releaseRow(id, 0, "anna", "ben"));
        refused(UNIQUE_VIOLATION, releaseRow(id, 1, "anna", "carl"));
        refused(
                CHECK_VIOLATION,
                "insert into hold (plant, what, lot, run, reason, held_by, held_by_kind, held)"
                        + " values ('north', 'lot', 'A', 'B', 'r', 'a', 'person', now())");
    }

    private static String releaseRow(String id, int ordinal, String heldBy, String by) {
        return "insert into hold_release (plant, hold, ordinal, reason, held_by, held_by_kind, released_by, released)"
                + " values ('north', " + id + ", " + ordinal + ", 'r', '" + heldBy + "', 'person', '" + by
                + "', now())";
    }

    private void refused(String state, String attempt) {
        SQLException refusal = assertThrows(SQLException.class, () -> run(attempt));
        assertEquals(state, refusal.getSQLState(), refusal.getMessage());
    }

    private void run(String sql) throws SQLException {
        try (Connection service = database.getConnection();
                Statement statement = service.createStatement()) {
            statement.execute(sql);
        }
    }
}
