package dev.reelproof.network;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Source: Touchstone File Format Specification, versions 1.1 and 2.0 (IBIS Open Forum). The rules were read in public secondary
 * texts or are from memory; the specification itself was not read.
 *
 * <p>Reads S-parameters as a stream, line by line. Pairs of numbers are never split over lines, so that a line with an odd
 * count of numbers begins a frequency and one with an even count goes on with it; that is how a wrong number of ports is found.
 * Data in mixed mode, and Y, Z, G and H parameters, are refused; noise data are passed over with a warning. One reader serves
 * all files of one upload and bounds how much they hold together.
 */
public final class TouchstoneReader {
    /** The most ports that a file may have. */
    public static final int MOST_PORTS = 64;

    /** The most numbers that the files of one upload may hold: 32 ports at some 4800 frequencies, 80 MB in memory. */
    public static final int MOST_NUMBERS = 10_000_000;

    private static final Pattern PORTS_IN_NAME = Pattern.compile("(?i).*\\.s(\\d{1,4})p");
    private static final Pattern KEYWORD = Pattern.compile("\\[([^\\]]*)\\](.*)");
    private static final Pattern NUMBER = Pattern.compile("[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d{1,4})?");
    private static final Pattern BLANKS = Pattern.compile("[ \\t\\f]+");
    private static final Pattern WHOLE = Pattern.compile("\\d{1,9}");
    private static final int LONGEST_NUMBER = 64;
    private static final int LONGEST_QUOTED = 40;
    private static final int NOISE_COLUMNS = 5;
    private static final int FIRST_CAPACITY = 256;
    private static final int NOT_STATED = -1;
    private static final double DECIBEL_BASE = 10;
    private static final double USUAL_OHM = 50;
    private static final double DECIBELS_PER_DECADE = 20;

    /**
     * A cable's entries are 1 at most, and no reference impedance comes near the ends here; what lies beyond is a fault of the
     * file that must not overflow into a figure. Common practice, no source.
     */
    private static final double GREATEST_MAGNITUDE = 1e6;

    private static final double LEAST_OHM = 1e-3;
    private static final double GREATEST_OHM = 1e6;

    /** What may follow data; every other keyword says how they are read and comes before. */
    private static final Set<String> AFTER_DATA =
            Set.of("number of noise frequencies", "begin information", "noise data", "end");

    /** Units of frequency by their names in lower case: how many make one MHz, or how many MHz one makes. */
    private enum FrequencyUnit {
        HZ("Hz", 1e6, 1),
        KHZ("kHz", 1e3, 1),
        MHZ("MHz", 1, 1),
        GHZ("GHz", 1, 1e3);

        private final String symbol;
        private final double perMegahertz;
        private final double megahertzEach;

        FrequencyUnit(String symbol, double perMegahertz, double megahertzEach) {
            this.symbol = symbol;
            this.perMegahertz = perMegahertz;
            this.megahertzEach = megahertzEach;
        }

        double megahertz(double value) {
            return value / perMegahertz * megahertzEach;
        }
    }

    private enum NumberFormat {
        MA,
        DB,
        RI
    }

    private enum MatrixForm {
        FULL,
        LOWER,
        UPPER
    }

    private final int mostNumbers;
    private long numbers;

    /** A reader of the files of one upload. */
    public TouchstoneReader() {
        this(MOST_NUMBERS);
    }

    TouchstoneReader(int mostNumbers) {
        this.mostNumbers = mostNumbers;
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
        return new OneFile(file, portsExpected, in).read();
    }

    /** The state of reading one file. */
    private final class OneFile {
        private final String file;
        private final BoundedLines lines;
        private final int portsExpected;
        private final int portsInName;
        private final List<String> warnings = new ArrayList<>();
        private final Map<String, Long> keywords = new HashMap<>();

        private boolean versionTwo;
        private boolean optionsRead;
        private FrequencyUnit unit = FrequencyUnit.GHZ;
        private NumberFormat format = NumberFormat.MA;
        private double ohm = USUAL_OHM;
        private int ports;
        private double[] reference;
        private MatrixForm form = MatrixForm.FULL;
        private boolean columnsFirst;
        private long frequenciesStated = NOT_STATED;
        private boolean inData;
        private boolean inNoise;
        private boolean inInformation;
        private boolean ended;
        private int referencesMissing;

