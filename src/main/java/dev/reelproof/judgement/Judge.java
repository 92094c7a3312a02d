package dev.reelproof.judgement;

import dev.reelproof.limit.LimitSet;
import dev.reelproof.measurement.Product;
import dev.reelproof.measurement.ReelResult;

/** Judges a result against a limit set: measured, corrected, judged. */
public final class Judge {
    private Judge() {}

    /**
     * The judgement of a result.
     *
     * @param result what was measured
     * @param product what the reel is meant to be
     * @param limitSet what it must meet
     * @param engine version of the program, kept with the judgement
     * @throws dev.reelproof.correction.OutsideLawException when the temperature lies outside what a law of the set covers
     * @throws IllegalArgumentException when the result names a pair that the product has not
     */
    public static Judgement judge(ReelResult result, Product product, LimitSet limitSet, String engine) {
        throw new IllegalStateException("in work");
    }
}
