package dev.reelproof.correction;

import dev.reelproof.quantity.Decibels;
import java.util.List;

/**
 * Source: ASTM D4566, power sum of a pair from all other pairs (from memory; that D4566 defines it was read in a course text).
 *
 * <p>The crosstalk that one pair receives from all others at once, as the sum of their powers.
 *
 * <ul>
 *   <li>Equation: P = −10 log10 Σ 10^(−X/10)
 *   <li>Symbols: X crosstalk loss of one combination and P power-sum crosstalk loss, in dB at one frequency
 *   <li>Range: any finite levels, at least one
 *   <li>Edge cases: one part gives itself; the sum is never above its smallest part; the order of the parts does not matter
 *   <li>Known error: voltages of like phase add up to 3 dB more per doubling than powers do; the standard counts powers
 * </ul>
 */
public final class PowerSum {
    /** The source of the definition. */
    public static final String CITATION = "ASTM D4566, power sum (from memory)";

    private PowerSum() {}

    /**
     * The power sum of levels of loss at one frequency, in dB.
     *
     * @param levels losses in dB, at least one, finite
     * @throws IllegalArgumentException when there is none or one is not finite
     */
    public static double of(double... levels) {
        double[] ascending = OrderedValues.ascending("a power sum", "dB", 1, levels);
        double smallest = ascending[0];
        // Smallest powers first, all relative to the greatest: the order of the input cannot enter, and nothing
        // underflows.
        double ratio = 0;
        for (int i = ascending.length - 1; i >= 0; i--) {
            ratio += power(ascending[i] - smallest);
        }
        return smallest - Decibels.ofPowerRatio(ratio);
    }

    /** A column of levels with the powers behind them, 10^(−X/10): worked out once for levels that enter more than one sum. */
    public static final class Part {
        private final double[] levels;
        private final double[] powers;

        /**
         * @param levels losses in dB; kept, not copied. NaN where there is none
         */
        public Part(double[] levels) {
            this.levels = levels;
            this.powers = new double[levels.length];
            for (int i = 0; i < powers.length; i++) {
                powers[i] = power(levels[i]);
            }
        }
    }

    /**
     * The power sums of columns in dB, added in the order of the columns; NaN where a part is.
     *
     * @param parts of one length; at least one
     */
    public static double[] of(List<Part> parts) {
        double[] sums = new double[parts.get(0).levels.length];
        for (Part part : parts) {
            for (int i = 0; i < sums.length; i++) {
                sums[i] += part.powers[i];
            }
        }
        for (int i = 0; i < sums.length; i++) {
            // beyond some 3,000 dB a double holds no power
            boolean held = Double.isNaN(sums[i]) || (sums[i] >= Double.MIN_NORMAL && sums[i] <= Double.MAX_VALUE);
            sums[i] = held ? -Decibels.ofPowerRatio(sums[i]) : of(levelsAt(parts, i));
        }
        return sums;
    }

    /**
     * The derivatives of some power sums of columns by each level, as {@link #gradient}: one column a part.
     *
     * @param sums what {@link #of(List)} makes of the parts
     * @param from the first point
     * @param to behind the last point
     */
    public static double[][] gradients(List<Part> parts, double[] sums, int from, int to) {
        double[][] shares = new double[parts.size()][to - from];
        for (int i = from; i < to; i++) {
            double whole = power(sums[i]);
            for (int part = 0; part < shares.length; part++) {
                shares[part][i - from] = parts.get(part).powers[i] / whole;
            }
        }
        return shares;
    }

    private static double power(double level) {
        return StrictMath.exp(-Decibels.LN_OF_DECADE / Decibels.PER_DECADE_OF_POWER * level);
    }

    private static double[] levelsAt(List<Part> parts, int index) {
        return parts.stream().mapToDouble(part -> part.levels[index]).toArray();
    }

    /**
     * The derivative of the power sum by each level: ∂P/∂Xi = 10^(−Xi/10) / Σ 10^(−X/10), the share in the sum; all add up to 1.
     *
     * @param levels as for {@link #of}
     */
    public static double[] gradient(double... levels) {
        double sum = of(levels);
        double[] shares = new double[levels.length];
        for (int i = 0; i < levels.length; i++) {
            shares[i] = power(levels[i] - sum);
        }
        return shares;
    }
}
