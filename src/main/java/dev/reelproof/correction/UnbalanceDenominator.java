package dev.reelproof.correction;

import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * Source: ASTM D4566 for the minimum, IEC 61156-1 for the sum (both from memory); the mean is met in practice (no source).
 *
 * <p>What the difference of two resistances is divided by to give their unbalance.
 *
 * <ul>
 *   <li>Equation: u = 100 (Rmax − Rmin) / D, with D = Rmin, Rmax + Rmin, or ½ (Rmax + Rmin)
 *   <li>Symbols: Rmax, Rmin the greater and the smaller resistance in ohm, of one length and temperature; u unbalance in percent
 *   <li>Range: resistances above 0 and finite
 *   <li>Edge cases: equal resistances give 0; the order of the two does not matter; no correction is needed, since length and
 *       temperature cancel
 *   <li>Known error: the definitions differ by a factor of two and more: 9.40 and 9.00 ohm are 4.444 %, 2.174 % or 4.348 %, so a
 *       limit means nothing without its denominator
 * </ul>
 */
public enum UnbalanceDenominator {
    /** The smaller resistance. */
    MINIMUM("ASTM D4566, conductor resistance unbalance (from memory)") {
        @Override
        double of(double greater, double smaller) {
            return smaller;
        }
    },
    /** The sum of both. */
    SUM("IEC 61156-1, resistance unbalance (from memory)") {
        @Override
        double of(double greater, double smaller) {
            return greater + smaller;
        }
    },
    /** The arithmetic mean of both. */
    MEAN("difference over the arithmetic mean, met in practice (no source)") {
        @Override
        double of(double greater, double smaller) {
            return (greater + smaller) / RESISTANCES;
        }
    };

    private static final double PERCENT = 100;
    private static final double RESISTANCES = 2;

    private final String citation;

    UnbalanceDenominator(String citation) {
        this.citation = citation;
    }

    /**
     * The denominator of that name.
     *
     * @throws IllegalArgumentException when there is none
     */
    public static UnbalanceDenominator named(String word) {
        return Arrays.stream(values())
                .filter(denominator -> denominator.word().equals(word))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("unknown resistance unbalance denominator '" + word
                        + "'; use one of "
                        + Arrays.stream(values())
                                .map(UnbalanceDenominator::word)
                                .collect(Collectors.joining(", "))));
    }

    abstract double of(double greater, double smaller);

    /**
     * The unbalance of two resistances, in percent.
     *
     * @param r1 one resistance in ohm, above 0
     * @param r2 the other in ohm, of the same length and temperature, above 0
     * @throws IllegalArgumentException when a resistance is not above 0 and finite
     */
    public double percent(double r1, double r2) {
        PairResistance.requireResistance(r1);
        PairResistance.requireResistance(r2);
        double greater = Math.max(r1, r2);
        double smaller = Math.min(r1, r2);
        return PERCENT * (greater - smaller) / of(greater, smaller);
    }

    /** The word in limit set files: minimum, sum or mean. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The source of the definition, and whether it was read or is from memory. */
    public String citation() {
        return citation;
    }

    /**
     * The derivatives of {@link #percent} by both resistances, in percent per ohm. With g the greater and s the smaller: by the
     * minimum 100/s and −100 g/s²; by the sum 200 s/(g + s)² and −200 g/(g + s)²; by the mean twice that.
     */
    public double[] gradient(double r1, double r2) {
        PairResistance.requireResistance(r1);
        PairResistance.requireResistance(r2);
        double greater = Math.max(r1, r2);
        double smaller = Math.min(r1, r2);
        double byGreater;
        double bySmaller;
        if (this == MINIMUM) {
            byGreater = PERCENT / smaller;
            bySmaller = -PERCENT * greater / (smaller * smaller);
        } else {
            double sum = greater + smaller;
            double times = this == SUM ? RESISTANCES * PERCENT : RESISTANCES * RESISTANCES * PERCENT;
            byGreater = times * smaller / (sum * sum);
            bySmaller = -times * greater / (sum * sum);
        }
        return r1 >= r2 ? new double[] {byGreater, bySmaller} : new double[] {bySmaller, byGreater};
    }
}
