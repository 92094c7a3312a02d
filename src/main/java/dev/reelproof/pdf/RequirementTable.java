package dev.reelproof.pdf;

import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.certificate.CertificateContent.Row;
import dev.reelproof.pdf.page.PageCanvas;
import dev.reelproof.pdf.page.Palette;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** Draws one row a requirement: what was asked, the worst figure and its place, and below, smaller, what it means. */
final class RequirementTable {
    private static final float CELL_PADDING = 3;
    private static final float HEADING_SMALLER_BY = 0.4f;
    private static final float HEADING_TOP = 1;
    private static final float HEADING_TO_RULE = 3.5f;
    private static final float NOTE_SMALLER_BY = 1;
    private static final float ROW_TOP = 1.5f;
    /** What a row has above its first and below its last line together. */
    private static final float ROW_PADDING = 4.5f;

    private static final float RULE = 0.7f;
    private static final float GAP_BELOW = 10;

    private final PageFlow flow;
    private final float size;
    private final float noteSize;

    private RequirementTable(PageFlow flow, Density density) {
        this.flow = flow;
        this.size = density.tableSize();
        this.noteSize = size - NOTE_SMALLER_BY;
    }

    static void draw(PageFlow flow, CertificateContent content, Density density) throws IOException {
        new RequirementTable(flow, density).rows(content.rows());
    }

    private void rows(List<Row> rows) throws IOException {
        headings();
        boolean shaded = false;
        for (Row row : rows) {
            float height = height(row);
            if (flow.makeRoom(height)) {
                headings();
            }
            if (shaded) {
                flow.canvas().fillRectangle(PageLayout.MARGIN, flow.y(), PageLayout.BODY_WIDTH, height, Palette.ZEBRA);
            }
            cells(row);
            note(row);
            flow.moveDown(height);
            shaded = !shaded;
        }
        rule();
        flow.moveDown(GAP_BELOW);
    }

    private void rule() throws IOException {
        flow.canvas().line(PageLayout.MARGIN, flow.y(), PageLayout.RIGHT, flow.y(), Palette.MUTED, RULE);
    }

    private void headings() throws IOException {
        float headingSize = size - HEADING_SMALLER_BY;
        float baseline = flow.y() + headingSize + HEADING_TOP;
        for (TableColumn column : TableColumn.values()) {
            if (column.alignsRight()) {
                flow.canvas().textEndingAt(column.heading(), rightOf(column), baseline, headingSize, Palette.MUTED);
            } else {
                flow.canvas().text(column.heading(), leftOf(column), baseline, headingSize, Palette.MUTED);
            }
        }
        flow.moveTo(baseline + HEADING_TO_RULE);
        rule();
    }

    private static float leftOf(TableColumn column) {
        return PageLayout.MARGIN + column.offset() + CELL_PADDING;
    }

    private static float rightOf(TableColumn column) {
        return PageLayout.MARGIN + column.offset() + column.width() - CELL_PADDING;
    }

    private List<String> lines(TableColumn column, Row row) {
        return flow.font().wrap(column.cell(row), size, column.width() - 2 * CELL_PADDING, PageLayout.MOST_LINES);
    }

    private List<String> noteLines(Row row) {
        List<String> parts = new ArrayList<>();
        parts.add(row.plain());
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
        for (TableColumn column : TableColumn.values()) {
            float baseline = flow.y() + size + ROW_TOP;
            for (String line : lines(column, row)) {
                cell(line, column, baseline);
                baseline += size * PageLayout.LEADING;
            }
        }
    }

    private void cell(String line, TableColumn column, float baseline) throws IOException {
        PageCanvas canvas = flow.canvas();
        if (column.alignsRight() && column.isBold()) {
            canvas.boldTextEndingAt(line, rightOf(column), baseline, size, Palette.TEXT);
        } else if (column.alignsRight()) {
            canvas.textEndingAt(line, rightOf(column), baseline, size, Palette.TEXT);
        } else if (column.isBold()) {
            canvas.boldText(line, leftOf(column), baseline, size, Palette.TEXT);
        } else {
            canvas.text(line, leftOf(column), baseline, size, Palette.TEXT);
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
