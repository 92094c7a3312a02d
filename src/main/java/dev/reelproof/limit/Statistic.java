package dev.reelproof.limit;

import java.util.Locale;

/** The figure of a population of values that a requirement limits. */
public enum Statistic {
    /** Each value by itself. */
    INDIVIDUAL,
    /** The arithmetic mean. */
    MEAN,
    /** The root mean square; of levels, the root mean square of the crosstalk ratios, expressed in dB again. */
    RMS,
    /** The root mean square deviation from the mean, in percent of the mean. */
    RMS_DEVIATION,
    /** The mean less one standard deviation. */
    MEAN_MINUS_SIGMA,
    /** The greatest value. */
    MAXIMUM,
    /** The percentage of pairs of which every value meets what each must meet. */
    PERCENT_OF_PAIRS;

    /** The word used in limit set files. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
