package dev.reelproof.judgement;

import java.util.Locale;

/**
 * What a reel came to: accepted only when every requirement passes, conditionally or not; rejected when one fails, conditionally or
 * not; rejected beats incomplete.
 */
public enum Verdict {
    ACCEPTED,
    REJECTED,
    INCOMPLETE;

    /** The word in the HTTP contract. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
