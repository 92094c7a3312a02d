package dev.reelproof.pdf;

import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.pdf.page.Palette;
import java.io.IOException;

/** Draws who tested, and the lines on which somebody authorises the certificate for the plant. */
final class Signatures {
    private static final float SPACE_TO_SIGN = 26;
    private static final float SPACE_BELOW = 22;
    private static final float SIZE = PageLayout.NOTE_SIZE + 0.5f;
    private static final float RULE_TO_WORDS = 9;
    private static final int COLUMNS = 3;
    private static final float WIDTH = (PageLayout.BODY_WIDTH - (COLUMNS - 1) * PageLayout.GUTTER) / COLUMNS;
    private static final float PITCH = WIDTH + PageLayout.GUTTER;

    private Signatures() {}

    static void draw(PageFlow flow, CertificateContent content) throws IOException {
        flow.makeRoom(SPACE_TO_SIGN + SPACE_BELOW);
        flow.moveDown(SPACE_TO_SIGN);
        float tester = PageLayout.MARGIN;
        float authority = PageLayout.MARGIN + PITCH;
        float date = PageLayout.MARGIN + 2 * PITCH;
        words(flow, "Tested by " + new FactTexts(content).technician("(not stated)"), tester);
        rule(flow, authority);
        words(flow, "Authorised for the plant: name and signature", authority);
        rule(flow, date);
        words(flow, "Date", date);
        flow.moveDown(SPACE_BELOW);
    }

    private static void rule(PageFlow flow, float x) throws IOException {
        flow.canvas().line(x, flow.y(), x + WIDTH, flow.y(), Palette.TEXT, PageLayout.THIN_RULE);
    }

    private static void words(PageFlow flow, String words, float x) throws IOException {
        String line = flow.font().firstLine(words, SIZE, WIDTH);
        flow.canvas().text(line, x, flow.y() + RULE_TO_WORDS, SIZE, Palette.MUTED);
    }
}
