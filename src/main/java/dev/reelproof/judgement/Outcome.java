package dev.reelproof.judgement;

import java.util.Locale;

/** What a requirement came to. */
public enum Outcome {
    PASS,
    FAIL,
    NOT_TESTED;

    /** The word in the HTTP contract. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
