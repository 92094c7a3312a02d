package dev.reelproof.correction;

import dev.reelproof.quantity.Temperature;

/**
 * Source: 7 CFR 1755.403(c)(4)(i)-(iii), the reading in megohms multiplied by the length in miles or kilometres (read).
 *
 * <p>Leakage paths along the cable are in parallel, so insulation resistance falls as length grows.
 *
 * <ul>
 *   <li>Equation: R0 = R · L / L0
 *   <li>Symbols: R measured and R0 referred insulation resistance in megohm, L measured and L0 reference length in m
 *   <li>Range: any length. Temperature is not corrected: paragraph (c)(4)(iv) calls simple factors impractical, and none is
 *       published
 *   <li>Edge cases: at the reference length the value comes back unchanged
 *   <li>Known error: 7 CFR 1755.870(h)(5) equates 152 megohm-kilometre with 500 megohm-mile; this law gives 805, as
 *       1755.403(c)(4) prints. 152 is 500 megohm-kilofeet, so a limit set must say which it means
 * </ul>
 */
public record InsulationResistanceLength() implements CorrectionLaw {
    /** The law's name in limit set files. */
    public static final String NAME = "insulation-resistance-length";

    @Override
    public String name() {
        return NAME;
    }

    @Override
    public String citation() {
        return "7 CFR 1755.403(c)(4)(i)-(iii) (read)";
    }

    @Override
    public String formula() {
        return "R0 = R · L / L0";
    }

    @Override
    public void requireCovers(Temperature temperature) {
        // No temperature law is published for insulation resistance; the limit set says at which temperature it may be
        // judged.
    }

    @Override
    public Line at(MeasurementConditions conditions) {
        return Line.scaling(
                conditions.length().metres() / conditions.referenceLength().metres());
    }

    /** ∂R0/∂R = L/L0 and ∂R0/∂L = R/L0. */
    @Override
    public Sensitivity sensitivity(double value, MeasurementConditions conditions) {
        double referenceMetres = conditions.referenceLength().metres();
        return new Sensitivity(conditions.length().metres() / referenceMetres, 0, value / referenceMetres, 0, 0);
    }
}
