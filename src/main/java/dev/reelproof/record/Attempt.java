package dev.reelproof.record;

import dev.reelproof.judgement.Verdict;
import java.time.OffsetDateTime;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * One test of a reel among its tests.
 *
 * @param record the id of its record
 * @param number the record's attempt: which it was in the order of arrival, from 1; it never changes
 * @param tested when it was tested, as {@link #timeOfTest} says
 * @param received when it came in
 * @param verdict what it came to, judged as the product that the reel was then
 * @param acceptance by whom its pass was accepted last, where the rule on retests asked for it
 * @param again its later judgements as other products, by a regrade each, the last one last
 */
public record Attempt(
        UUID record,
        int number,
        OffsetDateTime tested,
        OffsetDateTime received,
        Verdict verdict,
        @Nullable RetestAcceptance acceptance,
        List<JudgedAgain> again) {

    /**
     * The same test, judged as another product.
     *
     * @param record the id of that record
     * @param verdict what it came to
     */
    public record JudgedAgain(UUID record, Verdict verdict) {}

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
        again = List.copyOf(again);
    }

    /** A test that was judged once. */
    public Attempt(
            UUID record,
            int number,
            OffsetDateTime tested,
            OffsetDateTime received,
            Verdict verdict,
            @Nullable RetestAcceptance acceptance) {
        this(record, number, tested, received, verdict, acceptance, List.of());
    }

    /** Whether a record is one of this test: its own, or one that judges it again. */
    public boolean isOf(UUID id) {
        return record.equals(id) || again.stream().anyMatch(one -> one.record().equals(id));
    }

    /** The record that counts: the last that judges the test. */
    public UUID decidingRecord() {
        return again.isEmpty() ? record : again.get(again.size() - 1).record();
    }

    /** What the test came to by the record that counts. */
    public Verdict decidingVerdict() {
        return verdictOf(decidingRecord());
    }

    /** What the test came to by one of its records. */
    public Verdict verdictOf(UUID id) {
        return again.stream()
                .filter(one -> one.record().equals(id))
                .map(JudgedAgain::verdict)
                .findFirst()
                .orElse(verdict);
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
