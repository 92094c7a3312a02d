package dev.reelproof.analysis;

import java.util.List;

/**
 * Whether reels fail more often, the greater the share of them that was made from a lot. It stands beside the other evidence and decides
 * nothing: the order and q are without it.
 *
 * @param lot the lot
 * @param known how many exposed reels have a known share
 * @param unknown how many have none
 * @param p the chance of such growth or more among the exposed reels if the share had no effect
 * @param bands the reels by their share, the least first; bands without reels are left out
 */
public record DoseEvidence(Exposure lot, int known, int unknown, double p, List<Band> bands) {
    /**
     * Exposed reels with shares in a range.
     *
     * @param above the range begins above this, percent
     * @param upTo and goes up to this, itself included, percent
     * @param reels how many reels
     * @param failing how many of them fail
     */
    public record Band(int above, int upTo, int reels, int failing) {}

    public DoseEvidence {
        bands = List.copyOf(bands);
    }
}
