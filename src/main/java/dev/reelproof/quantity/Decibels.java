package dev.reelproof.quantity;

/**
 * Source: the decibel of a power ratio, 10 log10, and of an amplitude ratio, 20 log10, as in ISO 80000-3 (from memory).
 *
 * <p>StrictMath, because the same input must give the same last digit on every machine.
 */
public final class Decibels {
    /** dB for a power ten times as great. */
    public static final double PER_DECADE_OF_POWER = 10;

    /** dB for an amplitude ten times as great, whose power is a hundred times as great. */
    public static final double PER_DECADE_OF_AMPLITUDE = 20;

    private static final double DECADE = 10;

    /** The natural logarithm of the ratio that a decade is. */
    public static final double LN_OF_DECADE = 2.302585092994046;

    private Decibels() {}

    /** 10 log10 of a power ratio, in dB. */
    public static double ofPowerRatio(double ratio) {
        return PER_DECADE_OF_POWER * StrictMath.log10(ratio);
    }

    /** The power ratio of a gain in dB: 10^(dB/10). */
    public static double powerRatio(double decibels) {
        return StrictMath.pow(DECADE, decibels / PER_DECADE_OF_POWER);
    }

    /** 20 log10 of an amplitude ratio, in dB. */
    public static double ofAmplitudeRatio(double ratio) {
        return PER_DECADE_OF_AMPLITUDE * StrictMath.log10(ratio);
    }

    /** The amplitude ratio of a gain in dB: 10^(dB/20). */
    public static double amplitudeRatio(double decibels) {
        return StrictMath.pow(DECADE, decibels / PER_DECADE_OF_AMPLITUDE);
    }

    /** The derivative of 10 log10 x by x, times x: 10/ln 10, in dB for a relative change of power of 1. */
    public static double perRelativeChangeOfPower() {
        return PER_DECADE_OF_POWER / LN_OF_DECADE;
    }
}
