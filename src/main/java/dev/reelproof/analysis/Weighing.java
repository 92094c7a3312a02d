package dev.reelproof.analysis;

import java.util.BitSet;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** How one kind of evidence is weighed: each chance is that of such evidence or stronger if the exposure had no effect. */
interface Weighing {
    /** The chance among all reels. */
    double overall(BitSet exposed);

    /** The chance with each reel compared within its stratum alone. */
    Chance withinStrata(BitSet exposed);

    /**
     * A chance, and the least that it can come to for so many exposed reels in each stratum: where that is above the level, the exposure
     * can never be significant, and the correction for many tests need not count it. R. E. Tarone, A modified Bonferroni method for
     * discrete data, Biometrics 46, 1990 (from memory).
     */
    record Chance(double p, double least) {}

    /** The chance with each reel compared within its stratum, and there with those that met the other thing too or did not either. */
    double withFixed(BitSet exposed, BitSet fixed);

    /** How strong the effect is: the greater, the worse the exposed reels. */
    double effect(BitSet exposed);

    /** The odds ratio of failing that the strata have in common. */
    OptionalDouble oddsRatioWithinStrata(BitSet exposed);

    /** What margins say; absent where failures are weighed. */
    Suspect.@Nullable Margins margins(BitSet exposed);
}
