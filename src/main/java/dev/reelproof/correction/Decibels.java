package dev.reelproof.correction;

/**
 * Source: the decibel of a power ratio, 10 log10, as in ISO 80000-3 (from memory).
 *
 * <p>StrictMath, because the same input must give the same last digit on every machine.
 */
final class Decibels {
    private static final double DECIBELS_PER_DECADE = 10;

    private static final double NATURAL_LOG_OF_TEN = 2.302585092994046;

    private Decibels() {}

    /** 10 log10 of a power ratio, in dB. */
    static double ofPowerRatio(double ratio) {
        return DECIBELS_PER_DECADE * StrictMath.log10(ratio);
    }

    /** The power ratio of a gain in dB: 10^(dB/10). */
    static double powerRatio(double decibels) {
        return StrictMath.pow(DECIBELS_PER_DECADE, decibels / DECIBELS_PER_DECADE);
    }

    /** The derivative of 10 log10 x by x, times x: 10/ln 10, in dB for a relative change of 1. */
    static double perRelativeChange() {
        return DECIBELS_PER_DECADE / NATURAL_LOG_OF_TEN;
    }
}