        private double[] megahertz = new double[FIRST_CAPACITY];
        private int[] startLines = new int[FIRST_CAPACITY];
        private final List<double[]> matrices = new ArrayList<>();
        private double[] open;
        private int openFilled;

        OneFile(String file, int portsExpected, InputStream in) {
            this.file = file;
            this.lines = new BoundedLines(file, in);
            this.portsExpected = portsExpected;
            Matcher name = PORTS_IN_NAME.matcher(file);
            this.portsInName = name.matches() ? Integer.parseInt(name.group(1)) : NOT_STATED;
        }

        private NetworkException fault(String message) {
            return new NetworkException(file, Math.max(1, lines.number()), message);
        }

        NetworkData read() throws IOException {
            for (String line = lines.next(); line != null; line = lines.next()) {
                int comment = line.indexOf('!');
                String text = (comment < 0 ? line : line.substring(0, comment)).strip();
                if (!text.isEmpty()) {
                    take(text);
                }
            }
            finish();
            int size = matrices.size();
            double[] references = reference;
            if (references == null) {
                references = new double[ports];
                Arrays.fill(references, ohm);
            }
            return new NetworkData(
                    file,
                    "Touchstone " + (versionTwo ? "2.0" : "1") + ", S in " + format + ", " + unit.symbol,
                    ports,
                    Arrays.copyOf(megahertz, size),
                    Arrays.copyOf(startLines, size),
                    matrices.toArray(double[][]::new),
                    references,
                    warnings);
        }

        private void take(String text) {
            if (text.charAt(0) == '[') {
                keyword(text);
            } else if (inInformation) {
                return;
            } else if (ended) {
                throw fault("something follows [End]; a file ends there");
            } else if (text.charAt(0) == '#') {
                options(text.substring(1));
            } else if (referencesMissing > 0) {
                references(text);
            } else {
                data(text);
            }
        }

        private void options(String text) {
            if (optionsRead) {
                return; // the specification: option lines after the first are passed over
            }
            optionsRead = true;
            String[] words = split(text);
            for (int i = 0; i < words.length; i++) {
                String word = words[i].toUpperCase(Locale.ROOT);
                switch (word) {
                    case "HZ", "KHZ", "MHZ", "GHZ" -> unit = FrequencyUnit.valueOf(word);
                    case "MA", "DB", "RI" -> format = NumberFormat.valueOf(word);
                    case "S" -> {
                        // what is wanted
                    }
                    case "Y", "Z", "G", "H" -> throw fault("the file holds " + word
                            + "-parameters; export S-parameters (the option line then says 'S')");
                    case "R" -> {
                        if (i + 1 == words.length) {
                            throw fault(
                                    "the option line ends after 'R'; the reference impedance must follow, such as R 50");
                        }
                        ohm = resistance(words[++i]);
                        if (i + 1 < words.length && NUMBER.matcher(words[i + 1]).matches()) {
                            throw fault(
                                    "the option line gives more than one reference impedance; one file of version 2.0"
                                            + " with [Reference] can give one for each port");
                        }
                    }
                    default -> throw fault(
                            "the option line says " + quoted(words[i])
                                    + "; it is made of Hz, kHz, MHz or GHz, S, MA, DB or RI, and R with the reference impedance");
                }
            }
            if (!versionTwo) {
                ports = portsInName != NOT_STATED ? portsInName : portsExpected;
                requirePorts("the file's name");
            }
        }

        private void requirePorts(String whence) {
            if (!(ports >= 1 && ports <= MOST_PORTS)) {
                throw fault(whence + " says " + ports + " ports; 1 to " + MOST_PORTS + " are taken");
            }
        }

        private double resistance(String text) {
            double value = number(text);
            if (!(value >= LEAST_OHM && value <= GREATEST_OHM)) {
                throw fault("a reference impedance must be a positive resistance in ohm, " + LEAST_OHM + " to "
                        + GREATEST_OHM + ", not " + quoted(text));
            }
            return value;
        }

