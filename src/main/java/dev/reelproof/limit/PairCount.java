package dev.reelproof.limit;

/**
 * A range of pair counts, both ends included.
 *
 * @param from fewest pairs
 * @param to most pairs
 */
public record PairCount(int from, int to) {

    public PairCount {
        if (!(from >= 1 && to >= from)) {
            throw new IllegalArgumentException(
                    "a range of pairs runs from 1 or more upwards, not from " + from + " to " + to);
        }
    }

    public boolean holds(int pairs) {
        return pairs >= from && pairs <= to;
    }

    /** Whether some pair count lies in both ranges. */
    public boolean overlaps(PairCount other) {
        return from <= other.to && other.from <= to;
    }
}
