package dev.reelproof.pdf;

import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.certificate.CertificateContent.Instrument;
import dev.reelproof.certificate.CertificateContent.Plot;
import dev.reelproof.certificate.CertificateContent.Quantity;
import dev.reelproof.certificate.CertificateContent.Row;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.apache.pdfbox.pdmodel.PDDocument;

/**
 * Draws a certificate: facts, verdict and the table of requirements first, then the plots.
 *
 * <p>What it must carry follows the list of ISO/IEC 17025:2017, 7.8.2.1 (read): title, plant and address, an identification on
 * each page and a clear end, customer, item, method, dates, results with units, "relates only to the item tested", who authorises.
 */
public final class CertificatePdf {
    private static final int MOST_PAGES = 3;

    private static final float MARGIN = 42;
    private static final float RIGHT = Sheet.WIDTH - MARGIN;
    private static final float BODY = RIGHT - MARGIN;
    private static final float TOP = 40;
    private static final float BOTTOM = Sheet.HEIGHT - 46;
    private static final float FOOT = Sheet.HEIGHT - 28;
    private static final float GUTTER = 18;
    private static final float COLUMN = (BODY - GUTTER) / 2;
    private static final float FACT_LABEL = 62;
    private static final float FACT_SIZE = 7.8f;
    private static final float LEAST_FACT_SIZE = 5.6f;
    private static final int FACT_LINES = 3;
    private static final int MOST_FACT_LINES = 8;
    private static final float NOTE_SIZE = 6.3f;
    private static final float LINE = 1.28f;
    private static final float CELL = 3;
    private static final int MOST_NOTE_LINES = 6;
    private static final float PLOTS_HEAD = 12;
    private static final char NO_BREAK_SPACE = '\u00a0';
    private static final int SHORT_RECORD = 13;

    /** How tightly table and plots are set; the first that keeps the certificate within its pages is taken. */
    private enum Density {
        ROOMY(7, 2, 3),
        DENSE(6.2f, 2, 4),
        TIGHT(5.4f, 3, 5);

        private final float size;
        private final int plotsAcross;
        private final int plotsDown;

        Density(float size, int plotsAcross, int plotsDown) {
            this.size = size;
            this.plotsAcross = plotsAcross;
            this.plotsDown = plotsDown;
        }
    }

    /** A column of the table: its heading, where it ends or begins, and whether its figures stand right. */
    private enum Column {
        REQUIREMENT("Requirement", 0, 112, false),
        LIMIT("Limit", 112, 107, false),
        WORST("Worst", 219, 38, true),
        THERE("Limit there", 257, 40, true),
        MARGIN_THERE("Margin", 297, 36, true),
        UNIT("Unit", 333, 45, false),
        WHERE("Where", 378, 65, false),
        POINTS("Points", 443, 28, true),
        OUTCOME("Result", 471, 40, true);

        private final String heading;
        private final float offset;
        private final float width;
        private final boolean right;

        Column(String heading, float offset, float width, boolean right) {
            this.heading = heading;
            this.offset = offset;
            this.width = width;
            this.right = right;
        }

        private String cell(Row row) {
            return switch (this) {
                case REQUIREMENT -> row.title();
                case LIMIT -> limit(row);
                case WORST -> row.value();
                case THERE -> row.limitThere();
                case MARGIN_THERE -> row.margin();
                case UNIT -> together(row.unit());
                case WHERE -> row.where().replace(" MHz", together(" MHz")).replace(" kHz", together(" kHz"));
                case POINTS -> Integer.toString(row.points());
                case OUTCOME -> row.outcome().replace('-', ' ');
            };
        }
    }

    /** The limit with neither its unit nor its range broken over two lines. */
    private static String limit(Row row) {
        String limit = row.limit().replace(row.unit(), together(row.unit()));
        int range = limit.lastIndexOf(", ") + 2;
        return range < 2 ? limit : limit.substring(0, range) + together(limit.substring(range));
    }

    private static String together(String words) {
        return words.replace(' ', NO_BREAK_SPACE);
    }

    private final CertificateContent content;
    private final Density density;
    private final PDDocument document;
    private final Type type;
    private final List<Sheet> sheets = new ArrayList<>();
    private Sheet sheet;
    private float y;

    private CertificatePdf(CertificateContent content, Density density, PDDocument document) throws IOException {
        this.content = content;
        this.density = density;
        this.document = document;
        this.type = Type.embeddedIn(document);
    }