        private void keyword(String text) {
            Matcher matcher = KEYWORD.matcher(text);
            if (!matcher.matches()) {
                throw fault("a keyword begins here that no ']' closes");
            }
            String name = BLANKS.matcher(matcher.group(1).strip().toLowerCase(Locale.ROOT))
                    .replaceAll(" ");
            if (name.equals("two-port order")) {
                name = "two-port data order";
            }
            String value = matcher.group(2).strip();
            if (inInformation) {
                inInformation = !name.equals("end information");
                return;
            }
            if (name.equals("version")) {
                version(value);
                return;
            }
            if (!versionTwo) {
                throw fault("the keyword [" + quotable(matcher.group(1))
                        + "] needs [Version] 2.0 in the first line that is no comment");
            }
            if (ended) {
                throw fault("something follows [End]; a file ends there");
            }
            if (referencesMissing > 0) {
                throw fault("[Reference] lacks " + referencesMissing + " of its " + ports
                        + " impedances; it gives one for each port");
            }
            Long before = keywords.putIfAbsent(name, lines.number());
            if (before != null) {
                throw fault("[" + quotable(matcher.group(1)) + "] stands twice; it was given on line " + before);
            }
            if ((inData || inNoise) && !AFTER_DATA.contains(name)) {
                throw fault("[" + quotable(matcher.group(1))
                        + "] stands after data; what says how they are read comes before them");
            }
            switch (name) {
                case "number of ports" -> {
                    ports = (int) whole(name, value);
                    requirePorts("[Number of Ports]");
                    if (portsInName != NOT_STATED && portsInName != ports) {
                        throw fault("[Number of Ports] is " + ports + ", but the file's name says " + portsInName);
                    }
                }
                case "number of frequencies" -> frequenciesStated = whole(name, value);
                case "number of noise frequencies" -> whole(name, value);
                case "two-port data order" -> {
                    if (!value.equals("12_21") && !value.equals("21_12")) {
                        throw fault("[Two-Port Data Order] must be 12_21 or 21_12, not " + quoted(value));
                    }
                    columnsFirst = value.equals("21_12");
                }
                case "reference" -> {
                    requirePortsBefore("[Reference]");
                    reference = new double[ports];
                    referencesMissing = ports;
                    references(value);
                }
                case "matrix format" -> form = matrixForm(value);
                case "mixed-mode order" -> throw fault("the file holds mixed-mode data ([Mixed-Mode Order]); export"
                        + " single-ended S-parameters, from which the modes are formed here to the reference"
                        + " impedances of the limit set");
                case "begin information" -> inInformation = true;
                case "network data" -> {
                    requirePortsBefore("[Network Data]");
                    if (!optionsRead) {
                        throw missingOptions();
                    }
                    if (ports == 2 && !keywords.containsKey("two-port data order")) {
                        throw fault(
                                "a file of two ports needs [Two-Port Data Order] 12_21 or 21_12 before [Network Data]");
                    }
                    inData = true;
                }
                case "noise data" -> {
                    closeMatrix();
                    inNoise = true;
                    inData = false;
                    warnNoise();
                }
                case "end" -> {
                    closeMatrix();
                    ended = true;
                }
                default -> throw fault("unknown keyword [" + quotable(matcher.group(1)) + "]; known are [Version],"
                        + " [Number of Ports], [Two-Port Data Order], [Number of Frequencies],"
                        + " [Number of Noise Frequencies], [Reference], [Matrix Format], [Begin Information],"
                        + " [End Information], [Network Data], [Noise Data] and [End]");
            }
        }

        private void version(String value) {
            if (versionTwo || optionsRead || !keywords.isEmpty()) {
                throw fault("[Version] must be the first line that is no comment, and stand once");
            }
            if (!value.equals("2.0")) {
                throw fault("[Version] is " + quoted(value)
                        + "; 2.0 is read, and files of version 1, which have no [Version]");
            }
            versionTwo = true;
        }

        private void requirePortsBefore(String here) {
            if (!keywords.containsKey("number of ports")) {
                throw fault("[Number of Ports] is missing; it must stand before " + here);
            }
        }

        private long whole(String name, String value) {
            if (!WHOLE.matcher(value).matches()) {
                throw fault("[" + name + "] must be a whole number, not " + quoted(value));
            }
            return Long.parseLong(value);
        }

