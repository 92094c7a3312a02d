package dev.reelproof.store.result;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.certificate.MayHaveCertificate;
import dev.reelproof.intake.result.Upload;
import dev.reelproof.judgement.Doubt;
import dev.reelproof.judgement.Figure;
import dev.reelproof.judgement.Finding;
import dev.reelproof.judgement.Judgement;
import dev.reelproof.judgement.Obstacle;
import dev.reelproof.judgement.Obstacles;
import dev.reelproof.judgement.Outcome;
import dev.reelproof.judgement.Step;
import dev.reelproof.judgement.Uncertainty;
import dev.reelproof.judgement.Units;
import dev.reelproof.judgement.Verdict;
import dev.reelproof.limit.DecisionRule;
import dev.reelproof.limit.InstrumentUncertainty;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.Source;
import dev.reelproof.limit.UncertaintyModel;
import dev.reelproof.measurement.Conductor;
import dev.reelproof.measurement.CoreUnit;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Equipment;
import dev.reelproof.measurement.NetworkTerms;
import dev.reelproof.measurement.Product;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.ReelResult;
import dev.reelproof.measurement.Subject;
import dev.reelproof.quantity.Length;
import dev.reelproof.quantity.Temperature;
import dev.reelproof.record.RegisteredReel;
import dev.reelproof.record.TestRecord;
import dev.reelproof.store.DatabaseOwner;
import dev.reelproof.store.limits.LimitSetArchive;
import dev.reelproof.store.limits.UncertaintyModelArchive;
import dev.reelproof.store.reel.Products;
import dev.reelproof.store.reel.Reels;
import dev.reelproof.wording.Wording;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

@QuarkusTest
class RecordsTest {
    private static final OffsetDateTime RECEIVED = OffsetDateTime.parse("2026-03-02T14:10:00.123456Z");
    private static final Product PRODUCT = new Product(
            "P-25",
            "25 pairs",
            "some-set",
            25,
            "24 AWG",
            0.66,
            Map.of(3, Length.of(9.1, "mm")),
            List.of(new CoreUnit(1, 1, 12, Set.of(2)), new CoreUnit(2, 13, 25, Set.of(1))));
    private static final Finding FINDING = new Finding(
            "conductor-resistance",
            Property.CONDUCTOR_RESISTANCE,
            Outcome.CONDITIONAL_PASS,
            "one pair may vary",
            new Figure(
                    Subject.ofConductor(7, Conductor.B),
                    null,
                    null,
                    26.1,
                    "ohm",
                    25.123456789012345,
                    25.1,
                    26.2,
                    1.0999999999999979,
                    "ohm/1000 ft",
                    false,
                    new Uncertainty(0.12, 2, 0.987),
                    List.of(new Step("measured", "at /readings/3", 26.1, "ohm", null))),
            25,
            List.of(4),
            new DecisionRule(DecisionRule.Form.GUARD_BAND_FOUR, 1.25));
    private static final Finding NOT_TESTED = new Finding(
            "next",
            Property.NEXT,
            Outcome.NOT_TESTED,
            "no data",
            new Obstacles(
                    List.of(
                            new Obstacle(Obstacle.Kind.NO_DATA, Map.of("property", "next")),
                            new Obstacle(
                                    Obstacle.Kind.PAIR_MISSING, Map.of("property", "next", "missing", "pairs 1 to 3"))),
                    7),
            null,
            0,
            List.of(),
            DecisionRule.SIMPLE_ACCEPTANCE,
            null);

    private static final Finding OF_UNITS = new Finding(
            "next-adjacent-units-25",
            Property.NEXT,
            Outcome.PASS,
            null,
            Obstacles.NONE,
            new Figure(
                    Subject.ofReel(),
                    new Units(1, 2),
                    0.772,
                    70.25,
                    "dB",
                    70.25,
                    70.25,
                    66,
                    4.25,
                    "dB",
                    true,
                    new Uncertainty(0.6, 2, 1),
                    List.of()),
            156,
            List.of(),
            DecisionRule.SIMPLE_ACCEPTANCE,
            new Doubt(Subject.ofReel(), new Units(1, 2), 0.772, 70.25, 4.25, 0.9999875, 1.25e-5));
    private static final Finding OF_A_PLACE = new Finding(
            "return-loss",
            Property.RETURN_LOSS,
            Outcome.NOT_TESTED,
            "no data",
            Obstacles.asRecorded(Outcome.NOT_TESTED, "no data"),
            null,
            0,
            List.of(),
            DecisionRule.SIMPLE_ACCEPTANCE,
            new Doubt(Subject.ofPair(3).at(End.FAR), null, 378.5, 12.25, -4.5, 0.0125, 17.5));

