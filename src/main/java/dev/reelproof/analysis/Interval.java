package dev.reelproof.analysis;

/**
 * An estimate with the interval that holds the true value with the confidence named by who made it.
 *
 * @param lower its lower end; negative infinity where the data set none
 * @param estimate the estimate
 * @param upper its upper end; infinity where the data set none
 */
public record Interval(double lower, double estimate, double upper) {
    public Interval {
        if (!(lower <= estimate && estimate <= upper)) {
            throw new IllegalArgumentException(
                    "an interval must hold its estimate: " + lower + " to " + upper + " does not hold " + estimate);
        }
    }
}
