package dev.reelproof.correction;

/**
 * Source: IEC 61156-1 and ANSI/TIA-568, delay skew as the difference between the slowest and the fastest pair (from memory).
 *
 * <ul>
 *   <li>Equation: S = τmax − τmin
 *   <li>Symbols: τmax, τmin greatest and smallest propagation delay over the pairs and S their skew, in ns, all at one frequency
 *   <li>Range: finite delays of at least two pairs of one reel
 *   <li>Edge cases: equal delays give 0; the order of the pairs does not matter
 *   <li>Known error: none; taking the extremes at different frequencies would overstate it
 * </ul>
 */
public final class DelaySkew {
    /** The source of the definition. */
    public static final String CITATION = "IEC 61156-1 and ANSI/TIA-568, delay skew (from memory)";

    private DelaySkew() {}

    /**
     * The skew between pairs at one frequency, in ns.
     *
     * @param delays propagation delays of all pairs at that frequency in ns, at least two, finite
     * @throws IllegalArgumentException when there are fewer than two or one is not finite
     */
    public static double of(double... delays) {
        double[] ascending = OrderedValues.ascending("a delay skew", "ns", 2, delays);
        return ascending[ascending.length - 1] - ascending[0];
    }

    /** The derivatives of {@link #of}: 1 by the greatest delay, −1 by the smallest, 0 by the others. */
    public static double[] gradient(double... delays) {
        int greatest = 0;
        int smallest = 0;
        for (int i = 1; i < delays.length; i++) {
            greatest = delays[i] > delays[greatest] ? i : greatest;
            // Takes the last of equal delays as the smallest, so that greatest and smallest are never the same delay.
            smallest = delays[i] <= delays[smallest] ? i : smallest;
        }
        double[] gradient = new double[delays.length];
        gradient[greatest] += 1;
        gradient[smallest] -= 1;
        return gradient;
    }
}
