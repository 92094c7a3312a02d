package dev.reelproof.judgement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class OutcomeTest {

    /** What a reel is rejected for is counted as failing wherever failures are counted. */
    @Test
    void aConditionalFailRejectsAsAFailDoes() {
        assertEquals(List.of("conditional-fail", "fail"), Outcome.rejectingWords());
    }

    @ParameterizedTest
    @EnumSource
    void theWordsAreThoseOfTheOutcomesThatReject(Outcome outcome) {
        assertEquals(outcome.rejects(), Outcome.rejectingWords().contains(outcome.word()));
        assertFalse(outcome.accepts() && outcome.rejects());
    }
}
