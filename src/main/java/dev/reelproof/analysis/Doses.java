package dev.reelproof.analysis;

import java.util.Arrays;

/** What share of each reel was made from one lot: of all that it has of the lot's kind, from 0 to 1. */
final class Doses {
    private final int[] reels;
    private final double[] shares;

    /**
     * The shares of some reels.
     *
     * @param reels their places in the population, each higher than the one before
     * @param shares one a reel, from 0 to 1; NaN where it is not known
     */
    Doses(int[] reels, double[] shares) {
        this.reels = reels.clone();
        this.shares = shares.clone();
    }

    /** The share of a reel; NaN where it is not known. */
    double of(int reel) {
        int index = Arrays.binarySearch(reels, reel);
        return index >= 0 ? shares[index] : Double.NaN;
    }
}
