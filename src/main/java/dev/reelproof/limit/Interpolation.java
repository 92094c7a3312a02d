package dev.reelproof.limit;

import java.util.Locale;

/** How a limit that is printed as a table holds between the frequencies of the table. */
public enum Interpolation {
    /** Not at all: the limit is one at the frequencies printed and nowhere else. */
    NONE,
    /** Straight lines over frequency. */
    LINEAR,
    /** Straight lines over the logarithm of frequency. */
    LOG_FREQUENCY;

    /** The word used in limit set files. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
