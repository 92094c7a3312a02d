package dev.reelproof.access;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.HexFormat;

/** Random secrets of 256 bits, and what is kept of them. Nobody can try 2^256 values, so that a fast digest is enough. */
public final class Secrets {
    /** Characters of a secret: 32 bytes in base64url without padding. */
    public static final int LENGTH = 43;

    private static final int BYTES = 32;
    private static final SecureRandom RANDOM = new SecureRandom();

    private Secrets() {}

    public static String random() {
        byte[] bytes = new byte[BYTES];
        RANDOM.nextBytes(bytes);
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }

    /** A random name of that many hexadecimal digits; an even number. */
    public static String randomId(int digits) {
        byte[] bytes = new byte[digits / 2];
        RANDOM.nextBytes(bytes);
        return HexFormat.of().formatHex(bytes);
    }

    /** Whether two texts are the same, in a time that does not tell where they differ. */
    public static boolean same(String one, String other) {
        return MessageDigest.isEqual(one.getBytes(StandardCharsets.UTF_8), other.getBytes(StandardCharsets.UTF_8));
    }
}