    /**
     * The certificate as PDF/A-3b; the same content gives the same bytes under one version of Java and of this program.
     *
     * <p>One to three pages of A4. Only a content whose table alone fills more is given more pages: nothing is left out.
     */
    public static byte[] render(CertificateContent content) {
        byte[] bytes = null;
        try {
            for (Density density : Density.values()) {
                try (PDDocument document = new PDDocument()) {
                    new CertificatePdf(content, density, document).draw();
                    ByteArrayOutputStream out = new ByteArrayOutputStream();
                    document.save(out);
                    bytes = out.toByteArray();
                    if (document.getNumberOfPages() <= MOST_PAGES) {
                        return bytes;
                    }
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException("certificate " + content.number() + " cannot be drawn", e);
        }
        return bytes;
    }

    private void draw() throws IOException {
        ArchivalForm.describe(document, content, type);
        newSheet();
        header();
        facts();
        verdict();
        table();
        notes();
        authorisation();
        plots();
        end();
        footers();
        for (Sheet one : sheets) {
            one.close();
        }
    }

    private void newSheet() throws IOException {
        sheet = new Sheet(document, type);
        sheets.add(sheet);
        y = TOP;
        if (sheets.size() > 1) {
            sheet.text(firstLine(content.plant().name(), NOTE_SIZE + 1, COLUMN), MARGIN, y, NOTE_SIZE + 1, Ink.MUTED);
            String reel = firstLine("Test certificate, reel " + content.reel(), NOTE_SIZE + 1, COLUMN);
            sheet.textLeftOf(reel, RIGHT, y, NOTE_SIZE + 1, Ink.MUTED);
            y += 5;
            sheet.line(MARGIN, y, RIGHT, y, Ink.RULE, 0.6f);
            y += 12;
        }
    }

    private String firstLine(String text, float size, float width) {
        return type.wrap(text, size, width, 1).get(0);
    }

    /** Goes to a new sheet when the height is not left on this one. */
    private boolean need(float height) throws IOException {
        if (y + height <= BOTTOM) {
            return false;
        }
        newSheet();
        return true;
    }

    private void header() throws IOException {
        float start = y;
        float left = start + 8;
        for (String line : type.wrap(content.plant().name(), 12, COLUMN, 2)) {
            sheet.bold(line, MARGIN, left, 12, Ink.TEXT);
            left += 13;
        }
        for (String address : content.plant().address()) {
            for (String line : type.wrap(address, FACT_SIZE, COLUMN, 2)) {
                sheet.text(line, MARGIN, left, FACT_SIZE, Ink.MUTED);
                left += FACT_SIZE * LINE;
            }
        }
        float right = start + 10;
        sheet.boldLeftOf("Test certificate", RIGHT, right, 17, Ink.ACCENT);
        right += 17;
        sheet.boldLeftOf(content.number(), RIGHT, right, 11, Ink.TEXT);
        right += 12;
        sheet.textLeftOf(
                "Issue " + content.issue() + ", issued " + time(content.issued()), RIGHT, right, FACT_SIZE, Ink.MUTED);
        y = Math.max(left, right + FACT_SIZE * LINE) - 2;
        sheet.line(MARGIN, y, RIGHT, y, Ink.ACCENT, 1.4f);
        y += 14;
    }

    private void facts() throws IOException {
        float start = y;
        fact("Customer", or(content.customer(), "not stated"), MARGIN);
        fact("Order", or(content.order(), "not stated"), MARGIN);
        fact("Reel", content.reel(), MARGIN);
        fact("Product", content.product().code(), MARGIN);
        fact("Description", or(content.product().description(), "not stated"), MARGIN);
        fact("Conductors", conductors(), MARGIN);
        fact("Length", length(), MARGIN);
        float left = y;
        y = start;
        float second = MARGIN + COLUMN + GUTTER;
        fact("Limit set", content.limits().title(), second);
        fact(
                "Revision",
                content.limits().revision() + ", effective " + content.limits().effective() + " ("
                        + content.limits().id() + ")",
                second);
        fact("Referred to", reference(), second);
        fact("Tested", tested(), second);
        fact("Cable at", temperature(), second);
        fact("Bay", or(content.conditions().station(), "not stated"), second);
        fact("Technician", or(content.conditions().technician(), "not stated"), second);
        fact("Equipment", equipment(), second);
        y = Math.max(left, y) + 4;
    }

    private static String or(String text, String otherwise) {
        return text == null || text.isBlank() ? otherwise : text;
    }

    /** A label and its text; a long text wraps, then shrinks. */
    private void fact(String label, String text, float x) throws IOException {
        float width = COLUMN - FACT_LABEL;
        float size = FACT_SIZE;
        while (size > LEAST_FACT_SIZE && type.wrap(text, size, width).size() > FACT_LINES) {
            size -= 0.4f;
        }
        sheet.text(label, x, y, FACT_SIZE, Ink.MUTED);
        for (String line : type.wrap(text, size, width, MOST_FACT_LINES)) {
            sheet.text(line, x + FACT_LABEL, y, size, Ink.TEXT);
            y += size * LINE;
        }
        y += 1.6f;
    }

    private String conductors() {
        String pairs = content.product().pairs() + (content.product().pairs() == 1 ? " pair" : " pairs");
        return content.product().gauge() == null
                ? pairs
                : pairs + ", " + content.product().gauge();
    }

    private String length() {
        String sent = quantity(content.length());
        return "m".equals(content.length().unit()) ? sent : sent + " (" + decimal(content.lengthMetres(), 2) + " m)";
    }

    private String temperature() {
        Quantity sent = content.conditions().temperature();
        return "°C".equals(sent.unit())
                ? quantity(sent)
                : quantity(sent) + " (" + decimal(content.conditions().celsius(), 1) + " °C)";
    }

    private String reference() {
        return decimal(content.limits().referenceCelsius(), 1) + " °C and "
                + decimal(content.limits().referenceMetres(), 2) + " m, or the length that the unit names";
    }

    private String tested() {
        String finished = time(content.conditions().finished());
        if (content.conditions().started() == null) {
            return finished;
        }
        String started = time(content.conditions().started());
        return started.regionMatches(0, finished, 0, 10)
                ? started.substring(0, 16) + " to " + finished.substring(11)
                : started + " to " + finished;
    }

    private String equipment() {
        return content.conditions().equipment().isEmpty()
                ? "not stated"
                : content.conditions().equipment().stream()
                        .map(CertificatePdf::instrument)
                        .collect(Collectors.joining("; "));
    }

    private static String instrument(Instrument instrument) {
        return instrument.calibrationDue() == null
                ? instrument.id()
                : instrument.id() + ", calibration due " + instrument.calibrationDue();
    }

    private static String quantity(Quantity quantity) {
        return BigDecimal.valueOf(quantity.value())
                        .stripTrailingZeros()
                        .toPlainString()
                        .replace('-', '−') + " " + quantity.unit();
    }

    private static String decimal(double value, int places) {
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_EVEN);
        BigDecimal plain = rounded.signum() == 0 ? BigDecimal.ZERO : rounded.stripTrailingZeros();
        return plain.toPlainString().replace('-', '−');
    }

    /** A time to the minute with its offset. */
    private static String time(String iso) {
        OffsetDateTime time = OffsetDateTime.parse(iso);
        String offset = time.getOffset().equals(ZoneOffset.UTC)
                ? "UTC"
                : "UTC" + time.getOffset().getId().replace('-', '−');
        return time.format(DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT)) + " " + offset;
    }

