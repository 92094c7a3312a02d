package dev.reelproof.seal;

import java.util.ArrayList;
import java.util.List;

/**
 * A tree of so many leaves: its root, and the paths that prove things about it. Asks for O(log n) complete subtrees at a time.
 *
 * <p>Source: RFC 9162, 2.1.1 (root), 2.1.3.1 (PATH), 2.1.4.1 (PROOF and SUBPROOF); the definitions stand word for word in RFC 6962,
 * 2.1 to 2.1.2. Of those, 2.1 was read in a copy, the other two are written from memory and held to published vectors.
 *
 * @param size how many leaves it has
 * @param subtrees the hashes of its complete subtrees
 */
public record MerkleTree(long size, CompleteSubtrees subtrees) {

    public MerkleTree {
        if (!(size >= 0)) {
            throw new IllegalArgumentException("a tree has 0 leaves or more, not " + size);
        }
    }

    /** The root over all leaves. */
    public Hash root() {
        return size == 0 ? TreeHashing.EMPTY : over(0, size);
    }

    /**
     * The hashes that lead from a leaf to the root, the lowest first.
     *
     * @param index the leaf's place, from 0
     */
    public List<Hash> inclusionPath(long index) {
        if (!(index >= 0 && index < size)) {
            throw new IllegalArgumentException("a tree of " + size + " leaves has no leaf " + index);
        }
        List<Hash> path = new ArrayList<>();
        long from = 0;
        long to = size;
        while (to - from > 1) {
            long middle = from + left(to - from);
            if (index < middle) {
                path.add(0, over(middle, to));
                to = middle;
            } else {
                path.add(0, over(from, middle));
                from = middle;
            }
        }
        return List.copyOf(path);
    }

    /**
     * The hashes that show that this tree only adds leaves to an earlier one.
     *
     * @param first how many leaves the earlier tree had, from 1 to the size of this one
     */
    public List<Hash> consistencyPath(long first) {
        if (!(first >= 1 && first <= size)) {
            throw new IllegalArgumentException("a tree of " + size + " leaves has no earlier one of " + first);
        }
        List<Hash> path = new ArrayList<>();
        long from = 0;
        long to = size;
        // Whether the earlier tree is known whole to who asks: its root is then left out.
        boolean known = true;
        while (first != to) {
            long middle = from + left(to - from);
            if (first <= middle) {
                path.add(0, over(middle, to));
                to = middle;
            } else {
                path.add(0, over(from, middle));
                from = middle;
                known = false;
            }
        }
        if (!known) {
            path.add(0, over(from, to));
        }
        return List.copyOf(path);
    }

    /** The hash over the leaves from a multiple of the least power of two that is not less than their number. */
    private Hash over(long from, long to) {
        long count = to - from;
        if (Long.bitCount(count) == 1) {
            int level = Long.numberOfTrailingZeros(count);
            return subtrees.hash(level, from >> level);
        }
        long middle = from + left(count);
        return TreeHashing.node(over(from, middle), over(middle, to));
    }

    /** The largest power of two smaller than a number of leaves: how many lie on the left. */
    private static long left(long count) {
        return Long.highestOneBit(count - 1);
    }
}
