package dev.reelproof.api.lot;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.hasLength;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;

import dev.reelproof.access.Role;
import dev.reelproof.api.access.SignedIn;
import dev.reelproof.api.access.TestSignIn;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import io.restassured.specification.RequestSpecification;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** Lots in bulk: late, repeated, out of order, wrong, and broken off. */
@QuarkusTest
@ExtendWith(SignedIn.class)
class LotLoadTest {
    /** Makes the identifiers of one test its own: lots are kept for ever. */
    private final String own = "-" + UUID.randomUUID().toString().substring(0, 8);

    private String material(String id) {
        return """
                {"id": "%s%s", "kind": "jacket-compound", "quantity": {"value": 1, "unit": "t"}, "made": "2026-02-11T08:00:00Z"}"""
                .formatted(id, own);
    }

    private String wire(String id) {
        return """
                {"id": "%s%s", "kind": "annealed-conductor", "quantity": {"value": 1, "unit": "km"}, "made": "2026-02-11T08:00:00Z"}"""
                .formatted(id, own);
    }

    private String made(String id, String parent, double metres) {
        return """
                {"id": "%1$s%2$s", "kind": "unit", "quantity": {"value": %4$s, "unit": "m"}, "made": "2026-02-11T09:00:00Z", "step": "stranding", "inputs": [{"lot": "%3$s%2$s", "quantity": {"value": %4$s, "unit": "m"}}]}"""
                .formatted(id, own, parent, metres);
    }

    private static ValidatableResponse load(String... lines) {
        return given().contentType("application/x-ndjson")
                .body((String.join("\n", lines) + "\n").getBytes(StandardCharsets.UTF_8))
                .post("/api/v1/lots/bulk")
                .then();
    }

    private static void assertCounts(ValidatableResponse answer, int accepted, int waiting, int refused) {
        answer.statusCode(200)
                .body("accepted", equalTo(accepted))
                .body("waiting", equalTo(waiting))
                .body("refused", hasSize(refused));
    }

    private static ValidatableResponse get(String path) {
        return given().urlEncodingEnabled(false).get("/api/v1" + path).then();
    }

    @Test
    void takesLotsInAnyOrderOfTheirLines() {
        assertCounts(load(made("C", "B", 500), made("B", "A", 800), wire("A")), 3, 0, 0);
        get("/lots/A" + own + "/descendants").body("lots.id", contains("A" + own, "B" + own, "C" + own));
    }

    @Test
    void keepsALateChainUntilItsFirstParentComes() {
        assertCounts(load(made("C", "B", 500)), 0, 1, 0);
        assertCounts(load(made("B", "A", 800)), 0, 1, 0);
        get("/lots/C" + own).statusCode(404);
        get("/lots/waiting?limit=10000")
                .statusCode(200)
                .body("waiting.find { it.id == 'C" + own + "' }.missing", contains("B" + own))
                .body("waiting.find { it.id == 'B" + own + "' }.missing", contains("A" + own));
        get("/lots/incomplete?limit=10000").body("waiting.id", hasItems("B" + own, "C" + own));
        // a report by itself lets them in as well
        given().contentType("application/json")
                .body(wire("A"))
                .post("/api/v1/lots")
                .then()
                .statusCode(201);
        get("/lots/A" + own + "/descendants").body("lots.id", contains("A" + own, "B" + own, "C" + own));
        get("/lots/waiting?limit=10000").body("waiting.id", not(hasItem("C" + own)));
        get("/audit?subject=lot/C" + own).body("entries.action", contains("lot-registered", "lot-waiting"));
    }

