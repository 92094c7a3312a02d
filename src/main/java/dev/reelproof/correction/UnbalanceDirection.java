package dev.reelproof.correction;

/**
 * Source: 7 CFR 1755.860(m)(9)(ii), 1755.870(h)(8)(ii) and 1755.890(k)(2)(ii): the direction of resistance unbalance shall be random,
 * the one conductor "not consistently higher" than the other (read). No figure is printed; this one is ours.
 *
 * <p>How one-sided the resistance unbalance of a reel is.
 *
 * <ul>
 *   <li>Equation: s = 100 (m + ½ e) / n
 *   <li>Symbols: n pairs, m pairs in which conductor a has the greater resistance, e pairs in which both are equal; s share in percent
 *   <li>Range: resistances above 0 and finite, of one length and temperature within each pair; one pair or more
 *   <li>Edge cases: pairs that are equal speak for neither side; 0 and 100 say that one conductor is the higher in every pair
 *   <li>Known error: a reel of few pairs is one-sided by chance: with n random pairs at 2 of 2^n reels, 3 % at 6 pairs and 0.05 % at 12
 * </ul>
 */
public final class UnbalanceDirection {
    /** The source of the requirement, and whose figure it is. */
    public static final String CITATION =
            "7 CFR 1755.870(h)(8)(ii), random direction of unbalance (read); no figure is printed, the share is ours";

    private static final double PERCENT = 100;
    private static final double EQUAL_COUNTED_AS = 0.5;
    private static final int CONDUCTORS = 2;

    private UnbalanceDirection() {}

    /**
     * The share of pairs in which the first conductor has the greater resistance, in percent.
     *
     * @param resistances in ohm, conductor a and conductor b of each pair in turn
     * @throws IllegalArgumentException when there is no pair, a conductor has no partner, or a resistance is not above 0 and finite
     */
    public static double percent(double... resistances) {
        if (!(resistances.length >= CONDUCTORS && resistances.length % CONDUCTORS == 0)) {
            throw new IllegalArgumentException(
                    "the direction of unbalance needs both conductors of each pair, one pair or more; there are "
                            + resistances.length + " resistances");
        }
        double higher = 0;
        for (int i = 0; i < resistances.length; i += CONDUCTORS) {
            PairResistance.requireResistance(resistances[i]);
            PairResistance.requireResistance(resistances[i + 1]);
            int sign = Double.compare(resistances[i], resistances[i + 1]);
            higher += sign > 0 ? 1 : sign == 0 ? EQUAL_COUNTED_AS : 0;
        }
        return PERCENT * higher * CONDUCTORS / resistances.length;
    }
}
