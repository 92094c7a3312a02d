package dev.reelproof.access;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The secret of a token, which is shown once: it names the token, so that one row has to be looked at.
 *
 * @param tokenId the token that it is of
 * @param text the whole secret
 */
public record TokenSecret(String tokenId, String text) {
    /** What every secret begins with, so that one that lies about is known for what it is. */
    public static final String PREFIX = "reelproof_";

    private static final int ID_DIGITS = 16;
    private static final Pattern FORM =
            Pattern.compile(PREFIX + "([0-9a-f]{" + ID_DIGITS + "})_([A-Za-z0-9_-]{" + Secrets.LENGTH + "})");

    /** A new secret, of a new token. */
    public static TokenSecret random() {
        String id = Secrets.randomId(ID_DIGITS);
        return new TokenSecret(id, PREFIX + id + "_" + Secrets.random());
    }

    /** A secret as it was sent; empty when it has not the form of one. */
    public static Optional<TokenSecret> read(String sent) {
        Matcher parts = FORM.matcher(sent);
        return parts.matches() ? Optional.of(new TokenSecret(parts.group(1), sent)) : Optional.empty();
    }

    @Override
    public String toString() {
        return "secret of token " + tokenId;
    }
}
