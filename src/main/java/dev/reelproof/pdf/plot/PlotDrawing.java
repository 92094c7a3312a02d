package dev.reelproof.pdf.plot;

import dev.reelproof.certificate.CertificateContent.Band;
import dev.reelproof.certificate.CertificateContent.Line;
import dev.reelproof.certificate.CertificateContent.Plot;
import dev.reelproof.pdf.page.EmbeddedFont;
import dev.reelproof.pdf.page.PageCanvas;
import dev.reelproof.pdf.page.Palette;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** Draws one plot: sweeps thin, limit thick and dark, worst point ringed, frequency on a logarithmic axis. Lengths are in points. */
public final class PlotDrawing {
    private static final float TITLE_HEIGHT = 22;
    private static final float TITLE_SIZE = 8.5f;
    private static final float TITLE_TO_UNIT = 5;
    private static final float CAPTION_SIZE = 6.3f;
    private static final float CAPTION_GAP = 2.5f;
    private static final float UNIT_SIZE = CAPTION_SIZE + 0.5f;
    private static final float RING_RADIUS = 2.6f;
    private static final float RING_THICKNESS = 1;
    private static final float FRAME_THICKNESS = 0.5f;

    private final PageCanvas canvas;
    private final Plot plot;
    private final PlotLegend legend;
    private final PlotScale scale;

    private PlotDrawing(PageCanvas canvas, Plot plot, float x, float y, float width, float height) {
        this.canvas = canvas;
        this.plot = plot;
        this.legend = new PlotLegend(plot, canvas.font(), width - PlotAxes.WIDTH);
        this.scale = new PlotScale(
                plot, x + PlotAxes.WIDTH, x + width, y + TITLE_HEIGHT, y + height - PlotAxes.HEIGHT - legend.height());
    }

    /** Draws a plot into the rectangle with its upper left corner at x and y; title, axes and legend lie within it. */
    public static void draw(PageCanvas canvas, Plot plot, float x, float y, float width, float height)
            throws IOException {
        PlotDrawing drawing = new PlotDrawing(canvas, plot, x, y, width, height);
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
        float end = left + font.width(font.printable(plot.title()), TITLE_SIZE);
        canvas.text(plot.unit(), end + TITLE_TO_UNIT, top + TITLE_SIZE, UNIT_SIZE, Palette.MUTED);
        if (plot.worst() != null) {
            String caption = "least margin " + plot.worst().margin() + ": "
                    + plot.worst().where();
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
    }

    private void sweeps() throws IOException {
        List<String> labels = LineStyle.labels(plot);
        float thickness = plot.band() == null ? LineStyle.SWEEP_THICKNESS : LineStyle.WORST_THICKNESS;
        for (Line line : plot.lines()) {
            int label = labels.indexOf(line.label());
            canvas.polyline(
                    scale.points(line.megahertz(), line.values()),
                    Palette.line(label),
                    thickness,
                    LineStyle.of(plot, line, label));
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
