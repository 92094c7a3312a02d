package dev.reelproof.pdf;

import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.certificate.NumberedPaper;
import dev.reelproof.pdf.page.PageCanvas;
import dev.reelproof.pdf.page.Palette;
import dev.reelproof.wording.PaperWord;
import java.io.IOException;
import java.util.List;

/** Draws the foot of each page: certificate, issue and record, and which page of how many. */
final class PageFooters {
    private static final float SIZE = PageLayout.NOTE_SIZE + 0.3f;
    private static final float RULE_ABOVE = 10;

    /** A record's id of more letters is cut to its first ones. */
    private static final int SHORT_RECORD_ID = 13;

    private static final int LETTERS_OF_LONG_ID = 8;

    private PageFooters() {}

    static void draw(PageFlow flow, CertificateContent content) throws IOException {
        draw(
                flow,
                content,
                flow.say(
                        PaperWord.FOOT,
                        "issue",
                        String.valueOf(content.issue()),
                        "record",
                        shortened(content.record())));
    }

    /** @param about what stands in the middle of each foot */
    static void draw(PageFlow flow, NumberedPaper content, String about) throws IOException {
        float middle = PageLayout.MARGIN + PageLayout.BODY_WIDTH / 2;
        float foot = flow.foot();
        float ruleY = foot - RULE_ABOVE;
        List<PageCanvas> pages = flow.pages();
        for (int i = 0; i < pages.size(); i++) {
            PageCanvas page = pages.get(i);
            page.line(PageLayout.MARGIN, ruleY, PageLayout.RIGHT, ruleY, Palette.RULE, PageLayout.THIN_RULE);
            page.boldText(content.number(), PageLayout.MARGIN, foot, SIZE, Palette.TEXT);
            page.textCentredAt(about, middle, foot, SIZE, Palette.MUTED);
            String place =
                    flow.say(PaperWord.PAGE, "page", String.valueOf(i + 1), "pages", String.valueOf(pages.size()));
            page.textEndingAt(place, PageLayout.RIGHT, foot, SIZE, Palette.TEXT);
        }
    }

    private static String shortened(String record) {
        return record.length() <= SHORT_RECORD_ID
                ? record
                : record.substring(0, record.offsetByCodePoints(0, LETTERS_OF_LONG_ID)) + "…";
    }
}
