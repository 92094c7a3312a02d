package dev.reelproof.correction;

import dev.reelproof.quantity.Temperature;

/**
 * Source: 7 CFR 1755.403(d)(6)(ii)(C), Rt = R20 [1 + 0.0040 (t − 20)] (read); the same form with 0.00393 is wire-table practice,
 * NBS Handbook 100 (from memory).
 *
 * <p>Resistance of copper against temperature, used backwards to refer a measured resistance to the reference temperature.
 *
 * <ul>
 *   <li>Equation: R0 = R · [1 + α (t0 − 20)] / [1 + α (t − 20)]
 *   <li>Symbols: R measured and R0 referred resistance in ohm, t cable and t0 reference temperature in °C, α temperature
 *       coefficient at 20 °C per °C
 *   <li>Range: −40 to 100 °C, ends included (common practice, no source)
 *   <li>Edge cases: at the reference temperature the value comes back unchanged; outside the range it is refused
 *   <li>Known error: the two coefficients in use differ by 0.13 % of the resistance at 40 °C, so the limit set must name its own;
 *       the line is an approximation that the wire tables use over the whole range
 * </ul>
 *
 * @param coefficient α, per °C; above 0 and at most {@value #GREATEST_COEFFICIENT}
 */
public record CopperTemperature(double coefficient) implements CorrectionLaw {
    /** The law's name in limit set files. */
    public static final String NAME = "copper-temperature";
    /** Temperature coefficient of annealed copper of 100 % IACS at 20 °C, per °C; NBS Handbook 100, from memory. */
    public static final double ANNEALED_COPPER = 0.00393;
    /** Per °C. No conductor metal comes near it, so that a percentage given in place of a ratio is refused. */
    static final double GREATEST_COEFFICIENT = 0.01;

    private static final double COEFFICIENT_BASE_C = 20;
    private static final TemperatureRange RANGE = new TemperatureRange(-40, 100);

    /** @throws IllegalArgumentException when the coefficient is not possible */
    public CopperTemperature {
        if (!(coefficient > 0 && coefficient <= GREATEST_COEFFICIENT)) {
            throw new IllegalArgumentException("the coefficient of " + NAME + " is " + PlainDecimal.of(coefficient)
                    + " per °C; it must be above 0 and at most " + PlainDecimal.of(GREATEST_COEFFICIENT)
                    + ", such as " + PlainDecimal.of(ANNEALED_COPPER) + " for annealed copper");
        }
    }

    @Override
    public String name() {
        return NAME;
    }

    @Override
    public String citation() {
        return "7 CFR 1755.403(d)(6)(ii)(C), with coefficient 0.0040 (read); coefficient 0.00393: NBS Handbook 100 (from memory); "
                + "range " + RANGE.words() + ": common practice, no source";
    }

    @Override
    public String formula() {
        String alpha = PlainDecimal.of(coefficient);
        return "R0 = R · [1 + " + alpha + " (t0 − 20)] / [1 + " + alpha + " (t − 20)], t in °C";
    }

    @Override
    public void requireCovers(Temperature temperature) {
        RANGE.require(NAME, "cable temperature", temperature);
    }

    @Override
    public Line at(MeasurementConditions conditions) {
        requireCovers(conditions.temperature());
        RANGE.require(NAME, "reference temperature", conditions.referenceTemperature());
        return Line.scaling(factor(conditions.referenceTemperature()) / factor(conditions.temperature()));
    }

    /** Resistance at a temperature divided by that at 20 °C. */
    double factor(Temperature temperature) {
        return 1 + coefficient * (temperature.celsius() - COEFFICIENT_BASE_C);
    }

    /** ∂R0/∂R = F0/F, ∂R0/∂t = −R F0 α/F² and ∂R0/∂ln α = R0 (1/F − 1/F0), where F is the factor at t and F0 that at t0. */
    @Override
    public Sensitivity sensitivity(double value, MeasurementConditions conditions) {
        double corrected = correct(value, conditions);
        double factor = factor(conditions.temperature());
        double atReference = factor(conditions.referenceTemperature());
        return new Sensitivity(
                atReference / factor,
                -corrected * coefficient / factor,
                0,
                0,
                corrected * (1 / factor - 1 / atReference));
    }
}
