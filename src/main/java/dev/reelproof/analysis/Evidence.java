package dev.reelproof.analysis;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What is held against a suspect. */
public enum Evidence {
    /** More reels fail: Fisher's exact test. */
    FAILURES(
            "Fisher's exact test, one-sided (exposed reels fail more often); 95 % hybrid score interval (Newcombe, method 10) of"
                    + " the difference of failing shares; odds ratio of the sample"),
    /** Margins are lower, though reels may still pass: the Mann-Whitney test. */
    MARGINS(
            "rank-sum test (Mann-Whitney), one-sided (exposed reels have lower margins), exact without equal margins where"
                    + " feasible, else normal with correction for ties; Hodges-Lehmann shift with 95 % interval");

    private final String method;

    Evidence(String method) {
        this.method = method;
    }

    /** The evidence of that word; empty when there is none. */
    public static Optional<Evidence> named(String word) {
        return Arrays.stream(values())
                .filter(evidence -> evidence.word().equals(word))
                .findFirst();
    }

    /** The evidence as requests and answers spell it. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Whether each reel needs its margin. */
    public boolean needsMargins() {
        return this == MARGINS;
    }

    /** How it is weighed, in words. */
    public String method() {
        return method;
    }
}
