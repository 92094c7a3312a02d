package dev.reelproof.pdf.file;

import dev.reelproof.certificate.CertificateNumber;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Finds the number that a certificate's file states of itself: in the title of its XMP packet, which stands in the file as plain text.
 * Nothing is unpacked for it, so that no file can cost more than its own length.
 */
public final class StatedNumber {
    private static final Pattern NUMBER = Pattern.compile("[A-Z][A-Z0-9]{0,11}-[0-9]{4}-[0-9]{6}(?![0-9])");
    private static final String TITLE = "<dc:title";
    private static final String TITLE_ENDS = "</dc:title>";
    private static final int LONGEST_TITLE = 2_000;

    private StatedNumber() {}

    /** The number in the first title that holds one; empty when none does. */
    public static Optional<CertificateNumber> in(byte[] file) {
        String text = new String(file, StandardCharsets.ISO_8859_1);
        for (int from = text.indexOf(TITLE); from >= 0; from = text.indexOf(TITLE, from + 1)) {
            int end = text.indexOf(TITLE_ENDS, from);
            int to = Math.min(end < 0 ? text.length() : end, from + LONGEST_TITLE);
            Matcher matcher = NUMBER.matcher(text.substring(from, to));
            while (matcher.find()) {
                Optional<CertificateNumber> number = CertificateNumber.find(matcher.group());
                if (number.isPresent()) {
                    return number;
                }
            }
            if (end < 0) {
                // No title ends from here on.
                return Optional.empty();
            }
        }
        return Optional.empty();
    }
}
