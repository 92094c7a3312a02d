package dev.reelproof.api.access;

import static dev.reelproof.api.access.TestSignIn.person;
import static dev.reelproof.api.access.TestSignIn.personOf;
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

import dev.reelproof.access.Role;
import io.agroal.api.AgroalDataSource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What needs two persons is asked for by one and decided by another. */
@QuarkusTest
class ApprovalRoutesTest {
    private static final String ROUTE = "/api/v1/approvals";
    private static final String CHECK_VIOLATION = "23514";
    private static final String RESTRICT_VIOLATION = "23001";

    @Inject
    AgroalDataSource database;

    private String subject;

    @BeforeEach
    void placeAHold() {
        String reel = "R-" + UUID.randomUUID();
        put(
                "products/HD6A-4P",
                "{\"description\": \"d\", \"limitSet\": \"category-6a-cable\", \"pairs\": 4, \"gauge\": \"23 AWG\"}");
        put("reels/" + reel, "{\"product\": \"HD6A-4P\", \"length\": {\"value\": 305, \"unit\": \"m\"}}");
        String hold = token("bay-1", Role.ENGINEER)
                .contentType("application/json")
                .body("{\"reel\": \"" + reel + "\", \"reason\": \"bare spots\"}")
                .post("/api/v1/holds")
                .then()
                .statusCode(201)
                .extract()
                .path("id");
        subject = "hold/" + hold;
    }

    private static void put(String path, String body) {
        other().contentType("application/json")
                .body(body)
                .put("/api/v1/" + path)
                .then()
                .statusCode(oneOf(200, 201));
    }

    private void holdIsOpen(boolean open) {
        other().get("/api/v1/" + subject.replace("hold/", "holds/")).then().body("open", equalTo(open));
    }

    private ValidatableResponse ask(RequestSpecification caller) {
        return caller.contentType("application/json")
                .body("{\"action\": \"release\", \"subject\": \"" + subject + "\", \"reason\": \"remeasured\"}")
                .post(ROUTE)
                .then();
    }

    private int asked() {
        placeAHold();
        return ask(person("anna", Role.ENGINEER)).statusCode(201).extract().path("id");
    }

    private static ValidatableResponse decide(RequestSpecification caller, int id, boolean approve) {
        return caller.contentType("application/json")
                .body("{\"approve\": " + approve + ", \"reason\": \"looked at\"}")
                .post(ROUTE + "/" + id + "/decision")
                .then();
    }

