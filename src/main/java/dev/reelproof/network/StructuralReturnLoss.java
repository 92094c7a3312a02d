package dev.reelproof.network;

import dev.reelproof.quantity.Decibels;

/**
 * Source: ASTM D4566, structural return loss (from memory; only its contents were read).
 *
 * <ul>
 *   <li>Equation: SRL = −20 log10 |(Zin − Z)/(Zin + Z)| (1)
 *   <li>Symbols: Zin impedance that the cable shows, Z its fitted characteristic impedance, both complex, in ohm; SRL in dB
 *   <li>Range: any two impedances of positive resistance; where Zin is √(Zoc Zsc), a far end that does not match has no part in it
 *   <li>Edge cases: Zin equal to Z counts as a ratio of 1e-15, 300 dB
 *   <li>Known error: that of the fit, which a strong irregularity pulls towards itself
 * </ul>
 */
final class StructuralReturnLoss {
    static final String CITATION = "ASTM D4566, structural return loss (from memory)";

    private StructuralReturnLoss() {}

    /**
     * The structural return loss, dB.
     *
     * @param re resistance of Zin, ohm
     * @param im reactance of Zin, ohm
     * @param magnitude |Z|, ohm
     * @param angle arg Z, rad
     */
    static double of(double re, double im, double magnitude, double angle) {
        double fittedRe = magnitude * StrictMath.cos(angle);
        double fittedIm = magnitude * StrictMath.sin(angle);
        double difference = StrictMath.hypot(re - fittedRe, im - fittedIm);
        double sum = StrictMath.hypot(re + fittedRe, im + fittedIm);
        return -Decibels.ofAmplitudeRatio(Math.max(Levels.LEAST_MAGNITUDE, difference / sum)); // (1)
    }
}
