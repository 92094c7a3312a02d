package dev.reelproof.pdf;

import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.certificate.CertificateContent.Plot;
import dev.reelproof.pdf.plot.PlotDrawing;
import dev.reelproof.wording.PaperWord;
import java.io.IOException;
import java.util.List;

/** Sets the plots in rows of two, as high as fills the pages that they take. */
final class PlotGallery {
    private static final int ACROSS = 2;
    private static final float LEAST_HEIGHT = 122;
    /** Where something follows the plots, and where they end the certificate. */
    private static final float GREATEST_HEIGHT = 205;

    private static final float GREATEST_HEIGHT_AT_END = 305;
    private static final float GAP_BELOW_ROW = 9;
    private static final float WIDTH = (PageLayout.BODY_WIDTH - (ACROSS - 1) * PageLayout.GUTTER) / ACROSS;

    private PlotGallery() {}

    /** @param spreads whether a row that would stand alone on a page takes another with it */
    static void draw(PageFlow flow, CertificateContent content, boolean spreads) throws IOException {
        List<Plot> plots = content.plots();
        if (plots.isEmpty()) {
            return;
        }
        heading(flow, content);
        int rows = (plots.size() + ACROSS - 1) / ACROSS;
        float greatest = content.distributions().isEmpty() ? GREATEST_HEIGHT_AT_END : GREATEST_HEIGHT;
        float height = height(flow, rows, greatest, spreads);
        for (int row = 0; row < rows; row++) {
            if (flow.makeRoom(height)) {
                height = height(flow, rows - row, greatest, spreads);
            }
            for (int place = 0; place < ACROSS && row * ACROSS + place < plots.size(); place++) {
                Plot plot = plots.get(row * ACROSS + place);
                float x = PageLayout.MARGIN + place * (WIDTH + PageLayout.GUTTER);
                float drawn = height;
                flow.as(
                        flow.whole().add("Figure").describedAs(description(flow, plot)),
                        () -> PlotDrawing.draw(flow.canvas(), flow.words(), plot, x, flow.y(), WIDTH, drawn));
            }
            flow.moveDown(height + GAP_BELOW_ROW);
        }
    }

    /** The height of the rows that this page can take, so that they fill it. */
    private static float height(PageFlow flow, int rows, float greatest, boolean spreads) {
        float room = flow.room() - EndMark.HEIGHT_RESERVED;
        int most = Math.max(1, Math.min(rows, (int) (room / (LEAST_HEIGHT + GAP_BELOW_ROW))));
        int fitting = spreads && rows - most == 1 && most > 2 ? most - 1 : most;
        return Math.max(LEAST_HEIGHT, Math.min(greatest, room / fitting - GAP_BELOW_ROW));
    }

    private static void heading(PageFlow flow, CertificateContent content) throws IOException {
        FactTexts texts = new FactTexts(content, flow.words());
        float lines = 2 * PageLayout.NOTE_SIZE * PageLayout.LEADING;
        flow.heading(flow.say(PaperWord.CURVES), lines + GAP_BELOW_ROW + LEAST_HEIGHT + EndMark.HEIGHT_RESERVED);
        flow.paragraph(
                flow.say(
                        PaperWord.CURVES_READING,
                        "temperature",
                        texts.referenceTemperature(),
                        "length",
                        texts.referenceLength()),
                PageLayout.NOTE_SIZE,
                GAP_BELOW_ROW);
    }

    private static String description(PageFlow flow, Plot plot) {
        return flow.words()
                .paper(
                        PaperWord.FIGURE,
                        "title",
                        plot.title(),
                        "from",
                        String.valueOf(plot.fromMegahertz()),
                        "to",
                        String.valueOf(plot.toMegahertz()),
                        "least",
                        plot.worst() == null
                                ? null
                                : flow.say(
                                        PaperWord.LEAST_MARGIN,
                                        "margin",
                                        plot.worst().margin(),
                                        "where",
                                        plot.worst().where()));
    }
}