    @Test
    void takesTheSameAgainAndNothingElseUnderItsIdentifier() {
        assertCounts(load(wire("A"), made("B", "A", 10), made("X", "NOWHERE", 1)), 2, 1, 0);
        assertCounts(load(wire("A"), made("B", "A", 10), made("X", "NOWHERE", 1), made("B", "A", 10)), 3, 1, 0);
        load(made("B", "A", 11), made("X", "NOWHERE", 2), wire("N"), made("N", "A", 1))
                .body("accepted", equalTo(1))
                .body("refused.line", contains(1, 2, 4))
                .body(
                        "refused.message",
                        contains(
                                allOf(
                                        containsString("B" + own),
                                        containsString("registered with other content (quantity, inputs)")),
                                allOf(containsString("X" + own), containsString("reported with other content")),
                                allOf(
                                        containsString("N" + own),
                                        containsString("kind, quantity, made, step, inputs"))));
        // also by itself, while it waits
        given().contentType("application/json")
                .body(made("X", "A", 5))
                .post("/api/v1/lots")
                .then()
                .statusCode(409);
        given().contentType("application/json")
                .body(made("X", "NOWHERE", 1))
                .post("/api/v1/lots")
                .then()
                .statusCode(422)
                .body("errors[0].message", containsString("unknown lot NOWHERE"));
    }

    @Test
    void refusesCirclesAlsoOfLotsThatWait() {
        load(made("S", "S", 1)).body("refused[0].message", containsString("cannot go into itself"));
        load(made("A", "C", 1), made("B", "A", 1), made("C", "B", 1))
                .body("waiting", equalTo(2))
                .body("refused.line", contains(3))
                .body("refused[0].message", containsString("would descend from itself"));
        assertCounts(load(made("P", "Q", 1)), 0, 1, 0);
        load(made("Q", "P", 1))
                .body("waiting", equalTo(0))
                .body("refused[0].message", containsString("descend from itself"));
    }

    @Test
    void tellsWhatIsWrongWithEachLine() {
        String good = wire("A");
        load(
                        good,
                        "{\"id\": \"B\"",
                        made("C", "A", -1),
                        made("D", "A", 0),
                        made("E", "A", 1).replace("stranding", "baking"),
                        made("F", "A", 5000),
                        made("G", "A", 1).replace("09:00", "07:00"),
                        made("H", "A", 1).replace("\"unit\", \"q", "\"wood\", \"q"),
                        made("I", "A", 1).replace("\"kind\"", "\"plant\": \"south\", \"kind\""),
                        made("J", "A", 1)
                                .replace(
                                        "\"step\"",
                                        "\"started\": \"2026-02-11T08:30:00Z\", \"finished\": \"2026-02-11T08:10:00Z\", \"step\""),
                        made("K", "A", 1))
                .statusCode(200)
                .body("accepted", equalTo(2))
                .body("refused.line", contains(2, 3, 4, 5, 6, 7, 8, 9, 10))
                .body(
                        "refused.message",
                        contains(
                                containsString("ends before it is complete"),
                                containsString("positive"),
                                containsString("positive"),
                                containsString("unknown step 'baking'; known steps: rod-receipt"),
                                containsString("had 1 km, of which 1 km are left; 5000 m is too much"),
                                containsString("a lot is made after what goes into it"),
                                containsString("unknown kind of lot 'wood'"),
                                containsString("unknown plant 'south'"),
                                containsString("before it started")));
    }

    @Test
    void keepsTheGoodOnesOfTenThousandAndNamesTheBadOne() {
        int count = 10_000;
        int bad = 6_543;
        List<String> lines = new ArrayList<>();
        lines.add(material("PE"));
        for (int i = 2; i <= count; i++) {
            lines.add(
                    """
                    {"id": "R%d%s", "kind": "reel", "quantity": {"value": 305, "unit": "m"}, "made": "2026-02-11T09:00:00Z", "step": "cutting", "inputs": [{"lot": "PE%s", "quantity": {"value": %s, "unit": "g"}}]}"""
                            .formatted(i, own, own, i == bad ? "-1" : "1"));
        }
        load(lines.toArray(String[]::new))
                .statusCode(200)
                .body("accepted", equalTo(count - 1))
                .body("waiting", equalTo(0))
                .body("refused.line", contains(bad))
                .body("refused[0].message", containsString("positive"));
        get("/lots/R" + bad + own).statusCode(404);
        get("/lots/R" + (bad + 1) + own).statusCode(200);
        get("/lots/PE" + own + "/descendants").body("reels.count", equalTo(count - 2));
    }

