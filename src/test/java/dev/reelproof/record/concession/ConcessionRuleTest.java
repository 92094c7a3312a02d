package dev.reelproof.record.concession;

import static dev.reelproof.record.concession.ConcessionSamples.ANOTHER;
import static dev.reelproof.record.concession.ConcessionSamples.RECORD;
import static dev.reelproof.record.concession.ConcessionSamples.approved;
import static dev.reelproof.record.concession.ConcessionSamples.asked;
import static dev.reelproof.record.concession.ConcessionSamples.judgement;
import static dev.reelproof.record.concession.ConcessionSamples.product;
import static dev.reelproof.record.concession.ConcessionSamples.record;
import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.judgement.Outcome;
import dev.reelproof.quantity.Length;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What may be conceded, and when it may still be decided. */
class ConcessionRuleTest {
    private static final Concession OPEN = asked(new Terms.UseAsIs());

    private static void refused(String words, Executable attempt) {
        ConcessionRefusedException refusal = assertThrows(ConcessionRefusedException.class, attempt);
        assertTrue(refusal.getMessage().contains(words), refusal.getMessage());
    }

    @Test
    void aRejectedReelIsConcededWhatItDoesNotPass() {
        assertEquals(
                List.of("mutual-capacitance", "return-loss"),
                ConcessionRule.conceded(record(Outcome.PASS, Outcome.FAIL, Outcome.NOT_TESTED)));
        assertEquals(List.of("conductor-resistance"), ConcessionRule.conceded(record(Outcome.CONDITIONAL_FAIL)));
    }

    @Test
    void aConditionalPassCanBeConceded() {
        assertEquals(
                List.of("mutual-capacitance"), ConcessionRule.conceded(record(Outcome.PASS, Outcome.CONDITIONAL_PASS)));
    }

    @Test
    void whatIsAcceptedOrIncompleteIsNot() {
        refused("is accepted", () -> ConcessionRule.conceded(record(Outcome.PASS)));
        refused("Complete the measurement", () -> ConcessionRule.conceded(record(Outcome.PASS, Outcome.NOT_TESTED)));
    }

    @Test
    void whatWasNotMeasuredIsNotUsedAsItIs() {
        assertDoesNotThrow(() -> ConcessionRule.requireMeasured(record(Outcome.FAIL)));
        refused(
                "not tested for mutual-capacitance",
                () -> ConcessionRule.requireMeasured(record(Outcome.FAIL, Outcome.NOT_TESTED)));
    }

    @Test
    void aRegradeIsAnotherNameForTheSameCable() {
        assertDoesNotThrow(
                () -> ConcessionRule.requireSameCable(product("P-1", 4, "23 AWG"), product("P-2", 4, "23 AWG")));
        refused(
                "is P-1 already",
                () -> ConcessionRule.requireSameCable(product("P-1", 4, "23 AWG"), product("P-1", 4, "23 AWG")));
        refused(
                "the same cable",
                () -> ConcessionRule.requireSameCable(product("P-1", 4, "23 AWG"), product("P-2", 4, "24 AWG")));
        refused(
                "the same cable",
                () -> ConcessionRule.requireSameCable(product("P-1", 4, "23 AWG"), product("P-2", 8, "23 AWG")));
    }

    @Test
    void aRegradeMeetsTheNewLimits() {
        assertDoesNotThrow(() -> ConcessionRule.requireAccepted(product("P-2", 4, "23 AWG"), judgement(Outcome.PASS)));
        refused(
                "mutual-capacitance (fail)",
                () -> ConcessionRule.requireAccepted(
                        product("P-2", 4, "23 AWG"), judgement(Outcome.PASS, Outcome.FAIL)));
        refused(
                "mutual-capacitance (not tested)",
                () -> ConcessionRule.requireAccepted(
                        product("P-2", 4, "23 AWG"), judgement(Outcome.PASS, Outcome.NOT_TESTED)));
    }

    @ParameterizedTest
    @ValueSource(doubles = {305, 305.1, 1000})
    void aShortenedReelIsShorter(double metres) {
        Length now = Length.ofMetres(305);
        assertDoesNotThrow(() -> ConcessionRule.requireShorter(now, new Terms.Shorten(1000, "ft")));
        refused("cannot be shortened", () -> ConcessionRule.requireShorter(now, new Terms.Shorten(metres, "m")));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
    void aLengthThatIsNoneIsRefused(double metres) {
        assertThrows(IllegalArgumentException.class, () -> new Terms.Shorten(metres, "m"));
    }

    @Test
    void oneConcessionOfATestAtATimeAndNoneBehindACertificate() {
        assertDoesNotThrow(() -> ConcessionRule.requireFree(record(Outcome.FAIL), List.of(), Optional.empty()));
        refused(
                "is open already",
                () -> ConcessionRule.requireFree(record(Outcome.FAIL), List.of(OPEN), Optional.empty()));
        refused(
                "is approved already",
                () -> ConcessionRule.requireFree(
                        record(Outcome.FAIL), List.of(approved(new Terms.UseAsIs())), Optional.empty()));
        refused(
                "Certificate N-1 was issued",
                () -> ConcessionRule.requireFree(record(Outcome.FAIL), List.of(), Optional.of("N-1")));
    }

    @Test
    void somebodyElseDecidesOnce() {
        assertDoesNotThrow(() -> ConcessionRule.requireMayDecide(OPEN, RECORD, false));
        refused("somebody else must decide", () -> ConcessionRule.requireMayDecide(OPEN, RECORD, true));
        refused(
                "was approved by ben on 2026-03-04",
                () -> ConcessionRule.requireMayDecide(approved(new Terms.UseAsIs()), RECORD, false));
    }

    @Test
    void itLapsesWhenTheReelIsTestedAgain() {
        assertEquals(Concession.State.OPEN, OPEN.state(RECORD));
        assertEquals(Concession.State.LAPSED, OPEN.state(ANOTHER));
        assertEquals(
                Concession.State.APPROVED, approved(new Terms.UseAsIs()).state(ANOTHER), "what was done stays done");
        refused("lapsed", () -> ConcessionRule.requireMayDecide(OPEN, ANOTHER, false));
    }

    @Test
    void aReelThatWasRegisteredAnewMeanwhileIsAskedForAnew() {
        assertDoesNotThrow(() -> ConcessionRule.requireUnchanged(OPEN, OPEN.before()));
        refused(
                "is P-1, 200.0 m now",
                () -> ConcessionRule.requireUnchanged(OPEN, new Concession.Registration("P-1", 200, "m")));
    }

    @Test
    void aConcessionSaysWhatItMustSay() {
        assertThrows(
                IllegalArgumentException.class,
                () -> new Concession.Decision(
                        false, new Concession.Person("ben", "quality-manager"), OPEN.requested(), "no", ANOTHER));
        assertThrows(
                IllegalArgumentException.class,
                () -> asked(new Terms.Regrade("P-2"))
                        .decided(new Concession.Decision(
                                true, new Concession.Person("ben", "quality-manager"), OPEN.requested(), "yes", null)),
                "an approved regrade has a record");
        assertThrows(IllegalArgumentException.class, () -> new Terms.Regrade(" "));
        assertThrows(IllegalStateException.class, OPEN::approval);
    }
}
