package dev.reelproof.intake.lot;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.reelproof.intake.Faults;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.intake.IntakeException.Kind;
import dev.reelproof.intake.Words;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Objects;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.jspecify.annotations.Nullable;

/**
 * Reads reports of lots from CSV: columns by their names in the header, in any order, one row an input and one a sample.
 *
 * <p>Rows that follow each other with the same {@code id} tell of one lot. What is said of the lot as a whole stands in the first of
 * them, and may be repeated or left empty in the others; a row that is there twice counts once. A column {@code setting:<name>} holds a
 * setting: a word, a number, or a number and its unit with a blank between. Commas between columns, points in numbers, UTF-8.
 */
public final class LotCsv implements Iterator<NumberedReport> {
    private static final List<String> REQUIRED = List.of("id", "kind", "quantity", "quantityUnit");
    private static final List<String> OF_THE_LOT = List.of(
            "id",
            "plant",
            "kind",
            "quantity",
            "quantityUnit",
            "made",
            "step",
            "machine",
            "run",
            "line",
            "operator",
            "shift",
            "started",
            "finished");
    private static final List<String> TEXTS = List.of(
            "id",
            "plant",
            "kind",
            "made",
            "step",
            "machine",
            "run",
            "line",
            "operator",
            "shift",
            "started",
            "finished");
    private static final List<String> OF_AN_INPUT = List.of(
            "inputLot",
            "inputQuantity",
            "inputUnit",
            "from",
            "to",
            "positionUnit",
            "onParentFrom",
            "onParentTo",
            "onParentUnit");
    private static final List<String> OF_A_SAMPLE =
            List.of("sampleProperty", "sampleValue", "sampleUnit", "sampleAt", "sampleAtUnit", "sampleTaken");
    private static final String SETTING = "setting:";
    private static final List<String> KNOWN = Stream.of(
                    OF_THE_LOT, OF_AN_INPUT, OF_A_SAMPLE, List.of(SETTING + "<name>"))
            .flatMap(List::stream)
            .toList();
    private static final int MOST_ROWS = 20_000;
    private static final int DECIMAL_DIGITS = 64;

    private static final CSVFormat FORMAT = CSVFormat.DEFAULT
            .builder()
            .setIgnoreSurroundingSpaces(true)
            .setIgnoreEmptyLines(true)
            .get();
    private static final Pattern NUMBER = Pattern.compile("[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d{1,3})?");
    private static final Pattern WITH_UNIT = Pattern.compile("(\\S+)\\s+(\\S.*)");
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private final CSVParser parser;
    private final Iterator<CSVRecord> rows;
    private final List<String> header;
    private @Nullable Row ahead;
    private @Nullable NumberedReport last;
    private boolean ended;

    /** A row's cells by column, without the empty ones. */
    private record Row(int line, Map<String, String> cells, @Nullable String fault) {}

    /**
     * Reads the header.
     *
     * @throws IntakeException MALFORMED when there is none, CONTENT when its columns are not these
     */
    public LotCsv(InputStream body) {
        try {
            BufferedReader text = new BufferedReader(new InputStreamReader(
                    body,
                    StandardCharsets.UTF_8
                            .newDecoder()
                            .onMalformedInput(CodingErrorAction.REPORT)
                            .onUnmappableCharacter(CodingErrorAction.REPORT)));
            text.mark(1);
            if (text.read() != '\uFEFF') {
                text.reset();
            }
            parser = CSVParser.builder().setReader(text).setFormat(FORMAT).get();
            rows = parser.iterator();
            if (!rows.hasNext()) {
                throw IntakeException.of(
                        Kind.MALFORMED,
                        "lots:1",
                        "is empty; the first line names the columns: " + String.join(",", KNOWN));
            }
            header = rows.next().toList();
        } catch (IOException | UncheckedIOException e) {
            throw IntakeException.of(Kind.MALFORMED, "lots:1", "is not CSV in UTF-8: " + e.getMessage());
        }
        checkHeader();
        advance();
    }

