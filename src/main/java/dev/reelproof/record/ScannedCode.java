package dev.reelproof.record;

import java.util.regex.Pattern;

/**
 * What a scanner sends of a label, brought back to what stands on the label.
 *
 * <p>A scanner may put a symbology identifier before the data: {@code ]}, a letter for the symbology, and a letter or digit for what the
 * reader did, as {@code ]C1} or {@code ]A0} (ISO/IEC 15424; its form from memory, the standard was not read). It may send the start and
 * stop characters of the symbology: asterisks of Code 39 (ISO/IEC 16388, from memory), and A, B, C or D of Codabar (EN 798, from memory).
 * It may end with Tab or Enter, or with what ends a message (common practice, no source).
 *
 * <p>Letters of Codabar are taken away only after its identifier, {@code ]F}: without it they may belong to the number. Application
 * identifiers of GS1 are not taken apart: {@code ]C1} is taken off, and what follows is the number.
 */
public final class ScannedCode {
    private static final Pattern IDENTIFIER = Pattern.compile("\\][A-Za-z][0-9A-Za-z](?=.)");
    private static final int IDENTIFIER_LENGTH = 3;
    private static final String CODABAR = "]F";
    private static final Pattern CODABAR_FRAME = Pattern.compile("^[A-Da-d](.+)[A-Da-d]$");
    private static final Pattern CODE_39_FRAME = Pattern.compile("^\\*(.+)\\*$");
    /** Blanks, and what ends or parts a message: STX, ETX, EOT, FS, GS, RS, US. Another control character is a fault, not a suffix. */
    private static final String NOTHING_PRINTED = "[\\s\\p{Z}\\x02-\\x04\\x1C-\\x1F]+";

    private static final Pattern AROUND = Pattern.compile("^" + NOTHING_PRINTED + "|" + NOTHING_PRINTED + "$");

    private ScannedCode() {}

    /**
     * The number on the label. A text that no scanner marked comes back as it is, without blanks and control characters around it.
     *
     * @param sent what was scanned or typed
     */
    public static String of(String sent) {
        String text = trimmed(sent);
        boolean isCodabar = text.startsWith(CODABAR);
        String data = IDENTIFIER.matcher(text).lookingAt() ? trimmed(text.substring(IDENTIFIER_LENGTH)) : text;
        String unframed = CODE_39_FRAME.matcher(data).replaceFirst("$1");
        return trimmed(isCodabar ? CODABAR_FRAME.matcher(unframed).replaceFirst("$1") : unframed);
    }

    private static String trimmed(String text) {
        return AROUND.matcher(text).replaceAll("");
    }
}
