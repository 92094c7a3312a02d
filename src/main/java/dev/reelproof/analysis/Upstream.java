package dev.reelproof.analysis;

import java.util.List;

/**
 * What reels were made from.
 *
 * @param lots each lot above the reels, and the reels themselves where they are lots
 * @param links what each of them was made from
 */
public record Upstream(List<UpstreamLot> lots, List<Link> links) {
    /**
     * That a lot or reel was made from another.
     *
     * @param child what was made
     * @param parent what it was made from
     * @param amount how much of the parent was taken, in metres or kilograms as the parent is measured; above 0
     */
    public record Link(String child, String parent, double amount) {
        public Link {
            if (!(amount > 0)) {
                throw new IllegalArgumentException(
                        child + " took more than 0 of " + parent + ", or it was not made from it; not " + amount);
            }
        }
    }

    public Upstream {
        lots = List.copyOf(lots);
        links = List.copyOf(links);
    }
}
