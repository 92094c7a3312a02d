package dev.reelproof.store.lot;

import java.time.Duration;

/** The bounds of searches among all lots of a plant. */
public final class LotSearches {
    /** The most that one answer lists. */
    public static final int MOST_LISTED = 10_000;

    /** How long the database may take. */
    static final Duration LONGEST = Duration.ofSeconds(10);

    static final String TOO_LONG = "the answer was not found within " + LONGEST.toSeconds()
            + "s; ask for less: fewer reels, or a shorter time";

    private LotSearches() {}
}
