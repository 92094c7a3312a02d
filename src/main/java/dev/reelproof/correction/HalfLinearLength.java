package dev.reelproof.correction;

import dev.reelproof.quantity.Temperature;

/**
 * Source: a practice for the individual maximum of pair-to-pair capacitance unbalance (from memory, low confidence; no text was
 * read). The unit pairs printed in 7 CFR 1755.860(m)(2) and 1755.870(h)(2) contradict it: they go by the square root, the
 * individual limit too.
 *
 * <p>Capacitance unbalance pair to pair, half of which is taken to be systematic and to grow with length, half to be random and to
 * grow with its square root.
 *
 * <ul>
 *   <li>Equation: C0 = C / {½ [L/L0 + √(L/L0)]}
 *   <li>Symbols: C measured and C0 referred unbalance in the same unit, L measured and L0 reference length in m
 *   <li>Range: any length, any temperature (from memory; no range is known)
 *   <li>Edge cases: at the reference length the value comes back unchanged
 *   <li>Known error: with the lengths exchanged it does not undo itself: from 1000 ft to 1 km and back 8 % are lost, so that a value
 *       is to be corrected once, as measured. Against the square root it gives 29 % less for 1 km referred to 1000 ft
 * </ul>
 */
public record HalfLinearLength() implements CorrectionLaw {
    /** The law's name in limit set files. */
    public static final String NAME = "half-linear-half-square-root-length";

    /** The linear and the square-root part count the same. */
    private static final double SHARE_OF_EACH = 0.5;

    private static final double SQUARE_ROOT_EXPONENT = 0.5;

    @Override
    public String name() {
        return NAME;
    }

    @Override
    public String citation() {
        return "practice for the individual maximum of pair-to-pair capacitance unbalance (from memory, low confidence); "
                + "the unit pairs of 7 CFR 1755.860(m)(2) and 1755.870(h)(2) go by the square root instead (read)";
    }

    @Override
    public String formula() {
        return "C0 = C / {½ [L/L0 + √(L/L0)]}";
    }

    @Override
    public void requireCovers(Temperature temperature) {
        // The law is of length alone: it holds at any temperature.
    }

    @Override
    public Line at(MeasurementConditions conditions) {
        return Line.scaling(1 / growth(lengths(conditions)));
    }

    private static double lengths(MeasurementConditions conditions) {
        return conditions.length().metres() / conditions.referenceLength().metres();
    }

    /** The unbalance at a length divided by that at the reference; x is the ratio of the lengths. */
    private static double growth(double x) {
        return SHARE_OF_EACH * (x + Math.sqrt(x));
    }

    /** ∂C0/∂C = 1/g and ∂C0/∂L = −C g′/(g² L0), where g = ½ (x + √x), g′ = ½ (1 + ½/√x) and x = L/L0. */
    @Override
    public Sensitivity sensitivity(double value, MeasurementConditions conditions) {
        double x = lengths(conditions);
        double growth = growth(x);
        double slope = SHARE_OF_EACH * (1 + SQUARE_ROOT_EXPONENT / Math.sqrt(x));
        return new Sensitivity(
                1 / growth,
                0,
                -value * slope / (growth * growth * conditions.referenceLength().metres()),
                0,
                0);
    }
}
