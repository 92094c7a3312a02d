package dev.reelproof.correction;

import dev.reelproof.quantity.Temperature;

/**
 * Source: 7 CFR 1755.870(h) and 1755.860(m), which print pair-to-pair capacitance unbalance as 25 pF/1000 ft = 45.3 pF/km and
 * 80 pF/1000 ft = 145 pF/km (read): the factor is the square root of that of the lengths.
 *
 * <p>A quantity whose parts along the cable are of random sign, so that their squares add up: capacitance unbalance pair to pair.
 *
 * <ul>
 *   <li>Equation: C0 = C · √(L0 / L)
 *   <li>Symbols: C measured and C0 referred unbalance in the same unit, L measured and L0 reference length in m
 *   <li>Range: any length, any temperature
 *   <li>Edge cases: at the reference length the value comes back unchanged
 *   <li>Known error: it is exact for the root mean square of many pairs only. Another practice divides the individual maximum by
 *       ½ (L/L0 + √(L/L0)) (from memory, low confidence); the regulation's individual limit follows the square root
 * </ul>
 */
public record SquareRootLength() implements CorrectionLaw {
    /** The law's name in limit set files. */
    public static final String NAME = "square-root-length";

    private static final double SQUARE_ROOT_EXPONENT = 0.5;

    @Override
    public String name() {
        return NAME;
    }

    @Override
    public String citation() {
        return "7 CFR 1755.870(h) and 1755.860(m), unit pairs of pair-to-pair capacitance unbalance: "
                + "25 pF/1000 ft = 45.3 pF/km, 80 pF/1000 ft = 145 pF/km (read)";
    }

    @Override
    public String formula() {
        return "C0 = C · √(L0 / L)";
    }

    @Override
    public void requireCovers(Temperature temperature) {
        // The law is of length alone: it holds at any temperature.
    }

    @Override
    public Line at(MeasurementConditions conditions) {
        return Line.scaling(Math.sqrt(
                conditions.referenceLength().metres() / conditions.length().metres()));
    }

    /** ∂C0/∂C = √(L0/L) and ∂C0/∂L = −½ C √(L0/L)/L. */
    @Override
    public Sensitivity sensitivity(double value, MeasurementConditions conditions) {
        double metres = conditions.length().metres();
        return new Sensitivity(
                Math.sqrt(conditions.referenceLength().metres() / metres),
                0,
                -SQUARE_ROOT_EXPONENT * correct(value, conditions) / metres,
                0,
                0);
    }
}
