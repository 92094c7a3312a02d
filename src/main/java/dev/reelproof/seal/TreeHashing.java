package dev.reelproof.seal;

import dev.reelproof.digest.Sha256;

/**
 * How leaves and nodes of the tree are hashed.
 *
 * <p>MTH({}) = SHA-256(); MTH({d}) = SHA-256(0x00 || d); MTH(D[n]) = SHA-256(0x01 || MTH(D[0:k]) || MTH(D[k:n])), k the largest power
 * of two smaller than n. The first byte keeps a node from passing for a leaf. Source: RFC 6962, 2.1, which RFC 9162, 2.1.1, repeats;
 * the text of RFC 6962 was read in a copy. Holds for any number of leaves; no known error.
 */
public final class TreeHashing {
    private static final byte LEAF = 0x00;
    private static final byte NODE = 0x01;

    /** The root of a tree without leaves. */
    public static final Hash EMPTY = Hash.of(Sha256.of(new byte[0]));

    private TreeHashing() {}

    /** The hash of a leaf with this entry. */
    public static Hash leaf(byte[] entry) {
        byte[] input = new byte[entry.length + 1];
        input[0] = LEAF;
        System.arraycopy(entry, 0, input, 1, entry.length);
        return Hash.of(Sha256.of(input));
    }

    /** The hash of a node over two. */
    public static Hash node(Hash left, Hash right) {
        byte[] first = left.bytes();
        byte[] second = right.bytes();
        byte[] input = new byte[1 + first.length + second.length];
        input[0] = NODE;
        System.arraycopy(first, 0, input, 1, first.length);
        System.arraycopy(second, 0, input, 1 + first.length, second.length);
        return Hash.of(Sha256.of(input));
    }
}
