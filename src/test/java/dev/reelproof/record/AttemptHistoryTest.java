package dev.reelproof.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.judgement.Verdict;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.UUID;
import net.jqwik.api.ForAll;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The order of tests, what it decides, and what a rule on retests asks. */
class AttemptHistoryTest {
    private static final OffsetDateTime DAY = OffsetDateTime.parse("2026-03-02T00:00:00Z");
    private static final RetestRule ASKS_ENGINEER = new RetestRule(null, false, true);

    private static OffsetDateTime at(int hour) {
        return DAY.plusHours(hour);
    }

    private static UUID id(int number) {
        return new UUID(7, number);
    }

    /** A test at an hour that came in at another. */
    private static Attempt attempt(int number, int tested, int received, Verdict verdict) {
        return new Attempt(id(number), number, at(tested), at(received), verdict, null);
    }

    private static Attempt acceptedAt(int hour, Attempt attempt) {
        return new Attempt(
                attempt.record(),
                attempt.number(),
                attempt.tested(),
                attempt.received(),
                attempt.verdict(),
                new RetestAcceptance("eva", at(hour), "lead was loose"));
    }

    private static AttemptHistory history(Attempt... attempts) {
        return new AttemptHistory(List.of(attempts));
    }

    @Test
    void theNewestIsTheOneTestedLastNotTheOneThatCameInLast() {
        AttemptHistory history = history(attempt(1, 10, 10, Verdict.REJECTED), attempt(2, 8, 11, Verdict.ACCEPTED));
        assertTrue(history.isNewest(id(1)));
        assertFalse(history.isNewest(id(2)));
        assertEquals(1, history.orderOf(id(2)));
        assertEquals(List.of(Verdict.ACCEPTED), history.earlierVerdicts(id(1)));
        assertEquals(List.of(), history.earlierVerdicts(id(2)));
        assertEquals(2, history.count());
    }

    @Test
    void whatWasJudgedAgainIsTheSameTestOfWhichTheLastJudgementCounts() {
        Attempt regraded = new Attempt(
                id(2),
                2,
                at(9),
                at(9),
                Verdict.REJECTED,
                null,
                List.of(
                        new Attempt.JudgedAgain(id(8), Verdict.INCOMPLETE),
                        new Attempt.JudgedAgain(id(9), Verdict.ACCEPTED)));
        AttemptHistory history = history(attempt(1, 8, 8, Verdict.REJECTED), regraded);
        assertTrue(history.isNewest(id(9)));
        assertFalse(history.isNewest(id(8)));
        assertFalse(history.isNewest(id(2)));
        assertEquals(2, history.orderOf(id(9)));
        assertEquals(regraded, history.of(id(9)));
        assertEquals(List.of(Verdict.REJECTED), history.earlierVerdicts(id(9)));
        assertEquals(Verdict.ACCEPTED, regraded.decidingVerdict());
        assertEquals(Verdict.REJECTED, regraded.verdictOf(id(2)));
        assertEquals(2, history.count());
        assertFalse(ASKS_ENGINEER.awaitsEngineer(history), "two persons decided on a regrade");
    }

    @Test
    void ofTwoTestsOfOneTimeTheLaterToComeInIsTheNewer() {
        AttemptHistory history = history(attempt(2, 8, 9, Verdict.ACCEPTED), attempt(1, 8, 8, Verdict.REJECTED));
        assertTrue(history.isNewest(id(2)));
    }

    /** A test cannot have ended after it came in: one fast clock would else decide on the reel for ever. */
    @Test
    void aTestFromTheFutureCountsAsOfItsReceipt() {
        assertEquals(at(9), Attempt.timeOfTest(at(9 + 24 * 365), at(9)));
        assertEquals(at(8), Attempt.timeOfTest(at(8), at(9)));
        assertEquals(at(9), Attempt.timeOfTest(at(9), at(9)));
    }

    @Test
    void aLateOlderTestIsWarnedOf() {
        AttemptHistory history = history(attempt(1, 10, 10, Verdict.REJECTED));
        assertEquals(
                Optional.of("This test ended 2026-03-02T08:00Z, before attempt 1 of this reel (rejected, ended"
                        + " 2026-03-02T10:00Z), but came in after it. It is kept as an older test and does not decide on the"
                        + " reel."),
                history.lateWarning(at(8)));
        assertEquals(Optional.empty(), history.lateWarning(at(10)));
        assertEquals(Optional.empty(), AttemptHistory.none().lateWarning(at(1)));
    }

    @net.jqwik.api.Property
    void theOrderDoesNotDependOnWhatIsKnownFirst(
            @ForAll @Size(min = 1, max = 8) List<@IntRange(max = 5) Integer> hours, @ForAll Random random) {
        List<Attempt> attempts = new ArrayList<>();
        for (int i = 0; i < hours.size(); i++) {
            attempts.add(attempt(i + 1, hours.get(i), 9, Verdict.INCOMPLETE));
        }
        AttemptHistory inOrder = new AttemptHistory(attempts);
        Collections.shuffle(attempts, random);
        assertEquals(inOrder, new AttemptHistory(attempts));
        for (Attempt attempt : attempts) {
            assertEquals(
                    inOrder.orderOf(attempt.record()) - 1,
                    inOrder.before(attempt.record()).size());
        }
    }

    @Test
    void aRecordOfAnotherReelAndOneThatStandsTwiceAreRefused() {
        Attempt one = attempt(1, 8, 8, Verdict.ACCEPTED);
        assertThrows(IllegalArgumentException.class, () -> history(one).orderOf(id(9)));
        assertThrows(IllegalArgumentException.class, () -> history(one, one));
        assertThrows(IllegalArgumentException.class, () -> attempt(0, 8, 8, Verdict.ACCEPTED));
    }

