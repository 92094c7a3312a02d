package dev.reelproof.intake.result;

import dev.reelproof.intake.Faults;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.intake.IntakeException.Kind;
import dev.reelproof.intake.Part;
import dev.reelproof.intake.Words;
import dev.reelproof.measurement.Origin;
import dev.reelproof.measurement.Product;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import dev.reelproof.quantity.FrequencyGrid;
import dev.reelproof.quantity.ReadingUnit;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.jspecify.annotations.Nullable;

/**
 * Reads one CSV file of an upload: one row a value, columns by their names in the header, in any order.
 *
 * <p>Rows of one property, subject and unit that have a frequency make one sweep, in the order of the file. Commas between
 * columns, points in numbers, UTF-8 (with or without a byte order mark), lines ended by LF or CR LF.
 */
final class ResultCsv {
    /** The columns that the header must have, in the contract's order. */
    static final List<String> COLUMNS =
            List.of("property", "pair", "partner", "conductor", "end", "frequency", "frequencyUnit", "value", "unit");

    /** A column that the header may have: which sample. */
    static final String SAMPLE = "sample";

    /** A column that the header may have: the number of the reel, the same in every row. */
    static final String REEL = "reel";

    private static final CSVFormat FORMAT =
            CSVFormat.DEFAULT.builder().setIgnoreSurroundingSpaces(true).get();
    private static final byte[] BYTE_ORDER_MARK = {(byte) 0xEF, (byte) 0xBB, (byte) 0xBF};
    private static final int DECODED_AT_ONCE = 8192;
    private static final int LONGEST_NUMBER = 64;
    private static final int MOST_DIGITS = 6;
    private static final Pattern NUMBER = Pattern.compile("[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d+)?");
    private static final Pattern NOT_FINITE = Pattern.compile("(?i)[+-]?(nan|inf|infinity|∞|1\\.#.*)");

    private final String file;
    private final byte[] bytes;
    private final Measurements measurements;
    private final Faults faults;
    private final Map<Named, Rows> sweeps = new LinkedHashMap<>();
    private final Set<Named> refused = new HashSet<>();
    private final List<StatedReel> reels;
    private final Set<String> reelsHere = new HashSet<>();

    private ResultCsv(Part part, Measurements measurements, List<StatedReel> reels, Faults faults) {
        this.file = part.name();
        this.bytes = part.bytes();
        this.measurements = measurements;
        this.reels = reels;
        this.faults = faults;
    }

    /**
     * Reads a file into the measurements, and each reel that it names to the reels; faults of content are noted.
     *
     * @throws IntakeException MALFORMED when it is empty, not UTF-8 or not CSV
     */
    static void read(Part part, Measurements measurements, List<StatedReel> reels, Faults faults) {
        new ResultCsv(part, measurements, reels, faults).read();
    }

    /** The cells that say what a row's value belongs to, as written. */
    private record Named(
            String property, String pair, String partner, String conductor, String end, String sample, String unit) {}

    /** Rows of one sweep so far. */
    private static final class Rows {
        private static final int FIRST_CAPACITY = 64;

        private final Property property;
        private final Subject subject;
        private final ReadingUnit unit;
        private double[] megahertz = new double[FIRST_CAPACITY];
        private double[] sent = new double[FIRST_CAPACITY];
        private int[] lines = new int[FIRST_CAPACITY];
        private int count;
        private boolean broken;

        Rows(Property property, Subject subject, ReadingUnit unit) {
            this.property = property;
            this.subject = subject;
            this.unit = unit;
        }

        void add(double frequencyMegahertz, double value, int line) {
            if (count == sent.length) {
                megahertz = Arrays.copyOf(megahertz, 2 * count);
                sent = Arrays.copyOf(sent, 2 * count);
                lines = Arrays.copyOf(lines, 2 * count);
            }
            megahertz[count] = frequencyMegahertz;
            sent[count] = value;
            lines[count] = line;
            count++;
        }
    }

    private void read() {
        requireUtf8();
        int start = startsWithMark() ? BYTE_ORDER_MARK.length : 0;
        try (Reader reader = new InputStreamReader(
                        new ByteArrayInputStream(bytes, start, bytes.length - start), StandardCharsets.UTF_8);
                CSVParser parser =
                        CSVParser.builder().setFormat(FORMAT).setReader(reader).get()) {
            Iterator<CSVRecord> records = parser.iterator();
            if (!records.hasNext()) {
                throw IntakeException.of(
                        Kind.MALFORMED, file, "is empty; the first line must be " + String.join(",", COLUMNS));
            }
            Optional<Map<String, Integer>> columns = header(records.next(), (int) parser.getCurrentLineNumber());
            if (columns.isEmpty()) {
                return;
            }
            if (!records.hasNext()) {
                faults.add(file + ":1", "has a header and no rows; leave the file out or give a row for each value");
            }
            while (records.hasNext()) {
                CSVRecord record = records.next();
                row(record, columns.get(), (int) parser.getCurrentLineNumber());
            }
        } catch (UncheckedIOException | IOException e) {
            throw IntakeException.of(Kind.MALFORMED, file, "is not CSV: " + e.getMessage());
        }
        sweeps.values().forEach(this::close);
    }

