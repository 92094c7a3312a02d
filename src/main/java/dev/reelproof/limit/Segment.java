package dev.reelproof.limit;

/**
 * A stretch of a limit curve in one of the closed shapes that the standards print; f in MHz.
 *
 * <p>Curves are no expression language: to add a shape, add a record here, with a test.
 */
public sealed interface Segment {

    /** First frequency, MHz. */
    double from();

    /** Last frequency, MHz. */
    double to();

    /** The limit at a frequency within the segment. */
    double at(double megahertz);

    /** The formula in words and figures, as printed on certificates. */
    String formula();

    /**
     * {@code constant + sqrt·√f + linear·f + inverseSqrt/√f}: insertion loss, delay, a level part.
     *
     * @param from first frequency, MHz
     * @param to last frequency, MHz
     * @param constant constant part
     * @param sqrt factor of √f
     * @param linear factor of f
     * @param inverseSqrt factor of 1/√f
     */
    record RootPolynomial(double from, double to, double constant, double sqrt, double linear, double inverseSqrt)
            implements Segment {

        public RootPolynomial {
            Segment.requireRange(from, to);
            Segment.requireFinite(constant, sqrt, linear, inverseSqrt);
        }

        @Override
        public double at(double megahertz) {
            double root = Math.sqrt(megahertz);
            return constant + sqrt * root + linear * megahertz + inverseSqrt / root;
        }

        @Override
        public String formula() {
            StringBuilder formula = new StringBuilder();
            Formulas.append(formula, constant, "");
            Formulas.append(formula, sqrt, "·√f");
            Formulas.append(formula, linear, "·f");
            Formulas.append(formula, inverseSqrt, "/√f");
            return formula.isEmpty() ? "0" : formula.toString();
        }
    }

    /**
     * {@code value + slopePerDecade·log10(f/at)}: crosstalk and return loss.
     *
     * @param from first frequency, MHz
     * @param to last frequency, MHz
     * @param at frequency at which the limit is {@code value}, MHz
     * @param value the limit there
     * @param slopePerDecade change over a decade of frequency
     */
    record LogSlope(double from, double to, double at, double value, double slopePerDecade) implements Segment {

        public LogSlope {
            Segment.requireRange(from, to);
            Segment.requireFinite(value, slopePerDecade);
            if (!(at > 0 && Double.isFinite(at))) {
                throw new IllegalArgumentException("the frequency of a slope must be positive, not " + at + " MHz");
            }
        }

        @Override
        public double at(double megahertz) {
            return value + slopePerDecade * Math.log10(megahertz / at);
        }

        @Override
        public String formula() {
            StringBuilder formula = new StringBuilder(Formulas.number(value));
            Formulas.append(formula, slopePerDecade, at == 1 ? "·log10(f)" : "·log10(f/" + Formulas.number(at) + ")");
            return formula.toString();
        }
    }

    /**
     * A straight line between two tabulated points, over frequency or over its logarithm.
     *
     * @param from frequency of the first point, MHz
     * @param to frequency of the second, MHz
     * @param atFrom the limit at the first
     * @param atTo the limit at the second
     * @param logarithmic whether the line is straight over log10 f; else it is over f
     */
    record Interpolated(double from, double to, double atFrom, double atTo, boolean logarithmic) implements Segment {

        public Interpolated {
            Segment.requireRange(from, to);
            Segment.requireFinite(atFrom, atTo);
        }

        @Override
        public double at(double megahertz) {
            if (megahertz == to) {
                return atTo; // the printed figure itself, without a last digit of arithmetic
            }
            double share = logarithmic
                    ? StrictMath.log10(megahertz / from) / StrictMath.log10(to / from)
                    : (megahertz - from) / (to - from);
            return atFrom + share * (atTo - atFrom);
        }

        @Override
        public String formula() {
            return Formulas.number(atFrom) + " at " + Formulas.number(from) + " MHz to " + Formulas.number(atTo)
                    + " at " + Formulas.number(to) + " MHz, straight over " + (logarithmic ? "log10(f)" : "f");
        }
    }

    private static void requireRange(double from, double to) {
        if (!(from > 0 && to > from && Double.isFinite(to))) {
            throw new IllegalArgumentException("a segment runs from a positive frequency to a higher one, not from "
                    + from + " to " + to + " MHz");
        }
    }

    private static void requireFinite(double... figures) {
        for (double figure : figures) {
            if (!Double.isFinite(figure)) {
                throw new IllegalArgumentException("the figures of a segment must be finite, not " + figure);
            }
        }
    }
}
