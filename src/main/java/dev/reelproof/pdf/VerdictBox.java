package dev.reelproof.pdf;

import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.certificate.CertificateContent.Row;
import dev.reelproof.pdf.page.PageCanvas;
import dev.reelproof.pdf.page.Palette;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Draws the verdict, large, with the sentence that says what it rests on. */
final class VerdictBox {
    private static final float WORD_SIZE = 12;
    private static final float WORD_INDENT = 14;
    private static final float WORD_GAP = 12;
    /** From the middle of the box down to the baseline of the word. */
    private static final float MIDDLE_TO_BASELINE = 4.2f;

    private static final float STATEMENT_SIZE = 8.6f;
    private static final float PADDING = 6;
    private static final float RIGHT_PADDING = 10;
    private static final float BAR_WIDTH = 3.5f;
    private static final float GAP_BELOW = 12;

    private VerdictBox() {}

    static void draw(PageFlow flow, CertificateContent content) throws IOException {
        String word = word(content);
        float indent = WORD_INDENT + flow.font().width(word, WORD_SIZE) + WORD_GAP;
        List<String> lines = flow.font()
                .wrap(
                        statement(content),
                        STATEMENT_SIZE,
                        PageLayout.BODY_WIDTH - indent - RIGHT_PADDING,
                        PageLayout.MOST_LINES);
        float height = 2 * PADDING + lines.size() * STATEMENT_SIZE * PageLayout.LEADING;
        float top = flow.y();
        PageCanvas canvas = flow.canvas();
        canvas.fillRectangle(PageLayout.MARGIN, top, PageLayout.BODY_WIDTH, height, Palette.ZEBRA);
        canvas.fillRectangle(PageLayout.MARGIN, top, BAR_WIDTH, height, Palette.ACCENT);
        canvas.boldText(
                word,
                PageLayout.MARGIN + WORD_INDENT,
                top + height / 2 + MIDDLE_TO_BASELINE,
                WORD_SIZE,
                Palette.ACCENT);
        float baseline = top + PADDING + STATEMENT_SIZE;
        for (String line : lines) {
            canvas.text(line, PageLayout.MARGIN + indent, baseline, STATEMENT_SIZE, Palette.TEXT);
            baseline += STATEMENT_SIZE * PageLayout.LEADING;
        }
        flow.moveDown(height + GAP_BELOW);
    }

    private static String word(CertificateContent content) {
        if (content.restsOnConcession()) {
            return "BY CONCESSION";
        }
        return content.verdict().toUpperCase(Locale.ROOT)
                + (content.conditionalRows().isEmpty() ? "" : ", CONDITIONALLY");
    }

    private static String statement(CertificateContent content) {
        String set = " of the limit set “" + content.limits().title() + "”, revision "
                + content.limits().revision() + ".";
        return "Reel " + content.reel() + " was tested and " + met(content) + set + conditional(content)
                + content.concessions().stream()
                        .map(conceded -> " " + conceded.statement())
                        .collect(Collectors.joining());
    }

    private static String met(CertificateContent content) {
        int rows = content.rows().size();
        if (content.restsOnConcession()) {
            return "does not meet " + content.failingRows().size() + " of the " + rows + " requirements";
        }
        return "meets " + (rows == 1 ? "the one requirement" : "each of the " + rows + " requirements");
    }

    /** Names what passes only within a guard band. */
    private static String conditional(CertificateContent content) {
        List<Row> rows = content.conditionalRows();
        if (rows.isEmpty()) {
            return "";
        }
        return " Conditional pass, met by less than the guard band of the decision rule below: "
                + rows.stream().map(Row::title).collect(Collectors.joining("; ")) + ".";
    }
}
