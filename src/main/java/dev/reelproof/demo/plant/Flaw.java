package dev.reelproof.demo.plant;

/** Something wrong with a run of cable. */
sealed interface Flaw {

    /**
     * A capstan that pulls one pair unevenly.
     *
     * @param pair the pair
     * @param periodM circumference of the capstan in metres of cable
     * @param swing relative swing of the impedance
     */
    record UnevenCapstan(int pair, double periodM, double swing) implements Flaw {}

    /**
     * Two pairs twisted to nearly the same lay.
     *
     * @param pair the one
     * @param partner the other
     * @param near by how much they couple more at the near end
     * @param far by how much they couple more at the far end
     */
    record AlikeLays(int pair, int partner, double near, double far) implements Flaw {}

    /**
     * A conductor off the centre of its insulation.
     *
     * @param pair its pair
     * @param picofaradPerKm the capacitance unbalance to ground that it makes, in pF/km
     */
    record OffCentre(int pair, double picofaradPerKm) implements Flaw {}

    /**
     * A conductor drawn thin.
     *
     * @param pair its pair
     * @param factor its diameter over the pair's
     */
    record DrawnThin(int pair, double factor) implements Flaw {}
}
