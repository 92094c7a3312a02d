package dev.reelproof.pdf;

import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.certificate.CertificateContent.Row;
import dev.reelproof.pdf.page.EmbeddedFont;
import dev.reelproof.pdf.page.PageCanvas;
import dev.reelproof.pdf.page.Palette;
import dev.reelproof.pdf.page.StructureTree.Part;
import dev.reelproof.wording.PaperWord;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** Draws one row a requirement: what was asked, the worst figure and its place, and below, smaller, what it means. */
final class RequirementTable {
    private static final float CELL_PADDING = 3;
    private static final float HEADING_TOP = 1;
    private static final float HEADING_TO_RULE = 3.5f;
    private static final float ROW_TOP = 2;
    /** What a row has above its first and below its last line together. */
    private static final float ROW_PADDING = 5;

    private static final float RULE = 0.7f;
    private static final float GAP_BELOW = 8;
    /** So many rows at least stand under the heading of the table. */
    private static final int ROWS_WITH_HEADING = 2;

    private final PageFlow flow;
    private final float size;
    private final float noteSize;
    private final Part table;

    private RequirementTable(PageFlow flow, Density density, Part table) {
        this.flow = flow;
        this.size = density.tableSize();
        this.noteSize = PageLayout.LEAST_SIZE;
        this.table = table;
    }

    static void draw(PageFlow flow, CertificateContent content, Density density) throws IOException {
        List<Row> rows = content.rows();
        int together = Math.min(ROWS_WITH_HEADING, rows.size());
        float row = (density.tableSize() * 2 + PageLayout.LEAST_SIZE) * PageLayout.LEADING;
        float first = density.tableSize() * 2 + together * row;
        flow.heading(flow.say(PaperWord.RESULTS), first);
        new RequirementTable(flow, density, flow.whole().add("Table")).rows(rows);
    }

    /** How much room the table needs below its heading, in points, where it is not broken. */
    static float height(PageFlow flow, CertificateContent content, Density density) {
        RequirementTable measured = new RequirementTable(flow, density, flow.whole());
        float height = measured.size + HEADING_TOP + HEADING_TO_RULE + GAP_BELOW;
        for (Row row : content.rows()) {
            height += measured.height(row);
        }
        return height;
    }

    private void rows(List<Row> rows) throws IOException {
        headings(true);
        boolean shaded = false;
        for (Row row : rows) {
            float height = height(row);
            if (flow.makeRoom(height)) {
                headings(false);
            }
            if (shaded) {
                flow.canvas().fillRectangle(PageLayout.MARGIN, flow.y(), PageLayout.BODY_WIDTH, height, Palette.ZEBRA);
            }
            cells(row);
            flow.moveDown(height);
            shaded = !shaded;
        }
        rule();
        flow.moveDown(GAP_BELOW);
    }

    private void rule() throws IOException {
        flow.canvas().line(PageLayout.MARGIN, flow.y(), PageLayout.RIGHT, flow.y(), Palette.MUTED, RULE);
    }

    /** Draws the heads of the columns; only the first of a table are part of it, the others repeat them. */
    private void headings(boolean first) throws IOException {
        float baseline = flow.y() + size + HEADING_TOP;
        Part row = first ? table.add("TR") : null;
        for (TableColumn column : TableColumn.values()) {
            String heading = flow.say(column.heading());
            if (row != null) {
                flow.as(row.add("TH").headingColumn(), () -> heading(column, heading, baseline));
            } else {
                heading(column, heading, baseline);
            }
        }
        flow.moveTo(baseline + HEADING_TO_RULE);
        rule();
    }

    private void heading(TableColumn column, String heading, float baseline) throws IOException {
        if (column.alignsRight()) {
            flow.canvas().textEndingAt(heading, rightOf(column), baseline, PageLayout.LEAST_SIZE, Palette.MUTED);
        } else {
            flow.canvas().text(heading, leftOf(column), baseline, PageLayout.LEAST_SIZE, Palette.MUTED);
        }
    }

    private static float leftOf(TableColumn column) {
        return PageLayout.MARGIN + column.offset() + CELL_PADDING;
    }

    private static float rightOf(TableColumn column) {
        return PageLayout.MARGIN + column.offset() + column.width() - CELL_PADDING;
    }

    private EmbeddedFont fontOf(TableColumn column) {
        return column.isBold() ? flow.bold() : flow.font();
    }

    /** A line of a cell; what ends at the right edge of the column. */
    private record CellLine(String left, String right) {}

