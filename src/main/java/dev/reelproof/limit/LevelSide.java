package dev.reelproof.limit;

import dev.reelproof.quantity.Decibels;

/**
 * Source: JCGM 100:2008 (GUM), 5.1.2 (root sum of squares), from memory; that a level's parts are combined as amplitudes and taken back
 * without linearising is common practice, no source.
 *
 * <p>A side of a level in dB, and how far to that side the uncertainties of its parts may carry it.
 *
 * <ul>
 *   <li>Equation: U = 20 lg(1 + √(Σ rᵢ² + n²)) to the lower side with rᵢ = 10^(pᵢ/20) − 1; U = −20 lg(1 − √(Σ rᵢ² + n²)) to the higher
 *       side with rᵢ = 1 − 10^(−pᵢ/20)
 *   <li>Symbols: U expanded uncertainty and pᵢ its parts in dB; n amplitude of the noise over that of the level, a ratio
 *   <li>Range: parts of 0 or more; n of 0 or more
 *   <li>Edge cases: to the higher side there is none (NaN) when the parts may be all of the amplitude that is left: the level may lie
 *       anywhere above
 *   <li>Known error: the two sides differ, so that neither is the half width of a symmetric interval
 * </ul>
 */
public enum LevelSide {
    /** The true level may be lower than read: noise in phase takes from it. Here crosstalk, reflection and balance miss their limits. */
    LOWER(1),
    /** The true level may be higher than read: noise hides what is above. Here insertion loss misses its limit. */
    HIGHER(-1);

    /** ln 10/20: the natural logarithm of an amplitude ratio of 1 dB. */
    private static final double LN_OF_A_DECIBEL = Decibels.LN_OF_DECADE / Decibels.PER_DECADE_OF_AMPLITUDE;

    private final int sign;

    LevelSide(int sign) {
        this.sign = sign;
    }

    /** The other side: what matters of a value that fails. */
    public LevelSide other() {
        return this == LOWER ? HIGHER : LOWER;
    }

    /** rᵢ²: the square of what a part in dB, of either sign, changes of the amplitude. */
    double square(double part) {
        double change = StrictMath.expm1(sign * LN_OF_A_DECIBEL * Math.abs(part));
        return change * change;
    }

    /** n²: the square of the noise's amplitude over the level's, both in dB. */
    static double squareOfNoise(double level, double noiseFloor) {
        return StrictMath.exp(2 * LN_OF_A_DECIBEL * (level - noiseFloor));
    }

    /**
     * The expanded uncertainty to this side, dB; NaN where there is no bound.
     *
     * @param squares sum of the squares of all parts
     */
    double decibels(double squares) {
        double change = sign * Math.sqrt(squares);
        return change > -1 ? sign * StrictMath.log1p(change) / LN_OF_A_DECIBEL : Double.NaN;
    }
}
