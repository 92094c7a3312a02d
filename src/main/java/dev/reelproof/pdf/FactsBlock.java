package dev.reelproof.pdf;

import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.pdf.page.EmbeddedFont;
import dev.reelproof.pdf.page.Palette;
import java.io.IOException;

/** Draws what was tested, how and by what, as two columns of labels with their texts. */
final class FactsBlock {
    private static final float LABEL_WIDTH = 62;
    private static final float LEAST_SIZE = 5.6f;
    private static final float SHRINK_STEP = 0.4f;
    private static final float GAP_BETWEEN_FACTS = 1.6f;
    private static final float GAP_BELOW = 4;

    /** A text of more lines is set smaller, as far as the least size. */
    private static final int LINES_AT_FULL_SIZE = 3;

    private static final int MOST_LINES = 8;

    private final PageFlow flow;
    private final FactTexts texts;

    private FactsBlock(PageFlow flow, FactTexts texts) {
        this.flow = flow;
        this.texts = texts;
    }

    static void draw(PageFlow flow, CertificateContent content) throws IOException {
        FactsBlock block = new FactsBlock(flow, new FactTexts(content));
        float top = flow.y();
        block.item(PageLayout.MARGIN);
        float bottom = flow.y();
        flow.moveTo(top);
        block.test(PageLayout.SECOND_COLUMN);
        flow.moveTo(Math.max(bottom, flow.y()) + GAP_BELOW);
    }

    private void item(float x) throws IOException {
        fact("Customer", texts.customer(), x);
        fact("Order", texts.order(), x);
        fact("Reel", texts.reel(), x);
        fact("Product", texts.product(), x);
        fact("Description", texts.description(), x);
        fact("Conductors", texts.conductors(), x);
        fact("Length", texts.length(), x);
    }

    private void test(float x) throws IOException {
        fact("Limit set", texts.limitSet(), x);
        fact("Revision", texts.revision(), x);
        fact("Referred to", texts.reference(), x);
        fact("Tested", texts.tested(), x);
        fact("Cable at", texts.temperature(), x);
        fact("Bay", texts.station(), x);
        fact("Technician", texts.technician("not stated"), x);
        fact("Equipment", texts.equipment(), x);
    }

    /** Draws a label and its text; a long text wraps, then shrinks. */
    private void fact(String label, String text, float x) throws IOException {
        EmbeddedFont font = flow.font();
        float width = PageLayout.COLUMN_WIDTH - LABEL_WIDTH;
        float size = PageLayout.FACT_SIZE;
        while (size > LEAST_SIZE && font.wrap(text, size, width).size() > LINES_AT_FULL_SIZE) {
            size -= SHRINK_STEP;
        }
        flow.canvas().text(label, x, flow.y(), PageLayout.FACT_SIZE, Palette.MUTED);
        for (String line : font.wrap(text, size, width, MOST_LINES)) {
            flow.canvas().text(line, x + LABEL_WIDTH, flow.y(), size, Palette.TEXT);
            flow.moveDown(size * PageLayout.LEADING);
        }
        flow.moveDown(GAP_BETWEEN_FACTS);
    }
}
