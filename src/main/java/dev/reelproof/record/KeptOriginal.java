package dev.reelproof.record;

import dev.reelproof.digest.Sha256;

/**
 * A part of an upload that was kept as received.
 *
 * @param ordinal its place in the upload, from 0
 * @param name its file or part name
 * @param mediaType as sent
 * @param sha256 digest of its bytes, hexadecimal
 * @param size how many bytes it has
 */
public record KeptOriginal(int ordinal, String name, String mediaType, String sha256, int size) {

    public KeptOriginal {
        if (!(ordinal >= 0 && size >= 0)) {
            throw new IllegalArgumentException("part " + ordinal
                    + " of an upload cannot have a negative place or size, such as " + size + " bytes");
        }
        if (name == null || name.isBlank()) {
            throw new IllegalArgumentException("part " + ordinal + " of an upload needs a name");
        }
        Sha256.requireHex("part " + ordinal + " of an upload", sha256);
    }
}
