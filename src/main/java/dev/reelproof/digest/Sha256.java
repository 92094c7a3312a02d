package dev.reelproof.digest;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.regex.Pattern;

/** SHA-256 (FIPS 180-4): of bytes as they are, of text in UTF-8. */
public final class Sha256 {
    private static final Pattern HEX = Pattern.compile("[0-9a-f]{64}");

    private Sha256() {}

    /**
     * A digest as it is written here.
     *
     * @param what whose digest it is, for the refusal
     * @throws IllegalArgumentException when it is not 64 hexadecimal digits in lower case
     */
    public static String requireHex(String what, String digest) {
        if (digest == null || !HEX.matcher(digest).matches()) {
            throw new IllegalArgumentException(
                    "the SHA-256 of " + what + " must be 64 hexadecimal digits in lower case, not '" + digest + "'");
        }
        return digest;
    }

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
