package dev.reelproof.correction;

import java.util.Arrays;

/** Values put in ascending order, so that a sum over them does not depend on the order in which they came. */
final class OrderedValues {
    private OrderedValues() {}

    /**
     * The values in ascending order.
     *
     * @param what the figure that is formed of them, with its article, for the message
     * @param unit the unit of the values, for the message; empty when it may be any
     * @param fewest how many are needed
     * @throws IllegalArgumentException when there are too few or one is not finite
     */
    static double[] ascending(String what, String unit, int fewest, double... values) {
        if (!(values.length >= fewest)) {
            throw new IllegalArgumentException(what + " needs at least " + fewest + (fewest == 1 ? " value" : " values")
                    + "; there are " + values.length);
        }
        for (double value : values) {
            if (!Double.isFinite(value)) {
                throw new IllegalArgumentException(
                        what + " needs finite values; one is " + (value + " " + unit).trim());
            }
        }
        double[] ascending = values.clone();
        Arrays.sort(ascending);
        return ascending;
    }
}
