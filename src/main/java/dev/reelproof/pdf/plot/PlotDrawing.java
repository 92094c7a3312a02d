package dev.reelproof.pdf.plot;

import dev.reelproof.certificate.CertificateContent.Band;
import dev.reelproof.certificate.CertificateContent.Line;
import dev.reelproof.certificate.CertificateContent.Plot;
import dev.reelproof.pdf.page.EmbeddedFont;
import dev.reelproof.pdf.page.PageCanvas;
import dev.reelproof.pdf.page.Palette;
import dev.reelproof.wording.PaperWord;
import dev.reelproof.wording.Wording;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** Draws one plot: what was measured as a band, the worst sweep thin, the limit thick, the worst point ringed, over log frequency. In points. */
public final class PlotDrawing {
    private static final float TITLE_HEIGHT = 22;
    private static final float TITLE_SIZE = 9;
    private static final float TITLE_TO_UNIT = 5;
    private static final float CAPTION_SIZE = 7.2f;
    private static final float CAPTION_GAP = 2.5f;
    private static final float UNIT_SIZE = CAPTION_SIZE;
    private static final float RING_RADIUS = 2.6f;
    private static final float RING_THICKNESS = 1;
    private static final float FRAME_THICKNESS = 0.5f;

    private final PageCanvas canvas;
    private final Wording words;
    private final Plot plot;
    private final PlotLegend legend;
    private final PlotScale scale;

    private PlotDrawing(PageCanvas canvas, Wording words, Plot plot, float x, float y, float width, float height) {
        this.canvas = canvas;
        this.words = words;
        this.plot = plot;
        this.legend = new PlotLegend(plot, words, canvas.font(), width - PlotAxes.WIDTH);
        this.scale = new PlotScale(
                plot, x + PlotAxes.WIDTH, x + width, y + TITLE_HEIGHT, y + height - PlotAxes.HEIGHT - legend.height());
    }

    /** Draws a plot into the rectangle with its upper left corner at x and y; title, axes and legend lie within it. */
    public static void draw(PageCanvas canvas, Wording words, Plot plot, float x, float y, float width, float height)
            throws IOException {
        PlotDrawing drawing = new PlotDrawing(canvas, words, plot, x, y, width, height);
        PlotScale scale = drawing.scale;
        drawing.title(y);
        PlotAxes.draw(canvas, scale);
        drawing.band();
        drawing.sweeps();
        PlotLimits.draw(canvas, scale, plot);
        drawing.worst();
        canvas.strokeRectangle(
                scale.left(), scale.top(), scale.width(), scale.height(), Palette.MUTED, FRAME_THICKNESS);
        drawing.legend.draw(canvas, scale.left(), scale.bottom() + PlotAxes.HEIGHT);
    }

    private void title(float top) throws IOException {
        EmbeddedFont font = canvas.font();
        float left = scale.left();
        canvas.boldText(plot.title(), left, top + TITLE_SIZE, TITLE_SIZE, Palette.TEXT);
        float end = left + canvas.bold().width(canvas.bold().printable(plot.title()), TITLE_SIZE);
        canvas.text(plot.unit(), end + TITLE_TO_UNIT, top + TITLE_SIZE, UNIT_SIZE, Palette.MUTED);
        if (plot.worst() != null) {
            String caption = words.paper(
                    PaperWord.LEAST_MARGIN,
                    "margin",
                    plot.worst().margin(),
                    "where",
                    plot.worst().where());
            String line = font.firstLine(caption, CAPTION_SIZE, scale.width());
            canvas.text(line, left, top + TITLE_SIZE + CAPTION_SIZE + CAPTION_GAP, CAPTION_SIZE, Palette.MUTED);
        }
    }

    private void band() throws IOException {
        Band band = plot.band();
        if (band == null || band.megahertz().isEmpty()) {
            return;
        }
        List<float[]> outline = new ArrayList<>(scale.points(band.megahertz(), band.highest()));
        List<float[]> back = new ArrayList<>(scale.points(band.megahertz(), band.lowest()));
        Collections.reverse(back);
        outline.addAll(back);
        canvas.fillPolygon(outline, Palette.BAND);
        outline.add(outline.get(0));
        canvas.polyline(outline, Palette.MUTED, LineStyle.EDGE_THICKNESS, LineStyle.SOLID);
    }

    private void sweeps() throws IOException {
        for (Line line : plot.lines()) {
            canvas.polyline(
                    scale.points(line.megahertz(), line.values()),
                    LineStyle.WORST,
                    LineStyle.WORST_THICKNESS,
                    LineStyle.SOLID);
        }
    }

    private void worst() throws IOException {
        if (plot.worst() != null) {
            float x = scale.xWithin(plot.worst().megahertz());
            float y = scale.yWithin(plot.worst().value());
            canvas.ring(x, y, RING_RADIUS, Palette.TEXT, RING_THICKNESS);
        }
    }
}
