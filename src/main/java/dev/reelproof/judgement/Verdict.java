package dev.reelproof.judgement;

import java.util.Collection;
import java.util.Locale;

/**
 * What a reel came to: accepted when there are requirements and all pass, conditionally or not; rejected when one fails,
 * conditionally or not; else incomplete. Rejected beats incomplete.
 */
public enum Verdict {
    ACCEPTED,
    REJECTED,
    INCOMPLETE;

    /** What a reel comes to by what its requirements came to. */
    public static Verdict of(Collection<Outcome> outcomes) {
        if (outcomes.stream().anyMatch(Outcome::rejects)) {
            return REJECTED;
        }
        return !outcomes.isEmpty() && outcomes.stream().allMatch(Outcome::accepts) ? ACCEPTED : INCOMPLETE;
    }

    /** The word in the HTTP contract. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
