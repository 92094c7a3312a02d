package dev.reelproof.limit;

import java.util.Locale;

/** Which figure of the values of a property a requirement limits. */
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

    /** Whether the figure is a percentage, whatever the unit of the values. */
    public boolean isInPercent() {
        return this == RMS_DEVIATION || this == PERCENT_OF_PAIRS;
    }

    /** The word used in limit set files. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
