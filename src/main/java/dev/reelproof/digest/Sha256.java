package dev.reelproof.digest;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256 (FIPS 180-4): of bytes as they are, of text in UTF-8. */
public final class Sha256 {
    private Sha256() {}

    /** The digest, 32 bytes. */
    public static byte[] of(byte[] bytes) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(bytes);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    /** The digest in lower-case hexadecimal, 64 digits. */
    public static String hex(byte[] bytes) {
        return HexFormat.of().formatHex(of(bytes));
    }

    /** The digest of a text in lower-case hexadecimal, 64 digits. */
    public static String hex(String text) {
        return hex(text.getBytes(StandardCharsets.UTF_8));
    }
}
