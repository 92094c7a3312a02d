package dev.reelproof.correction;

import dev.reelproof.quantity.Temperature;

/**
 * Source: the compound's own factor and range, which the limit set states with their source; that insulation resistance falls
 * exponentially as it gets warmer is common practice (from memory). No factor is published for all: 7 CFR 1755.403(c)(4)(iv) calls
 * simple factors impractical (read).
 *
 * <p>Insulation resistance of one compound against temperature.
 *
 * <ul>
 *   <li>Equation: R0 = R · k^(t − t0)
 *   <li>Symbols: R measured and R0 referred insulation resistance in megohm, t cable and t0 reference temperature in °C, k the factor by
 *       which the resistance falls for 1 °C more
 *   <li>Range: as the set states it, from {@code lowest} to {@code highest}, ends included
 *   <li>Edge cases: at the reference temperature the value comes back unchanged; outside the range it is refused
 *   <li>Known error: k changes with temperature, moisture and the batch of compound; over 10 °C a factor that is 1 % off makes 10 % of
 *       the result
 * </ul>
 *
 * @param factor k for 1 °C; above 1 and at most {@value #GREATEST_FACTOR}
 * @param lowest lowest temperature that the factor was stated for, °C
 * @param highest highest temperature that it was stated for, °C; above {@code lowest}
 */
public record InsulationResistanceTemperature(double factor, double lowest, double highest) implements CorrectionLaw {
    /** The law's name in limit set files. */
    public static final String NAME = "insulation-resistance-temperature";
    /** Above it, the factor was given for 10 °C in place of 1 °C. */
    static final double GREATEST_FACTOR = 1.3;

    /** @throws IllegalArgumentException when the factor or the range is not possible */
    public InsulationResistanceTemperature {
        if (!(factor > 1 && factor <= GREATEST_FACTOR)) {
            throw new IllegalArgumentException("the factor of " + NAME + " is " + PlainDecimal.of(factor)
                    + "; it must be above 1 and at most " + PlainDecimal.of(GREATEST_FACTOR)
                    + ": how many times the resistance falls for 1 °C more, by the compound's own data");
        }
        TemperatureRange.requireStated(NAME, lowest, highest);
    }

    @Override
    public String name() {
        return NAME;
    }

    @Override
    public String citation() {
        return "factor and range of the compound as the limit set states them; exponential form: common practice (from memory); "
                + "7 CFR 1755.403(c)(4)(iv): no general factor (read)";
    }

    @Override
    public String formula() {
        return "R0 = R · " + PlainDecimal.of(factor) + "^(t − t0), t in °C, from " + range().words();
    }

    private TemperatureRange range() {
        return new TemperatureRange(lowest, highest);
    }

    @Override
    public void requireCovers(Temperature temperature) {
        range().require(NAME, "cable temperature", temperature);
    }

    @Override
    public Line at(MeasurementConditions conditions) {
        return Line.scaling(growth(conditions));
    }

    private double growth(MeasurementConditions conditions) {
        requireCovers(conditions.temperature());
        range().require(NAME, "reference temperature", conditions.referenceTemperature());
        return StrictMath.pow(
                factor,
                conditions.temperature().celsius()
                        - conditions.referenceTemperature().celsius());
    }

    /** ∂R0/∂R = k^(t − t0), ∂R0/∂t = R0 ln k and, with the coefficient α = ln k per °C, ∂R0/∂ln α = R0 (t − t0) ln k. */
    @Override
    public Sensitivity sensitivity(double value, MeasurementConditions conditions) {
        double growth = growth(conditions);
        double perDegree = value * growth * StrictMath.log(factor);
        double degrees = conditions.temperature().celsius()
                - conditions.referenceTemperature().celsius();
        return new Sensitivity(growth, perDegree, 0, 0, perDegree * degrees);
    }
}