    private void checkHeader() {
        Faults faults = new Faults();
        Set<String> seen = new HashSet<>();
        for (String column : header) {
            boolean isSetting = column.startsWith(SETTING) && column.length() > SETTING.length();
            if (!isSetting && !KNOWN.contains(column)) {
                faults.add("lots:1", "unknown column " + Words.quoted(column) + Words.suggestion(column, KNOWN));
            }
            if (!seen.add(column)) {
                faults.add("lots:1", "the column " + Words.quoted(column) + " is there twice");
            }
        }
        for (String column : REQUIRED) {
            if (!seen.contains(column)) {
                faults.add("lots:1", "the column '" + column + "' is missing");
            }
        }
        if (!seen.contains("made") && !seen.contains("finished")) {
            faults.add("lots:1", "the column 'made' is missing");
        }
        faults.refuseIfAny();
    }

    private void advance() {
        ahead = null;
        if (ended) {
            return;
        }
        int line = (int) parser.getCurrentLineNumber() + 1;
        try {
            if (rows.hasNext()) {
                ahead = row(rows.next());
            } else {
                ended = true;
            }
        } catch (IllegalStateException | UncheckedIOException e) {
            ended = true;
            last = NumberedReport.broken(line, "is not CSV in UTF-8, so nothing from here on was read: " + reason(e));
        }
    }

    private static String reason(RuntimeException e) {
        return String.valueOf(
                e.getCause() == null ? e.getMessage() : e.getCause().getMessage());
    }

    private Row row(CSVRecord record) {
        int line = (int) parser.getCurrentLineNumber();
        if (record.size() != header.size()) {
            return new Row(
                    line,
                    Map.of(),
                    "the row has " + record.size() + " columns where the header names " + header.size());
        }
        Map<String, String> cells = new LinkedHashMap<>();
        for (int i = 0; i < header.size(); i++) {
            String cell = record.get(i).strip();
            if (!cell.isEmpty()) {
                cells.put(header.get(i), cell);
            }
        }
        return new Row(line, cells, null);
    }

    @Override
    public boolean hasNext() {
        return ahead != null || last != null;
    }

    @Override
    public NumberedReport next() {
        if (ahead == null) {
            if (last == null) {
                throw new NoSuchElementException("there are no more rows");
            }
            NumberedReport given = last;
            last = null;
            return given;
        }
        Row first = ahead;
        List<Row> group = new ArrayList<>(List.of(first));
        advance();
        while (ahead != null && continues(first, ahead)) {
            group.add(ahead);
            advance();
        }
        return report(group);
    }

    private static boolean continues(Row first, Row row) {
        return first.fault() == null
                && row.fault() == null
                && first.cells().containsKey("id")
                && Objects.equals(first.cells().get("id"), row.cells().get("id"));
    }

    private static NumberedReport report(List<Row> group) {
        Row first = group.get(0);
        if (first.fault() != null) {
            return NumberedReport.broken(first.line(), first.fault());
        }
        if (group.size() > MOST_ROWS) {
            return NumberedReport.broken(first.line(), "the lot has more than " + MOST_ROWS + " rows");
        }
        for (Row row : group) {
            for (Map.Entry<String, String> cell : row.cells().entrySet()) {
                String told = first.cells().get(cell.getKey());
                boolean isOfTheLot =
                        OF_THE_LOT.contains(cell.getKey()) || cell.getKey().startsWith(SETTING);
                if (isOfTheLot && !cell.getValue().equals(told)) {
                    return NumberedReport.broken(
                            first.line(),
                            "line " + row.line() + " tells another '" + cell.getKey() + "' of the same lot ("
                                    + Words.quoted(cell.getValue())
                                    + "); its first line tells what holds for all of them");
                }
            }
        }
        try {
            return NumberedReport.of(first.line(), JSON.writeValueAsBytes(document(group)));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a row could not be written as JSON", e);
        }
    }

