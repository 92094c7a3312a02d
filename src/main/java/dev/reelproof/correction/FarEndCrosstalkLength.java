package dev.reelproof.correction;

import dev.reelproof.quantity.Decibels;
import dev.reelproof.quantity.Temperature;

/**
 * Source: 7 CFR 1755.870(h) and 1755.860(m), which print far-end crosstalk as 73 dB/1000 ft = 68 dB/km, 63 = 58 and 57 = 52
 * (read): 10 log10 of the lengths. The formula itself stands there as a picture (from memory).
 *
 * <p>Far-end crosstalk, output to output or equal level: all coupling arrives weakened alike, so its power grows with length.
 *
 * <ul>
 *   <li>Equation: K0 = K + 10 log10(L / L0)
 *   <li>Symbols: K measured and K0 referred crosstalk loss in dB, L measured and L0 reference length in m
 *   <li>Range: any length, any temperature
 *   <li>Edge cases: at the reference length the value comes back unchanged
 *   <li>Known error: the regulation's pairs are rounded to whole dB; systematic coupling grows by 20 log10 instead. Not for
 *       input-to-output crosstalk, which carries the pair's loss as well
 * </ul>
 */
public record FarEndCrosstalkLength() implements CorrectionLaw {
    /** The law's name in limit set files. */
    public static final String NAME = "far-end-crosstalk-length";

    @Override
    public String name() {
        return NAME;
    }

    @Override
    public String citation() {
        return "7 CFR 1755.870(h) and 1755.860(m), unit pairs of far-end crosstalk: "
                + "73 dB/1000 ft = 68 dB/km, 63 = 58, 57 = 52 (read); formula from memory";
    }

    @Override
    public String formula() {
        return "K0 = K + 10 log10(L / L0)";
    }

    @Override
    public void requireCovers(Temperature temperature) {
        // The law is of length alone: it holds at any temperature.
    }

    @Override
    public Line at(MeasurementConditions conditions) {
        return Line.shifting(Decibels.ofPowerRatio(
                conditions.length().metres() / conditions.referenceLength().metres()));
    }

    /** ∂K0/∂K = 1 and ∂K0/∂L = 10/(L ln 10). */
    @Override
    public Sensitivity sensitivity(double value, MeasurementConditions conditions) {
        return new Sensitivity(
                1, 0, Decibels.perRelativeChangeOfPower() / conditions.length().metres(), 0, 0);
    }
}
