package dev.reelproof.seal;

import java.util.List;
import java.util.Optional;

/** Checks that a leaf is in a tree: RFC 9162, 2.1.3.2, whose steps were read as quoted by public implementations. */
public final class InclusionPath {
    private InclusionPath() {}

    /** The root that a leaf at a place leads to along a path; empty when the path does not fit the place and size. */
    public static Optional<Hash> root(Hash leaf, long index, long size, List<Hash> path) {
        if (!(index >= 0 && index < size)) {
            return Optional.empty();
        }
        long fn = index;
        long sn = size - 1;
        Hash r = leaf;
        for (Hash p : path) {
            if (sn == 0) {
                return Optional.empty();
            }
            if (fn % 2 == 1 || fn == sn) {
                r = TreeHashing.node(p, r);
                while (fn % 2 == 0 && fn != 0) {
                    fn >>= 1;
                    sn >>= 1;
                }
            } else {
                r = TreeHashing.node(r, p);
            }
            fn >>= 1;
            sn >>= 1;
        }
        return sn == 0 ? Optional.of(r) : Optional.empty();
    }

    /** Whether the path shows that the leaf is at that place of the tree with that root. */
    public static boolean holds(Hash leaf, long index, long size, List<Hash> path, Hash root) {
        return root(leaf, index, size, path).equals(Optional.of(root));
    }
}