    @Inject
    Records archive;

    @Inject
    Products products;

    @Inject
    Reels reels;

    @Inject
    LimitSetArchive limitSets;

    @Inject
    UncertaintyModelArchive models;

    private final String reel = "R-" + UUID.randomUUID();

    private TestRecord taken(OffsetDateTime received, LimitSet limitSet) {
        return taken(received, limitSet, Optional.empty());
    }

    private TestRecord taken(OffsetDateTime received, LimitSet limitSet, Optional<UncertaintyModel> model) {
        products.put("north", PRODUCT, Instant.EPOCH);
        reels.put(new RegisteredReel(
                "north", reel, PRODUCT.id(), Length.ofMetres(500), 500, "m", null, null, null, received));
        return archive.take(new JudgedUpload(
                        "north",
                        reel,
                        received,
                        Upload.ofDocument(("{\"reel\": \"" + reel + received + "\"}").getBytes(StandardCharsets.UTF_8)),
                        new ReelResult(
                                PRODUCT.id(),
                                Length.ofMetres(501.5),
                                Temperature.ofCelsius(23.4),
                                "bay-1",
                                null,
                                null,
                                received,
                                List.of(new Equipment(
                                        "rb-1",
                                        LocalDate.of(2027, 1, 31),
                                        Set.of(Property.CONDUCTOR_RESISTANCE),
                                        "bridge")),
                                List.of(),
                                List.of()),
                        PRODUCT,
                        limitSet,
                        new Judgement(
                                limitSet.id(),
                                limitSet.revision(),
                                limitSet.sha256(),
                                "test",
                                Verdict.INCOMPLETE,
                                List.of(FINDING, NOT_TESTED, OF_UNITS, OF_A_PLACE),
                                List.of(),
                                model.map(one -> new Judgement.Model(one.id(), one.revision(), one.sha256()))
                                        .orElse(null)),
                        model,
                        List.of("First warning."),
                        null))
                .record();
    }

    private static UncertaintyModel model(String id, String sha256) {
        InstrumentUncertainty none = new InstrumentUncertainty(
                0,
                0,
                Optional.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                "m",
                2,
                InstrumentUncertainty.ALL_COMMON,
                new Source("this test's own", true));
        return new UncertaintyModel(
                id,
                1,
                LocalDate.EPOCH,
                "t",
                2,
                95,
                none,
                none,
                Optional.empty(),
                Optional.empty(),
                Map.of("default", Map.of()),
                sha256,
                "text of " + sha256);
    }

    private static LimitSet limitSet(String id, String sha256) {
        return new LimitSet(
                id,
                1,
                LocalDate.EPOCH,
                "t",
                null,
                Temperature.ofCelsius(20),
                Length.ofMetres(100),
                null,
                null,
                List.of(),
                Optional.empty(),
                List.of(),
                NetworkTerms.USUAL,
                sha256,
                "text of " + sha256,
                DecisionRule.SIMPLE_ACCEPTANCE);
    }

    @Test
    void givesBackWhatWasTaken() {
        TestRecord taken = taken(RECEIVED, limitSet("some-set", "a"));
        TestRecord found = archive.byId("north", taken.id()).orElseThrow();
        assertEquals(taken, found);
        assertEquals(PRODUCT, found.product());
        assertEquals(
                List.of(FINDING, NOT_TESTED, OF_UNITS, OF_A_PLACE),
                found.judgement().findings());
        assertEquals(OffsetDateTime.parse("2026-03-02T14:10:00.123Z"), found.received());
        assertEquals(501.5, found.length().metres());
        assertEquals("rb-1", found.equipment().get(0).id());
        assertEquals("bridge", found.equipment().get(0).equipmentClass());
        assertNull(found.judgement().uncertaintyModel());
        assertEquals(List.of("First warning."), found.warnings());
        assertEquals(Optional.empty(), archive.byId("south", taken.id()));
        assertEquals(List.of(), archive.sweeps("north", taken.id()));
    }

