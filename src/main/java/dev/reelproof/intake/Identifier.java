package dev.reelproof.intake;

import java.util.regex.Pattern;

/** What may name a reel, a lot, a product or a plant: it appears in addresses, on labels and in file names. */
public final class Identifier {
    /** The pattern, as the published schemas state it. */
    public static final String PATTERN = "[A-Za-z0-9][A-Za-z0-9._-]{0,63}";

    private static final Pattern ALLOWED = Pattern.compile(PATTERN);

    private Identifier() {}

    /**
     * The identifier without blanks around it.
     *
     * @throws IllegalArgumentException when it is not 1 to 64 letters, digits, '.', '_', '-' that begin with a letter or digit
     */
    public static String of(String text) {
        String trimmed = text.trim();
        if (!ALLOWED.matcher(trimmed).matches()) {
            throw new IllegalArgumentException(Words.quoted(text)
                    + " cannot be an identifier; use 1 to 64 letters (A to Z, a to z), digits, '.', '_' or '-',"
                    + " beginning with a letter or a digit");
        }
        return trimmed;
    }
}