    private void verdict() throws IOException {
        String word = content.verdict().toUpperCase(Locale.ROOT)
                + (content.conditionalRows().isEmpty() ? "" : ", CONDITIONALLY");
        float size = 8.6f;
        float indent = 14 + type.width(word, 12) + 12;
        List<String> lines = type.wrap(statement(), size, BODY - indent - 10, MOST_NOTE_LINES);
        float height = 12 + lines.size() * size * LINE;
        sheet.box(MARGIN, y, BODY, height, Ink.ZEBRA);
        sheet.box(MARGIN, y, 3.5f, height, Ink.ACCENT);
        float text = y + 6 + size;
        sheet.bold(word, MARGIN + 14, y + height / 2 + 4.2f, 12, Ink.ACCENT);
        for (String line : lines) {
            sheet.text(line, MARGIN + indent, text, size, Ink.TEXT);
            text += size * LINE;
        }
        y += height + 12;
    }

    private String statement() {
        int rows = content.rows().size();
        return "Reel " + content.reel() + " was tested and meets "
                + (rows == 1 ? "the one requirement" : "each of the " + rows + " requirements") + " of the limit set “"
                + content.limits().title() + "”, revision " + content.limits().revision()
                + "."
                + conditional();
    }

    /** Names what is passed only within a guard band. */
    private String conditional() {
        List<Row> rows = content.conditionalRows();
        if (rows.isEmpty()) {
            return "";
        }
        return " Conditional pass, met by less than the guard band of the decision rule below: "
                + rows.stream().map(Row::title).collect(Collectors.joining("; ")) + ".";
    }

