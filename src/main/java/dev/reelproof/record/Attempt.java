package dev.reelproof.record;

import dev.reelproof.judgement.Verdict;
import java.time.OffsetDateTime;
import java.util.Comparator;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * One test of a reel among its tests.
 *
 * @param record the id of its record
 * @param number the record's attempt: which it was in the order of arrival, from 1; it never changes
 * @param tested when it was tested, as {@link #timeOfTest} says
 * @param received when it came in
 * @param verdict what it came to
 * @param acceptance by whom its pass was accepted last, where the rule on retests asked for it
 */
public record Attempt(
        UUID record,
        int number,
        OffsetDateTime tested,
        OffsetDateTime received,
        Verdict verdict,
        @Nullable RetestAcceptance acceptance) {

    /** The order of test: the earlier first; of two at one time the one that came in first. */
    static final Comparator<Attempt> IN_ORDER_OF_TEST = Comparator.comparing(
                    (Attempt attempt) -> attempt.tested().toInstant())
            .thenComparingInt(Attempt::number);

    public Attempt {
        if (record == null || tested == null || received == null || verdict == null) {
            throw new IllegalArgumentException(
                    "an attempt needs its record, the times of test and receipt, and a verdict");
        }
        if (!(number >= 1)) {
            throw new IllegalArgumentException("attempts count from 1, not " + number);
        }
    }

    /**
     * When a test was done: when it ended, as the bay says. A bay whose clock is fast says that a test ended after it came in, which
     * cannot be; then it counts as of its receipt. Else one wrong clock would make a test the newest for ever.
     *
     * @param finished when it ended by the clock of the bay
     * @param received when it came in
     */
    public static OffsetDateTime timeOfTest(OffsetDateTime finished, OffsetDateTime received) {
        return finished.isAfter(received) ? received : finished;
    }
}
