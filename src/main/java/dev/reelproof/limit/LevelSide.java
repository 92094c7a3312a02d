package dev.reelproof.limit;

import dev.reelproof.quantity.Decibels;
import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * Source: JCGM 100:2008 (GUM), 5.1.2 (root sum of squares), from memory; that a level's parts are combined as amplitudes and taken back
 * without linearising is common practice, no source.
 *
 * <p>The side of a level in dB on which its limit lies, and how far to that side the uncertainties of its parts may carry it.
 *
 * <ul>
 *   <li>Equation: U = 20 lg(1 + √(Σ rᵢ² + n²)) to the lower side with rᵢ = 10^(pᵢ/20) − 1; U = −20 lg(1 − √(Σ rᵢ² + n²)) to the higher
 *       side with rᵢ = 1 − 10^(−pᵢ/20)
 *   <li>Symbols: U expanded uncertainty and pᵢ its parts in dB; n amplitude of the noise over that of the level, a ratio
 *   <li>Range: parts of 0 or more; n of 0 or more
 *   <li>Edge cases: to the higher side there is none (empty) when the parts may be all of the amplitude that is left: the level may lie
 *       anywhere above
 *   <li>Known error: to the other side the uncertainty differs; no limit lies there
 * </ul>
 */
public enum LevelSide {
    /** Crosstalk, reflection and balance: a level below the limit is bad, and noise in phase takes from it. */
    LOWER(1),
    /** Insertion loss: a level above the limit is bad, and noise hides what is above. */
    HIGHER(-1);

    private final int sign;

    LevelSide(int sign) {
        this.sign = sign;
    }

    /**
     * The expanded uncertainty to this side, dB; empty where there is no bound.
     *
     * @param noise amplitude of the noise over that of the level, a ratio of 0 or more
     * @param parts expanded uncertainties in dB, of either sign
     */
    OptionalDouble combined(double noise, double... parts) {
        double squares = noise * noise
                + Arrays.stream(parts)
                        .map(part -> Decibels.amplitudeRatio(sign * Math.abs(part)) - 1)
                        .map(change -> change * change)
                        .sum();
        double left = 1 + sign * Math.sqrt(squares);
        return left > 0
                ? OptionalDouble.of(sign * Decibels.PER_DECADE_OF_AMPLITUDE * Math.log10(left))
                : OptionalDouble.empty();
    }
}
