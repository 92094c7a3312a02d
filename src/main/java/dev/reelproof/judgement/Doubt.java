package dev.reelproof.judgement;

import dev.reelproof.measurement.Subject;
import org.jspecify.annotations.Nullable;

/**
 * Source: Boole's inequality (any text on probability); probability of conformity by {@link Conformity}.
 *
 * <p>Where it is least sure that a requirement is met, and how sure it is of all its values together.
 *
 * <ul>
 *   <li>Equation: P(all conform) ≥ 1 − Σ (1 − pᵢ) and P(all conform) ≤ min pᵢ
 *   <li>Symbols: pᵢ probability of conformity of value i
 *   <li>Range: any values, however their errors depend on each other
 *   <li>Edge cases: a sum of 1 or more bounds nothing from below
 *   <li>Known error: where the errors of many values near the limit are common, the sum counts them many times over: the bound is far on
 *       the safe side. Values whose uncertainty is not known are not in it
 * </ul>
 *
 * <p>The least probable value is seldom that with the least margin: where the uncertainty is great, a great margin may say little.
 *
 * @param subject whose the least probable value is; the reel for a statistic
 * @param units the unit or units that a statistic was taken of; absent where it was taken of the whole reel
 * @param megahertz its frequency, MHz; absent where it has none
 * @param value at the reference, in the unit of the limit
 * @param margin how far it lies on the good side of the limit
 * @param probability p, that its true value meets the limit
 * @param sum Σ (1 − pᵢ) over all values of the requirement
 */
public record Doubt(
        Subject subject,
        @Nullable Units units,
        @Nullable Double megahertz,
        double value,
        double margin,
        double probability,
        double sum) {

    /** @throws IllegalArgumentException when a figure is not possible */
    public Doubt {
        if (!(probability >= 0 && probability <= 1)) {
            throw new IllegalArgumentException("a probability lies between 0 and 1; this one is " + probability);
        }
        if (!(sum >= 0 && Double.isFinite(sum) && Double.isFinite(value) && Double.isFinite(margin))) {
            throw new IllegalArgumentException("doubt is of finite figures and 0 or more, not value " + value
                    + ", margin " + margin + ", sum " + sum);
        }
    }

    /** The least that the probability can be that all values meet the limit. */
    public double atLeast() {
        return Math.max(0, 1 - sum);
    }
}
