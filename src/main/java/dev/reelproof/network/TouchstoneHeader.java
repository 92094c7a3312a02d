package dev.reelproof.network;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** What a Touchstone file says of how its data are read: version, option line, and the keywords of version 2.0. */
final class TouchstoneHeader {
    private static final Pattern PORTS_IN_NAME = Pattern.compile("(?i).*\\.s(\\d{1,4})p");
    private static final int NOT_STATED = -1;
    private static final String VERSION_TWO = "2.0";
    private static final String ROWS_FIRST = "12_21";
    private static final String COLUMNS_FIRST = "21_12";
    private static final String NUMBER_OF_PORTS = "number of ports";

    private final TouchstoneLines lines;
    private final int portsExpected;
    private final int portsInName;
    /** The line of each keyword so far. */
    private final Map<String, Long> keywords = new HashMap<>();

    private boolean versionTwo;
    /** Absent until it was read. */
    private @Nullable OptionLine options;

    private int ports;
    /** Of each port; absent where the option line gives one for all. */
    private double @Nullable [] reference;

    private int referencesMissing;
    /** Absent where each row is a port. */
    private @Nullable MixedModeOrder order;

    private MatrixLayout.Form form = MatrixLayout.Form.FULL;
    private boolean columnsFirst;
    private int frequenciesStated = NOT_STATED;

    /**
     * The header of a file.
     *
     * @param portsExpected the number of ports where neither name nor file states one
     */
    TouchstoneHeader(TouchstoneLines lines, int portsExpected) {
        this.lines = lines;
        this.portsExpected = portsExpected;
        Matcher name = PORTS_IN_NAME.matcher(lines.file());
        this.portsInName = name.matches() ? Integer.parseInt(name.group(1)) : NOT_STATED;
    }

    boolean isVersionTwo() {
        return versionTwo;
    }

    int ports() {
        return ports;
    }

    /** The option line, which was asked for before. */
    OptionLine options() {
        return Objects.requireNonNull(options, "an option line stands before data");
    }

    /** Version, format and unit in words. */
    String words() {
        return "Touchstone " + (versionTwo ? VERSION_TWO : "1") + ", S in "
                + options().format() + ", " + options().unit().symbol();
    }

    /** The order of the entries. Version 1 has S21 before S12 in a file of two ports; version 2.0 says which. */
    MatrixLayout layout() {
        boolean exchanged = ports == 2 && form == MatrixLayout.Form.FULL && (columnsFirst || !versionTwo);
        return new MatrixLayout(ports, form, exchanged);
    }

    /** The reference impedance of each row, ohm. */
    double[] referenceOhm() {
        double[] ofPorts = reference;
        if (ofPorts == null) {
            ofPorts = new double[ports];
            Arrays.fill(ofPorts, options().ohm());
        }
        return order == null ? ofPorts : order.references(ofPorts, lines);
    }

    /** What the rows are, where they are modes. */
    Optional<MixedModeOrder> order() {
        return Optional.ofNullable(order);
    }

    /** Takes an option line without its sign; those after the first are passed over, as the specification says. */
    void option(String text) {
        if (options != null) {
            return;
        }
        options = OptionLine.read(text, lines);
        if (!versionTwo) {
            ports = portsInName != NOT_STATED ? portsInName : portsExpected;
            requirePossiblePorts("the file's name");
        }
    }

    private void requirePossiblePorts(String whence) {
        if (!(ports >= 1 && ports <= TouchstoneReader.MOST_PORTS)) {
            throw lines.fault(whence + " says " + ports + " ports; 1 to " + TouchstoneReader.MOST_PORTS + " are taken");
        }
    }

    void version(String value) {
        if (versionTwo || options != null || !keywords.isEmpty()) {
            throw lines.fault("[Version] must be the first line that is no comment, and stand once");
        }
        if (!value.equals(VERSION_TWO)) {
            throw lines.fault("[Version] is " + TouchstoneLines.quoted(value)
                    + "; 2.0 is read, and files of version 1, which have no [Version]");
        }
        versionTwo = true;
    }

    void requireVersionTwo(Keyword keyword) {
        if (!versionTwo) {
            throw lines.fault(
                    "the keyword " + keyword.quoted() + " needs [Version] 2.0 in the first line that is no comment");
        }
    }

    void requireFirst(Keyword keyword) {
        Long before = keywords.putIfAbsent(keyword.name(), lines.number());
        if (before != null) {
            throw lines.fault(keyword.quoted() + " stands twice; it was given on line " + before);
        }
    }

