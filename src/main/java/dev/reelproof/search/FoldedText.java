package dev.reelproof.search;

import java.text.Normalizer;
import java.util.BitSet;
import java.util.Locale;

/**
 * A text of which letters and digits alone are left, folded: {@code SO 47-11} and {@code so4711} are the same. It remembers where
 * words began.
 *
 * <p>Folding takes away case, marks above and below letters, and the width and style of characters (compatibility decomposition NFKD
 * of Unicode Standard Annex 15); digits of every script become 0 to 9. A word begins after anything that is neither letter nor digit,
 * where digits follow a letter, and at the first digit of a number that is not a leading zero: 123 is a word of
 * {@code NORTH-2026-000123}.
 */
final class FoldedText {
    private static final int DECIMAL = 10;

    private final StringBuilder key = new StringBuilder();
    private final BitSet starts = new BitSet();
    private boolean isApart = true;
    private boolean isAfterDigit;
    private boolean isAfterLeadingZero;

    FoldedText(String text) {
        // To upper case first: it makes one of letters that differ in lower case alone, such as the two forms of sigma.
        decomposed(decomposed(text).toUpperCase(Locale.ROOT)).codePoints().forEach(this::add);
    }

    private static String decomposed(String text) {
        return Normalizer.normalize(text, Normalizer.Form.NFKD);
    }

    private void add(int character) {
        if (Character.isDigit(character)) {
            addDigit(Character.digit(character, DECIMAL));
        } else if (Character.isLetter(character)) {
            addLetter(character);
        } else if (!isMark(character)) {
            isApart = true;
        }
    }

    private void addDigit(int digit) {
        boolean isStart = isApart || !isAfterDigit;
        starts.set(key.length(), isStart || (isAfterLeadingZero && digit != 0));
        key.append((char) ('0' + digit));
        isAfterLeadingZero = digit == 0 && (isStart || isAfterLeadingZero);
        isAfterDigit = true;
        isApart = false;
    }

    private void addLetter(int letter) {
        starts.set(key.length(), isApart);
        key.appendCodePoint(Character.toLowerCase(letter));
        isAfterLeadingZero = false;
        isAfterDigit = false;
        isApart = false;
    }

    private static boolean isMark(int character) {
        int type = Character.getType(character);
        return type == Character.NON_SPACING_MARK
                || type == Character.COMBINING_SPACING_MARK
                || type == Character.ENCLOSING_MARK;
    }

    /** All of it. */
    String key() {
        return key.toString();
    }

    /** Where words begin in the key, the first at 0. */
    BitSet starts() {
        return (BitSet) starts.clone();
    }

    /** Whether a word ends before this place of the key. */
    boolean isEnd(int place) {
        return place == key.length() || starts.get(place);
    }
}
