package dev.reelproof.correction;

import dev.reelproof.quantity.Temperature;

/**
 * Source: the straight line of the insertion-loss temperature rules of ANSI/TIA-568 (from memory); see the laws that use it.
 *
 * <p>Loss that grows in proportion to the distance from 20 °C: d(t) = 1 + δ (t − 20), a0 = a d(t0)/d(t).
 */
final class LossLine {
    private static final double COEFFICIENT_BASE_C = 20;

    private LossLine() {}

    static void requireCoefficient(String law, double coefficient, String example) {
        if (!(coefficient > 0 && coefficient <= UnscreenedLossTemperature.GREATEST_COEFFICIENT)) {
            throw new IllegalArgumentException("the coefficient of " + law + " is " + PlainDecimal.of(coefficient)
                    + " per °C; it must be above 0 and at most "
                    + PlainDecimal.of(UnscreenedLossTemperature.GREATEST_COEFFICIENT) + ", such as " + example);
        }
    }

    /** The line must not reach zero within a stated range. */
    static void requirePositive(String law, double coefficient, double lowest) {
        if (!(factor(coefficient, lowest) > 0)) {
            throw new IllegalArgumentException(
                    "with " + PlainDecimal.of(coefficient) + " per °C the law " + law + " leaves no loss at "
                            + PlainDecimal.of(lowest) + " °C; state a coefficient or a range that can be");
        }
    }

    static String formula(double coefficient) {
        String delta = PlainDecimal.of(coefficient);
        return "a0 = a · [1 + " + delta + " (t0 − 20)] / [1 + " + delta + " (t − 20)], t in °C";
    }

    static Line at(String law, TemperatureRange range, double coefficient, MeasurementConditions conditions) {
        range.require(law, "cable temperature", conditions.temperature());
        range.require(law, "reference temperature", conditions.referenceTemperature());
        return Line.scaling(
                factor(coefficient, conditions.referenceTemperature()) / factor(coefficient, conditions.temperature()));
    }

    /** ∂a0/∂a = d(t0)/d(t), ∂a0/∂t = −a d(t0) δ/d(t)² and ∂a0/∂ln δ = a0 [1/d(t) − 1/d(t0)]. */
    static Sensitivity sensitivity(
            String law, TemperatureRange range, double coefficient, double value, MeasurementConditions conditions) {
        double corrected = at(law, range, coefficient, conditions).of(value);
        double factor = factor(coefficient, conditions.temperature());
        double atReference = factor(coefficient, conditions.referenceTemperature());
        return new Sensitivity(
                atReference / factor,
                -corrected * coefficient / factor,
                0,
                0,
                corrected * (1 / factor - 1 / atReference));
    }

    private static double factor(double coefficient, Temperature temperature) {
        return factor(coefficient, temperature.celsius());
    }

    private static double factor(double coefficient, double celsius) {
        return 1 + coefficient * (celsius - COEFFICIENT_BASE_C);
    }
}