    private static RequestSpecification other() {
        return person("Ben", Role.QUALITY_MANAGER);
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void oneAsksAndAnotherDecides(boolean approve) {
        int id = asked();
        other().queryParam("open", true).get(ROUTE).then().statusCode(200).body("approvals.id", hasItem(id));
        decide(other(), id, approve)
                .statusCode(200)
                .body("id", equalTo(id))
                .body("approve", equalTo(approve))
                .body("requestedBy", equalTo("anna"))
                .body("decidedBy", equalTo("Ben"))
                .body("decisionReason", equalTo("looked at"));
        holdIsOpen(!approve);
        other().queryParam("open", true).get(ROUTE).then().body("approvals.id", not(hasItem(id)));
        other().get(ROUTE).then().body("approvals.find { it.id == " + id + " }.approve", equalTo(approve));
        other().queryParam("subject", "approval/" + id)
                .get("/api/v1/audit")
                .then()
                .body("entries.action", contains(approve ? "approval-given" : "approval-refused", "approval-requested"))
                .body("entries.actor", contains("Ben", "anna"))
                .body("entries.reason", contains("looked at", "remeasured"))
                .body("entries[0].details.subject", equalTo(subject));
    }

    @ParameterizedTest
    @CsvSource({
        "release, hold/999999999",
        "release, hold/x",
        "release, reel/R-1",
        "issue, certificate/1",
        "upload, reel/R-1"
    })
    void anApprovalThatWouldDoNothingIsNotAskedFor(String action, String of) {
        person("anna", Role.ENGINEER)
                .contentType("application/json")
                .body("{\"action\": \"" + action + "\", \"subject\": \"" + of + "\", \"reason\": \"r\"}")
                .post(ROUTE)
                .then()
                .statusCode(422)
                .body("errors.where", contains(action.equals("release") ? "/subject" : "/action"));
    }

    @ParameterizedTest
    @CsvSource({
        "withdraw, certificate/NORTH-2026-999999, 404",
        "withdraw, reel/R-1, 404",
        "change-limits, limit-set/no-such-set/1/wrong, 404",
        "change-limits, limit-set/category-6a-cable, 422"
    })
    void anApprovalForASubjectThatIsNotThereIsNotAskedFor(String action, String of, int status) {
        person("anna", Role.QUALITY_MANAGER)
                .contentType("application/json")
                .body("{\"action\": \"" + action + "\", \"subject\": \"" + of + "\", \"reason\": \"r\"}")
                .post(ROUTE)
                .then()
                .statusCode(status);
    }

    @Test
    void whatIsAskedForAlreadyIsNotAskedForAgain() {
        int id = asked();
        ask(person("carl", Role.ENGINEER)).statusCode(409).body("detail", containsString("Approval " + id));
    }

    @Test
    void whatWasAskedForWithoutEffectIsRefusedAtBest() throws SQLException {
        String marked = "old/" + UUID.randomUUID();
        run("insert into approval (plant, action, subject, reason, requested_by, requested)"
                + " values ('north', 'issue', '" + marked + "', 'r', 'zoe', now())");
        int id = other().get(ROUTE).path("approvals.find { it.subject == '" + marked + "' }.id");
        decide(other(), id, true).statusCode(409).body("detail", containsString("does nothing"));
        other().get(ROUTE).then().body("approvals.find { it.id == " + id + " }.approve", nullValue());
        decide(other(), id, false).statusCode(200);
    }

    @Test
    void whatCannotBeDoneAnyMoreIsNotApproved() {
        int id = asked();
        person("carl", Role.ENGINEER)
                .contentType("application/json")
                .body("{\"reason\": \"looked at\"}")
                .post("/api/v1/" + subject.replace("hold/", "holds/") + "/release")
                .then()
                .statusCode(200);
        decide(other(), id, true).statusCode(409).body("detail", containsString("was released by carl"));
        other().get(ROUTE).then().body("approvals.find { it.id == " + id + " }.approve", nullValue());
    }

    @ParameterizedTest
    @ValueSource(strings = {"anna", "ANNA", "Anna", "ａｎｎａ"})
    void whoAskedCannotDecideHoweverTheNameIsSpelt(String name) {
        int id = asked();
        decide(person(name, Role.QUALITY_MANAGER, Role.ENGINEER), id, true)
                .statusCode(409)
                .body("detail", containsString("somebody else must decide"));
        decide(person(name, Role.QUALITY_MANAGER), id, false).statusCode(409);
        other().get(ROUTE).then().body("approvals.find { it.id == " + id + " }.approve", nullValue());
    }

    @Test
    void aDecisionIsTakenOnce() {
        int id = asked();
        decide(other(), id, false).statusCode(200);
        decide(person("carl", Role.ENGINEER), id, true)
                .statusCode(409)
                .body("detail", containsString("was refused by Ben"));
        decide(other(), id, false).statusCode(409);
    }

    @Test
    void ofTwoDecisionsAtOnceOneCounts() throws Exception {
        ExecutorService persons = Executors.newFixedThreadPool(2);
        try {
            for (int round = 0; round < 10; round++) {
                int id = asked();
                Callable<Integer> yes =
                        () -> decide(other(), id, true).extract().statusCode();
                Callable<Integer> no = () -> decide(person("carl", Role.ENGINEER), id, false)
                        .extract()
                        .statusCode();
                int sum = 0;
                for (Future<Integer> answer : persons.invokeAll(List.of(yes, no))) {
                    sum += answer.get();
                }
                assertEquals(200 + 409, sum, "round " + round);
                other().queryParam("subject", "approval/" + id)
                        .get("/api/v1/audit")
                        .then()
                        .body("entries.size()", equalTo(2));
            }
        } finally {
            persons.shutdownNow();
        }
    }

    @Test
    void aTokenNeitherAsksNorDecides() {
        ask(token("bay-1", Role.ENGINEER)).statusCode(403).body("detail", containsString("between persons"));
        decide(token("bay-1", Role.QUALITY_MANAGER), asked(), true).statusCode(403);
    }

    @ParameterizedTest
    @EnumSource(Role.class)
    void isForEngineersAndQualityManagersButOpenToReadersOfEveryRole(Role role) {
        boolean may = role == Role.ENGINEER || role == Role.QUALITY_MANAGER;
        ask(person("dora", role)).statusCode(may ? 201 : 403);
        decide(person("dora", role), asked(), true).statusCode(may ? 200 : 403);
        person("dora", role).get(ROUTE).then().statusCode(200);
    }

    @Test
    void isClosedToOthers() {
        given().get(ROUTE).then().statusCode(401).body("errors.size()", equalTo(1));
        ask(given()).statusCode(401);
        decide(given(), asked(), true).statusCode(401);
        ask(eveOfSouth()).statusCode(403);
        decide(eveOfSouth(), asked(), true).statusCode(403);
        eveOfSouth().get(ROUTE).then().statusCode(403);
    }

    private static RequestSpecification eveOfSouth() {
        return personOf("south", "eve", Role.ENGINEER).queryParam("plant", "north");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "422 | /action | {\"action\": \"fly\", \"subject\": \"s\", \"reason\": \"r\"}",
                "422 | /reason | {\"action\": \"release\", \"subject\": \"s\", \"reason\": \"  \"}",
                "422 | /reason | {\"action\": \"release\", \"subject\": \"s\"}",
                "422 | /by | {\"action\": \"release\", \"subject\": \"s\", \"reason\": \"r\", \"by\": \"anna\"}",
                "400 | approval | no JSON"
            })
    void refusesWhatCannotBeAskedFor(int status, String where, String body) {
        person("anna", Role.ENGINEER)
                .contentType("application/json")
                .body(body)
                .post(ROUTE)
                .then()
                .statusCode(status)
                .body("errors.where", hasItem(containsString(where)));
    }

