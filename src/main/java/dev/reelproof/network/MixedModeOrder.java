package dev.reelproof.network;

import dev.reelproof.measurement.Conductor;
import dev.reelproof.measurement.End;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What the rows of a matrix are, as {@code [Mixed-Mode Order]} of a Touchstone file of version 2.0 says: one entry a row, {@code S3}
 * a port, {@code D1,2} and {@code C1,2} the two modes of a pair of ports.
 *
 * <p>Source: Touchstone File Format Specification, version 2.0 (from memory; that a pair's two ports have one reference R, the
 * differential mode then 2R and the common mode R/2, read in a discussion of the group that wrote it). Immutable.
 */
final class MixedModeOrder {
    /** A differential mode sees its two ports in series, a common one in parallel. */
    private static final double DIFFERENTIAL_PER_PORT = 2;

    private static final double COMMON_PER_PORT = 0.5;
    private static final Pattern ENTRY = Pattern.compile("([SDC])(\\d{1,3})(?:,(\\d{1,3}))?");

    private final List<Row> rows;

    /** A row: one port, or the mode of two ports. */
    private record Row(PortMode mode, int first, int second) {

        String words() {
            return mode == PortMode.SINGLE
                    ? "S" + first
                    : (mode == PortMode.DIFFERENTIAL ? "D" : "C") + first + "," + second;
        }

        boolean isOfTheSamePorts(Row other) {
            return first == other.first && second == other.second;
        }
    }

    private MixedModeOrder(List<Row> rows) {
        this.rows = List.copyOf(rows);
    }

    /**
     * Reads the value of the keyword.
     *
     * @param ports how many ports the file has
     * @throws NetworkException when it has not one entry a port, a port stands twice or not at all, or a mode lacks the other one
     */
    static MixedModeOrder read(String text, int ports, TouchstoneLines lines) {
        String[] words = text.isEmpty() ? new String[0] : TouchstoneLines.words(text);
        List<Row> rows = new ArrayList<>();
        for (String word : words) {
            rows.add(row(word, ports, lines));
        }
        if (rows.size() != ports) {
            throw lines.fault("[Mixed-Mode Order] has " + rows.size() + " entries for " + ports
                    + " ports; it has one for each row of the matrix, such as D1,2 C1,2");
        }
        Map<Integer, Row> byPort = new HashMap<>();
        for (Row row : rows) {
            claim(byPort, row.first, row, lines);
            if (row.mode != PortMode.SINGLE) {
                claim(byPort, row.second, row, lines);
            }
        }
        for (int port = 1; port <= ports; port++) {
            if (!byPort.containsKey(port)) {
                throw lines.fault("[Mixed-Mode Order] leaves out port " + port
                        + "; each port stands in one S entry, or in one D and one C entry");
            }
        }
        for (Row row : rows) {
            requireOther(row, rows, lines);
        }
        return new MixedModeOrder(rows);
    }

    private static Row row(String word, int ports, TouchstoneLines lines) {
        Matcher matcher = ENTRY.matcher(word.toUpperCase(Locale.ROOT));
        boolean single = word.toUpperCase(Locale.ROOT).startsWith("S");
        if (!matcher.matches() || single != (matcher.group(3) == null)) {
            throw lines.fault("[Mixed-Mode Order] has the entry " + TouchstoneLines.quoted(word)
                    + "; entries are such as S3, D1,2 and C1,2");
        }
        int first = Integer.parseInt(matcher.group(2));
        int second = single ? first : Integer.parseInt(matcher.group(3));
        for (int port : new int[] {first, second}) {
            if (!(port >= 1 && port <= ports)) {
                throw lines.fault("[Mixed-Mode Order] names port " + port + " in " + TouchstoneLines.quoted(word)
                        + "; the file has ports 1 to " + ports);
            }
        }
        if (!single && first == second) {
            throw lines.fault("[Mixed-Mode Order] names port " + first + " twice in " + TouchstoneLines.quoted(word)
                    + "; a mode is of two ports");
        }
        PortMode mode =
                single ? PortMode.SINGLE : "D".equals(matcher.group(1)) ? PortMode.DIFFERENTIAL : PortMode.COMMON;
        return new Row(mode, first, second);
    }

    /** A port may stand in one S entry, or in one D and one C entry of the same two ports. */
    private static void claim(Map<Integer, Row> byPort, int port, Row row, TouchstoneLines lines) {
        Row before = byPort.putIfAbsent(port, row);
        if (before != null && (before.mode == row.mode || !before.isOfTheSamePorts(row))) {
            throw lines.fault("[Mixed-Mode Order] names port " + port + " in " + before.words() + " and in "
                    + row.words()
                    + "; each port stands in one S entry, or in a D and a C entry of the same two ports in"
                    + " the same order");
        }
    }

