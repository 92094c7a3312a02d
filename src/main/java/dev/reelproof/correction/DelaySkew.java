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
        double[] ascending = Population.ascending("a delay skew", "ns", 2, delays);
        return ascending[ascending.length - 1] - ascending[0];
    }
}
