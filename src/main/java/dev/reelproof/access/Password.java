package dev.reelproof.access;

import java.nio.charset.StandardCharsets;
import java.text.Normalizer;

/** A password to be set: {@value #LEAST_BYTES} to {@value #MOST_BYTES} bytes in UTF-8; bcrypt would ignore the rest. */
public final class Password {
    static final int LEAST_BYTES = 12;
    static final int MOST_BYTES = 72;

    private final String text;

    private Password(String text) {
        this.text = text;
    }

    /**
     * The password of that text.
     *
     * @throws IllegalArgumentException when it is too short or too long; the message does not hold it
     */
    public static Password of(String sent) {
        String text = normal(sent);
        int bytes = text.getBytes(StandardCharsets.UTF_8).length;
        if (!(bytes >= LEAST_BYTES && bytes <= MOST_BYTES)) {
            throw new IllegalArgumentException("a password has " + LEAST_BYTES + " to " + MOST_BYTES
                    + " bytes in UTF-8, not " + bytes + "; letters beyond a to z take two to four");
        }
        return new Password(text);
    }

    /** The same text from any keyboard. */
    static String normal(String sent) {
        return Normalizer.normalize(sent, Normalizer.Form.NFC);
    }

    /** The password itself, for nothing but its hash. */
    public String text() {
        return text;
    }

    @Override
    public String toString() {
        return "password";
    }
}