    @Test
    void registersTheSameWhateverTheOrder() {
        List<String> lines = new ArrayList<>(List.of(wire("A0")));
        for (int i = 1; i <= 300; i++) {
            lines.add(made("A" + i, "A" + (i - 1), 1000 - i));
        }
        long seed = 4711;
        Collections.shuffle(lines, new Random(seed));
        // some now, the rest later
        load(lines.subList(0, 150).toArray(String[]::new)).body("refused", empty());
        load(lines.subList(150, 301).toArray(String[]::new)).body("refused", empty());
        get("/lots/A0" + own + "/descendants").body("lots", hasSize(301));
        get("/lots/waiting?limit=10000").body("waiting.id", not(hasItem("A300" + own)));
    }

    @Test
    void listsAReportThatTurnsOutWrongWhenItsParentComes() {
        assertCounts(load(made("B", "A", 5000), made("C", "B", 1)), 0, 2, 0);
        assertCounts(load(wire("A")), 1, 0, 0);
        get("/lots/B" + own).statusCode(404);
        get("/lots/waiting?limit=10000")
                .body("refusedLater.find { it.id == 'B" + own + "' }.reason", containsString("5000 m is too much"))
                .body("refusedLater.find { it.id == 'B" + own + "' }.report.inputs[0].quantity.value", equalTo(5000.0f))
                .body("waiting.find { it.id == 'C" + own + "' }.missing", contains("B" + own));
        // told right, it is taken, and so is what waited for it
        assertCounts(load(made("B", "A", 500)), 1, 0, 0);
        get("/lots/C" + own).statusCode(200);
        // within one load the line is named
        load(made("E", "D", 5000), wire("D")).body("accepted", equalTo(1)).body("refused.line", contains(1));
    }

    private static ValidatableResponse withdraw(RequestSpecification caller, String lot, String reason) {
        return (reason == null ? caller : caller.queryParam("reason", reason))
                .delete("/api/v1/lots/waiting/" + lot)
                .then();
    }

    @Test
    void aReportThatWaitsInVainIsWithdrawnAndKeptInTheTrail() {
        load(made("B", "TYPO", 500), made("C", "B", 100));
        withdraw(given(), "B" + own, " parent mistyped ").statusCode(204);
        get("/lots/waiting?limit=10000")
                .body("waiting.id", not(hasItem("B" + own)))
                .body("waiting.find { it.id == 'C" + own + "' }.missing", contains("B" + own))
                .body("refusedLater.id", not(hasItem("B" + own)));
        get("/audit?subject=lot/B" + own)
                .body("entries.action", contains("lot-withdrawn", "lot-waiting"))
                .body("entries[0].reason", equalTo("parent mistyped"))
                .body("entries[0].details.report.id", equalTo("B" + own))
                .body("entries[0].details.report.step", equalTo("stranding"))
                .body("entries[0].details.report.inputs[0].lot", equalTo("TYPO" + own))
                .body("entries[0].details.report.inputs[0].quantity.value", equalTo(500.0f))
                .body("entries[0].details.waitedFor", contains("TYPO" + own))
                .body("entries[0].details.sha256", hasLength(64));
        // the parent of the mistyped name may come after all: nothing waits for it any more
        assertCounts(load(wire("TYPO")), 1, 0, 0);
        get("/lots/B" + own).statusCode(404);
        // as it should have been, under its own identifier, and what waited for it follows
        assertCounts(load(wire("A"), made("B", "A", 500)), 2, 0, 0);
        get("/lots/A" + own + "/descendants").body("lots.id", contains("A" + own, "B" + own, "C" + own));
        withdraw(given(), "B" + own, "too late").statusCode(404).body("detail", containsString("is registered"));
        get("/lots/B" + own).statusCode(200);
    }

