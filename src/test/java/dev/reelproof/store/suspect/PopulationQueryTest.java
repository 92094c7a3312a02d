package dev.reelproof.store.suspect;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.reelproof.analysis.Evidence;
import dev.reelproof.analysis.ReelSelection;
import dev.reelproof.analysis.TestedReel;
import dev.reelproof.analysis.TracedPopulation;
import dev.reelproof.api.access.SignedIn;
import dev.reelproof.judgement.Outcome;
import dev.reelproof.measurement.Property;
import dev.reelproof.store.DatabaseOwner;
import dev.reelproof.store.SearchTooLargeException;
import io.quarkus.test.TestTransaction;
import io.quarkus.test.junit.QuarkusMock;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.List;
import org.hibernate.Session;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A population has its bounds: whoever asks for more is told what to narrow. */
@QuarkusTest
@ExtendWith(SignedIn.class)
class PopulationQueryTest {
    private static final OffsetDateTime FINISHED = OffsetDateTime.parse("2011-03-02T14:00:00Z");

    /** A day on which nothing else was tested. */
    private static final ReelSelection THAT_DAY = new ReelSelection(
            "north", Property.named("return-loss"), FINISHED.minusHours(1), FINISHED.plusHours(1), null);

    @Inject
    PopulationQuery populations;

    @Inject
    Session session;

    /** Records of reels that nobody tested, as many as asked for. */
    private void insertRecords(int first, int last) {
        session.createNativeMutationQuery(
                        """
                        insert into test_record (plant, id, received, reel, product, product_snapshot, attempt, limit_set,
                                                 limit_set_revision, limit_set_sha256, engine, verdict, length_m,
                                                 temperature_c, finished, equipment, warnings, source_sha256)
                        select 'north', gen_random_uuid(), now(), 'MANY-' || n, 'MANY', '{}', 1, 'none', 1, '', '',
                               'incomplete', 1, 20, cast(:finished as timestamptz), '[]', '[]', 'many ' || n
                        from generate_series(:first, :last) n""")
                .setParameter("finished", FINISHED.toString())
                .setParameter("first", first)
                .setParameter("last", last)
                .executeUpdate();
    }

    @Test
    @TestTransaction
    void refusesMoreReelsThanOnePopulationMayHave() {
        insertRecords(1, PopulationQuery.MOST_REELS);
        TracedPopulation found = populations.find(THAT_DAY, Evidence.FAILURES);
        assertEquals(PopulationQuery.MOST_REELS, found.notTested(), "as many as may be");
        insertRecords(PopulationQuery.MOST_REELS + 1, PopulationQuery.MOST_REELS + 1);
        assertEquals(
                "more than 20000 reels were tested in that time; ask for a shorter time, or for one product",
                assertThrows(SearchTooLargeException.class, () -> populations.find(THAT_DAY, Evidence.FAILURES))
                        .getMessage());
    }

    /** A record of a reel that was made of one lot of wire, with a finding of the property. */
    private void insertTested(String reel, Outcome outcome) {
        session.createNativeMutationQuery(
                        """
                        with record as (
                            insert into test_record (plant, id, received, reel, product, product_snapshot, attempt, limit_set,
                                                     limit_set_revision, limit_set_sha256, engine, verdict, length_m,
                                                     temperature_c, finished, equipment, warnings, source_sha256)
                            values ('north', gen_random_uuid(), now(), :reel, 'ONE', '{}', 1, 'none', 1, '', '', 'incomplete', 1,
                                    20, cast(:finished as timestamptz), '[]', '[]', :reel)
                            returning plant, id, received),
                        made as (
                            insert into lot (plant, id, kind, quantity_value, quantity_unit, made, source_sha256, registered)
                            values ('north', :reel, 'reel', 1, 'm', now(), '', now()),
                                   ('north', 'WIRE-' || :reel, 'annealed-conductor', 1, 'm', now(), '', now()))
                        insert into finding (plant, record_id, received, ordinal, requirement, property, outcome, margin, unit,
                                             points, derived, varying_pairs, decision_rule, explanation)
                        select plant, id, received, 0, 'return-loss', 'return-loss', :outcome, -0.1, 'dB', 1, false, '{}', '',
                               '[]'
                        from record""")
                .setParameter("reel", reel)
                .setParameter("outcome", outcome.word())
                .setParameter("finished", FINISHED.toString())
                .executeUpdate();
        session.createNativeMutationQuery(
                        """
                        insert into lot_input (plant, child, parent, ordinal, quantity_value, quantity_unit, amount_base)
                        values ('north', :reel, 'WIRE-' || :reel, 0, 1, 'm', 1)""")
                .setParameter("reel", reel)
                .executeUpdate();
    }

    /** A reel counts as failing for whatever rejects it, a conditional fail too. */
    @ParameterizedTest
    @EnumSource(names = "NOT_TESTED", mode = EnumSource.Mode.EXCLUDE)
    @TestTransaction
    void aReelFailsWhenItsOutcomeRejectsIt(Outcome outcome) {
        insertTested("TESTED", outcome);
        TracedPopulation found = populations.find(THAT_DAY, Evidence.FAILURES);
        assertEquals(
                List.of(new TestedReel("TESTED", outcome.rejects(), -0.1)),
                found.population().reels());
        assertEquals(0, found.notTested());
    }

    @Test
    @TestTransaction
    void aReelIsLeftOutWhenThePropertyWasNotTested() {
        insertTested("TESTED", Outcome.NOT_TESTED);
        TracedPopulation found = populations.find(THAT_DAY, Evidence.FAILURES);
        assertEquals(List.of(), found.population().reels());
        assertEquals(1, found.notTested());
    }

    @ParameterizedTest
    @ValueSource(strings = {"test_record", "lot_input"})
    void givesUpASearchThatTakesTooLong(String locked) throws SQLException {
        try (Connection connection = DatabaseOwner.connect();
                Statement statement = connection.createStatement()) {
            connection.setAutoCommit(false);
            statement.execute("lock table " + locked + " in access exclusive mode");
            assertEquals(
                    "the reels and what they were made from were not found within 1 s; ask for a shorter time, or for one"
                            + " product",
                    assertThrows(
                                    SearchTooLargeException.class,
                                    () -> populations.find(THAT_DAY, Evidence.FAILURES, Duration.ofSeconds(1)))
                            .getMessage());
            connection.rollback();
        }
        assertEquals(
                0,
                populations
                        .find(THAT_DAY, Evidence.FAILURES)
                        .population()
                        .reels()
                        .size());
    }

    /** Whatever the reason, who asks over HTTP is told it. */
    @Test
    void theRouteSaysWhatToNarrow() {
        QuarkusMock.installMockForType(
                new PopulationQuery(null, null) {
                    @Override
                    public TracedPopulation find(ReelSelection selection, Evidence evidence) {
                        throw new SearchTooLargeException("too many; ask for a shorter time");
                    }
                },
                PopulationQuery.class);
        given().get("/api/v1/suspects?property=return-loss")
                .then()
                .statusCode(422)
                .contentType("application/problem+json")
                .body("errors", hasSize(1))
                .body("errors[0].where", equalTo("query"))
                .body("errors[0].message", equalTo("too many; ask for a shorter time"));
    }
}