        private MatrixForm matrixForm(String value) {
            return switch (value.toLowerCase(Locale.ROOT)) {
                case "full" -> MatrixForm.FULL;
                case "lower" -> MatrixForm.LOWER;
                case "upper" -> MatrixForm.UPPER;
                default -> throw fault("[Matrix Format] must be Full, Lower or Upper, not " + quoted(value));
            };
        }

        private void references(String text) {
            for (String word : split(text)) {
                if (referencesMissing == 0) {
                    throw fault("[Reference] gives more than one impedance for each of the " + ports + " ports");
                }
                reference[ports - referencesMissing] = resistance(word);
                referencesMissing--;
            }
        }

        private void data(String text) {
            if (!optionsRead) {
                throw missingOptions();
            }
            if (inNoise) {
                return;
            }
            if (versionTwo && !inData) {
                throw fault("data stand before [Network Data], or after a keyword that is not known to have them");
            }
            String[] words = split(text);
            if (isNoiseOfVersionOne(words)) {
                inNoise = true;
                warnNoise();
                return;
            }
            boolean odd = words.length % 2 == 1;
            int from = 0;
            if (open == null) {
                if (!odd) {
                    throw fault(words.length
                            + " numbers stand where a frequency should begin, which takes an odd count: a"
                            + " frequency and pairs. Is a value missing, or is the file not of " + ports + " ports?");
                }
                begin(words[0]);
                from = 1;
            } else if (odd) {
                throw fault("an odd count of numbers (" + words.length
                        + ") stands within the matrix that began on line "
                        + startLines[matrices.size()] + ", after " + openFilled / 2 + " of its " + open.length / 2
                        + " entries. Is a value missing, or is the file not of " + ports + " ports?" + perhaps());
            }
            if (openFilled + words.length - from > open.length) {
                throw fault("the matrix that began on line " + startLines[matrices.size()] + " has more than the "
                        + open.length / 2 + " entries that " + ports + " ports have; is the file of more ports?");
            }
            for (int i = from; i < words.length; i++) {
                open[openFilled++] = number(words[i]);
            }
            if (openFilled == open.length) {
                keep();
            }
        }

        private NetworkException missingOptions() {
            return fault("the option line is missing: a line such as '# MHz S RI R 50' must stand before the data");
        }

        /** Noise data follow those of two ports when the frequency falls back: five columns, of which none is wanted here. */
        private boolean isNoiseOfVersionOne(String[] words) {
            return !versionTwo
                    && ports == 2
                    && open == null
                    && !matrices.isEmpty()
                    && words.length == NOISE_COLUMNS
                    && unit.megahertz(number(words[0])) <= megahertz[matrices.size() - 1];
        }

        private void warnNoise() {
            warnings.add("The noise data of " + file + " from line " + lines.number() + " were passed over.");
        }

        private void begin(String text) {
            int index = matrices.size();
            double frequency = unit.megahertz(number(text));
            if (!(frequency >= 0 && Double.isFinite(frequency))) {
                throw fault("the frequency " + quoted(text) + " " + unit.symbol + " is " + frequency
                        + " MHz; frequencies are finite and 0 or more");
            }
            if (index > 0 && !(frequency > megahertz[index - 1])) {
                throw fault("the frequency " + quoted(text) + " " + unit.symbol + " is not above the one before (line "
                        + startLines[index - 1] + "); frequencies must ascend without repeats");
            }
            int length = form == MatrixForm.FULL ? 2 * ports * ports : ports * (ports + 1);
            numbers += length;
            if (numbers > mostNumbers) {
                throw fault("the network files of the upload hold more than " + mostNumbers
                        + " numbers; send fewer frequencies or fewer ports");
            }
            if (index == megahertz.length) {
                megahertz = Arrays.copyOf(megahertz, 2 * index);
                startLines = Arrays.copyOf(startLines, 2 * index);
            }
            megahertz[index] = frequency;
            startLines[index] = Math.toIntExact(lines.number());
            open = new double[length];
            openFilled = 0;
        }

        /** A number of ports that the entries so far would make whole. */
        private String perhaps() {
            int root = (int) Math.round(Math.sqrt(openFilled / 2.0));
            return root != ports && root > 0 && 2 * root * root == openFilled
                    ? " The entries so far are those of " + root + " ports."
                    : "";
        }

