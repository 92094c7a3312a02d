package dev.reelproof.analysis;

import java.util.OptionalDouble;

/**
 * How many reels met an exposure and how many did not, and how many of each fail.
 *
 * @param exposed how many reels met the exposure
 * @param exposedFailing how many of them fail
 * @param others how many did not meet it
 * @param othersFailing how many of those fail
 */
public record CountTable(int exposed, int exposedFailing, int others, int othersFailing) {
    public CountTable {
        requirePart(exposedFailing, exposed, "exposed");
        requirePart(othersFailing, others, "other");
    }

    private static void requirePart(int failing, int all, String which) {
        if (!(failing >= 0 && failing <= all)) {
            throw new IllegalArgumentException(failing + " failing of " + all + " " + which
                    + " reels cannot be; it must be from 0 to as many as there are");
        }
    }

    /** All reels. */
    public int reels() {
        return exposed + others;
    }

    /** All failing reels. */
    public int failing() {
        return exposedFailing + othersFailing;
    }

    /** The most exposed reels that could fail with these totals. */
    int mostExposedFailing() {
        return Math.min(exposed, failing());
    }

    /** The odds ratio of the sample, ad/bc; empty where that divides by zero. */
    public OptionalDouble oddsRatio() {
        double divisor = (double) (exposed - exposedFailing) * othersFailing;
        return divisor > 0
                ? OptionalDouble.of((double) exposedFailing * (others - othersFailing) / divisor)
                : OptionalDouble.empty();
    }
}
