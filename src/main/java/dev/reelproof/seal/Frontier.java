package dev.reelproof.seal;

import java.util.ArrayList;
import java.util.List;

/**
 * The right edge of a tree: all that is needed to add leaves and to say the root.
 *
 * @param size how many leaves the tree has
 * @param hashes of its complete subtrees, the largest first: one for each binary digit 1 of the size
 */
public record Frontier(long size, List<Hash> hashes) {

    /** The frontier of a tree without leaves. */
    public static final Frontier EMPTY = new Frontier(0, List.of());

    public Frontier {
        hashes = List.copyOf(hashes);
        if (!(size >= 0 && Long.bitCount(size) == hashes.size())) {
            throw new IllegalArgumentException(
                    "a tree of " + size + " leaves has not " + hashes.size() + " complete subtrees at its edge");
        }
    }

    /** The frontier of a tree whose subtrees are kept. */
    public static Frontier of(MerkleTree tree) {
        List<Hash> hashes = new ArrayList<>();
        long left = tree.size();
        long from = 0;
        while (left > 0) {
            long count = Long.highestOneBit(left);
            int level = Long.numberOfTrailingZeros(count);
            hashes.add(tree.subtrees().hash(level, from >> level));
            from += count;
            left -= count;
        }
        return new Frontier(tree.size(), hashes);
    }

    /**
     * A complete subtree.
     *
     * @param level it has 2<sup>level</sup> leaves
     * @param index its place among the subtrees of its level
     */
    public record Subtree(int level, long index, Hash hash) {}

    /**
     * What adding a leaf gives.
     *
     * @param frontier the new edge
     * @param completed the subtrees that the leaf completes, the leaf itself first
     */
    public record Appended(Frontier frontier, List<Subtree> completed) {
        public Appended {
            completed = List.copyOf(completed);
        }
    }

    /** The frontier with one more leaf. */
    public Appended append(Hash leaf) {
        List<Hash> edge = new ArrayList<>(hashes);
        List<Subtree> completed = new ArrayList<>();
        Hash hash = leaf;
        long index = size;
        int level = 0;
        completed.add(new Subtree(level, index, hash));
        while (index % 2 == 1) {
            hash = TreeHashing.node(edge.remove(edge.size() - 1), hash);
            index /= 2;
            level++;
            completed.add(new Subtree(level, index, hash));
        }
        edge.add(hash);
        return new Appended(new Frontier(size + 1, edge), completed);
    }

    /** The root over all leaves. */
    public Hash root() {
        if (hashes.isEmpty()) {
            return TreeHashing.EMPTY;
        }
        Hash root = hashes.get(hashes.size() - 1);
        for (int i = hashes.size() - 2; i >= 0; i--) {
            root = TreeHashing.node(hashes.get(i), root);
        }
        return root;
    }
}
