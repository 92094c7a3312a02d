package dev.reelproof.limit;

import java.util.Locale;

/** Of what a requirement takes its statistic. */
public enum Per {
    /** One statistic of all values of the reel that its {@link Scope} counts. */
    REEL,
    /**
     * One statistic for each unit of the core, of the values within it. A requirement whose scope is between units has one for each
     * pair of units, of the values of combinations with one pair in either.
     */
    UNIT;

    /** The word used in limit set files. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
