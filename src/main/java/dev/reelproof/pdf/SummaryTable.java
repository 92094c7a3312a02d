package dev.reelproof.pdf;

import dev.reelproof.certificate.CollectiveContent;
import dev.reelproof.certificate.CollectiveContent.Line;
import dev.reelproof.pdf.page.Palette;
import dev.reelproof.pdf.page.StructureTree.Part;
import dev.reelproof.wording.PaperWord;
import java.io.IOException;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Draws the summary of a collective certificate: one row a reel, with the certificate that it has. */
final class SummaryTable {
    private static final float SIZE = 7.6f;
    private static final float CELL_PADDING = 3;
    private static final float ROW_TOP = 2;
    private static final float ROW_PADDING = 5;
    private static final float HEADING_TO_RULE = 3.5f;
    private static final float RULE = 0.7f;
    private static final float GAP_BELOW = 6;
    private static final int ROWS_WITH_HEADING = 2;

    private final PageFlow flow;
    private final CollectiveContent content;
    private final Part table;

    private SummaryTable(PageFlow flow, CollectiveContent content) {
        this.flow = flow;
        this.content = content;
        this.table = flow.whole().add("Table");
    }

    static void draw(PageFlow flow, CollectiveContent content) throws IOException {
        flow.heading(flow.say(PaperWord.SUMMARY), (ROWS_WITH_HEADING * 2 + 1) * SIZE * PageLayout.LEADING);
        new SummaryTable(flow, content).rows();
        flow.paragraph(
                flow.say(PaperWord.SUMMARY_READING) + " " + flow.say(PaperWord.READING),
                PageLayout.NOTE_SIZE,
                GAP_BELOW);
    }

    private void rows() throws IOException {
        headings(table.add("TR"));
        boolean shaded = false;
        for (Line line : content.lines()) {
            float height = height(line);
            if (flow.makeRoom(height)) {
                headings(null);
            }
            if (shaded) {
                flow.canvas().fillRectangle(PageLayout.MARGIN, flow.y(), PageLayout.BODY_WIDTH, height, Palette.ZEBRA);
            }
            row(line);
            flow.moveDown(height);
            shaded = !shaded;
        }
        rule();
        flow.moveDown(GAP_BELOW);
    }

    /** Draws the heads of the columns, as part of the table unless they only repeat them. */
    private void headings(@Nullable Part row) throws IOException {
        float baseline = flow.y() + SIZE + 1;
        for (SummaryColumn column : SummaryColumn.values()) {
            String heading = flow.say(column.heading());
            if (row == null) {
                text(heading, column, baseline, PageLayout.LEAST_SIZE, false);
            } else {
                flow.as(
                        row.add("TH").headingColumn(),
                        () -> text(heading, column, baseline, PageLayout.LEAST_SIZE, false));
            }
        }
        flow.moveTo(baseline + HEADING_TO_RULE);
        rule();
    }

    private void rule() throws IOException {
        flow.canvas().line(PageLayout.MARGIN, flow.y(), PageLayout.RIGHT, flow.y(), Palette.MUTED, RULE);
    }

    private List<String> lines(SummaryColumn column, Line line) {
        String text = column.cell(line, content.paper().units(), flow.words());
        return (column == SummaryColumn.REEL ? flow.bold() : flow.font())
                .wrap(text, SIZE, column.width() - 2 * CELL_PADDING, PageLayout.MOST_LINES);
    }

    private float height(Line line) {
        int most = 1;
        for (SummaryColumn column : SummaryColumn.values()) {
            most = Math.max(most, lines(column, line).size());
        }
        return most * SIZE * PageLayout.LEADING + ROW_PADDING;
    }

    private void row(Line line) throws IOException {
        Part tableRow = table.add("TR");
        for (SummaryColumn column : SummaryColumn.values()) {
            boolean heads = column == SummaryColumn.REEL;
            Part cell = heads ? tableRow.add("TH").headingRow() : tableRow.add("TD");
            flow.as(cell, () -> {
                float baseline = flow.y() + SIZE + ROW_TOP;
                for (String text : lines(column, line)) {
                    text(text, column, baseline, SIZE, heads);
                    baseline += SIZE * PageLayout.LEADING;
                }
            });
        }
    }

    private void text(String text, SummaryColumn column, float baseline, float size, boolean bold) throws IOException {
        float left = PageLayout.MARGIN + column.offset() + CELL_PADDING;
        if (bold) {
            flow.canvas().boldText(text, left, baseline, size, Palette.TEXT);
        } else if (column.alignsRight()) {
            float right = PageLayout.MARGIN + column.offset() + column.width() - CELL_PADDING;
            flow.canvas().textEndingAt(text, right, baseline, size, Palette.TEXT);
        } else {
            flow.canvas().text(text, left, baseline, size, Palette.TEXT);
        }
    }
}
