package dev.reelproof.seal;

import java.nio.charset.StandardCharsets;
import java.time.Instant;

/**
 * How a plant's log stood at a time.
 *
 * <p>What is signed is UTF-8 text, each line ended by a line feed: {@code reelproof head 1}, plant, size, root in hexadecimal, time in
 * ISO 8601 and UTC.
 *
 * @param size how many leaves it had
 * @param root the root over them
 */
public record TreeHead(String plant, long size, Hash root, Instant at) {
    private static final String FORM = "reelproof head 1";

    public TreeHead {
        Line.require("plant", plant);
        if (!(size >= 0)) {
            throw new IllegalArgumentException("a log has 0 leaves or more, not " + size);
        }
    }

    /** The bytes that are signed. */
    public byte[] bytes() {
        return (FORM + "\n" + plant + "\n" + size + "\n" + root.hex() + "\n" + at + "\n")
                .getBytes(StandardCharsets.UTF_8);
    }
}
