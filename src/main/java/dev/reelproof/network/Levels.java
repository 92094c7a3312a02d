package dev.reelproof.network;

import dev.reelproof.quantity.Decibels;

/**
 * Source: the decibel of an amplitude, 20 log10, as in ISO 80000-3, and Zin = Z (1 + S11)/(1 − S11), textbook (both from
 * memory).
 *
 * <ul>
 *   <li>Equation: A = −20 log10 |S| (1); |Zin| = Z |1 + S11| / |1 − S11| (2)
 *   <li>Symbols: S an entry of the matrix of the modes (no unit), A its loss in dB, Z the reference of the mode and Zin the
 *       impedance seen, in ohm
 *   <li>Range: any S; edge cases: a magnitude below 1e-15, such as the exact zero of an ideal model, counts as that, so that
 *       the loss is 300 dB at most and the impedance of an open end finite
 *   <li>Known error: none beyond rounding; (2) magnifies that of S11 near an open or short circuit
 * </ul>
 */
final class Levels {
    static final String CITATION = "−20 log10 of an amplitude ratio, ISO 80000-3 (from memory)";
    static final String IMPEDANCE_CITATION = "Zin = Z (1 + S11)/(1 − S11), textbook (from memory)";
    static final double LEAST_MAGNITUDE = 1e-15;

    private Levels() {}

    /** The loss of an entry, dB. */
    static double loss(ComplexMatrix modes, int row, int column) {
        return -Decibels.ofAmplitudeRatio(Math.max(LEAST_MAGNITUDE, modes.abs(row, column))); // (1)
    }

    /** The size of the impedance seen into a mode, ohm. */
    static double impedance(ComplexMatrix modes, int mode, double referenceOhm) {
        double re = modes.re(mode, mode);
        double im = modes.im(mode, mode);
        double above = Math.max(LEAST_MAGNITUDE, StrictMath.hypot(1 + re, im));
        double below = Math.max(LEAST_MAGNITUDE, StrictMath.hypot(1 - re, im));
        return referenceOhm * above / below; // (2)
    }
}
