package dev.reelproof.correction;

import dev.reelproof.quantity.Decibels;
import java.util.Arrays;

/**
 * Source: 7 CFR 1755.870(h), which limits the average, the root mean square, the root mean square deviation from the reel average
 * and the mean less one sigma of a reel's values (read; which divisor the last two take is not said there).
 *
 * <p>The figures of a set of values that a requirement may limit. Values are sorted before they are summed, so that the
 * order in which a bay reports them cannot change a verdict.
 *
 * <ul>
 *   <li>Equations: maximum; mean m = Σx/n; rms = √(Σx²/n); rms of levels = −10 log10(Σ 10^(−x/10) / n); rms deviation = 100 √(Σ(x−m)²/n) / m;
 *       mean less sigma = m − √(Σ(x−m)²/(n−1))
 *   <li>Symbols: x the values in one unit, n how many there are; levels in dB, the deviation in percent of the mean
 *   <li>Range: finite values, at least one; at least two for a sigma
 *   <li>Edge cases: equal values give themselves, a deviation of 0, and a sigma of 0; a deviation in percent needs a mean above 0
 *   <li>Known error: the divisor of the rms deviation is n, since a root mean square is of the whole population and all pairs of the
 *       reel are in it; n − 1 would give 4.4 % more of the figure at 12 pairs. The divisor of sigma is n − 1, the estimate from a
 *       sample, and the stricter of the two
 * </ul>
 */
public final class SummaryStatistics {
    /** The source of the figures. */
    public static final String CITATION =
            "7 CFR 1755.870(h) (read); divisor n for the rms deviation, n − 1 for sigma: not stated there, our reading";

    private static final double PERCENT = 100;

    private SummaryStatistics() {}

    /**
     * The arithmetic mean, in the values' unit.
     *
     * @throws IllegalArgumentException when there is no value or one is not finite
     */
    public static double mean(double... values) {
        return meanOf(OrderedValues.ascending("a mean", "", 1, values));
    }

    /**
     * The root mean square, in the values' unit.
     *
     * @throws IllegalArgumentException when there is no value or one is not finite
     */
    public static double rms(double... values) {
        double[] ascending = OrderedValues.ascending("a root mean square", "", 1, values);
        double[] squares = new double[ascending.length];
        for (int i = 0; i < squares.length; i++) {
            squares[i] = ascending[i] * ascending[i];
        }
        return Math.sqrt(mean(squares));
    }

    /**
     * The root mean square of the crosstalk ratios behind losses in dB, expressed in dB again.
     *
     * @param levels losses in dB
     * @throws IllegalArgumentException when there is no value or one is not finite
     */
    public static double rmsOfLevels(double... levels) {
        return PowerSum.of(levels) + Decibels.ofPowerRatio(levels.length);
    }

    /**
     * The root mean square deviation from the mean, in percent of the mean; divisor n.
     *
     * @throws IllegalArgumentException when there is no value, one is not finite, or the mean is not above 0
     */
    public static double rmsDeviationPercent(double... values) {
        double[] ascending = OrderedValues.ascending("an rms deviation", "", 1, values);
        double mean = meanOf(ascending);
        if (!(mean > 0)) {
            throw new IllegalArgumentException(
                    "an rms deviation in percent needs a mean above 0; it is " + PlainDecimal.of(mean));
        }
        return PERCENT * Math.sqrt(squaredDeviations(ascending, mean) / ascending.length) / mean;
    }

    /**
     * The mean less one standard deviation, in the values' unit; divisor n − 1.
     *
     * @throws IllegalArgumentException when there are fewer than two values or one is not finite
     */
    public static double meanMinusSigma(double... values) {
        double[] ascending = OrderedValues.ascending("a mean less one sigma", "", 2, values);
        double mean = meanOf(ascending);
        return mean - Math.sqrt(squaredDeviations(ascending, mean) / (ascending.length - 1));
    }

    /**
     * The greatest value, in the values' unit.
     *
     * @throws IllegalArgumentException when there is no value or one is not finite
     */
    public static double maximum(double... values) {
        double[] ascending = OrderedValues.ascending("a maximum", "", 1, values);
        return ascending[ascending.length - 1];
    }

    /** The derivatives of {@link #maximum}: 1 by the greatest value, the first of equal ones, and 0 by the others. */
    public static double[] maximumGradient(double... values) {
        double maximum = maximum(values);
        double[] gradient = new double[values.length];
        int greatest = 0;
        while (values[greatest] != maximum) {
            greatest++;
        }
        gradient[greatest] = 1;
        return gradient;
    }

    /** Summed as distances from the smallest value, so that equal values give exactly themselves. */
    private static double meanOf(double[] ascending) {
        double smallest = ascending[0];
        double sum = 0;
        for (double value : ascending) {
            sum += value - smallest;
        }
        return smallest + sum / ascending.length;
    }

    private static double squaredDeviations(double[] ascending, double mean) {
        double sum = 0;
        for (double value : ascending) {
            sum += (value - mean) * (value - mean);
        }
        return sum;
    }

    /** The derivatives of {@link #mean}: 1/n by each value. */
    public static double[] meanGradient(double... values) {
        double[] gradient = new double[values.length];
        Arrays.fill(gradient, 1.0 / values.length);
        return gradient;
    }

    /** The derivatives of {@link #rms}: x/(n rms) by each value; 1/n where all are 0. */
    public static double[] rmsGradient(double... values) {
        double rms = rms(values);
        double[] gradient = meanGradient(values);
        for (int i = 0; i < values.length && rms > 0; i++) {
            gradient[i] *= values[i] / rms;
        }
        return gradient;
    }

    /** The derivatives of {@link #rmsOfLevels}: the share of each in the sum of the powers. */
    public static double[] rmsOfLevelsGradient(double... levels) {
        return PowerSum.gradient(levels);
    }

    /**
     * The derivatives of {@link #rmsDeviationPercent}: 100/m [(x − m)/(n σ) − σ/(n m)] by each value. Where all values are equal σ has
     * no derivative; 100/(n m), the root mean square of the first term, stands for it.
     */
    public static double[] rmsDeviationPercentGradient(double... values) {
        double mean = mean(values);
        double sigma = rmsDeviationPercent(values) / PERCENT * mean;
        double[] gradient = meanGradient(values);
        for (int i = 0; i < values.length; i++) {
            double ofDeviation = sigma > 0 ? (values[i] - mean) / sigma : 1;
            gradient[i] *= PERCENT / mean * (ofDeviation - sigma / mean);
        }
        return gradient;
    }

    /**
     * The derivatives of {@link #meanMinusSigma}: 1/n − (x − m)/((n − 1) s) by each value. Where all values are equal s has no
     * derivative; 1/√(n (n − 1)), the root mean square of the second term, is added, so that the two do not cancel.
     */
    public static double[] meanMinusSigmaGradient(double... values) {
        double mean = mean(values);
        double sigma = mean - meanMinusSigma(values);
        double[] gradient = meanGradient(values);
        double degrees = values.length - 1.0;
        for (int i = 0; i < values.length; i++) {
            gradient[i] += sigma > 0 ? -(values[i] - mean) / (degrees * sigma) : 1 / Math.sqrt(values.length * degrees);
        }
        return gradient;
    }
}