        private void keep() {
            for (int i = 0; i < open.length; i += 2) {
                toRectangular(i);
            }
            matrices.add(byRows());
            open = null;
        }

        private void toRectangular(int i) {
            double size =
                    switch (format) {
                        case MA -> open[i];
                        case DB -> StrictMath.pow(DECIBEL_BASE, open[i] / DECIBELS_PER_DECADE);
                        case RI -> Math.max(Math.abs(open[i]), Math.abs(open[i + 1]));
                    };
            if (!(size >= 0 && size <= GREATEST_MAGNITUDE)) {
                throw fault("entry " + (i / 2 + 1) + " of the matrix that ends here has the magnitude "
                        + (format == NumberFormat.DB ? open[i] + " dB" : size) + "; a magnitude is 0 to "
                        + GREATEST_MAGNITUDE);
            }
            if (format == NumberFormat.RI) {
                return;
            }
            double radian = StrictMath.toRadians(open[i + 1]);
            open[i] = size * StrictMath.cos(radian);
            open[i + 1] = size * StrictMath.sin(radian);
        }

        /** The open matrix by rows. */
        private double[] byRows() {
            // Version 1 has S21 before S12 in a file of two ports; version 2 says which.
            boolean exchanged = ports == 2 && form == MatrixForm.FULL && (columnsFirst || !versionTwo);
            if (form == MatrixForm.FULL && !exchanged) {
                return open;
            }
            double[] whole = new double[2 * ports * ports];
            int next = 0;
            for (int row = 0; row < ports; row++) {
                int first = form == MatrixForm.UPPER ? row : 0;
                int last = form == MatrixForm.LOWER ? row : ports - 1;
                for (int column = first; column <= last; column++) {
                    double re = open[next++];
                    double im = open[next++];
                    put(whole, exchanged ? column : row, exchanged ? row : column, re, im);
                    if (form != MatrixForm.FULL) {
                        put(whole, column, row, re, im);
                    }
                }
            }
            return whole;
        }

        private void put(double[] whole, int row, int column, double re, double im) {
            whole[2 * (row * ports + column)] = re;
            whole[2 * (row * ports + column) + 1] = im;
        }

        private void closeMatrix() {
            if (open != null) {
                throw fault(
                        "the data end within the matrix that began on line " + startLines[matrices.size()] + ", after "
                                + openFilled / 2 + " of its " + open.length / 2
                                + " entries; was the file cut short, or is it not of " + ports + " ports?" + perhaps());
            }
        }

        private void finish() {
            closeMatrix();
            if (!optionsRead) {
                throw fault(
                        "the file ends without an option line; a Touchstone file has one, such as '# MHz S RI R 50'");
            }
            if (referencesMissing > 0) {
                throw fault("[Reference] lacks " + referencesMissing + " of its " + ports
                        + " impedances; it gives one for each port");
            }
            if (versionTwo && !ended) {
                throw fault("the file ends without [End]; was it cut short?");
            }
            if (matrices.isEmpty()) {
                throw fault("the file holds no network data");
            }
            if (frequenciesStated != NOT_STATED && frequenciesStated != matrices.size()) {
                throw fault(
                        "[Number of Frequencies] is " + frequenciesStated + ", but the file has " + matrices.size());
            }
        }

        private double number(String text) {
            double value =
                    text.length() <= LONGEST_NUMBER && NUMBER.matcher(text).matches()
                            ? Double.parseDouble(text)
                            : Double.NaN;
            if (!Double.isFinite(value)) {
                throw fault(quoted(text) + " is not a finite number such as -0.0123 or 1.5e-3");
            }
            return value;
        }
    }

    private static String[] split(String text) {
        String stripped = text.strip();
        return stripped.isEmpty() ? new String[0] : BLANKS.split(stripped);
    }

    private static String quoted(String text) {
        return "'" + quotable(text) + "'";
    }

    private static String quotable(String text) {
        String plain = text.replaceAll("[^ -~]", "?");
        return plain.length() <= LONGEST_QUOTED ? plain : plain.substring(0, LONGEST_QUOTED) + "…";
    }
}
