package dev.reelproof.pdf;

import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.wording.PaperWord;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** Draws what a reader must know to use the table: to what it relates, uncertainty, decision rule, digests. */
final class NotesBlock {
    private static final float GAP_BETWEEN_PARAGRAPHS = 2;
    private static final float GAP_BELOW = 8;
    private static final float LINES_WITH_HEADING = 3;

    private NotesBlock() {}

    static void draw(PageFlow flow, CertificateContent content) throws IOException {
        flow.heading(flow.say(PaperWord.NOTES), LINES_WITH_HEADING * PageLayout.NOTE_SIZE * PageLayout.LEADING);
        for (String paragraph : paragraphs(flow, content)) {
            flow.paragraph(paragraph, PageLayout.NOTE_SIZE, GAP_BETWEEN_PARAGRAPHS);
        }
        flow.moveDown(GAP_BELOW);
    }

    private static List<String> paragraphs(PageFlow flow, CertificateContent content) {
        List<String> paragraphs = new ArrayList<>();
        paragraphs.add(flow.say(PaperWord.RELATES_TO) + " " + flow.say(PaperWord.READING));
        content.concessions().forEach(conceded -> paragraphs.add(conceded.persons()));
        if (content.uncertainty() != null) {
            paragraphs.add(content.uncertainty());
        }
        paragraphs.add(content.decisionRule() + " "
                + flow.say(PaperWord.ROUNDING, "rounding", content.limits().rounding()));
        if (!content.leftOut().isEmpty()) {
            paragraphs.add(flow.say(PaperWord.NOT_JUDGED, "what", String.join("; ", content.leftOut())));
        }
        paragraphs.add(flow.say(
                PaperWord.DIGESTS,
                "record",
                content.record(),
                "source",
                content.sourceSha256(),
                "limits",
                content.limits().sha256(),
                "engine",
                content.engine()));
        return paragraphs;
    }
}
