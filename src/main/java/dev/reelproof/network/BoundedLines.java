package dev.reelproof.network;

import java.io.IOException;
import java.io.InputStream;
import org.jspecify.annotations.Nullable;

/**
 * The lines of a text in single-byte characters, however they end (LF, CR LF or CR), none longer than a bound: a line without
 * an end must not fill the memory.
 */
final class BoundedLines {
    /** A row of 32 ports is 64 numbers, a whole matrix of theirs on one line some 50 000 characters. */
    static final int LONGEST_LINE = 262_144;

    private static final int READ_AT_ONCE = 65_536;
    private static final int END = -1;
    private static final int BYTE = 0xFF;
    private static final int[] UTF8_MARK = {0xEF, 0xBB, 0xBF};

    private final String file;
    private final InputStream in;
    private final byte[] buffer = new byte[READ_AT_ONCE];
    private int at;
    private int filled;
    private long number;

    BoundedLines(String file, InputStream in) {
        this.file = file;
        this.in = in;
    }

    /** The number of the line given last, from 1. */
    long number() {
        return number;
    }

    /**
     * The next line without its end; none after the last.
     *
     * @throws NetworkException when it is longer than {@value #LONGEST_LINE} characters
     */
    @Nullable
    String next() throws IOException {
        int c = read();
        if (c == END) {
            return null;
        }
        number++;
        StringBuilder line = new StringBuilder();
        while (c != END && c != '\n' && c != '\r') {
            if (line.length() == LONGEST_LINE) {
                throw new NetworkException(
                        file,
                        number,
                        "the line is longer than " + LONGEST_LINE
                                + " characters; a Touchstone file has at most four pairs of numbers on a line");
            }
            line.append((char) c);
            c = read();
        }
        if (c == '\r' && peek() == '\n') {
            read();
        }
        if (number == 1 && startsWithMark(line)) {
            line.delete(0, UTF8_MARK.length);
        }
        return line.toString();
    }

    private static boolean startsWithMark(StringBuilder line) {
        if (line.length() < UTF8_MARK.length) {
            return false;
        }
        for (int i = 0; i < UTF8_MARK.length; i++) {
            if (line.charAt(i) != UTF8_MARK[i]) {
                return false;
            }
        }
        return true;
    }

    private int peek() throws IOException {
        if (at == filled) {
            filled = in.read(buffer);
            at = 0;
            if (filled <= 0) {
                filled = 0;
                return END;
            }
        }
        return buffer[at] & BYTE;
    }

    private int read() throws IOException {
        int c = peek();
        if (c != END) {
            at++;
        }
        return c;
    }
}
