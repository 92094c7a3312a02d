package dev.reelproof.pdf;

import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.certificate.CertificateContent.Plot;
import dev.reelproof.pdf.page.Palette;
import dev.reelproof.pdf.plot.PlotDrawing;
import java.io.IOException;
import java.util.List;

/** Sets the plots in rows, each row of plots under one heading a page. */
final class PlotGallery {
    private static final float HEADING_HEIGHT = 12;
    private static final float GAP_BELOW_ROW = 8;

    private PlotGallery() {}

    static void draw(PageFlow flow, CertificateContent content, Density density) throws IOException {
        int across = density.plotsAcross();
        float width = (PageLayout.BODY_WIDTH - (across - 1) * PageLayout.GUTTER) / across;
        float height = room() / density.plotsDown() - GAP_BELOW_ROW;
        List<Plot> plots = content.plots();
        for (int first = 0; first < plots.size(); first += across) {
            if (first == 0 || flow.y() + height > PageLayout.BOTTOM) {
                flow.makeRoom(HEADING_HEIGHT + height);
                heading(flow, content);
            }
            List<Plot> row = plots.subList(first, Math.min(first + across, plots.size()));
            for (int place = 0; place < row.size(); place++) {
                float x = PageLayout.MARGIN + place * (width + PageLayout.GUTTER);
                PlotDrawing.draw(flow.canvas(), row.get(place), x, flow.y(), width, height);
            }
            flow.moveDown(height + GAP_BELOW_ROW);
        }
    }

    /** What a page has for rows of plots, its heads and the mark of the end taken off. */
    private static float room() {
        return PageLayout.BOTTOM
                - PageLayout.TOP
                - PageFlow.RUNNING_HEAD_HEIGHT
                - EndMark.HEIGHT_RESERVED
                - HEADING_HEIGHT;
    }

    private static void heading(PageFlow flow, CertificateContent content) throws IOException {
        FactTexts texts = new FactTexts(content);
        flow.canvas()
                .boldText(
                        "Sweeps against their limits, values referred to " + texts.referenceTemperature()
                                + " and the length of the unit or " + texts.referenceLength()
                                + "; the ring marks the least margin",
                        PageLayout.MARGIN,
                        flow.y(),
                        PageLayout.HEADING_SIZE,
                        Palette.TEXT);
        flow.moveDown(HEADING_HEIGHT);
    }
}