    @Test
    void whoMayNotRegisterOrGivesNoReasonWithdrawsNothing() {
        load(made("B", "TYPO", 500));
        withdraw(TestSignIn.person("carla", Role.CUSTOMER_SERVICE), "B" + own, "r")
                .statusCode(403);
        withdraw(given(), "B" + own, null)
                .statusCode(422)
                .body("errors[0].where", equalTo("reason"))
                .body("errors[0].message", containsString("DELETE /api/v1/lots/waiting/{lot}?reason="));
        withdraw(given(), "B" + own, "  ").statusCode(422);
        withdraw(given(), "TYPO" + own, "r").statusCode(404).body("detail", containsString("No report of lot"));
        withdraw(given(), "no.identifier!", "r").statusCode(404);
        get("/lots/waiting?limit=10000").body("waiting.id", hasItem("B" + own));
        withdraw(TestSignIn.token("line 1", Role.TECHNICIAN), "B" + own, "r").statusCode(204);
    }

    @Test
    void refusesWithItsLineWhatWaitedForALaterBatchOfTheSameLoad() {
        List<String> lines = new ArrayList<>(List.of(made("BAD", "A", 5000), made("GOOD", "A", 5)));
        for (int i = 0; i < 1_500; i++) {
            lines.add(material("M" + i));
        }
        lines.add(wire("A"));
        load(lines.toArray(String[]::new))
                .body("accepted", equalTo(1_502))
                .body("waiting", equalTo(0))
                .body("refused.line", contains(1));
    }

    @Test
    void flagsWhatCanHardlyBeSoAndKeepsIt() {
        load(
                        wire("A"),
                        made("B", "A", 1010), // 1 % more than there was: counters differ
                        made("C", "B", 100)
                                .replace(
                                        "\"value\": 100.0, \"unit\": \"m\"}, \"made\"",
                                        "\"value\": 900, \"unit\": \"m\"}, \"made\""))
                .body("accepted", equalTo(3));
        get("/lots/B" + own)
                .body("implausible.parent", contains("A" + own))
                .body("implausible[0].message", containsString("by less than the counters' 2 %"));
        get("/lots/C" + own).body("implausible[0].message", containsString("longer than what it was made from"));
        get("/lots/A" + own + "/descendants")
                .body("lots.find { it.id == 'B" + own + "' }.implausible", hasSize(1))
                .body("lots.find { it.id == 'A" + own + "' }.implausible", nullValue());
        get("/lots/implausible?limit=10000").body("lots.id", hasItems("B" + own, "C" + own));
        // by itself it is refused: 1 km is used up, and 10 m more
        given().contentType("application/json")
                .body(made("D", "A", 1))
                .post("/api/v1/lots")
                .then()
                .statusCode(422);
    }

