package dev.reelproof.record;

import dev.reelproof.judgement.Verdict;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/**
 * All tests of one reel in the order in which they were done, whatever the order in which they came in. The last of them is the newest:
 * its verdict is the reel's; where a regrade judged it again, the verdict of that.
 *
 * @param attempts the tests; put in order
 */
public record AttemptHistory(List<Attempt> attempts) {

    public AttemptHistory {
        attempts = attempts.stream().sorted(Attempt.IN_ORDER_OF_TEST).toList();
        Set<Object> seen = new HashSet<>();
        for (Attempt attempt : attempts) {
            if (!seen.add(attempt.record()) || !seen.add(attempt.number())) {
                throw new IllegalArgumentException(
                        "attempt " + attempt.number() + " of record " + attempt.record() + " stands twice");
            }
        }
    }

    /** A reel that was never tested. */
    public static AttemptHistory none() {
        return new AttemptHistory(List.of());
    }

    /** How many tests there were. */
    public int count() {
        return attempts.size();
    }

    /** The test that counts; empty for a reel that was never tested. */
    public Optional<Attempt> newest() {
        return attempts.isEmpty() ? Optional.empty() : Optional.of(attempts.get(attempts.size() - 1));
    }

    /** Whether a record is the one of the newest test that counts. */
    public boolean isNewest(UUID record) {
        return newest().filter(attempt -> attempt.decidingRecord().equals(record))
                .isPresent();
    }

    /**
     * The test of a record.
     *
     * @throws IllegalArgumentException when it is none of this reel
     */
    public Attempt of(UUID record) {
        return attempts.get(orderOf(record) - 1);
    }

    /**
     * Which test of the reel a record is in the order of test, from 1.
     *
     * @throws IllegalArgumentException when it is none of this reel
     */
    public int orderOf(UUID record) {
        for (int i = 0; i < attempts.size(); i++) {
            if (attempts.get(i).isOf(record)) {
                return i + 1;
            }
        }
        throw new IllegalArgumentException("record " + record + " is no test of this reel");
    }

    /** The tests before that of a record, in the order of test. */
    public List<Attempt> before(UUID record) {
        return attempts.subList(0, orderOf(record) - 1);
    }

    /** What the tests before that of a record came to, in the order of test. */
    public List<Verdict> earlierVerdicts(UUID record) {
        return before(record).stream().map(Attempt::verdict).toList();
    }

    /** Whether a test done at that time, and coming in now, is older than one that is here. */
    public boolean isOlder(OffsetDateTime tested) {
        return newest().filter(attempt -> attempt.tested().toInstant().isAfter(tested.toInstant()))
                .isPresent();
    }

    /** What the keepers of a record should know of a test that comes in late: that it is older than the newest. */
    public Optional<String> lateWarning(OffsetDateTime tested) {
        return isOlder(tested)
                ? newest().map(newest -> "This test ended " + time(tested) + ", before attempt " + newest.number()
                        + " of this reel (" + newest.decidingVerdict().word() + ", ended " + time(newest.tested())
                        + "), but came in after it. It is kept as an older test and does not decide on the reel.")
                : Optional.empty();
    }

    private static OffsetDateTime time(OffsetDateTime time) {
        return time.withOffsetSameInstant(ZoneOffset.UTC).truncatedTo(ChronoUnit.SECONDS);
    }

    /**
     * Whether the newest test passed although an earlier one failed of which no engineer knew who accepted a pass after it. A regrade of a
     * test that failed is no such pass: two persons decided on it.
     *
     * <p>Who accepted knew of what had come in until then, and of no failure that came in later, even if it is of an earlier test.
     */
    public boolean isPassAfterFailure() {
        return newest().filter(last -> last.verdict() == Verdict.ACCEPTED).isPresent()
                && attempts.stream()
                        .filter(attempt -> attempt.verdict() == Verdict.REJECTED)
                        .anyMatch(failure -> !isAnswered(failure));
    }

    private boolean isAnswered(Attempt failure) {
        return attempts.subList(orderOf(failure.record()), attempts.size()).stream()
                .map(Attempt::acceptance)
                .anyMatch(acceptance -> acceptance != null
                        && !acceptance
                                .at()
                                .toInstant()
                                .isBefore(failure.received().toInstant()));
    }
}