    private boolean startsWithMark() {
        return bytes.length >= BYTE_ORDER_MARK.length
                && Arrays.equals(bytes, 0, BYTE_ORDER_MARK.length, BYTE_ORDER_MARK, 0, BYTE_ORDER_MARK.length);
    }

    private void requireUtf8() {
        CharsetDecoder decoder = StandardCharsets.UTF_8
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT);
        ByteBuffer in = ByteBuffer.wrap(bytes);
        CharBuffer out = CharBuffer.allocate(DECODED_AT_ONCE);
        CoderResult result = CoderResult.OVERFLOW;
        while (result.isOverflow()) {
            out.clear();
            result = decoder.decode(in, out, true);
        }
        if (result.isError()) {
            int line = 1;
            for (int i = 0; i < in.position(); i++) {
                if (bytes[i] == '\n') {
                    line++;
                }
            }
            throw IntakeException.of(
                    Kind.MALFORMED,
                    file + ":" + line,
                    "is not text in UTF-8; save the file as UTF-8 and send it again");
        }
    }

    private Optional<Map<String, Integer>> header(CSVRecord header, int line) {
        String where = file + ":" + line;
        int before = faults.count();
        List<String> known = new ArrayList<>(COLUMNS);
        known.add(SAMPLE);
        known.add(REEL);
        if (header.size() == 1) {
            String whole = header.get(0);
            if (whole.indexOf(';') >= 0 || whole.indexOf('\t') >= 0) {
                faults.add(where, "the columns must be separated by commas, not by semicolons or tabs");
                return Optional.empty();
            }
        }
        Map<String, Integer> columns = new HashMap<>();
        for (int i = 0; i < header.size(); i++) {
            String name = header.get(i);
            if (name.isEmpty()) {
                faults.add(where, "column " + (i + 1) + " has no name");
            } else if (!known.contains(name)) {
                faults.add(where, "unknown column " + Words.quoted(name) + Words.suggestion(name, known));
            } else if (columns.put(name, i) != null) {
                faults.add(where, "column '" + name + "' stands twice");
            }
        }
        for (String name : COLUMNS) {
            if (!columns.containsKey(name)) {
                faults.add(
                        where,
                        "column '" + name + "' is missing; the header must be " + String.join(",", COLUMNS)
                                + " in any order");
            }
        }
        return faults.count() == before ? Optional.of(columns) : Optional.empty();
    }

    private void row(CSVRecord record, Map<String, Integer> columns, int line) {
        String where = file + ":" + line;
        if (record.size() != columns.size()) {
            faults.add(
                    where,
                    "the row has " + record.size() + " columns where the header has " + columns.size()
                            + "; write decimals with a point, and quote a text that holds a comma");
            return;
        }
        if (columns.containsKey(REEL)) {
            String reel = cell(record, columns, REEL);
            if (!reel.isBlank() && reelsHere.add(reel)) {
                reels.add(new StatedReel(where, reel));
            }
        }
        Named named = new Named(
                cell(record, columns, "property"),
                cell(record, columns, "pair"),
                cell(record, columns, "partner"),
                cell(record, columns, "conductor"),
                cell(record, columns, "end"),
                columns.containsKey(SAMPLE) ? cell(record, columns, SAMPLE) : "",
                cell(record, columns, "unit"));
        if (refused.contains(named)) {
            return; // told once, at its first row
        }
        Rows rows = sweeps.get(named);
        if (rows == null) {
            Optional<Rows> opened = open(named, where);
            if (opened.isEmpty()) {
                refused.add(named);
                return;
            }
            rows = opened.get();
        }
        String frequency = cell(record, columns, "frequency");
        String frequencyUnit = cell(record, columns, "frequencyUnit");
        Optional<Double> value = number("value", cell(record, columns, "value"), where);
        if (frequency.isEmpty()) {
            if (!frequencyUnit.isEmpty()) {
                faults.add(where, "frequencyUnit is given without a frequency; give both or neither");
            } else if (value.isPresent()) {
                measurements.addReading(
                        rows.property, rows.subject, value.get(), rows.unit, new Origin.Lines(file, new int[] {line}));
            }
            return;
        }
        if (!rows.property.isSweep()) {
            faults.add(where, rows.property + " is not measured against frequency; leave frequency and its unit empty");
            return;
        }
        Optional<Double> megahertz = megahertz(frequency, frequencyUnit, where);
        sweeps.putIfAbsent(named, rows);
        if (value.isEmpty() || megahertz.isEmpty()) {
            rows.broken = true;
            return;
        }
        if (rows.count > 0 && !rows.broken && !(megahertz.get() > rows.megahertz[rows.count - 1])) {
            faults.add(
                    where,
                    "frequency " + frequency + " " + frequencyUnit + " is not above the one before ("
                            + rows.megahertz[rows.count - 1] + " MHz, line " + rows.lines[rows.count - 1]
                            + "); the frequencies of a sweep must ascend without repeats");
            rows.broken = true; // one fault a sweep: the rows after it would all follow suit
        }
        rows.add(megahertz.get(), value.get(), line);
    }

    private static String cell(CSVRecord record, Map<String, Integer> columns, String name) {
        return record.get(Objects.requireNonNull(columns.get(name), "the header was seen to name the column"));
    }

    private Optional<Rows> open(Named named, String where) {
        int before = faults.count();
        Optional<Property> property = named.property().isEmpty()
                ? missing("property", where)
                : faults.attempt(where, () -> Measurements.property(named.property()));
        Integer pair = ordinal("pair", named.pair(), where);
        Integer partner = ordinal("partner", named.partner(), where);
        Integer sample = ordinal(SAMPLE, named.sample(), where);
        if (named.unit().isEmpty()) {
            missing("unit", where);
        }
        if (faults.count() > before) {
            return Optional.empty();
        }
        Optional<Subject> subject = faults.attempt(
                where,
                () -> new Subject(
                        pair,
                        partner,
                        named.conductor().isEmpty() ? null : Measurements.conductor(named.conductor()),
                        named.end().isEmpty() ? null : Measurements.end(named.end()),
                        sample));
        Optional<ReadingUnit> unit = faults.attempt(where, () -> measurements.unit(property.get(), named.unit()));
        return unit.isPresent() && subject.isPresent()
                ? Optional.of(new Rows(property.get(), subject.get(), unit.get()))
                : Optional.empty();
    }

    private <T> Optional<T> missing(String column, String where) {
        faults.add(where, column + " is empty; every row needs one");
        return Optional.empty();
    }

    private @Nullable Integer ordinal(String column, String text, String where) {
        if (text.isEmpty()) {
            return null;
        }
        boolean digits = text.length() <= MOST_DIGITS && text.chars().allMatch(c -> c >= '0' && c <= '9');
        int number = digits ? Integer.parseInt(text) : 0;
        if (!(number >= 1 && number <= Product.MOST_PAIRS)) {
            faults.add(
                    where,
                    column + " must be a whole number from 1 to " + Product.MOST_PAIRS + ", not " + Words.quoted(text));
            return null;
        }
        return number;
    }

    private Optional<Double> megahertz(String frequency, String unit, String where) {
        if (unit.isEmpty()) {
            faults.add(where, "frequencyUnit is empty; give Hz, kHz, MHz or GHz");
            return Optional.empty();
        }
        return number("frequency", frequency, where)
                .flatMap(number -> faults.attempt(where, () -> {
                    double megahertz = FrequencyGrid.megahertz(number, unit);
                    if (!(megahertz > 0 && Double.isFinite(megahertz))) {
                        throw new IllegalArgumentException(
                                "frequency must be positive and finite, not " + frequency + " " + unit);
                    }
                    return megahertz;
                }));
    }

    private Optional<Double> number(String column, String text, String where) {
        if (text.isEmpty()) {
            return missing(column, where);
        }
        if (text.length() <= LONGEST_NUMBER && NUMBER.matcher(text).matches()) {
            double number = Double.parseDouble(text);
            if (Double.isFinite(number)) {
                return Optional.of(number);
            }
            faults.add(where, column + " " + text + " is too large; numbers must be finite");
        } else if (NOT_FINITE.matcher(text).matches()) {
            faults.add(where, column + " is " + Words.quoted(text) + "; numbers must be finite");
        } else {
            faults.add(
                    where,
                    column + " " + Words.quoted(text)
                            + " is not a number; write it with a decimal point and without thousands separators,"
                            + " such as 1234.5");
        }
        return Optional.empty();
    }

    private void close(Rows rows) {
        if (rows.broken) {
            return;
        }
        measurements.addSweep(
                rows.property,
                rows.subject,
                FrequencyGrid.ofMegahertz(Arrays.copyOf(rows.megahertz, rows.count)),
                Arrays.copyOf(rows.sent, rows.count),
                rows.unit,
                new Origin.Lines(file, Arrays.copyOf(rows.lines, rows.count)));
    }
}