    private static ObjectNode document(List<Row> group) {
        Map<String, String> lot = group.get(0).cells();
        ObjectNode node = NODES.objectNode();
        for (String name : TEXTS) {
            if (lot.containsKey(name)) {
                node.put(name, lot.get(name));
            }
        }
        put(node, "quantity", lot, "quantity", "quantityUnit");
        ObjectNode settings = NODES.objectNode();
        lot.forEach((column, cell) -> {
            if (column.startsWith(SETTING)) {
                setting(settings, column.substring(SETTING.length()), cell);
            }
        });
        if (!settings.isEmpty()) {
            node.set("settings", settings);
        }
        ArrayNode inputs = node.putArray("inputs");
        ArrayNode samples = node.putArray("samples");
        // What is there of neither is as good as seen.
        Set<Map<String, String>> seen = new HashSet<>(Set.of(Map.of()));
        for (Row row : group) {
            if (seen.add(only(row.cells(), OF_AN_INPUT))) {
                inputs.add(input(row.cells()));
            }
            if (seen.add(only(row.cells(), OF_A_SAMPLE))) {
                samples.add(sample(row.cells()));
            }
        }
        return node;
    }

    private static Map<String, String> only(Map<String, String> cells, List<String> columns) {
        Map<String, String> found = new LinkedHashMap<>();
        columns.stream().filter(cells::containsKey).forEach(column -> found.put(column, cells.get(column)));
        return found;
    }

    private static ObjectNode input(Map<String, String> cells) {
        ObjectNode input = NODES.objectNode();
        if (cells.containsKey("inputLot")) {
            input.put("lot", cells.get("inputLot"));
        }
        put(input, "quantity", cells, "inputQuantity", "inputUnit");
        if (Stream.of("from", "to", "onParentFrom", "onParentTo").anyMatch(cells::containsKey)) {
            ObjectNode position = input.putObject("position");
            put(position, "from", cells, "from", "positionUnit");
            put(position, "to", cells, "to", "positionUnit");
            put(position, "onParentFrom", cells, "onParentFrom", "onParentUnit");
            put(position, "onParentTo", cells, "onParentTo", "onParentUnit");
        }
        return input;
    }

    private static ObjectNode sample(Map<String, String> cells) {
        ObjectNode sample = NODES.objectNode();
        if (cells.containsKey("sampleProperty")) {
            sample.put("property", cells.get("sampleProperty"));
        }
        if (cells.containsKey("sampleValue")) {
            number(sample, "value", cells.get("sampleValue"));
        }
        if (cells.containsKey("sampleUnit")) {
            sample.put("unit", cells.get("sampleUnit"));
        }
        put(sample, "at", cells, "sampleAt", "sampleAtUnit");
        if (cells.containsKey("sampleTaken")) {
            sample.put("taken", cells.get("sampleTaken"));
        }
        return sample;
    }

    /** A value with its unit, of what is there of both: what is missing is told when the document is read. */
    private static void put(ObjectNode node, String name, Map<String, String> cells, String value, String unit) {
        if (cells.containsKey(value)) {
            ObjectNode quantity = node.putObject(name);
            number(quantity, "value", cells.get(value));
            if (cells.containsKey(unit)) {
                quantity.put("unit", cells.get(unit));
            }
        }
    }

    private static void number(ObjectNode node, String name, String cell) {
        if (cell.length() <= DECIMAL_DIGITS && NUMBER.matcher(cell).matches()) {
            node.put(name, new BigDecimal(cell));
        } else {
            node.put(name, cell);
        }
    }

    private static void setting(ObjectNode settings, String name, String cell) {
        Matcher withUnit = WITH_UNIT.matcher(cell);
        if (NUMBER.matcher(cell).matches()) {
            number(settings, name, cell);
        } else if (withUnit.matches() && NUMBER.matcher(withUnit.group(1)).matches()) {
            ObjectNode quantity = settings.putObject(name);
            number(quantity, "value", withUnit.group(1));
            quantity.put("unit", withUnit.group(2));
        } else {
            settings.put(name, cell);
        }
    }
}
