package dev.reelproof.intake.lot;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Iterator;
import java.util.NoSuchElementException;
import org.jspecify.annotations.Nullable;

/** Reads reports that stand one on a line, one after the other; empty lines are counted and left out. */
public final class ReportLines implements Iterator<NumberedReport> {
    private static final int LONGEST_LINE = 4 * 1024 * 1024;
    private static final byte[] BYTE_ORDER_MARK = {(byte) 0xEF, (byte) 0xBB, (byte) 0xBF};

    private final InputStream body;
    private int line;
    private @Nullable NumberedReport next;

    /** @param body lines ended by LF or CR LF */
    public ReportLines(InputStream body) {
        this.body = new BufferedInputStream(body);
    }

    /** @throws UncheckedIOException when the body breaks off */
    @Override
    public boolean hasNext() {
        try {
            boolean more = true;
            while (next == null && more) {
                more = readLine();
            }
            return next != null;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public NumberedReport next() {
        boolean more = hasNext();
        NumberedReport given = next;
        if (!more || given == null) {
            throw new NoSuchElementException("there are no more lines");
        }
        next = null;
        return given;
    }

    /** Reads one line; false at the end. */
    private boolean readLine() throws IOException {
        if (line == 0) {
            skipMark();
        }
        ByteArrayOutputStream text = new ByteArrayOutputStream();
        boolean tooLong = false;
        boolean blank = true;
        int read = body.read();
        if (read < 0) {
            return false;
        }
        line++;
        while (read >= 0 && read != '\n') {
            blank &= Character.isWhitespace(read);
            if (text.size() == LONGEST_LINE) {
                tooLong = true;
            } else {
                text.write(read);
            }
            read = body.read();
        }
        if (tooLong) {
            next = NumberedReport.broken(
                    line, "the line has more than " + LONGEST_LINE + " bytes; send one lot on a line");
        } else if (!blank) {
            next = NumberedReport.of(line, text.toByteArray());
        }
        return true;
    }

    private void skipMark() throws IOException {
        body.mark(BYTE_ORDER_MARK.length);
        for (byte expected : BYTE_ORDER_MARK) {
            if ((byte) body.read() != expected) {
                body.reset();
                return;
            }
        }
    }
}
