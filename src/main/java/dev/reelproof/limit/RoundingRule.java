package dev.reelproof.limit;

import java.util.Locale;

/** How a value is brought to the precision of its limit before the two are compared (the two methods of ASTM E29). */
public enum RoundingRule {
    /** The value is compared as it is. */
    ABSOLUTE,
    /** The value is rounded to the decimal places of the limit as printed, a tie to the even digit, and then compared. */
    TO_THE_PLACES_OF_THE_LIMIT;

    /** The word used in limit set files. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
