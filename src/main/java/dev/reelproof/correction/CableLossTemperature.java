package dev.reelproof.correction;

import dev.reelproof.quantity.Temperature;

/**
 * Source: the cable's own coefficient and range, which the limit set states with their source; the straight line is that of the
 * rules of ANSI/TIA-568 (from memory).
 *
 * <p>Insertion loss of one kind of cable against temperature, with the coefficient that was measured or specified for it, used
 * backwards.
 *
 * <ul>
 *   <li>Equation: a0 = a · [1 + δ (t0 − 20)] / [1 + δ (t − 20)]
 *   <li>Symbols: a measured and a0 referred insertion loss in dB, t cable and t0 reference temperature in °C, δ increase per °C as a
 *       ratio of the loss at 20 °C
 *   <li>Range: as the set states it, from {@code lowest} to {@code highest}, ends included
 *   <li>Edge cases: at the reference temperature the value comes back unchanged; outside the range it is refused
 *   <li>Known error: one coefficient for all frequencies; where conductor and dielectric loss change differently, it is right at the
 *       frequency that it was found at
 * </ul>
 *
 * @param coefficient δ, per °C; above 0 and at most 0.02
 * @param lowest lowest temperature that the coefficient was stated for, °C
 * @param highest highest temperature that it was stated for, °C; above {@code lowest}
 */
public record CableLossTemperature(double coefficient, double lowest, double highest) implements CorrectionLaw {
    /** The law's name in limit set files. */
    public static final String NAME = "cable-loss-temperature";

    /** @throws IllegalArgumentException when the coefficient or the range is not possible */
    public CableLossTemperature {
        LossLine.requireCoefficient(NAME, coefficient, "0.0035 for 0.35 % per °C");
        TemperatureRange.requireStated(NAME, lowest, highest);
        LossLine.requirePositive(NAME, coefficient, lowest);
    }

    @Override
    public String name() {
        return NAME;
    }

    @Override
    public String citation() {
        return "coefficient and range of the cable as the limit set states them; straight line as in ANSI/TIA-568 (from memory)";
    }

    @Override
    public String formula() {
        return LossLine.formula(coefficient) + ", from " + range().words();
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
        return LossLine.at(NAME, range(), coefficient, conditions);
    }

    @Override
    public Sensitivity sensitivity(double value, MeasurementConditions conditions) {
        return LossLine.sensitivity(NAME, range(), coefficient, value, conditions);
    }
}
