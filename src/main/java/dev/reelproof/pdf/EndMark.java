package dev.reelproof.pdf;

import dev.reelproof.certificate.NumberedPaper;
import dev.reelproof.pdf.page.Palette;
import dev.reelproof.pdf.page.StructureTree.Part;
import dev.reelproof.wording.PaperWord;
import java.io.IOException;

/** Draws the words that end a certificate, so that a missing page is noticed. */
final class EndMark {
    /** What a page of plots leaves free for it, in points. */
    static final float HEIGHT_RESERVED = 18;

    private static final float HEIGHT = 12;
    private static final float TOP_TO_BASELINE = 8;
    private static final float RULE_ABOVE_BASELINE = 2.5f;
    private static final float RULE_LENGTH = 60;
    private static final float WORDS_TO_RULE = 10;
    private static final float SIZE = 8;

    private final PageFlow flow;
    private final Part part;

    /** Goes to where the words will stand. */
    EndMark(PageFlow flow) throws IOException {
        this.flow = flow;
        this.part = flow.whole().add("P");
        flow.makeRoom(HEIGHT);
        flow.moveDown(TOP_TO_BASELINE);
    }

    /** Draws the words. */
    void draw(NumberedPaper content) throws IOException {
        String words = flow.say(PaperWord.END, "number", content.number());
        float middle = PageLayout.MARGIN + PageLayout.BODY_WIDTH / 2;
        float half = flow.font().width(words, SIZE) / 2 + WORDS_TO_RULE;
        flow.as(part, () -> flow.canvas().textCentredAt(words, middle, flow.y(), SIZE, Palette.TEXT));
        rule(middle - half - RULE_LENGTH, middle - half);
        rule(middle + half, middle + half + RULE_LENGTH);
    }

    private void rule(float from, float to) throws IOException {
        float y = flow.y() - RULE_ABOVE_BASELINE;
        flow.canvas().line(from, y, to, y, Palette.MUTED, PageLayout.THIN_RULE);
    }
}