    /** Takes a keyword that says how data are read. */
    void take(Keyword keyword) {
        String value = keyword.value();
        switch (keyword.name()) {
            case NUMBER_OF_PORTS -> numberOfPorts(lines.whole(keyword.name(), value));
            case "number of frequencies" -> frequenciesStated = lines.whole(keyword.name(), value);
            case "number of noise frequencies" -> lines.whole(keyword.name(), value);
            case Keyword.TWO_PORT_DATA_ORDER -> columnsFirst = isColumnsFirst(value);
            case "reference" -> {
                requirePortsBefore("[Reference]");
                reference = new double[ports];
                referencesMissing = ports;
                references(value);
            }
            case "matrix format" -> form = matrixForm(value);
            case "mixed-mode order" -> {
                requirePortsBefore("[Mixed-Mode Order]");
                order = MixedModeOrder.read(value, ports, lines);
            }
            default -> throw lines.fault("unknown keyword " + keyword.quoted() + "; known are [Version],"
                    + " [Number of Ports], [Two-Port Data Order], [Number of Frequencies],"
                    + " [Number of Noise Frequencies], [Reference], [Matrix Format], [Mixed-Mode Order],"
                    + " [Begin Information], [End Information], [Network Data], [Noise Data] and [End]");
        }
    }

    private void numberOfPorts(int stated) {
        ports = stated;
        requirePossiblePorts("[Number of Ports]");
        if (portsInName != NOT_STATED && portsInName != ports) {
            throw lines.fault("[Number of Ports] is " + ports + ", but the file's name says " + portsInName);
        }
    }

    private boolean isColumnsFirst(String value) {
        if (!value.equals(ROWS_FIRST) && !value.equals(COLUMNS_FIRST)) {
            throw lines.fault("[Two-Port Data Order] must be 12_21 or 21_12, not " + TouchstoneLines.quoted(value));
        }
        return value.equals(COLUMNS_FIRST);
    }

    private MatrixLayout.Form matrixForm(String value) {
        return switch (value.toLowerCase(Locale.ROOT)) {
            case "full" -> MatrixLayout.Form.FULL;
            case "lower" -> MatrixLayout.Form.LOWER;
            case "upper" -> MatrixLayout.Form.UPPER;
            default -> throw lines.fault(
                    "[Matrix Format] must be Full, Lower or Upper, not " + TouchstoneLines.quoted(value));
        };
    }

    private void requirePortsBefore(String here) {
        if (!keywords.containsKey(NUMBER_OF_PORTS)) {
            throw lines.fault("[Number of Ports] is missing; it must stand before " + here);
        }
    }

    /** Whether [Reference] goes on in the lines that follow. */
    boolean lacksReferences() {
        return referencesMissing > 0;
    }

    /** Takes impedances of [Reference], which may stand on several lines. */
    void references(String text) {
        double[] each = Objects.requireNonNull(reference, "[Reference] came before its impedances");
        for (String word : TouchstoneLines.words(text)) {
            if (referencesMissing == 0) {
                throw lines.fault("[Reference] gives more than one impedance for each of the " + ports + " ports");
            }
            each[ports - referencesMissing] = lines.referenceOhm(word);
            referencesMissing--;
        }
    }

    void requireWholeReferences() {
        if (lacksReferences()) {
            throw lines.fault("[Reference] lacks " + referencesMissing + " of its " + ports
                    + " impedances; it gives one for each port");
        }
    }

    /** Requires all that [Network Data] needs before it. */
    void requireReadyForNetworkData() {
        requirePortsBefore("[Network Data]");
        requireOptions();
        if (ports == 2 && !keywords.containsKey(Keyword.TWO_PORT_DATA_ORDER)) {
            throw lines.fault("a file of two ports needs [Two-Port Data Order] 12_21 or 21_12 before [Network Data]");
        }
        requireWholeReferences();
        referenceOhm();
    }

    /** Requires the option line before data. */
    void requireOptions() {
        if (options == null) {
            throw lines.fault(
                    "the option line is missing: a line such as '# MHz S RI R 50' must stand before the data");
        }
    }

    /** Requires at the end of the file that it had an option line. */
    void requireOptionsAtEnd() {
        if (options == null) {
            throw lines.fault(
                    "the file ends without an option line; a Touchstone file has one, such as '# MHz S RI R 50'");
        }
    }

    /** Requires as many frequencies as the file states, where it does. */
    void requireFrequencies(int found) {
        if (frequenciesStated != NOT_STATED && frequenciesStated != found) {
            throw lines.fault("[Number of Frequencies] is " + frequenciesStated + ", but the file has " + found);
        }
    }
}
