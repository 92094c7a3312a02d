package dev.reelproof.network;

import java.util.List;
import java.util.Optional;

/** The S-parameters of a file, as they stand in it, to the file's own reference impedances. Immutable. */
public final class NetworkData {
    private final String file;
    private final String words;
    private final int ports;
    private final double[] megahertz;
    private final int[] lines;
    private final double[][] matrices;
    private final double[] referenceOhm;
    private final Optional<MixedModeOrder> order;
    private final List<String> warnings;

    /**
     * Takes the arrays over without copying them: the caller must not keep them.
     *
     * @param file the file's name
     * @param words version, format and unit of the file in words
     * @param ports number of ports
     * @param megahertz frequencies in MHz, 0 or more, ascending
     * @param lines the line at which each frequency begins
     * @param matrices of each frequency S by rows, real and imaginary part in turn
     * @param referenceOhm reference impedance of each row in ohm
     * @param order what the rows are, where the file says that they are modes
     * @param warnings what the reader of the result should know, as sentences
     */
    NetworkData(
            String file,
            String words,
            int ports,
            double[] megahertz,
            int[] lines,
            double[][] matrices,
            double[] referenceOhm,
            Optional<MixedModeOrder> order,
            List<String> warnings) {
        this.file = file;
        this.words = words;
        this.ports = ports;
        this.megahertz = megahertz;
        this.lines = lines;
        this.matrices = matrices;
        this.referenceOhm = referenceOhm;
        this.order = order;
        this.warnings = List.copyOf(warnings);
    }

    public String file() {
        return file;
    }

    /** Version, format and unit of the file. */
    public String words() {
        return words;
    }

    public int ports() {
        return ports;
    }

    /** How many frequencies it has. */
    public int size() {
        return megahertz.length;
    }

    /** A frequency in MHz. */
    public double megahertz(int index) {
        return megahertz[index];
    }

    /** The line at which the matrix of a frequency begins. */
    public int line(int index) {
        return lines[index];
    }

    /** A copy of the reference impedances, in ohm. */
    double[] referenceOhm() {
        return referenceOhm.clone();
    }

    /** What the rows are, where the file says that they are modes; else each is a port. */
    Optional<MixedModeOrder> order() {
        return order;
    }

    /** The real part of an entry of S at a frequency; rows and columns from 0. */
    double re(int index, int row, int column) {
        return matrices[index][2 * (row * ports + column)];
    }

    /** The imaginary part. */
    double im(int index, int row, int column) {
        return matrices[index][2 * (row * ports + column) + 1];
    }

    /** A copy of S at a frequency. */
    ComplexMatrix matrix(int index) {
        return new ComplexMatrix(ports, matrices[index].clone());
    }

    /** What the reader of the result should know. */
    public List<String> warnings() {
        return warnings;
    }
}
