package dev.reelproof.pdf;

import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.certificate.CollectiveContent;
import dev.reelproof.pdf.page.Palette;
import dev.reelproof.pdf.page.StructureTree.Part;
import dev.reelproof.wording.PaperWord;
import java.io.IOException;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Draws what was tested, how and by what, as two columns of labels with their texts. What nobody stated has no line. */
final class FactsBlock {
    private static final float LABEL_WIDTH = 62;
    private static final float LABEL_GAP = 4;
    private static final float SHRINK_STEP = 0.4f;
    private static final float GAP_BETWEEN_FACTS = 1.6f;
    private static final float GAP_BELOW = 5;

    /** A text of more lines is set smaller, as far as the least size. */
    private static final int LINES_AT_FULL_SIZE = 3;

    private static final int MOST_LINES = 8;

    private final PageFlow flow;

    private FactsBlock(PageFlow flow) {
        this.flow = flow;
    }

    /** Draws what a collective certificate is about. */
    static void draw(PageFlow flow, CollectiveContent content) throws IOException {
        FactsBlock block = new FactsBlock(flow);
        float top = flow.y();
        block.fact(PaperWord.CUSTOMER, content.customer(), PageLayout.MARGIN);
        block.fact(PaperWord.ORDER, content.order(), PageLayout.MARGIN);
        float bottom = flow.y();
        flow.moveTo(top);
        block.fact(PaperWord.REELS, String.valueOf(content.lines().size()), PageLayout.SECOND_COLUMN);
        double metres = content.totalMetres();
        block.fact(
                PaperWord.TOTAL_LENGTH,
                FactTexts.length(
                        new CertificateContent.Quantity(metres, "m"),
                        metres,
                        content.paper().units()),
                PageLayout.SECOND_COLUMN);
        flow.moveTo(Math.max(bottom, flow.y()) + GAP_BELOW);
    }

    static void draw(PageFlow flow, CertificateContent content) throws IOException {
        draw(flow, content, null);
    }

    /** Draws them on a reel's page of a collective certificate, with the certificate that the reel has of its own. */
    static void drawOnCollective(PageFlow flow, CertificateContent content) throws IOException {
        String own = flow.say(
                PaperWord.REEL_PAGE_REST, "number", content.number(), "issue", String.valueOf(content.issue()));
        draw(flow, content, own);
    }

    private static void draw(PageFlow flow, CertificateContent content, @Nullable String certificate)
            throws IOException {
        FactsBlock block = new FactsBlock(flow);
        FactTexts texts = new FactTexts(content, flow.words());
        float top = flow.y();
        block.item(texts, PageLayout.MARGIN);
        block.fact(PaperWord.CERTIFICATE, certificate, PageLayout.MARGIN);
        float bottom = flow.y();
        flow.moveTo(top);
        block.test(texts, PageLayout.SECOND_COLUMN);
        flow.moveTo(Math.max(bottom, flow.y()) + GAP_BELOW);
    }

    private void item(FactTexts texts, float x) throws IOException {
        fact(PaperWord.CUSTOMER, texts.customer(), x);
        fact(PaperWord.ORDER, texts.order(), x);
        fact(PaperWord.CONSIGNEE, texts.consignee(), x);
        fact(PaperWord.REEL, texts.reel(), x);
        fact(PaperWord.PRODUCT, texts.product(), x);
        fact(PaperWord.DESCRIPTION, texts.description(), x);
        fact(PaperWord.CONDUCTORS, texts.conductors(), x);
        fact(PaperWord.LENGTH, texts.length(), x);
        fact(PaperWord.LENGTH_MARKS, texts.lengthMarks(), x);
    }

    private void test(FactTexts texts, float x) throws IOException {
        fact(PaperWord.LIMIT_SET, texts.limitSet(), x);
        fact(PaperWord.METHOD, flow.say(PaperWord.METHODS), x);
        fact(PaperWord.REFERRED_TO, texts.reference(), x);
        fact(PaperWord.TESTED, texts.tested(), x);
        fact(PaperWord.CABLE_AT, texts.temperature(), x);
        fact(PaperWord.BAY, texts.station(), x);
        fact(PaperWord.TECHNICIAN, texts.technician(), x);
        fact(PaperWord.INSTRUMENTS, texts.equipment(), x);
    }

    /** Draws a label and its text; a long text wraps, then shrinks. */
    private void fact(PaperWord label, @Nullable String text, float x) throws IOException {
        if (text == null || text.isBlank()) {
            return;
        }
        float width = PageLayout.COLUMN_WIDTH - LABEL_WIDTH;
        float chosen = PageLayout.FACT_SIZE;
        while (chosen - SHRINK_STEP >= PageLayout.LEAST_SIZE
                && flow.font().wrap(text, chosen, width).size() > LINES_AT_FULL_SIZE) {
            chosen -= SHRINK_STEP;
        }
        float size = chosen;
        List<String> lines = flow.font().wrap(text, size, width, MOST_LINES);
        Part part = flow.whole().add("P");
        String name = flow.font().firstLine(flow.say(label), PageLayout.FACT_SIZE, LABEL_WIDTH - LABEL_GAP);
        flow.as(part, () -> {
            flow.canvas().text(name, x, flow.y(), PageLayout.FACT_SIZE, Palette.MUTED);
            for (String line : lines) {
                flow.canvas().text(line, x + LABEL_WIDTH, flow.y(), size, Palette.TEXT);
                flow.moveDown(size * PageLayout.LEADING);
            }
        });
        flow.moveDown(GAP_BETWEEN_FACTS);
    }
}
