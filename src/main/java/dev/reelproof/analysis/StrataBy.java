package dev.reelproof.analysis;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** Which reels a suspect's reels are compared with. */
public enum StrataBy {
    /** Those tested in the same week. */
    WEEK("within each week of test (ISO 8601, UTC), added up over the weeks: the exact conditional test of failures"
            + " (Cochran-Mantel-Haenszel; normal with continuity where exact is not feasible), van Elteren's test of margins."
            + " It decides q and what is named, because failures cluster in time and whatever was in use then"
            + " would look guilty"),
    /** All others, whenever they were tested. */
    NONE("over all reels, whenever they were tested");

    private final String method;

    StrataBy(String method) {
        this.method = method;
    }

    /** The strata of that word; empty when there are none. */
    public static Optional<StrataBy> named(String word) {
        return Arrays.stream(values()).filter(by -> by.word().equals(word)).findFirst();
    }

    /** The word in requests and answers. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** How they are compared, in words. */
    public String method() {
        return method;
    }
}
