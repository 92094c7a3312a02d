package dev.reelproof.pdf;

import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.pdf.page.Palette;
import java.io.IOException;

/** Draws the words that end a certificate, so that a missing page is noticed. */
final class EndMark {
    /** What a page of plots leaves free for it, in points. */
    static final float HEIGHT_RESERVED = 26;

    private static final float HEIGHT = 12;
    private static final float TOP_TO_BASELINE = 8;
    private static final float RULE_ABOVE_BASELINE = 2.5f;
    private static final float RULE_LENGTH = 60;
    private static final float WORDS_TO_RULE = 10;

    private EndMark() {}

    /** Goes to where the words will stand. */
    static void makeRoom(PageFlow flow) throws IOException {
        flow.makeRoom(HEIGHT);
        flow.moveDown(TOP_TO_BASELINE);
    }

    /** Draws the words where {@link #makeRoom} went. */
    static void draw(PageFlow flow, CertificateContent content) throws IOException {
        String words = "End of certificate " + content.number();
        float middle = PageLayout.MARGIN + PageLayout.BODY_WIDTH / 2;
        float half = flow.font().width(words, PageLayout.HEADING_SIZE) / 2 + WORDS_TO_RULE;
        flow.canvas().textCentredAt(words, middle, flow.y(), PageLayout.HEADING_SIZE, Palette.TEXT);
        rule(flow, middle - half - RULE_LENGTH, middle - half);
        rule(flow, middle + half, middle + half + RULE_LENGTH);
    }

    private static void rule(PageFlow flow, float from, float to) throws IOException {
        float y = flow.y() - RULE_ABOVE_BASELINE;
        flow.canvas().line(from, y, to, y, Palette.MUTED, PageLayout.THIN_RULE);
    }
}
