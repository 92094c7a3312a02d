package dev.reelproof.api.seal;

import static dev.reelproof.api.access.TestSignIn.person;
import static dev.reelproof.api.seal.DatabaseEdits.ask;
import static dev.reelproof.api.seal.DatabaseEdits.checkAfter;
import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.oneOf;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.access.Role;
import dev.reelproof.api.TestPlant;
import dev.reelproof.api.access.SignedIn;
import dev.reelproof.api.result.SampleResult;
import dev.reelproof.app.seal.KeepLog;
import dev.reelproof.certificate.life.Withdrawal;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.hold.Hold;
import dev.reelproof.genealogy.hold.HoldTarget;
import dev.reelproof.limit.WrongRevision;
import dev.reelproof.record.RetestAcceptance;
import dev.reelproof.store.certificate.Withdrawals;
import dev.reelproof.store.hold.Holds;
import dev.reelproof.store.limits.WrongRevisions;
import dev.reelproof.store.result.AttemptHistories;
import dev.reelproof.store.seal.LogCheck.Difference;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import jakarta.inject.Inject;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** What persons decided about reels and certificates is sealed like the certificates: who takes a withdrawal or a hold away is found. */
@QuarkusTest
@TestProfile(TamperEvidenceTest.OwnDatabase.class)
@ExtendWith(SignedIn.class)
class SealedDecisionsTest {
    private static final OffsetDateTime AT = OffsetDateTime.parse("2026-03-02T14:05:00.123456Z");

    @Inject
    KeepLog log;

    @Inject
    Withdrawals withdrawals;

    @Inject
    WrongRevisions wrongRevisions;

    @Inject
    AttemptHistories attempts;

    @Inject
    Holds holds;

    private static long approval() throws SQLException {
        return Long.parseLong(ask("insert into approval (plant, action, subject, reason, requested_by, requested)"
                + " values ('north', 'withdraw', 'certificate/x', 'r', 'anna', now()) returning id"));
    }

    private void isSealed(String table, String key, String change) throws SQLException {
        assertEquals(Optional.empty(), checkAfter(log.key().open(), log.heads()).first());
        for (String edit : List.of("update " + table + " set " + change, "delete from " + table)) {
            Difference found =
                    checkAfter(log.key().open(), log.heads(), edit).first().orElseThrow();
            assertEquals(new Difference(table, "north " + key, found.what()), found);
        }
        log.append();
        Difference found = checkAfter(log.key().open(), log.heads(), "delete from " + table)
                .first()
                .orElseThrow();
        assertTrue(found.what().startsWith("The row is gone; it is in the log"), found.what());
    }

    @Test
    void aWithdrawal() throws SQLException {
        long approval = approval();
        QuarkusTransaction.requiringNew()
                .run(() -> withdrawals.keep(
                        "north", "NORTH-2026-000777", new Withdrawal("wrong", "anna", "ben", AT), approval));
        isSealed("certificate_withdrawal", "NORTH-2026-000777", "reason = 'another'");
    }

    @Test
    void aCertificateOverSeveralReels() throws SQLException {
        String order = "SO-" + UUID.randomUUID();
        TestPlant.putProduct("HD6A-4P", "category-6a-cable", 4).statusCode(oneOf(200, 201));
        for (String reel : List.of("A-" + order, "B-" + order)) {
            TestPlant.putReel(
                            reel,
                            "{\"plant\": \"north\", \"product\": \"HD6A-4P\", \"length\": {\"value\": 100, \"unit\": \"m\"},"
                                    + " \"order\": \"" + order + "\"}")
                    .statusCode(201);
            TestPlant.test(reel, new SampleResult().json()).statusCode(201);
            given().post("/api/v1/reels/" + reel + "/certificates").then().statusCode(201);
        }
        String number = given().contentType("application/json")
                .post("/api/v1/orders/" + order + "/collective-certificate")
                .then()
                .statusCode(201)
                .extract()
                .path("number");
        assertEquals(Optional.empty(), checkAfter(log.key().open(), log.heads()).first());
        String row = " where number = '" + number + "'";
        for (String edit : List.of(
                "update collective_certificate set customer = 'another'" + row,
                "update collective_certificate set content = content || '{\"order\": \"another\"}'" + row,
                "delete from collective_certificate" + row)) {
            Difference found =
                    checkAfter(log.key().open(), log.heads(), edit).first().orElseThrow();
            assertEquals(new Difference("collective_certificate", "north " + number, found.what()), found);
        }
    }

    @Test
    void aRevisionFoundWrong() throws SQLException {
        long approval = approval();
        QuarkusTransaction.requiringNew()
                .run(() -> wrongRevisions.keep(
                        "north", new WrongRevision("a-set/of-ours", 7, "a digit", "anna", "ben", AT), approval));
        isSealed("limit_revision_wrong", "a-set/of-ours/7", "reason = 'another'");
    }

    @Test
    void anAcceptedRetest() throws SQLException {
        String reel = TestPlant.newReel(100);
        String record = TestPlant.test(reel, new SampleResult().json())
                .statusCode(201)
                .extract()
                .path("id");
        attempts.accept("north", reel, UUID.fromString(record), new RetestAcceptance("ben", AT, "a loose clip"));
        isSealed("retest_acceptance", ask("select max(id) from retest_acceptance"), "accepted_by = 'another'");
    }

    @Test
    void aConcessionItsDecisionAndWhatWasJudgedAgain() throws SQLException {
        TestPlant.putProduct("SEALED-5E", "category-5e-cable", 4).statusCode(oneOf(200, 201));
        String reel = TestPlant.newReel(100);
        TestPlant.test(reel, new SampleResult().crosstalkWorseBy(18).json())
                .statusCode(201)
                .body("verdict", equalTo("rejected"));
        int id = person("anna", Role.ENGINEER)
                .contentType("application/json")
                .body("{\"kind\": \"regrade\", \"product\": \"SEALED-5E\", \"reason\": \"for an office\"}")
                .post("/api/v1/reels/" + reel + "/concessions")
                .then()
                .statusCode(201)
                .extract()
                .path("id");
        isSealed("concession", Integer.toString(id), "reason = 'another'");
        person("Ben", Role.QUALITY_MANAGER)
                .contentType("application/json")
                .body("{\"reason\": \"looked at\"}")
                .post("/api/v1/concessions/" + id + "/approval")
                .then()
                .statusCode(200);
        isSealed("concession_decision", Integer.toString(id), "reason = 'another'");
        isSealed(
                "judged_again",
                ask("select record_id from judged_again order by received desc limit 1"),
                "reel = 'another'");
    }

    @Test
    void aHoldAndItsRelease() throws SQLException {
        String reel = TestPlant.newReel(100);
        Hold hold = QuarkusTransaction.requiringNew()
                .call(() -> holds.keep("north", HoldTarget.ofReel(new LotId(reel)), "bare spots", "ben", "person", AT));
        isSealed("hold", Long.toString(hold.id()), "reason = 'another'");
        QuarkusTransaction.requiringNew()
                .run(() -> holds.keep("north", hold, new Hold.Release(null, "measured again", "anna", AT)));
        isSealed("hold_release", hold.id() + "/0", "released_by = 'another'");
    }
}
