package dev.reelproof.network;

/**
 * Source: Z0² = Zoc Zsc, the open and short circuit method, textbook (from memory), as a ratio of the chain parameters, and Zin = Z
 * (1 + S11)/(1 − S11), textbook (from memory).
 *
 * <ul>
 *   <li>Equation: Zin = Z (1 + S11)/(1 − S11) (1); Zoc Zsc = (A/C)(B/D) = Z² ((1 + S11)(1 − S22) + P)((1 + S11)(1 + S22) −
 *       P)/(((1 − S11)(1 − S22) − P)((1 − S11)(1 + S22) + P)), P = S12 S21 (2); of the two roots the one whose resistance is
 *       positive
 *   <li>Symbols: S scattering parameters of the differential mode of a pair, port 1 at this end and 2 at the other, to the
 *       reference Z; Zoc, Zsc impedances at this end with the other one open and shorted; Zin with the other one in Z; all in ohm
 *   <li>Range: any S; edge cases: where a line without loss is a whole number of quarter waves long (2) is 0 over 0, and no number
 *   <li>Known error: (2) magnifies noise near those frequencies where the loss is low, some 0.1 dB or less
 * </ul>
 */
final class InputImpedance {
    static final String OPEN_SHORT_CITATION = "Z0 = √(Zoc Zsc), textbook (from memory)";

    private InputImpedance() {}

    /** √(Zoc Zsc) at one end, {resistance, reactance} in ohm. */
    static double[] openShort(ComplexMatrix modes, int here, int there, double referenceOhm) {
        double[] s11 = entry(modes, here, here);
        double[] s22 = entry(modes, there, there);
        double[] through = times(entry(modes, here, there), entry(modes, there, here));
        double[] a = plus(times(onePlus(s11, 1), onePlus(s22, -1)), through, 1);
        double[] b = plus(times(onePlus(s11, 1), onePlus(s22, 1)), through, -1);
        double[] c = plus(times(onePlus(s11, -1), onePlus(s22, -1)), through, -1);
        double[] d = plus(times(onePlus(s11, -1), onePlus(s22, 1)), through, 1);
        double[] root = root(over(times(a, b), times(c, d))); // (2)
        return new double[] {referenceOhm * root[0], referenceOhm * root[1]};
    }

    /** The impedance at one end with the other one in the reference, {resistance, reactance} in ohm. */
    static double[] terminated(ComplexMatrix modes, int here, double referenceOhm) {
        double[] s11 = entry(modes, here, here);
        double[] ratio = over(onePlus(s11, 1), onePlus(s11, -1)); // (1)
        return new double[] {referenceOhm * ratio[0], referenceOhm * ratio[1]};
    }

    private static double[] entry(ComplexMatrix s, int row, int column) {
        return new double[] {s.re(row, column), s.im(row, column)};
    }

    private static double[] onePlus(double[] z, int sign) {
        return new double[] {1 + sign * z[0], sign * z[1]};
    }

    private static double[] plus(double[] one, double[] other, int sign) {
        return new double[] {one[0] + sign * other[0], one[1] + sign * other[1]};
    }

    private static double[] times(double[] one, double[] other) {
        return new double[] {one[0] * other[0] - one[1] * other[1], one[0] * other[1] + one[1] * other[0]};
    }

    private static double[] over(double[] one, double[] other) {
        double square = other[0] * other[0] + other[1] * other[1];
        double[] product = times(one, new double[] {other[0], -other[1]});
        return new double[] {product[0] / square, product[1] / square};
    }

    private static double[] root(double[] z) {
        double re = Math.sqrt((StrictMath.hypot(z[0], z[1]) + z[0]) / 2);
        return new double[] {re, z[1] / (2 * re)};
    }
}
