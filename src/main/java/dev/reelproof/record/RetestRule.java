package dev.reelproof.record;

import dev.reelproof.judgement.Verdict;
import java.time.OffsetDateTime;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What a plant asks of a reel that is tested again.
 *
 * <p>No rule keeps a failure out: a test that fails, one that is not complete and one that comes in late are kept however many there
 * were.
 *
 * @param mostAttempts how many tests may come in before a pass is refused; null for any number
 * @param asksReason whether every test from the second on needs a reason
 * @param asksEngineer whether a pass after a failure counts only once an engineer has accepted it
 */
public record RetestRule(@Nullable Integer mostAttempts, boolean asksReason, boolean asksEngineer) {

    public RetestRule {
        if (mostAttempts != null && !(mostAttempts >= 1)) {
            throw new IllegalArgumentException("a reel may be tested at least once, not " + mostAttempts + " times");
        }
    }

    /** What a plant asks that sets nothing. */
    public static RetestRule none() {
        return new RetestRule(null, false, false);
    }

    /** Why a test cannot be taken without a reason; empty when it can. */
    public Optional<String> missingReason(AttemptHistory before, @Nullable String reason) {
        return asksReason && reason == null && before.count() > 0
                ? Optional.of("this reel was tested " + times(before.count())
                        + " before; say in 'retestReason' why it is tested again")
                : Optional.empty();
    }

    /**
     * Why a test that passes cannot be taken any more; empty when it can.
     *
     * @param before the tests so far
     * @param tested when the test was done
     * @param verdict what it came to
     * @param isByEngineer whether who sends it may accept retests, and so may go on beyond the number
     */
    public Optional<String> tooMany(
            AttemptHistory before, OffsetDateTime tested, Verdict verdict, boolean isByEngineer) {
        boolean isBeyond = mostAttempts != null && before.count() >= mostAttempts;
        return isBeyond && verdict == Verdict.ACCEPTED && !before.isOlder(tested) && !isByEngineer
                ? Optional.of("was tested " + times(before.count()) + ", and this plant lets no test beyond "
                        + mostAttempts + " pass; hand the reel over to an engineer, who may send a further test")
                : Optional.empty();
    }

    /** Whether the reel may neither ship nor have a certificate until an engineer accepts its newest test. */
    public boolean awaitsEngineer(AttemptHistory history) {
        return asksEngineer && history.isPassAfterFailure();
    }

    private static String times(int count) {
        return switch (count) {
            case 1 -> "once";
            case 2 -> "twice";
            default -> count + " times";
        };
    }
}
