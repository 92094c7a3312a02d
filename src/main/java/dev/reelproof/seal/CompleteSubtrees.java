package dev.reelproof.seal;

/** Gives the hashes of a tree's complete subtrees, which never change once their last leaf is there. */
@FunctionalInterface
public interface CompleteSubtrees {

    /**
     * The hash over the 2<sup>level</sup> leaves from index · 2<sup>level</sup> on.
     *
     * @param level 0 for a single leaf
     * @param index counted from 0 among the subtrees of that level
     */
    Hash hash(int level, long index);
}