    @Test
    void aPassAfterAFailureWaitsForAnEngineerWhereThePlantAsksForOne() {
        AttemptHistory passed = history(
                attempt(1, 8, 8, Verdict.REJECTED),
                attempt(2, 9, 9, Verdict.REJECTED),
                attempt(3, 10, 10, Verdict.ACCEPTED));
        assertTrue(ASKS_ENGINEER.awaitsEngineer(passed));
        assertFalse(RetestRule.none().awaitsEngineer(passed));
        assertFalse(ASKS_ENGINEER.awaitsEngineer(history(
                attempt(1, 8, 8, Verdict.REJECTED),
                attempt(2, 9, 9, Verdict.REJECTED),
                acceptedAt(11, attempt(3, 10, 10, Verdict.ACCEPTED)))));
    }

    @Test
    void whatFailedLastOrNeverFailedWaitsForNobody() {
        assertFalse(ASKS_ENGINEER.awaitsEngineer(AttemptHistory.none()));
        assertFalse(ASKS_ENGINEER.awaitsEngineer(history(attempt(1, 8, 8, Verdict.ACCEPTED))));
        assertFalse(ASKS_ENGINEER.awaitsEngineer(
                history(attempt(1, 8, 8, Verdict.INCOMPLETE), attempt(2, 9, 9, Verdict.ACCEPTED))));
        assertFalse(ASKS_ENGINEER.awaitsEngineer(
                history(attempt(1, 8, 8, Verdict.ACCEPTED), attempt(2, 9, 9, Verdict.REJECTED))));
    }

    /** What was accepted stays accepted when the reel passes again; a failure in between asks anew. */
    @Test
    void anAcceptanceAnswersTheFailuresBeforeItAndNoOthers() {
        Attempt failed = attempt(1, 8, 8, Verdict.REJECTED);
        Attempt accepted = acceptedAt(10, attempt(2, 9, 9, Verdict.ACCEPTED));
        assertFalse(ASKS_ENGINEER.awaitsEngineer(history(failed, accepted, attempt(3, 11, 11, Verdict.ACCEPTED))));
        assertTrue(ASKS_ENGINEER.awaitsEngineer(
                history(failed, accepted, attempt(3, 11, 11, Verdict.REJECTED), attempt(4, 12, 12, Verdict.ACCEPTED))));
    }

    /** Who accepted could not know of a failure that had not come in. */
    @Test
    void aFailureThatComesInAfterTheAcceptanceAsksForAnother() {
        assertTrue(ASKS_ENGINEER.awaitsEngineer(history(
                attempt(1, 8, 8, Verdict.REJECTED),
                acceptedAt(10, attempt(2, 9, 9, Verdict.ACCEPTED)),
                attempt(3, 7, 11, Verdict.REJECTED))));
    }

    @Test
    void aReasonIsAskedFromTheSecondTestOn() {
        RetestRule rule = new RetestRule(null, true, false);
        AttemptHistory once = history(attempt(1, 8, 8, Verdict.REJECTED));
        assertEquals(Optional.empty(), rule.missingReason(AttemptHistory.none(), null));
        assertEquals(
                Optional.of("this reel was tested once before; say in 'retestReason' why it is tested again"),
                rule.missingReason(once, null));
        assertEquals(Optional.empty(), rule.missingReason(once, "lead was loose"));
        assertEquals(Optional.empty(), RetestRule.none().missingReason(once, null));
    }

    @Test
    void aPassBeyondTheNumberOfTestsIsRefusedButNoFailure() {
        RetestRule rule = new RetestRule(2, false, false);
        AttemptHistory twice = history(attempt(1, 8, 8, Verdict.REJECTED), attempt(2, 9, 9, Verdict.REJECTED));
        assertEquals(
                Optional.of(
                        "was tested twice, and this plant lets no test beyond 2 pass; hand the reel over to an engineer,"
                                + " who may send a further test"),
                rule.tooMany(twice, at(10), Verdict.ACCEPTED, false));
        assertEquals(Optional.empty(), rule.tooMany(twice, at(10), Verdict.ACCEPTED, true), "the engineer goes on");
        assertEquals(Optional.empty(), rule.tooMany(twice, at(10), Verdict.REJECTED, false), "a failure is kept");
        assertEquals(Optional.empty(), rule.tooMany(twice, at(10), Verdict.INCOMPLETE, false));
        assertEquals(
                Optional.empty(), rule.tooMany(twice, at(7), Verdict.ACCEPTED, false), "a late one decides nothing");
        assertEquals(
                Optional.empty(),
                rule.tooMany(history(attempt(1, 8, 8, Verdict.REJECTED)), at(10), Verdict.ACCEPTED, false));
        assertEquals(Optional.empty(), RetestRule.none().tooMany(twice, at(10), Verdict.ACCEPTED, false));
    }

    @ParameterizedTest
    @ValueSource(ints = {0, -1})
    void aReelIsTestedAtLeastOnce(int most) {
        assertThrows(IllegalArgumentException.class, () -> new RetestRule(most, false, false));
    }

    @Test
    void anAcceptanceNamesAPersonAndAReason() {
        assertThrows(IllegalArgumentException.class, () -> new RetestAcceptance(" ", at(1), "why"));
        assertThrows(IllegalArgumentException.class, () -> new RetestAcceptance("eva", at(1), ""));
    }
}
