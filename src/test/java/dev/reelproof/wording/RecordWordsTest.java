package dev.reelproof.wording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import dev.reelproof.certificate.CertificateSamples;
import dev.reelproof.judgement.Doubt;
import dev.reelproof.judgement.Finding;
import dev.reelproof.judgement.Obstacle;
import dev.reelproof.judgement.Obstacles;
import dev.reelproof.judgement.Outcome;
import dev.reelproof.judgement.Verdict;
import dev.reelproof.limit.DecisionRule;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RecordWordsTest {

    private static Finding finding(Property property, Outcome outcome, Obstacle... obstacles) {
        boolean tested = outcome != Outcome.NOT_TESTED;
        return new Finding(
                property.id(),
                property,
                outcome,
                tested ? null : "a reason",
                new Obstacles(List.of(obstacles), 0),
                tested ? CertificateSamples.figure(property) : null,
                tested ? 1 : 0,
                List.of(),
                new DecisionRule(DecisionRule.Form.GUARD_BAND_FOUR, 1),
                null);
    }

    private static RecordWords words(Verdict verdict, Finding... findings) {
        return Wording.english().record(CertificateSamples.judgementOf(verdict, findings));
    }

    @Test
    void anAcceptedReelNeedsNothingMore() {
        RecordWords words = words(Verdict.ACCEPTED, finding(Property.NEXT, Outcome.PASS));
        assertEquals("accepted", words.verdict());
        assertEquals(Look.ACCEPTED, words.look());
        assertEquals("Every requirement was measured and passes. The reel may be shipped.", words.sentence());
        assertEquals(List.of(), words.nextSteps());
        assertEquals(List.of(1, 0, 0), List.of(words.passing(), words.failing(), words.notTested()));
    }

    private static Finding doubted(Property property, double probability, double sum) {
        Finding plain = finding(property, Outcome.PASS);
        return new Finding(
                plain.requirement(),
                property,
                Outcome.PASS,
                null,
                Obstacles.NONE,
                plain.figure(),
                1,
                List.of(),
                plain.decisionRule(),
                new Doubt(Subject.ofPair(1).at(End.NEAR), null, 428.0, 40, 5, probability, sum));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "0.816 | 7.2   | of at most 81.6 %; least sure: NEXT, pair 1, near end, 428 MHz (requirements counted: 1)",
                "0.992 | 0.049 | between 95.1 % and 99.2 %; least sure: NEXT, pair 1, near end, 428 MHz (requirements counted: 1)",
                "1     | 0.012 | of at least 98.8 % (requirements counted: 1)",
                "1     | 1e-12 | above 99.9 % (requirements counted: 1)"
            })
    void aReelIsAsSureAsItsBoundsSay(double probability, double sum, String range) {
        assertEquals(
                "All judged values meet their limits with a probability " + range + ".",
                words(Verdict.ACCEPTED, doubted(Property.NEXT, probability, sum))
                        .conformity());
    }

    @Test
    void whatBoundsNothingIsNotSaid() {
        assertNull(words(Verdict.ACCEPTED, doubted(Property.NEXT, 1, 3)).conformity());
        assertNull(words(Verdict.ACCEPTED, finding(Property.NEXT, Outcome.PASS)).conformity());
    }

    @Test
    void aConditionalOneHasALookAndAStepOfItsOwn() {
        RecordWords words = words(
                Verdict.ACCEPTED,
                finding(Property.NEXT, Outcome.PASS),
                finding(Property.FEXT, Outcome.CONDITIONAL_PASS));
        assertEquals("accepted, conditionally", words.verdict());
        assertEquals("conditional", words.look().word());
        assertEquals(
                List.of(
                        "A conditional pass is for the engineer to accept by the order: measure again with less uncertainty, or"
                                + " ship with the condition stated."),
                words.nextSteps());
        assertEquals(2, words.passing());
    }

    @Test
    void aRejectedOneIsHandedOverAndCompletedToo() {
        RecordWords words = words(
                Verdict.REJECTED,
                finding(Property.SPARK_FAULTS, Outcome.FAIL),
                finding(Property.RETURN_LOSS, Outcome.CONDITIONAL_FAIL),
                finding(
                        Property.NEXT,
                        Outcome.NOT_TESTED,
                        new Obstacle(Obstacle.Kind.PAIR_MISSING, Map.of("property", "next", "missing", "pair 1")),
                        new Obstacle(
                                Obstacle.Kind.EQUIPMENT_OUT_OF_CALIBRATION,
                                Map.of("equipment", "na-07", "due", "2026-01-31", "finished", "2026-03-02"))));
        assertEquals(
                List.of(
                        "Do not ship. Mark the reel as held and hand it over to the engineer.",
                        "If the figure looks wrong, check leads and fixture and test again: a new test is a new attempt, the old"
                                + " one stays.",
                        "Such a fault may sit in one place: the reel may be cut back and tested again. Advice only, the engineer"
                                + " decides.",
                        "Isolate and discharge before you touch the cable. High voltage: follow local codes and licensed"
                                + " practice.",
                        "Also not tested: use equipment whose calibration holds; measure every pair. Then send the whole result"
                                + " again."),
                words.nextSteps());
        assertEquals(List.of(0, 2, 1), List.of(words.passing(), words.failing(), words.notTested()));
    }

    @Test
    void aFailureInTheMakeIsNotCutAway() {
        assertEquals(
                2,
                words(Verdict.REJECTED, finding(Property.CONDUCTOR_RESISTANCE, Outcome.FAIL))
                        .nextSteps()
                        .size());
    }

    @Test
    void anIncompleteOneIsCompleted() {
        RecordWords words = words(
                Verdict.INCOMPLETE,
                finding(
                        Property.NEXT,
                        Outcome.NOT_TESTED,
                        new Obstacle(Obstacle.Kind.NO_DATA, Map.of("property", "next"))),
                finding(
                        Property.FEXT,
                        Outcome.NOT_TESTED,
                        new Obstacle(Obstacle.Kind.NO_DATA, Map.of("property", "fext"))),
                finding(Property.TCL, Outcome.NOT_TESTED));
        assertEquals("incomplete", words.verdict());
        assertEquals(
                List.of("Complete the measurement: measure what is missing. Then send the whole result again."),
                words.nextSteps());
        assertEquals(
                List.of("Complete the measurement: see to what each reason names. Then send the whole result again."),
                words(Verdict.INCOMPLETE, finding(Property.TCL, Outcome.NOT_TESTED))
                        .nextSteps());
    }
}
