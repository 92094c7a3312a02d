package dev.reelproof.wording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import dev.reelproof.judgement.Verdict;
import dev.reelproof.record.Attempt;
import dev.reelproof.record.AttemptHistory;
import dev.reelproof.record.RetestAcceptance;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;

class AttemptWordsTest {
    private static final OffsetDateTime DAY = OffsetDateTime.parse("2026-03-02T00:00:00Z");

    private static UUID id(int number) {
        return new UUID(7, number);
    }

    /** Tests an hour apart that came in in order. */
    private static AttemptHistory history(Verdict... verdicts) {
        List<Attempt> attempts = new ArrayList<>();
        for (int i = 1; i <= verdicts.length; i++) {
            attempts.add(new Attempt(id(i), i, DAY.plusHours(i), DAY.plusHours(i), verdicts[i - 1], null));
        }
        return new AttemptHistory(attempts);
    }

    private static AttemptWords words(AttemptHistory history, int number) {
        return Wording.english().attempt(history, id(number), false);
    }

    @Test
    void aVerdictSaysAtWhichAttemptAndWhatCameBefore() {
        assertEquals(
                "accepted at attempt 1", words(history(Verdict.ACCEPTED), 1).summary());
        assertEquals(
                "accepted at attempt 3; rejected twice",
                words(history(Verdict.REJECTED, Verdict.REJECTED, Verdict.ACCEPTED), 3)
                        .summary());
        assertEquals(
                "rejected at attempt 6; accepted once, rejected 3 times, incomplete once",
                words(
                                history(
                                        Verdict.REJECTED,
                                        Verdict.INCOMPLETE,
                                        Verdict.REJECTED,
                                        Verdict.ACCEPTED,
                                        Verdict.REJECTED,
                                        Verdict.REJECTED),
                                6)
                        .summary());
    }

    @Test
    void aRegradedTestSaysWhichOfItsJudgementsDecides() {
        AttemptHistory history = new AttemptHistory(List.of(new Attempt(
                id(1),
                1,
                DAY,
                DAY,
                Verdict.REJECTED,
                null,
                List.of(new Attempt.JudgedAgain(id(9), Verdict.ACCEPTED)))));
        AttemptWords before = words(history, 1);
        assertEquals("rejected at attempt 1", before.summary());
        assertEquals(
                "The reel was regraded. Attempt 1, judged again as another product, decides: accepted.",
                before.older());
        AttemptWords after = words(history, 9);
        assertEquals("accepted at attempt 1", after.summary());
        assertNull(after.older());
    }

    @Test
    void aTestThatCameInLateSaysItsPlaceInTime() {
        AttemptHistory history = new AttemptHistory(List.of(
                new Attempt(id(1), 1, DAY.plusHours(5), DAY.plusHours(5), Verdict.REJECTED, null),
                new Attempt(id(2), 2, DAY.plusHours(3), DAY.plusHours(6), Verdict.ACCEPTED, null)));
        assertEquals(
                "accepted at attempt 2, test 1 of 2 by time", words(history, 2).summary());
        assertEquals(
                "This is an older test, which does not decide on the reel. The newest, attempt 1, came to: rejected.",
                words(history, 2).older());
        assertEquals(
                "rejected at attempt 1, test 2 of 2 by time; accepted once",
                words(history, 1).summary());
        assertNull(words(history, 1).older());
    }

    @Test
    void aRetestSaysThatItWaitsAndWhoAcceptedIt() {
        AttemptHistory history = history(Verdict.REJECTED, Verdict.ACCEPTED);
        assertEquals(
                "The reel passed after a failure. Do not ship it until an engineer has accepted this test.",
                Wording.english().attempt(history, id(2), true).awaiting());
        assertNull(words(history, 2).awaiting());
        assertNull(words(history, 2).accepted());
        AttemptHistory accepted = new AttemptHistory(List.of(
                history.of(id(1)),
                new Attempt(
                        id(2),
                        2,
                        DAY.plusHours(2),
                        DAY.plusHours(2),
                        Verdict.ACCEPTED,
                        new RetestAcceptance("eva", DAY.plusHours(9), "lead was loose"))));
        assertEquals(
                "The retest was accepted by eva on 2026-03-02: lead was loose",
                words(accepted, 2).accepted());
    }
}