    @Test
    void aRecordLiesInThePartitionOfItsYear() throws SQLException {
        UUID id = taken(RECEIVED, limitSet("some-set", "a")).id();
        assertEquals("1", ask("select count(*) from only test_record_2026 where id = '" + id + "'"));
        assertEquals("4", ask("select count(*) from only finding_2026 where record_id = '" + id + "'"));
        UUID before = taken(OffsetDateTime.parse("1999-12-31T23:59:59Z"), limitSet("some-set", "a"))
                .id();
        assertEquals("1", ask("select count(*) from only test_record_other where id = '" + before + "'"));
        assertTrue(archive.byId("north", before).isPresent());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "update test_record set verdict = 'accepted'",
                "update test_record_2026 set verdict = 'accepted'",
                "delete from test_record",
                "truncate test_record",
                "update finding set outcome = 'pass'",
                "delete from finding",
                "update sweep_block set block = ''",
                "delete from sweep_block_2026",
                "update upload set attempt = attempt + 100",
                "delete from upload",
                "update upload_part set bytes = ''",
                "delete from upload_part",
                "truncate upload_part",
                "update limit_set_revision set sha256 = 'b'",
                "delete from limit_set_revision"
            })
    void whatIsRecordedCannotBeChangedEvenByTheOwner(String attempt) {
        taken(RECEIVED, limitSet("some-set", "a"));
        SQLException refusal = assertThrows(SQLException.class, () -> run(attempt));
        assertTrue(refusal.getMessage().contains("never changed or removed"), refusal.getMessage());
    }

    @Test
    void aCertificateCannotBeChangedEvenByTheOwner() throws SQLException {
        UUID record = taken(RECEIVED, limitSet("some-set", "a")).id();
        run("insert into certificate (plant, number, issue, record_id, reel, issued, content, pdf, pdf_sha256) values"
                + " ('north', 'N-" + record + "', 1, '" + record + "', '" + reel + "', now(), '{}', '', '')");
        for (String attempt :
                List.of("update certificate set issue = 2", "delete from certificate", "truncate certificate")) {
            SQLException refusal = assertThrows(SQLException.class, () -> run(attempt));
            assertTrue(refusal.getMessage().contains("never changed or removed"), refusal.getMessage());
        }
    }

    @Test
    void aLimitSetIsNeverEditedOnceUsed() {
        String id = "set-" + UUID.randomUUID();
        limitSets.requireUnchanged(limitSet(id, "a"));
        limitSets.requireUnchanged(limitSet(id, "b"));
        taken(RECEIVED, limitSet(id, "a"));
        limitSets.requireUnchanged(limitSet(id, "a"));
        IllegalStateException refusal =
                assertThrows(IllegalStateException.class, () -> limitSets.requireUnchanged(limitSet(id, "b")));
        assertTrue(refusal.getMessage().contains("new revision"), refusal.getMessage());
        assertThrows(IllegalStateException.class, () -> taken(RECEIVED.plusDays(1), limitSet(id, "b")));
        assertEquals(1, archive.ofReel("north", reel).size());
        assertEquals(Optional.of("text of a"), limitSets.text(id, 1));
    }

    @Test
    void aModelIsKeptWithTheRecordAndNeverEditedOnceUsed() {
        String id = "model-" + UUID.randomUUID();
        models.requireUnchanged(model(id, "b"));
        TestRecord taken = taken(RECEIVED, limitSet("some-set", "a"), Optional.of(model(id, "a")));
        assertEquals(
                new Judgement.Model(id, 1, "a"),
                archive.byId("north", taken.id()).orElseThrow().judgement().uncertaintyModel());
        assertEquals(Optional.of("text of a"), models.text(id, 1));
        models.requireUnchanged(model(id, "a"));
        IllegalStateException refusal =
                assertThrows(IllegalStateException.class, () -> models.requireUnchanged(model(id, "b")));
        assertTrue(refusal.getMessage().contains("higher revision"), refusal.getMessage());
        assertThrows(
                IllegalStateException.class,
                () -> taken(RECEIVED.plusDays(1), limitSet("some-set", "a"), Optional.of(model(id, "b"))));
        for (String attempt : List.of(
                "update uncertainty_model_revision set sha256 = 'b'",
                "delete from uncertainty_model_revision",
                "truncate uncertainty_model_revision")) {
            SQLException refused = assertThrows(SQLException.class, () -> run(attempt));
            assertTrue(refused.getMessage().contains("never changed or removed"), refused.getMessage());
        }
    }

    /** As a version of the program wrote it that knew no uncertainties. */
    @Test
    void aFindingOfBeforeReadsWithoutUncertainty() throws SQLException {
        TestRecord record = taken(RECEIVED, limitSet("some-set", "a"));
        run("insert into finding (plant, record_id, received, ordinal, requirement, property, outcome, value, judged,"
                + " limit_value, margin, unit, measured, measured_unit, points, derived, varying_pairs, decision_rule,"
                + " explanation) select plant, record_id, received, 4, 'mutual-capacitance', 'mutual-capacitance', 'pass',"
                + " 5, 5, 6, 1, 'nF', 5, 'nF', 1, false, '{}', 'SIMPLE_ACCEPTANCE', '[]' from finding where record_id = '"
                + record.id() + "' and ordinal = 0");
        Finding before = archive.byId("north", record.id())
                .orElseThrow()
                .judgement()
                .findings()
                .get(4);
        assertNull(before.figure().uncertainty());
        assertEquals(DecisionRule.SIMPLE_ACCEPTANCE, before.decisionRule());
    }

    /** As a version of the program wrote it that kept obstacles as a sentence alone. */
    @Test
    void aFindingOfBeforeSaysWhatStoodInTheWayAsRecorded() throws SQLException {
        TestRecord record = taken(RECEIVED, limitSet("some-set", "a"));
        run(
                "insert into finding (plant, record_id, received, ordinal, requirement, property, outcome, reason, points, derived,"
                        + " varying_pairs, decision_rule, explanation) select plant, record_id, received, 4, 'fext', 'fext', 'not-tested',"
                        + " 'pair missing: fext of pair 3; range not spanned: fext of pair 4', 0, false, '{}', 'SIMPLE_ACCEPTANCE', '[]'"
                        + " from finding where record_id = '" + record.id() + "' and ordinal = 0");
        Finding before = archive.byId("north", record.id())
                .orElseThrow()
                .judgement()
                .findings()
                .get(4);
        assertEquals("pair missing: fext of pair 3; range not spanned: fext of pair 4", before.reason());
        assertEquals(
                new Obstacles(List.of(new Obstacle(Obstacle.Kind.AS_RECORDED, Map.of("sentence", before.reason()))), 0),
                before.obstacles());
    }

    /** As version 0.1 wrote it where no value lay where the limit holds; the verdict was made of it. */
    @ParameterizedTest
    @EnumSource(Verdict.class)
    void aPassOfBeforeWithoutAFigureIsNotTestedAndTheVerdictStaysAsRecorded(Verdict verdict) throws SQLException {
        UUID id = RecordIds.at(RECEIVED.toInstant());
        TestRecord like = taken(RECEIVED, limitSet("some-set", "a"));
        String key = "'north', '" + id + "', '" + like.received() + "'";
        run(
                "insert into test_record (plant, id, received, reel, product, product_snapshot, attempt, limit_set, limit_set_revision,"
                        + " limit_set_sha256, engine, verdict, length_m, temperature_c, finished, equipment, warnings, source_sha256) select "
                        + key + ", reel, product, product_snapshot, 2, limit_set, 1, 'a', '0.1.0', '" + verdict.word()
                        + "', 500, 20, finished, '[]', '[]', source_sha256 from test_record where id = '" + like.id()
                        + "'");
        String columns =
                "insert into finding (plant, record_id, received, ordinal, requirement, property, outcome, reason, value,"
                        + " judged, limit_value, margin, unit, measured, measured_unit, points, derived, varying_pairs, decision_rule,"
                        + " explanation) values (" + key;
        String tail = "false, '{}', 'SIMPLE_ACCEPTANCE', '[]')";
        run(columns + ", 0, 'delay-skew', 'delay-skew', 'pass', null, null, null, null, null, null, null, null, 0, "
                + tail);
        switch (verdict) {
            case ACCEPTED -> run(columns + ", 1, 'fext', 'fext', 'pass', null, 5, 5, 4, 1, 'dB', 5, 'dB', 1, " + tail);
            case REJECTED -> run(columns + ", 1, 'fext', 'fext', 'fail', null, 5, 5, 6, -1, 'dB', 5, 'dB', 1, " + tail);
            case INCOMPLETE -> run(columns
                    + ", 1, 'fext', 'fext', 'not-tested', 'no data', null, null, null, null, null, null, null, 0, "
                    + tail);
        }

        Judgement judgement = archive.byId("north", id).orElseThrow().judgement();

        assertEquals(verdict, judgement.verdict());
        Finding skew = judgement.findings().get(0);
        assertEquals(Outcome.NOT_TESTED, skew.outcome());
        assertNull(skew.figure());
        assertEquals(
                "recorded as pass, but without a figure: the record keeps no value that was held against the limit",
                skew.reason());
        assertEquals(
                Outcome.valueOf(
                        verdict == Verdict.ACCEPTED ? "PASS" : verdict == Verdict.REJECTED ? "FAIL" : "NOT_TESTED"),
                judgement.findings().get(1).outcome());
        assertTrue(MayHaveCertificate.reasonAgainst(judgement).isPresent(), "nothing new is certified on it");
        assertFalse(
                Wording.english().record(judgement).sentence().startsWith("Every requirement"),
                "nobody is told that everything passes");
    }

    private void run(String sql) throws SQLException {
        try (Connection connection = DatabaseOwner.connect();
                Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    private String ask(String question) throws SQLException {
        try (Connection connection = DatabaseOwner.connect();
                Statement statement = connection.createStatement();
                ResultSet answer = statement.executeQuery(question)) {
            assertTrue(answer.next());
            return answer.getString(1);
        }
    }
}