    private static void requireOther(Row row, List<Row> rows, TouchstoneLines lines) {
        if (row.mode == PortMode.SINGLE) {
            return;
        }
        PortMode other = row.mode == PortMode.DIFFERENTIAL ? PortMode.COMMON : PortMode.DIFFERENTIAL;
        if (rows.stream().noneMatch(one -> one.mode == other && one.isOfTheSamePorts(row))) {
            throw lines.fault("[Mixed-Mode Order] has " + row.words() + " without "
                    + new Row(other, row.first, row.second).words() + "; a pair of ports has both modes");
        }
    }

    /**
     * The reference of each row, ohm, from those of the ports.
     *
     * @throws NetworkException when the two ports of a mode have different ones
     */
    double[] references(double[] ofPorts, TouchstoneLines lines) {
        double[] ofRows = new double[rows.size()];
        for (int i = 0; i < ofRows.length; i++) {
            Row row = rows.get(i);
            double ohm = ofPorts[row.first - 1];
            if (ohm != ofPorts[row.second - 1]) {
                throw lines.fault("ports " + row.first + " and " + row.second + " of " + row.words() + " have the"
                        + " reference impedances " + ohm + " and " + ofPorts[row.second - 1]
                        + " ohm; those of one pair must be equal");
            }
            ofRows[i] = switch (row.mode) {
                case SINGLE -> ohm;
                case DIFFERENTIAL -> ohm * DIFFERENTIAL_PER_PORT;
                case COMMON -> ohm * COMMON_PER_PORT;
            };
        }
        return ofRows;
    }

    /**
     * What the rows are connected to. A map that names conductors alone numbers the ports as the file does; one that names modes
     * numbers the rows.
     *
     * @param declared a map of as many ports as there are rows
     * @throws PortMapException when it says otherwise than the file
     */
    PortMap rowsOf(PortMap declared) {
        boolean byRow = declared.modePorts().stream().anyMatch(port -> !port.isOfConductors());
        return byRow ? checkedRows(declared) : ofConductors(declared);
    }

    private PortMap checkedRows(PortMap declared) {
        Map<List<Integer>, Integer> firstRow = new HashMap<>();
        for (int i = 0; i < rows.size(); i++) {
            Row row = rows.get(i);
            Port port = declared.port(i + 1);
            if (row.mode != port.mode()) {
                throw new PortMapException(
                        PortMapException.WHOLE,
                        "port " + (i + 1) + " is said to be " + port.mode().word()
                                + ", but [Mixed-Mode Order] of the file" + " says that this row is " + row.words());
            }
            Integer before = firstRow.putIfAbsent(Arrays.asList(row.first, row.second), i + 1);
            if (before != null
                    && (declared.port(before).end() != port.end()
                            || declared.port(before).pair() != port.pair())) {
                throw new PortMapException(
                        PortMapException.WHOLE,
                        "ports " + before + " and " + (i + 1) + " are the two modes of ports " + row.first + " and "
                                + row.second + " in the file, but are said to be at different places");
            }
        }
        return declared;
    }

    private PortMap ofConductors(PortMap declared) {
        Map<String, ModePort> places = new LinkedHashMap<>();
        for (ModePort port : declared.modePorts()) {
            places.put(key(port.end(), port.pair()), ModePort.ofModes(port.end(), port.pair(), null, null));
        }
        for (int i = 0; i < rows.size(); i++) {
            Row row = rows.get(i);
            Port one = declared.port(row.first);
            Port other = declared.port(row.second);
            if (one.end() != other.end() || one.pair() != other.pair()) {
                throw new PortMapException(
                        PortMapException.WHOLE,
                        "the file has " + row.words() + ", so that ports " + row.first + " and " + row.second
                                + " are one pair at one end; the map has port " + row.first + " at the " + one.place()
                                + " and port " + row.second + " at the " + other.place());
            }
            int number = i + 1;
            places.computeIfPresent(key(one.end(), one.pair()), (place, before) -> joined(before, row, number, one));
        }
        for (ModePort port : places.values()) {
            if (!port.isOfConductors() && (port.a() != null || port.b() != null)) {
                throw new PortMapException(
                        PortMapException.WHOLE,
                        "of pair " + port.pair() + " at the " + port.end().word()
                                + " end the file has one conductor as a port and the other in a mode");
            }
        }
        return declared.withModePorts(List.copyOf(places.values()));
    }

    private static String key(End end, int pair) {
        return end.word() + pair;
    }

    private static ModePort joined(ModePort place, Row row, int number, Port first) {
        boolean isA = first.conductor() == Conductor.A;
        Integer a = row.mode == PortMode.SINGLE && isA ? Integer.valueOf(number) : place.a();
        Integer b = row.mode == PortMode.SINGLE && !isA ? Integer.valueOf(number) : place.b();
        boolean differential = row.mode == PortMode.DIFFERENTIAL;
        return new ModePort(
                place.end(),
                place.pair(),
                a,
                b,
                differential ? Integer.valueOf(number) : place.differential(),
                row.mode == PortMode.COMMON ? Integer.valueOf(number) : place.common(),
                differential ? !isA : place.reversed());
    }
}
