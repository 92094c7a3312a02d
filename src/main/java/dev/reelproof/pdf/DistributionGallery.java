package dev.reelproof.pdf;

import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.certificate.Distribution;
import dev.reelproof.pdf.plot.HistogramDrawing;
import dev.reelproof.wording.PaperWord;
import java.io.IOException;
import java.util.List;

/** Sets the distributions of the margins of many sweeps in rows of three. */
final class DistributionGallery {
    private static final int ACROSS = 3;
    private static final float HEIGHT = 104;
    private static final float GAP_BELOW_ROW = 8;
    private static final float WIDTH = (PageLayout.BODY_WIDTH - (ACROSS - 1) * PageLayout.GUTTER) / ACROSS;

    private DistributionGallery() {}

    static void draw(PageFlow flow, CertificateContent content) throws IOException {
        List<Distribution> all = content.distributions();
        if (all.isEmpty()) {
            return;
        }
        flow.heading(flow.say(PaperWord.DISTRIBUTIONS), HEIGHT + 2 * GAP_BELOW_ROW);
        flow.paragraph(flow.say(PaperWord.DISTRIBUTIONS_READING), PageLayout.NOTE_SIZE, GAP_BELOW_ROW);
        for (int first = 0; first < all.size(); first += ACROSS) {
            flow.makeRoom(HEIGHT);
            for (int place = 0; place < ACROSS && first + place < all.size(); place++) {
                Distribution one = all.get(first + place);
                String count = flow.say(PaperWord.COUNT, "count", String.valueOf(one.sweeps()), "unit", one.unit());
                float x = PageLayout.MARGIN + place * (WIDTH + PageLayout.GUTTER);
                flow.as(
                        flow.whole().add("Figure").describedAs(one.title() + ": " + count),
                        () -> HistogramDrawing.draw(flow.canvas(), one, count, x, flow.y(), WIDTH, HEIGHT));
            }
            flow.moveDown(HEIGHT + GAP_BELOW_ROW);
        }
    }
}