    private void table() throws IOException {
        tableHead();
        boolean shaded = false;
        for (Row row : content.rows()) {
            float height = height(row);
            if (need(height)) {
                tableHead();
            }
            if (shaded) {
                sheet.box(MARGIN, y, BODY, height, Ink.ZEBRA);
            }
            draw(row);
            y += height;
            shaded = !shaded;
        }
        sheet.line(MARGIN, y, RIGHT, y, Ink.MUTED, 0.7f);
        y += 10;
    }

    private void tableHead() throws IOException {
        float size = density.size - 0.4f;
        float baseline = y + size + 1;
        for (Column column : Column.values()) {
            float x = MARGIN + column.offset;
            if (column.right) {
                sheet.textLeftOf(column.heading, x + column.width - CELL, baseline, size, Ink.MUTED);
            } else {
                sheet.text(column.heading, x + CELL, baseline, size, Ink.MUTED);
            }
        }
        y = baseline + 3.5f;
        sheet.line(MARGIN, y, RIGHT, y, Ink.MUTED, 0.7f);
    }

    private List<String> lines(Column column, Row row) {
        return type.wrap(column.cell(row), density.size, column.width - 2 * CELL, MOST_NOTE_LINES);
    }

    private List<String> underline(Row row) {
        List<String> parts = new ArrayList<>();
        parts.add(row.plain());
        parts.addAll(row.notes());
        return type.wrap(String.join("; ", parts), noteSize(), Column.WHERE.offset - 2 * CELL, MOST_NOTE_LINES);
    }

    private float noteSize() {
        return density.size - 1;
    }

    /** The lines of the cells over which the small line under a row runs. */
    private int linesAbove(Row row) {
        int most = 1;
        for (Column column : Column.values()) {
            if (column.offset < Column.WHERE.offset) {
                most = Math.max(most, lines(column, row).size());
            }
        }
        return most;
    }

    private float height(Row row) {
        float left = linesAbove(row) * density.size * LINE + underline(row).size() * noteSize() * LINE;
        float right = lines(Column.WHERE, row).size() * density.size * LINE;
        return Math.max(left, right) + 4.5f;
    }

    private void draw(Row row) throws IOException {
        for (Column column : Column.values()) {
            float baseline = y + density.size + 1.5f;
            float x = MARGIN + column.offset;
            for (String line : lines(column, row)) {
                if (column == Column.REQUIREMENT || column == Column.MARGIN_THERE) {
                    bold(line, column, x, baseline);
                } else if (column.right) {
                    sheet.textLeftOf(line, x + column.width - CELL, baseline, density.size, Ink.TEXT);
                } else {
                    sheet.text(line, x + CELL, baseline, density.size, Ink.TEXT);
                }
                baseline += density.size * LINE;
            }
        }
        float baseline = y + linesAbove(row) * density.size * LINE + noteSize() + 1.5f;
        for (String line : underline(row)) {
            sheet.text(line, MARGIN + CELL, baseline, noteSize(), Ink.MUTED);
            baseline += noteSize() * LINE;
        }
    }

    private void bold(String line, Column column, float x, float baseline) throws IOException {
        if (column.right) {
            sheet.boldLeftOf(line, x + column.width - CELL, baseline, density.size, Ink.TEXT);
        } else {
            sheet.bold(line, x + CELL, baseline, density.size, Ink.TEXT);
        }
    }

