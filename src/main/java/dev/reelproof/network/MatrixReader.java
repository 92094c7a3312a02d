package dev.reelproof.network;

import dev.reelproof.quantity.Decibels;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Reads the data lines of a Touchstone file into one matrix for each frequency.
 *
 * <p>A complex number is never split over lines, so that a line with an odd count of numbers begins a frequency and one with an even
 * count goes on with it; that is how a wrong number of ports is found.
 */
final class MatrixReader {
    private static final int FIRST_CAPACITY = 256;

    /**
     * A cable's entries are 1 at most; what lies beyond is a fault of the file that must not overflow into a figure. Common practice,
     * no source.
     */
    private static final double GREATEST_MAGNITUDE = 1e6;

    private final TouchstoneLines lines;
    private final OptionLine options;
    private final MatrixLayout layout;
    private final NumberBudget budget;

    private double[] megahertz = new double[FIRST_CAPACITY];
    private int[] startLines = new int[FIRST_CAPACITY];
    private final List<double[]> matrices = new ArrayList<>();
    /** The matrix that is being read, as written; absent between two. */
    private double @Nullable [] open;

    private int openFilled;

    MatrixReader(TouchstoneLines lines, OptionLine options, MatrixLayout layout, NumberBudget budget) {
        this.lines = lines;
        this.options = options;
        this.layout = layout;
        this.budget = budget;
    }

    int size() {
        return matrices.size();
    }

    /** Whether a matrix was begun that is not complete. */
    boolean isOpen() {
        return open != null;
    }

    double[] megahertz() {
        return Arrays.copyOf(megahertz, size());
    }

    /** The line at which the matrix of each frequency begins. */
    int[] startLines() {
        return Arrays.copyOf(startLines, size());
    }

    double[][] matrices() {
        return matrices.toArray(double[][]::new);
    }

    /** Whether the words begin with a frequency that is not above the last one. */
    boolean fallsBack(String[] words) {
        return size() > 0 && options.unit().megahertz(lines.finite(words[0])) <= megahertz[size() - 1];
    }

    /** Takes the words of one line. */
    void take(String[] words) {
        boolean odd = words.length % 2 == 1;
        int from = 0;
        double[] matrix = open;
        if (matrix == null) {
            if (!odd) {
                throw lines.fault(words.length
                        + " numbers stand where a frequency should begin, which takes an odd count: a"
                        + " frequency and pairs. Is a value missing, or is the file not of " + layout.ports()
                        + " ports?");
            }
            matrix = begin(words[0]);
            from = 1;
        } else if (odd) {
            throw lines.fault(
                    "an odd count of numbers (" + words.length + ") stands within the matrix that began on line "
                            + startLines[size()] + ", after " + filledOfOpen()
                            + " entries. Is a value missing, or is the file not of " + layout.ports() + " ports?"
                            + portsThatWouldFit());
        }
        if (openFilled + words.length - from > matrix.length) {
            throw lines.fault(
                    "the matrix that began on line " + startLines[size()] + " has more than the " + matrix.length / 2
                            + " entries that " + layout.ports() + " ports have; is the file of more ports?");
        }
        for (int i = from; i < words.length; i++) {
            matrix[openFilled++] = lines.finite(words[i]);
        }
        if (openFilled == matrix.length) {
            keep(matrix);
        }
    }

    private String filledOfOpen() {
        return openFilled / 2 + " of its " + layout.numbers() / 2;
    }

    private double[] begin(String text) {
        int index = size();
        String written = TouchstoneLines.quoted(text) + " " + options.unit().symbol();
        double frequency = options.unit().megahertz(lines.finite(text));
        if (!(frequency >= 0 && Double.isFinite(frequency))) {
            throw lines.fault(
                    "the frequency " + written + " is " + frequency + " MHz; frequencies are finite and 0 or more");
        }
        if (index > 0 && !(frequency > megahertz[index - 1])) {
            throw lines.fault("the frequency " + written + " is not above the one before (line " + startLines[index - 1]
                    + "); frequencies must ascend without repeats");
        }
        if (!budget.take(layout.numbers())) {
            throw lines.fault("the network files of the upload hold more than " + budget.most()
                    + " numbers; send fewer frequencies or fewer ports");
        }
        if (index == megahertz.length) {
            megahertz = Arrays.copyOf(megahertz, 2 * index);
            startLines = Arrays.copyOf(startLines, 2 * index);
        }
        megahertz[index] = frequency;
        startLines[index] = Math.toIntExact(lines.number());
        double[] matrix = new double[layout.numbers()];
        open = matrix;
        openFilled = 0;
        return matrix;
    }

    /** A number of ports that the entries so far would complete, as a sentence; empty when there is none. */
    private String portsThatWouldFit() {
        int root = (int) Math.round(Math.sqrt(openFilled / 2.0));
        return root != layout.ports() && root > 0 && 2 * root * root == openFilled
                ? " The entries so far are those of " + root + " ports."
                : "";
    }

    private void keep(double[] matrix) {
        for (int i = 0; i < matrix.length; i += 2) {
            toRectangular(matrix, i);
        }
        matrices.add(layout.byRows(matrix));
        open = null;
    }

    private void toRectangular(double[] matrix, int i) {
        NumberFormat format = options.format();
        double magnitude =
                switch (format) {
                    case MA -> matrix[i];
                    case DB -> Decibels.amplitudeRatio(matrix[i]);
                    case RI -> Math.max(Math.abs(matrix[i]), Math.abs(matrix[i + 1]));
                };
        if (!(magnitude >= 0 && magnitude <= GREATEST_MAGNITUDE)) {
            throw lines.fault("entry " + (i / 2 + 1) + " of the matrix that ends here has the magnitude "
                    + (format == NumberFormat.DB ? matrix[i] + " dB" : magnitude) + "; a magnitude is 0 to "
                    + GREATEST_MAGNITUDE);
        }
        if (format == NumberFormat.RI) {
            return;
        }
        double radian = StrictMath.toRadians(matrix[i + 1]);
        matrix[i] = magnitude * StrictMath.cos(radian);
        matrix[i + 1] = magnitude * StrictMath.sin(radian);
    }

    /** Requires that the data end with a matrix. */
    void requireClosed() {
        if (open != null) {
            throw lines.fault("the data end within the matrix that began on line " + startLines[size()] + ", after "
                    + filledOfOpen() + " entries; was the file cut short, or is it not of " + layout.ports()
                    + " ports?" + portsThatWouldFit());
        }
    }
}