    @Test
    void keepsRunsSettingsSamplesAndPositions() {
        String pair =
                """
                {"id": "TP%1$s", "plant": "north", "kind": "twisted-pair", "quantity": {"value": 500, "unit": "m"},
                 "made": "2026-02-11T09:00:00Z", "step": "twisting", "machine": "TWN-1", "run": "RUN%1$s", "line": "L1",
                 "operator": "op-7", "shift": "early", "started": "2026-02-11T08:10:00Z", "finished": "2026-02-11T09:10:00Z",
                 "settings": {"lay": {"value": 14.2, "unit": "mm"}, "speed": {"value": 900, "unit": "m/min"}, "die set": "D-17", "colour": "blue", "turns": 3},
                 "samples": [{"property": "diameter", "value": 1.9, "unit": "mm", "at": {"value": 5, "unit": "m"}},
                             {"property": "strip-force", "value": 12, "unit": "N", "at": "2026-02-11T08:30:00Z"}],
                 "inputs": [{"lot": "A%1$s", "quantity": {"value": 1000, "unit": "m"},
                             "position": {"from": {"value": 0, "unit": "m"}, "to": {"value": 500, "unit": "m"},
                                          "onParentFrom": {"value": 1, "unit": "km"}, "onParentTo": {"value": 0.49, "unit": "km"}}}]}"""
                        .formatted(own);
        load(wire("A"), pair.replace("\n", " ")).body("refused", empty());
        get("/lots/TP" + own)
                .body("run", equalTo("RUN" + own))
                .body("line", equalTo("L1"))
                .body("operator", equalTo("op-7"))
                .body("shift", equalTo("early"))
                .body("started", equalTo("2026-02-11T08:10:00Z"))
                .body("settings.lay", equalTo(Map.of("value", 14.2f, "unit", "mm")))
                .body("settings.'die set'", equalTo("D-17"))
                .body("settings.turns", equalTo(3.0f))
                .body("samples[0].at", equalTo(Map.of("value", 5.0f, "unit", "m")))
                .body("samples[1].at", equalTo("2026-02-11T08:30:00Z"))
                .body("inputs[0].position.onParentTo", equalTo(Map.of("value", 0.49f, "unit", "km")));
        // the same again, by itself
        given().contentType("application/json")
                .body(pair)
                .post("/api/v1/lots")
                .then()
                .statusCode(200);
        given().contentType("application/json")
                .body(pair.replace("op-7", "op-8"))
                .post("/api/v1/lots")
                .then()
                .statusCode(409)
                .body("detail", containsString("(operator)"));
        // another output of the run tells the same of it
        String other = pair.replace("TP" + own, "TP2" + own).replaceAll("(?s)\"inputs\".*", "\"inputs\": []}");
        load(other.replace("op-7", "op-8").replace("\n", " "))
                .body("refused[0].message", containsString("told otherwise by another lot (operator)"));
        load(other.replace("\n", " ")).body("accepted", equalTo(1));
        get("/runs/RUN" + own)
                .body("settings.colour", equalTo("blue"))
                .body("outputs.id", contains("TP" + own, "TP2" + own));
        get("/runs/NO" + own).statusCode(404);
    }

    @Test
    void takesCsv() {
        String text =
                """
                id,kind,quantity,quantityUnit,made,step,machine,setting:gauge,inputLot,inputQuantity,inputUnit
                IC-1,insulated-conductor,900,m,2026-02-11T09:00:00Z,insulating,INS-1,24 AWG,A,900,m
                IC-1,,,,,,,,PE,2,kg
                A,annealed-conductor,1,km,2026-02-11T08:00:00Z,drawing,DRW-1,24 AWG,,,
                PE,insulation-compound,1,t,2026-02-11T08:00:00Z,compound-receipt,,,,,
                X,annealed-conductor,no,km,2026-02-11T08:00:00Z,drawing,DRW-1,,,,
                """
                        .replaceAll("(?m)^(IC-1|A|PE|X),", "$1" + own + ",")
                        .replaceAll(",(A|PE),", ",$1" + own + ",");
        given().contentType("text/csv; charset=utf-8")
                .body(text.getBytes(StandardCharsets.UTF_8))
                .post("/api/v1/lots/bulk")
                .then()
                .statusCode(200)
                .body("accepted", equalTo(3))
                .body("waiting", equalTo(0))
                .body("refused.line", contains(6));
        get("/lots/IC-1" + own)
                .body("inputs.lot", contains("A" + own, "PE" + own))
                .body("settings.gauge", equalTo(Map.of("value", 24.0f, "unit", "AWG")));
        given().contentType("text/csv")
                .body("id,colour\n".getBytes(StandardCharsets.UTF_8))
                .post("/api/v1/lots/bulk")
                .then()
                .statusCode(422)
                .body("errors.where", hasItem("lots:1"));
        given().contentType("text/plain")
                .body("x")
                .post("/api/v1/lots/bulk")
                .then()
                .statusCode(415)
                .body("detail", containsString("application/x-ndjson"));
    }
}
