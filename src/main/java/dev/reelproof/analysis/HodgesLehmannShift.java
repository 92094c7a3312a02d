package dev.reelproof.analysis;

import java.util.Arrays;

/**
 * The Hodges-Lehmann estimate of how much higher (negative: lower) the margins of exposed reels lie than those of others: J. L. Hodges
 * and E. L. Lehmann, Annals of Mathematical Statistics 34 (1963) 598–611, with the distribution-free 95 % interval as in M. Hollander and
 * D. A. Wolfe, Nonparametric Statistical Methods. Both from memory.
 *
 * <p>Equation: the median of all n1 n2 differences x − y. The interval runs from the C-th smallest to the C-th largest difference; C is
 * the whole number nearest to n1 n2 / 2 − z √(n1 n2 (n1 + n2 + 1) / 12).
 *
 * <p>Symbols: x margins of the n1 exposed, y of the n2 other reels, in one unit, which is also that of the result; z = 1.959963985.
 *
 * <p>Range: at least one reel on each side; finite margins.
 *
 * <p>Edge cases: where C is below 1 there are too few reels for an interval; both its ends are infinite.
 *
 * <p>Known error: with few reels or many equal margins the confidence differs from 95 % by some points.
 */
final class HodgesLehmannShift {
    private static final double VARIANCE_DIVISOR = 12;

    private final double[] x;
    private final double[] y;

    private HodgesLehmannShift(double[] exposed, double[] others) {
        this.x = sorted(exposed);
        this.y = sorted(others);
    }

    private static double[] sorted(double[] margins) {
        if (margins.length == 0) {
            throw new IllegalArgumentException("a shift needs exposed reels and others");
        }
        double[] sorted = margins.clone();
        Arrays.sort(sorted);
        return sorted;
    }

    /** The estimate with its interval, in the unit of the margins. */
    static Interval of(double[] exposed, double[] others) {
        HodgesLehmannShift shift = new HodgesLehmannShift(exposed, others);
        long pairs = (long) exposed.length * others.length;
        double spread = Math.sqrt(pairs * (exposed.length + others.length + 1.0) / VARIANCE_DIVISOR);
        long cut = Math.round(pairs / 2.0 - RiskDifference.DEVIATE * spread);
        double median = (shift.difference((pairs + 1) / 2) + shift.difference(pairs / 2 + 1)) / 2;
        return cut >= 1
                ? new Interval(shift.difference(cut), median, shift.difference(pairs + 1 - cut))
                : new Interval(Double.NEGATIVE_INFINITY, median, Double.POSITIVE_INFINITY);
    }

    /** The smallest value that at least so many differences do not exceed; a bisection over all doubles finds it. */
    private double difference(long count) {
        long low = inOrder(x[0] - y[y.length - 1]);
        long high = inOrder(x[x.length - 1] - y[0]);
        while (low < high) {
            long middle = low + (high - low >>> 1);
            if (atMost(ofOrder(middle)) >= count) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return ofOrder(low) + 0.0; // no negative zero
    }

    /** How many differences are at most this one. */
    private long atMost(double difference) {
        long count = 0;
        int j = 0;
        for (double margin : x) {
            while (j < y.length && !(margin - y[j] <= difference)) {
                j++;
            }
            count += y.length - j;
        }
        return count;
    }

    /** A whole number for each double, in the same order as the doubles. */
    private static long inOrder(double value) {
        long bits = Double.doubleToLongBits(value);
        return bits ^ (bits >> Long.SIZE - 1 & Long.MAX_VALUE);
    }

    private static double ofOrder(long place) {
        return Double.longBitsToDouble(place ^ (place >> Long.SIZE - 1 & Long.MAX_VALUE));
    }
}
