package dev.reelproof.seal;

import dev.reelproof.digest.Sha256;
import java.util.Arrays;
import java.util.HexFormat;

/** A SHA-256 hash of the log: 32 bytes. */
public final class Hash {
    private static final int BYTES = 32;

    private final byte[] bytes;

    private Hash(byte[] bytes) {
        if (bytes.length != BYTES) {
            throw new IllegalArgumentException("a hash has " + BYTES + " bytes, not " + bytes.length);
        }
        this.bytes = bytes;
    }

    public static Hash of(byte[] bytes) {
        return new Hash(bytes.clone());
    }

    /** The hash that 64 hexadecimal digits in lower case write. */
    public static Hash ofHex(String hex) {
        return new Hash(HexFormat.of().parseHex(Sha256.requireHex("a part of the log", hex)));
    }

    public byte[] bytes() {
        return bytes.clone();
    }

    /** 64 hexadecimal digits in lower case. */
    public String hex() {
        return HexFormat.of().formatHex(bytes);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Hash hash && Arrays.equals(bytes, hash.bytes);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(bytes);
    }

    @Override
    public String toString() {
        return hex();
    }
}
