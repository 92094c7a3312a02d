package dev.reelproof.correction;

/**
 * Source: IEC 61156, resistance unbalance between pairs and loop resistance (from memory).
 *
 * <p>The resistance of a pair whose two conductors carry current side by side, by which pairs are compared with each other, and of
 * one whose conductors carry it there and back.
 *
 * <ul>
 *   <li>Equation: Rp = Ra Rb / (Ra + Rb); Rl = Ra + Rb
 *   <li>Symbols: Ra, Rb resistances of the pair's conductors, Rp that of both in parallel and Rl that of the loop, in ohm
 *   <li>Range: resistances above 0 and finite
 *   <li>Edge cases: equal conductors give half of one; the order of the two does not matter
 *   <li>Known error: none
 * </ul>
 */
public final class PairResistance {
    /** The source of the definition. */
    public static final String CITATION = "IEC 61156, resistance unbalance between pairs (from memory)";

    /** The source of the loop's definition. */
    public static final String LOOP_CITATION = "IEC 61156-5, loop resistance of a pair (from memory)";

    private PairResistance() {}

    /**
     * The resistance of both conductors in parallel, in ohm.
     *
     * @param ra resistance of conductor a in ohm, above 0
     * @param rb resistance of conductor b in ohm, above 0
     * @throws IllegalArgumentException when a resistance is not above 0 and finite
     */
    public static double parallel(double ra, double rb) {
        requireResistance(ra);
        requireResistance(rb);
        return ra * rb / (ra + rb);
    }

    /**
     * The resistance of both conductors in a row, in ohm.
     *
     * @param r1 one conductor's resistance in ohm, above 0
     * @param r2 the other's in ohm, above 0
     * @throws IllegalArgumentException when a resistance is not above 0 and finite
     */
    public static double loop(double r1, double r2) {
        requireResistance(r1);
        requireResistance(r2);
        return r1 + r2;
    }

    static void requireResistance(double ohms) {
        if (!(ohms > 0 && Double.isFinite(ohms))) {
            throw new IllegalArgumentException(
                    "a conductor resistance is " + PlainDecimal.of(ohms) + " ohm; it must be above 0 and finite");
        }
    }

    /** The derivatives of {@link #parallel}: ∂Rp/∂Ra = [Rb/(Ra + Rb)]² and the other way round. */
    public static double[] parallelGradient(double ra, double rb) {
        requireResistance(ra);
        requireResistance(rb);
        double shareA = ra / (ra + rb);
        double shareB = rb / (ra + rb);
        return new double[] {shareB * shareB, shareA * shareA};
    }

    /** The derivatives of {@link #loop}: 1 by each. */
    public static double[] loopGradient() {
        return new double[] {1, 1};
    }
}
