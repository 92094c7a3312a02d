package dev.reelproof.network;

import java.io.IOException;
import java.io.InputStream;

/**
 * Source: Touchstone File Format Specification, versions 1.1 and 2.0 (IBIS Open Forum). The rules were read in public secondary
 * texts or are from memory; the specification itself was not read.
 *
 * <p>Reads S-parameters as a stream, line by line. Data in mixed mode are taken as the file orders them. Refuses Y, Z, G and H parameters;
 * passes noise data over with a warning. One reader serves all files of one upload and bounds how much they hold together.
 */
public final class TouchstoneReader {
    /** The most ports that a file may have. */
    public static final int MOST_PORTS = 64;

    /** The most numbers that the files of one upload may hold: 32 ports at some 4800 frequencies, 80 MB in memory. */
    public static final int MOST_NUMBERS = 10_000_000;

    private final NumberBudget budget;

    /** A reader of the files of one upload. */
    public TouchstoneReader() {
        this(MOST_NUMBERS);
    }

    TouchstoneReader(int mostNumbers) {
        this.budget = new NumberBudget(mostNumbers);
    }

    /**
     * The data of one file.
     *
     * @param file its name, as in messages; the extension {@code .s8p} tells the ports of version 1 data
     * @param portsExpected the number of ports where neither name nor file states one
     * @param in its bytes; not closed here
     * @throws NetworkException at the first line that cannot be
     * @throws IOException when the bytes cannot be read
     */
    public NetworkData read(String file, int portsExpected, InputStream in) throws IOException {
        return new TouchstoneFile(new TouchstoneLines(file, in), portsExpected, budget).read();
    }
}
