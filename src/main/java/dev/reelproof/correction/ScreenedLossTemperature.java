package dev.reelproof.correction;

import dev.reelproof.quantity.Temperature;

/**
 * Source: the insertion-loss temperature rule of ANSI/TIA-568 for screened cable, 0.2 %/°C (from memory).
 *
 * <p>Insertion loss of screened cable against temperature, used backwards.
 *
 * <ul>
 *   <li>Equation: a0 = a · [1 + δ (t0 − 20)] / [1 + δ (t − 20)]
 *   <li>Symbols: a measured and a0 referred insertion loss in dB, t cable and t0 reference temperature in °C, δ increase per °C as a
 *       ratio of the loss at 20 °C
 *   <li>Range: −20 to 60 °C, ends included (from memory)
 *   <li>Edge cases: at the reference temperature the value comes back unchanged; outside the range it is refused
 *   <li>Known error: one rounded coefficient for all screened constructions and all frequencies, half of that for unscreened cable; a
 *       cable with a coefficient of its own takes {@link CableLossTemperature}
 * </ul>
 *
 * @param coefficient δ, per °C; above 0 and at most 0.02
 */
public record ScreenedLossTemperature(double coefficient) implements CorrectionLaw {
    /** The law's name in limit set files. */
    public static final String NAME = "screened-loss-temperature";

    private static final TemperatureRange RANGE = new TemperatureRange(-20, 60);

    /** @throws IllegalArgumentException when the coefficient is not possible */
    public ScreenedLossTemperature {
        LossLine.requireCoefficient(NAME, coefficient, "0.002 for 0.2 % per °C");
    }

    @Override
    public String name() {
        return NAME;
    }

    @Override
    public String citation() {
        return "ANSI/TIA-568, insertion loss of screened cable against temperature, 0.2 %/°C (from memory)";
    }

    @Override
    public String formula() {
        return LossLine.formula(coefficient);
    }

    @Override
    public void requireCovers(Temperature temperature) {
        RANGE.require(NAME, "cable temperature", temperature);
    }

    @Override
    public Line at(MeasurementConditions conditions) {
        return LossLine.at(NAME, RANGE, coefficient, conditions);
    }

    @Override
    public Sensitivity sensitivity(double value, MeasurementConditions conditions) {
        return LossLine.sensitivity(NAME, RANGE, coefficient, value, conditions);
    }
}
