package dev.reelproof.correction;

import dev.reelproof.quantity.Decibels;
import dev.reelproof.quantity.Temperature;

/**
 * Source: the near-end crosstalk length law of ASTM D4566 and IEC 61156-1 (from memory; neither text was read).
 *
 * <p>Near-end crosstalk gathers along the cable, but what comes back from far away is weakened twice by the loss. A short piece
 * therefore shows less crosstalk than the reference length would.
 *
 * <ul>
 *   <li>Equation: N0 = N − 10 log10{[1 − 10^(−a L0/5)] / [1 − 10^(−a L/5)]}
 *   <li>Symbols: N measured and N0 referred crosstalk loss in dB, a insertion loss of the disturbed pair in dB/m at the frequency
 *       and temperature of the value, L measured and L0 reference length in m
 *   <li>Range: any temperature; lengths below the reference, unless {@code longer} says that longer cable is corrected too (common
 *       practice corrects shorter lengths only: a longer one would be credited)
 *   <li>Edge cases: at the reference length, and beyond it without {@code longer}, the value comes back unchanged and no loss is
 *       needed; otherwise a loss that is not known or not above 0 is refused
 *   <li>Known error: it supposes coupling spread evenly and at random along the cable, so it is right on average and not for the
 *       ripple of one combination
 * </ul>
 *
 * @param longer whether cable longer than the reference is corrected too
 */
public record NearEndCrosstalkLength(boolean longer) implements CorrectionLaw {
    /** The law's name in limit set files. */
    public static final String NAME = "near-end-crosstalk-length";

    /** There and back at the loss a, as a power ratio: 10^(−2 a L/10). */
    private static final double ROUND_TRIP_DECIBELS = 5;

    private static final double THERE_AND_BACK = 2;

    @Override
    public String name() {
        return NAME;
    }

    @Override
    public String citation() {
        return "ASTM D4566 and IEC 61156-1, near-end crosstalk against length (from memory)";
    }

    @Override
    public String formula() {
        return "N0 = N − 10 log10{[1 − 10^(−a L0/5)] / [1 − 10^(−a L/5)]}, a in dB per unit of length, "
                + (longer ? "at any length" : "where L < L0");
    }

    @Override
    public void requireCovers(Temperature temperature) {
        // The loss that enters is the one measured at the temperature of the value: the law holds at any temperature.
    }

    @Override
    public boolean needsLoss(MeasurementConditions conditions) {
        double length = conditions.length().metres();
        double referenceLength = conditions.referenceLength().metres();
        return length < referenceLength || (length > referenceLength && longer);
    }

    @Override
    public Line at(MeasurementConditions conditions) {
        if (!needsLoss(conditions)) {
            return Line.UNCHANGED;
        }
        double lossPerMetre = requireLoss(conditions);
        double atReference =
                gathered(lossPerMetre * conditions.referenceLength().metres());
        double atLength = gathered(lossPerMetre * conditions.length().metres());
        return Line.shifting(-Decibels.ofPowerRatio(atReference / atLength));
    }

    private static double requireLoss(MeasurementConditions conditions) {
        double lossPerMetre = conditions
                .lossPerMetre()
                .orElseThrow(() -> new OutsideLawException("the law " + NAME
                        + " needs the insertion loss of the disturbed pair at the frequency of the crosstalk, and none is given; "
                        + "measure insertion loss over the same frequencies"));
        if (!(lossPerMetre > 0 && Double.isFinite(lossPerMetre))) {
            throw new OutsideLawException("the law " + NAME
                    + " needs an insertion loss of the disturbed pair above 0, not " + PlainDecimal.of(lossPerMetre)
                    + " dB/m; check the insertion-loss measurement of that pair");
        }
        return lossPerMetre;
    }

    /** 1 − 10^(−loss/5), in the form that keeps its digits at small losses. */
    private static double gathered(double loss) {
        return -StrictMath.expm1(-Decibels.LN_OF_DECADE * loss / ROUND_TRIP_DECIBELS);
    }

    /**
     * With q(L) = 10^(−a L/5): ∂N0/∂N = 1, ∂N0/∂L = 2 a q(L)/[1 − q(L)], ∂N0/∂a = 2 {L q(L)/[1 − q(L)] − L0 q(L0)/[1 − q(L0)]}.
     *
     * <p>Where the law leaves the value unchanged, at the reference length and beyond it without {@code longer}, it adds nothing.
     */
    @Override
    public Sensitivity sensitivity(double value, MeasurementConditions conditions) {
        double length = conditions.length().metres();
        double referenceLength = conditions.referenceLength().metres();
        if (!needsLoss(conditions)) {
            return Sensitivity.UNCHANGED;
        }
        double lossPerMetre = requireLoss(conditions);
        double atLength = stillToGather(lossPerMetre * length);
        double atReference = stillToGather(lossPerMetre * referenceLength);
        return new Sensitivity(
                1,
                0,
                THERE_AND_BACK * lossPerMetre * atLength,
                THERE_AND_BACK * (length * atLength - referenceLength * atReference),
                0);
    }

    /** q/(1 − q) where q = 10^(−loss/5): the share that more cable could still add. */
    private static double stillToGather(double loss) {
        double gathered = gathered(loss);
        return (1 - gathered) / gathered;
    }
}
