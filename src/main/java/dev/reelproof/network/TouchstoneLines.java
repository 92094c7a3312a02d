package dev.reelproof.network;

import java.io.IOException;
import java.io.InputStream;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** The lines of a Touchstone file without comments, and the words and numbers on them; what cannot be read is refused with its line. */
final class TouchstoneLines {
    private static final char COMMENT = '!';
    private static final Pattern NUMBER = Pattern.compile("[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d{1,4})?");
    private static final Pattern WHOLE = Pattern.compile("\\d{1,9}");
    private static final Pattern BLANKS = Pattern.compile("[ \\t\\f]+");
    private static final int LONGEST_NUMBER = 64;
    private static final int LONGEST_QUOTED = 40;

    /** No reference impedance comes near the ends of this range, in ohm; what lies beyond is a fault of the file. */
    private static final double LEAST_OHM = 1e-3;

    private static final double GREATEST_OHM = 1e6;

    private final String file;
    private final BoundedLines lines;

    TouchstoneLines(String file, InputStream in) {
        this.file = file;
        this.lines = new BoundedLines(file, in);
    }

    String file() {
        return file;
    }

    /** The number of the line given last, from 1. */
    long number() {
        return lines.number();
    }

    /** The next line that is not blank, without its comment; none at the end. */
    @Nullable
    String next() throws IOException {
        for (String line = lines.next(); line != null; line = lines.next()) {
            int comment = line.indexOf(COMMENT);
            String text = (comment < 0 ? line : line.substring(0, comment)).strip();
            if (!text.isEmpty()) {
                return text;
            }
        }
        return null;
    }

    /** A refusal at the line given last. */
    NetworkException fault(String message) {
        return new NetworkException(file, Math.max(1, lines.number()), message);
    }

    static String[] words(String text) {
        String stripped = text.strip();
        return stripped.isEmpty() ? new String[0] : BLANKS.split(stripped);
    }

    /** The text with each run of blanks as one space. */
    static String evenlySpaced(String text) {
        return BLANKS.matcher(text).replaceAll(" ");
    }

    static boolean isNumber(String text) {
        return NUMBER.matcher(text).matches();
    }

    /** A finite number. */
    double finite(String text) {
        double value = text.length() <= LONGEST_NUMBER && isNumber(text) ? Double.parseDouble(text) : Double.NaN;
        if (!Double.isFinite(value)) {
            throw fault(quoted(text) + " is not a finite number such as -0.0123 or 1.5e-3");
        }
        return value;
    }

    /** The whole number that a keyword gives. */
    int whole(String keyword, String text) {
        if (!WHOLE.matcher(text).matches()) {
            throw fault("[" + keyword + "] must be a whole number, not " + quoted(text));
        }
        return Integer.parseInt(text);
    }

    /** A reference impedance, ohm. */
    double referenceOhm(String text) {
        double value = finite(text);
        if (!(value >= LEAST_OHM && value <= GREATEST_OHM)) {
            throw fault("a reference impedance must be a positive resistance in ohm, " + LEAST_OHM + " to "
                    + GREATEST_OHM + ", not " + quoted(text));
        }
        return value;
    }

    static String quoted(String text) {
        return "'" + quotable(text) + "'";
    }

    /** A text of the file as it may stand in a message: short, and of printable characters only. */
    static String quotable(String text) {
        String plain = text.replaceAll("[^ -~]", "?");
        return plain.length() <= LONGEST_QUOTED ? plain : plain.substring(0, LONGEST_QUOTED) + "…";
    }
}