    private List<CellLine> lines(TableColumn column, Row row) {
        float width = column.width() - 2 * CELL_PADDING;
        if (column == TableColumn.LIMIT) {
            return limitLines(row, width);
        }
        return fontOf(column).wrap(column.cell(row, flow.words()), size, width, PageLayout.MOST_LINES).stream()
                .map(line -> new CellLine(line, ""))
                .toList();
    }

    /** A limit of one formula as a text; of several as a small table, formulas on the left and ranges on the right. */
    private List<CellLine> limitLines(Row row, float width) {
        List<CellLine> lines = new ArrayList<>();
        List<CertificateContent.Part> parts = TableColumn.limits(row);
        if (parts.size() <= 1) {
            flow.font().wrap(TableColumn.LIMIT.cell(row, flow.words()), size, width).stream()
                    .map(line -> new CellLine(line, ""))
                    .forEach(lines::add);
            return lines;
        }
        for (int i = 0; i < parts.size(); i++) {
            String range = parts.get(i).range() + (i + 1 < parts.size() ? ";" : "");
            List<String> figures = flow.font().wrap(parts.get(i).figures() + ",", size, width);
            figures.subList(0, figures.size() - 1).forEach(line -> lines.add(new CellLine(line, "")));
            String last = figures.get(figures.size() - 1);
            if (flow.font().width(last + "  " + range, size) <= width) {
                lines.add(new CellLine(last, range));
            } else {
                lines.add(new CellLine(last, ""));
                lines.add(new CellLine("", range));
            }
        }
        return lines;
    }

    private List<String> noteLines(Row row) {
        List<String> parts = new ArrayList<>();
        parts.add(row.plain());
        if (row.points() > 1) {
            parts.add(flow.say(PaperWord.VALUES, "count", String.valueOf(row.points())));
        }
        parts.addAll(row.notes());
        float width = TableColumn.WHERE.offset() - 2 * CELL_PADDING;
        return flow.font().wrap(String.join("; ", parts), noteSize, width, PageLayout.MOST_LINES);
    }

    /** How many lines the cells have that stand above the note, which runs from the left edge to the place. */
    private int linesAboveNote(Row row) {
        int most = 1;
        for (TableColumn column : TableColumn.values()) {
            if (column.compareTo(TableColumn.WHERE) < 0) {
                most = Math.max(most, lines(column, row).size());
            }
        }
        return most;
    }

    private float height(Row row) {
        float left =
                linesAboveNote(row) * size * PageLayout.LEADING + noteLines(row).size() * noteSize * PageLayout.LEADING;
        float right = lines(TableColumn.WHERE, row).size() * size * PageLayout.LEADING;
        return Math.max(left, right) + ROW_PADDING;
    }

    private void cells(Row row) throws IOException {
        Part tableRow = table.add("TR");
        for (TableColumn column : TableColumn.values()) {
            boolean heads = column == TableColumn.REQUIREMENT;
            Part cell = heads ? tableRow.add("TH").headingRow() : tableRow.add("TD");
            flow.as(cell, () -> {
                float baseline = flow.y() + size + ROW_TOP;
                for (CellLine line : lines(column, row)) {
                    cell(line, column, baseline);
                    baseline += size * PageLayout.LEADING;
                }
            });
            if (heads) {
                flow.as(cell, () -> note(row));
            }
        }
    }

    private void cell(CellLine line, TableColumn column, float baseline) throws IOException {
        PageCanvas canvas = flow.canvas();
        if (column.alignsRight() && column.isBold()) {
            canvas.boldTextEndingAt(line.left(), rightOf(column), baseline, size, Palette.TEXT);
        } else if (column.alignsRight()) {
            canvas.textEndingAt(line.left(), rightOf(column), baseline, size, Palette.TEXT);
        } else if (column.isBold()) {
            canvas.boldText(line.left(), leftOf(column), baseline, size, Palette.TEXT);
        } else {
            if (!line.left().isEmpty()) {
                canvas.text(line.left(), leftOf(column), baseline, size, Palette.TEXT);
            }
            if (!line.right().isEmpty()) {
                canvas.textEndingAt(line.right(), rightOf(column), baseline, size, Palette.MUTED);
            }
        }
    }

    private void note(Row row) throws IOException {
        float baseline = flow.y() + linesAboveNote(row) * size * PageLayout.LEADING + noteSize + ROW_TOP;
        for (String line : noteLines(row)) {
            flow.canvas().text(line, PageLayout.MARGIN + CELL_PADDING, baseline, noteSize, Palette.MUTED);
            baseline += noteSize * PageLayout.LEADING;
        }
    }
}
