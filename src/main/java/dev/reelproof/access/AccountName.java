package dev.reelproof.access;

import java.text.Normalizer;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * The name that a person signs in with, in any script: 1 to {@value #MOST_CODE_POINTS} characters (Unicode code points), without
 * control characters and without the marks that turn the direction of text, which can make one name look like another.
 *
 * @param text as given, in Unicode's normal form C, blanks around it removed
 */
public record AccountName(String text) {
    static final int MOST_CODE_POINTS = 64;

    // Arabic letter mark; left-to-right and right-to-left marks; embeddings and overrides; isolates (Unicode, UAX 9,
    // 2.1 to 2.6,
    // from memory).
    private static final String TURNING = "\u061C\u200E\u200F\u202A\u202B\u202C\u202D\u202E\u2066\u2067\u2068\u2069";

    // They show nothing, so that two names could differ and look the same; the joiner U+200D, which emoji and some
    // scripts are
    // written with, is not among them.
    private static final String UNSEEN = "\u200B\u2060\uFEFF\u00AD\u180E\u2061\u2062\u2063\u2064";

    // What joins characters or chooses their form: part of a name as written, not of what names are compared by.
    private static final Pattern JOINING = Pattern.compile("[\u200C\u200D\uFE00-\uFE0F]");

    public AccountName {
        if (!(!text.isEmpty() && text.codePointCount(0, text.length()) <= MOST_CODE_POINTS)) {
            throw new IllegalArgumentException("a name has 1 to " + MOST_CODE_POINTS + " characters");
        }
        requirePlain(text);
        if (fold(text).isEmpty()) {
            throw new IllegalArgumentException("a name needs a character that can be seen");
        }
    }

    /**
     * The name of that text.
     *
     * @throws IllegalArgumentException when it cannot be a name
     */
    public static AccountName of(String text) {
        return new AccountName(Normalizer.normalize(text, Normalizer.Form.NFC).strip());
    }

    /**
     * A name to be shown, of a person or a token, by the same rules for its characters.
     *
     * @throws IllegalArgumentException when it cannot be one
     */
    public static String shown(String text) {
        requirePlain(text);
        return Normalizer.normalize(text, Normalizer.Form.NFC);
    }

    private static void requirePlain(String text) {
        if (!text.codePoints().allMatch(AccountName::isAllowed)) {
            throw new IllegalArgumentException(
                    "a name holds no control characters, no invisible ones and none that turn the direction of text");
        }
    }

    private static boolean isAllowed(int codePoint) {
        int type = Character.getType(codePoint);
        return type != Character.CONTROL
                && type != Character.SURROGATE
                && type != Character.PRIVATE_USE
                && type != Character.LINE_SEPARATOR
                && type != Character.PARAGRAPH_SEPARATOR
                && TURNING.indexOf(codePoint) < 0
                && UNSEEN.indexOf(codePoint) < 0;
    }

    /** What names are compared by: neither case nor the form of characters makes a difference. */
    public String key() {
        return fold(text);
    }

    /** A text with case and forms of characters folded; again the same when folded twice. */
    public static String fold(String text) {
        String compatible = JOINING.matcher(Normalizer.normalize(text, Normalizer.Form.NFKC))
                .replaceAll("");
        // Upper case first: letters that have one upper case (such as ß and ss, or the two sigmas) are then one.
        String folded =
                compatible.toUpperCase(Locale.ROOT).toLowerCase(Locale.ROOT).replace('ς', 'σ');
        return Normalizer.normalize(folded, Normalizer.Form.NFKC).strip();
    }

    @Override
    public String toString() {
        return text;
    }
}
