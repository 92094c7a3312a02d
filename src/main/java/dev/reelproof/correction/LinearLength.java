package dev.reelproof.correction;

import dev.reelproof.quantity.Temperature;

/**
 * Source: 7 CFR 1755.890(k)(6)(iv), capacitance unbalance to ground "may vary directly with the length of the cable" (read);
 * for resistance, mutual capacitance and attenuation the unit pairs printed in 7 CFR 1755.860, .870 and .890 (read, law computed
 * from them).
 *
 * <p>A quantity that adds up along the cable: resistance, mutual capacitance, capacitance unbalance to ground, insertion loss,
 * propagation delay and its skew.
 *
 * <ul>
 *   <li>Equation: x0 = x · L0 / L
 *   <li>Symbols: x measured and x0 referred value in the same unit, L measured and L0 reference length in m
 *   <li>Range: any length, any temperature
 *   <li>Edge cases: at the reference length the value comes back unchanged
 *   <li>Known error: none for uniform cable; the unbalance to ground of random sign grows more slowly than the law supposes
 * </ul>
 */
public record LinearLength() implements CorrectionLaw {
    /** The law's name in limit set files. */
    public static final String NAME = "linear-length";

    @Override
    public String name() {
        return NAME;
    }

    @Override
    public String citation() {
        return "7 CFR 1755.890(k)(6)(iv), \"may vary directly with the length of the cable\" (read); "
                + "unit pairs printed in 7 CFR 1755.860, 1755.870 and 1755.890 (read)";
    }

    @Override
    public String formula() {
        return "x0 = x · L0 / L";
    }

    @Override
    public void requireCovers(Temperature temperature) {
        // The law is of length alone: it holds at any temperature.
    }

    @Override
    public Line at(MeasurementConditions conditions) {
        return Line.scaling(
                conditions.referenceLength().metres() / conditions.length().metres());
    }

    /** ∂x0/∂x = L0/L and ∂x0/∂L = −x L0/L². */
    @Override
    public Sensitivity sensitivity(double value, MeasurementConditions conditions) {
        double metres = conditions.length().metres();
        return new Sensitivity(
                conditions.referenceLength().metres() / metres, 0, -correct(value, conditions) / metres, 0, 0);
    }
}
