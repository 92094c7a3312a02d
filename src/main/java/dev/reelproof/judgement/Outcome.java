package dev.reelproof.judgement;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** What a requirement came to, the better first; the conditional ones only where the decision rule knows them. */
public enum Outcome {
    PASS,
    /** Within the limit, but by less than the guard band. */
    CONDITIONAL_PASS,
    /** Beyond the limit, but by no more than the guard band. */
    CONDITIONAL_FAIL,
    FAIL,
    NOT_TESTED;

    /** The word in the HTTP contract. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The words of the outcomes that reject a reel: what a count of failing reels asks for. */
    public static List<String> rejectingWords() {
        return Arrays.stream(values())
                .filter(Outcome::rejects)
                .map(Outcome::word)
                .toList();
    }

    /** Whether a reel may be accepted with it. */
    public boolean accepts() {
        return this == PASS || this == CONDITIONAL_PASS;
    }

    /** Whether a reel is rejected for it. */
    public boolean rejects() {
        return this == FAIL || this == CONDITIONAL_FAIL;
    }
}