    private void notes() throws IOException {
        paragraph(
                "This certificate relates only to the reel named above. It may be copied whole; parts of it only with the"
                        + " plant's consent. Worst, limit there and margin are those of the place where the margin is least; figures"
                        + " are rounded for print after the decision. In formulas f is in MHz.");
        if (content.uncertainty() != null) {
            paragraph(content.uncertainty());
        }
        paragraph(content.decisionRule() + " Rounding: " + content.limits().rounding() + ".");
        if (!content.leftOut().isEmpty()) {
            paragraph("Not judged, though the source of the limit set demands it: "
                    + String.join("; ", content.leftOut()) + ".");
        }
        paragraph("Record " + content.record() + "; results as received, SHA-256 " + content.sourceSha256()
                + "; limit set file, SHA-256 " + content.limits().sha256() + "; judged by engine " + content.engine()
                + ". The limit set names the source of each limit and law.");
    }

    private void paragraph(String text) throws IOException {
        for (String line : type.wrap(text, NOTE_SIZE, BODY)) {
            need(NOTE_SIZE * LINE);
            sheet.text(line, MARGIN, y + NOTE_SIZE, NOTE_SIZE, Ink.MUTED);
            y += NOTE_SIZE * LINE;
        }
        y += 2;
    }

    private void authorisation() throws IOException {
        need(48);
        y += 26;
        float third = (BODY - 2 * GUTTER) / 3;
        signature(MARGIN, third, "Tested by " + or(content.conditions().technician(), "(not stated)"), false);
        signature(MARGIN + third + GUTTER, third, "Authorised for the plant: name and signature", true);
        signature(MARGIN + 2 * (third + GUTTER), third, "Date", true);
        y += 22;
    }

    private void signature(float x, float width, String words, boolean rule) throws IOException {
        if (rule) {
            sheet.line(x, y, x + width, y, Ink.TEXT, 0.6f);
        }
        sheet.text(firstLine(words, NOTE_SIZE + 0.5f, width), x, y + 9, NOTE_SIZE + 0.5f, Ink.MUTED);
    }

    private void plots() throws IOException {
        int across = density.plotsAcross;
        float width = (BODY - (across - 1) * GUTTER) / across;
        float room = BOTTOM - TOP - 17 - 26 - 12;
        float height = room / density.plotsDown - 8;
        for (int i = 0; i < content.plots().size(); i++) {
            int place = i % across;
            if (place == 0 && (i == 0 || y + height > BOTTOM)) {
                need(PLOTS_HEAD + height);
                sheet.bold(
                        "Sweeps against their limits, values referred to "
                                + decimal(content.limits().referenceCelsius(), 1)
                                + " °C and the length of the unit or "
                                + decimal(content.limits().referenceMetres(), 2)
                                + " m; the ring marks the least margin",
                        MARGIN,
                        y,
                        NOTE_SIZE + 1,
                        Ink.TEXT);
                y += PLOTS_HEAD;
            }
            Plot plot = content.plots().get(i);
            PlotDrawing.draw(sheet, plot, MARGIN + place * (width + GUTTER), y, width, height);
            if (place == across - 1 || i == content.plots().size() - 1) {
                y += height + 8;
            }
        }
    }

    private void end() throws IOException {
        need(12);
        String words = "End of certificate " + content.number();
        float half = type.width(words, NOTE_SIZE + 1) / 2 + 10;
        float middle = MARGIN + BODY / 2;
        y += 8;
        sheet.textAround(words, middle, y, NOTE_SIZE + 1, Ink.TEXT);
        sheet.line(middle - half - 60, y - 2.5f, middle - half, y - 2.5f, Ink.MUTED, 0.6f);
        sheet.line(middle + half, y - 2.5f, middle + half + 60, y - 2.5f, Ink.MUTED, 0.6f);
    }

    private void footers() throws IOException {
        String record = content.record().length() <= SHORT_RECORD
                ? content.record()
                : content.record().substring(0, content.record().offsetByCodePoints(0, 8)) + "…";
        for (int i = 0; i < sheets.size(); i++) {
            Sheet one = sheets.get(i);
            one.line(MARGIN, FOOT - 10, RIGHT, FOOT - 10, Ink.RULE, 0.6f);
            one.bold(content.number(), MARGIN, FOOT, NOTE_SIZE + 0.7f, Ink.TEXT);
            one.textAround(
                    "issue " + content.issue() + ", record " + record,
                    MARGIN + BODY / 2,
                    FOOT,
                    NOTE_SIZE + 0.7f,
                    Ink.MUTED);
            one.textLeftOf("page " + (i + 1) + " of " + sheets.size(), RIGHT, FOOT, NOTE_SIZE + 0.7f, Ink.TEXT);
        }
    }
}