    @Test
    void saysWhatIsNotThere() {
        decide(other(), Integer.MAX_VALUE, true).statusCode(404);
        other().contentType("application/json")
                .body("{\"approve\": true, \"reason\": \"r\"}")
                .post(ROUTE + "/one/decision")
                .then()
                .statusCode(422);
        other().contentType("application/json")
                .body("{\"approve\": \"yes\", \"reason\": \"r\"}")
                .post(ROUTE + "/" + asked() + "/decision")
                .then()
                .statusCode(422);
    }

    /** Straight at the database, as the service's role, past the service's own checks. */
    @Test
    void theDatabaseItselfHoldsTheTwoApart() throws SQLException {
        int id = asked();
        for (String same : List.of("anna", "ANNA", "ａｎｎａ")) {
            refused(CHECK_VIOLATION, decision(same, id));
        }
        refused(
                CHECK_VIOLATION,
                "insert into approval (plant, action, subject, reason, requested_by, requested, approved, decided_by,"
                        + " decided, decision_reason) values ('north', 'hold', 's', 'r', 'a', now(), true, 'a', now(), 'r')");
        refused(CHECK_VIOLATION, "update approval set approved = true where id = " + id);
        refused(RESTRICT_VIOLATION, "update approval set requested_by = 'zoe' where id = " + id);
        refused(RESTRICT_VIOLATION, "update approval set subject = 'reel/other' where id = " + id);
        run(decision("ben", id));
        refused(RESTRICT_VIOLATION, decision("carl", id));
        refused(
                RESTRICT_VIOLATION,
                "update approval set approved = null, decided_by = null, decided = null, decision_reason = null where id = "
                        + id);
    }

    private static String decision(String by, int id) {
        return "update approval set approved = true, decided_by = '" + by
                + "', decided = now(), decision_reason = 'r' where id = " + id;
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
