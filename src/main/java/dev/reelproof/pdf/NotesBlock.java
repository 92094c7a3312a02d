package dev.reelproof.pdf;

import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.pdf.page.Palette;
import java.io.IOException;

/** Draws what a reader must know to use the table: to what it relates, uncertainty, decision rule, digests. */
final class NotesBlock {
    private static final float GAP_BETWEEN_PARAGRAPHS = 2;
    private static final String RELATES_TO =
            "This certificate relates only to the reel named above. It may be copied whole; parts of it only with the"
                    + " plant's consent. Worst, limit there and margin are those of the place where the margin is least; figures"
                    + " are rounded for print after the decision. In formulas f is in MHz.";

    private NotesBlock() {}

    static void draw(PageFlow flow, CertificateContent content) throws IOException {
        paragraph(flow, RELATES_TO);
        for (CertificateContent.Conceded conceded : content.concessions()) {
            paragraph(flow, conceded.persons());
        }
        if (content.uncertainty() != null) {
            paragraph(flow, content.uncertainty());
        }
        paragraph(
                flow, content.decisionRule() + " Rounding: " + content.limits().rounding() + ".");
        if (!content.leftOut().isEmpty()) {
            paragraph(
                    flow,
                    "Not judged, though the source of the limit set demands it: " + String.join("; ", content.leftOut())
                            + ".");
        }
        paragraph(
                flow,
                "Record " + content.record() + "; results as received, SHA-256 " + content.sourceSha256()
                        + "; limit set file, SHA-256 " + content.limits().sha256() + "; judged by engine "
                        + content.engine() + ". The limit set names the source of each limit and law.");
    }

    private static void paragraph(PageFlow flow, String text) throws IOException {
        float size = PageLayout.NOTE_SIZE;
        for (String line : flow.font().wrap(text, size, PageLayout.BODY_WIDTH)) {
            flow.makeRoom(size * PageLayout.LEADING);
            flow.canvas().text(line, PageLayout.MARGIN, flow.y() + size, size, Palette.MUTED);
            flow.moveDown(size * PageLayout.LEADING);
        }
        flow.moveDown(GAP_BETWEEN_PARAGRAPHS);
    }
}
