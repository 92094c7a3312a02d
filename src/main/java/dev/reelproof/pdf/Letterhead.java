package dev.reelproof.pdf;

import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.pdf.page.PageCanvas;
import dev.reelproof.pdf.page.Palette;
import java.io.IOException;

/**
 * Draws the head of the first page: the plant with its address on the left, what the paper is and its number on the right. Number and
 * issue have their place and are drawn when they are known.
 */
final class Letterhead {
    private static final float PLANT_SIZE = 12;
    private static final float PLANT_TOP = 8;
    private static final float PLANT_LINE = 13;
    private static final int MOST_LINES = 2;

    private static final float TITLE_SIZE = 17;
    private static final float TITLE_TOP = 10;
    private static final float TITLE_TO_NUMBER = 17;
    private static final float NUMBER_SIZE = 11;
    private static final float NUMBER_TO_ISSUE = 12;

    private static final float TEXT_TO_RULE = -2;
    private static final float RULE = 1.4f;
    private static final float RULE_TO_FACTS = 14;

    private Letterhead() {}

    static void draw(PageFlow flow, CertificateContent content) throws IOException {
        float top = flow.y();
        float left = plant(flow, content, top + PLANT_TOP);
        float right = title(flow, top + TITLE_TOP);
        flow.moveTo(Math.max(left, right) + TEXT_TO_RULE);
        flow.canvas().line(PageLayout.MARGIN, flow.y(), PageLayout.RIGHT, flow.y(), Palette.ACCENT, RULE);
        flow.moveDown(RULE_TO_FACTS);
    }

    private static float plant(PageFlow flow, CertificateContent content, float top) throws IOException {
        float y = top;
        for (String line : flow.font().wrap(content.plant().name(), PLANT_SIZE, PageLayout.COLUMN_WIDTH, MOST_LINES)) {
            flow.canvas().boldText(line, PageLayout.MARGIN, y, PLANT_SIZE, Palette.TEXT);
            y += PLANT_LINE;
        }
        float size = PageLayout.FACT_SIZE;
        for (String address : content.plant().address()) {
            for (String line : flow.font().wrap(address, size, PageLayout.COLUMN_WIDTH, MOST_LINES)) {
                flow.canvas().text(line, PageLayout.MARGIN, y, size, Palette.MUTED);
                y += size * PageLayout.LEADING;
            }
        }
        return y;
    }

    /** Draws the title and gives where the lines under it end. */
    private static float title(PageFlow flow, float top) throws IOException {
        flow.canvas().boldTextEndingAt("Test certificate", PageLayout.RIGHT, top, TITLE_SIZE, Palette.ACCENT);
        return top + TITLE_TO_NUMBER + NUMBER_TO_ISSUE + PageLayout.FACT_SIZE * PageLayout.LEADING;
    }

    /** Draws the number and the issue under the title. */
    static void drawNumber(PageFlow flow, CertificateContent content) throws IOException {
        PageCanvas canvas = flow.pages().get(0);
        float y = PageLayout.TOP + TITLE_TOP + TITLE_TO_NUMBER;
        canvas.boldTextEndingAt(content.number(), PageLayout.RIGHT, y, NUMBER_SIZE, Palette.TEXT);
        y += NUMBER_TO_ISSUE;
        canvas.textEndingAt(
                "Issue " + content.issue() + ", issued " + FactTexts.time(content.issued()),
                PageLayout.RIGHT,
                y,
                PageLayout.FACT_SIZE,
                Palette.MUTED);
    }
}
