package dev.reelproof.seal;

import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * An entry of the log: what it speaks of, and the digests of what was written.
 *
 * <p>Its bytes are UTF-8 text, each line ended by a line feed: {@code reelproof leaf 1}, kind, plant, id, then the parts in their order.
 * A part is a table, for a row among several a slash and its number, a space, and the SHA-256 of the row in hexadecimal.
 *
 * @param id what identifies it among the plant's leaves of its kind
 * @param parts one line each
 */
public record Leaf(LeafKind kind, String plant, String id, List<String> parts) {
    private static final String FORM = "reelproof leaf 1";

    public Leaf {
        parts = List.copyOf(parts);
        Line.require("plant", plant);
        Line.require("id", id);
        if (parts.isEmpty()) {
            throw new IllegalArgumentException("leaf " + kind.word() + " " + id + " has no part");
        }
        parts.forEach(part -> Line.require("part", part));
    }

    /**
     * The leaf of a file that a certificate carries.
     *
     * @param sha256 of the file, in hexadecimal
     */
    public static Leaf ofAttachment(String plant, String sha256) {
        return new Leaf(LeafKind.ATTACHMENT, plant, sha256, List.of("sha256 " + sha256));
    }

    /** The bytes that are hashed. */
    public byte[] bytes() {
        return (FORM + "\n" + kind.word() + "\n" + plant + "\n" + id + "\n" + String.join("\n", parts) + "\n")
                .getBytes(StandardCharsets.UTF_8);
    }

    /** The hash in the tree. */
    public Hash hash() {
        return TreeHashing.leaf(bytes());
    }
}
