package dev.reelproof.pdf.plot;

import dev.reelproof.certificate.CertificateContent.LimitLine;
import dev.reelproof.certificate.CertificateContent.Line;
import dev.reelproof.certificate.CertificateContent.Plot;
import dev.reelproof.pdf.page.PageCanvas;
import dev.reelproof.pdf.page.Palette;
import java.io.IOException;
import java.util.List;
import java.util.stream.DoubleStream;

/** Draws the limits of a plot, thick and dark, each with its label where it hides no sweep. */
final class PlotLimits {
    /** A limit at one frequency is drawn this far to either side of it, in points. */
    private static final float SPOT_HALF_WIDTH = 5;

    private static final float LABEL_SIZE = PlotAxes.LABEL_SIZE;
    private static final float LABEL_GAP = 4;
    private static final float LABEL_TO_FRAME = 1;
    /** Where a label may begin, as shares of the room that it has to the right; the first that fits is taken. */
    private static final float[] LABEL_PLACES = {0.02f, 0.2f, 0.4f, 0.6f, 0.8f, 1};

    private final PageCanvas canvas;
    private final PlotScale scale;
    private final Plot plot;

    private PlotLimits(PageCanvas canvas, PlotScale scale, Plot plot) {
        this.canvas = canvas;
        this.scale = scale;
        this.plot = plot;
    }

    static void draw(PageCanvas canvas, PlotScale scale, Plot plot) throws IOException {
        PlotLimits limits = new PlotLimits(canvas, scale, plot);
        for (LimitLine limit : plot.limits()) {
            List<float[]> points = scale.points(limit.megahertz(), limit.values());
            limits.line(points);
            limits.label(limit, points);
        }
    }

    private void line(List<float[]> points) throws IOException {
        if (isSpot(points)) {
            float[] spot = points.get(0);
            float from = Math.max(scale.left(), spot[0] - SPOT_HALF_WIDTH);
            float to = Math.min(scale.right(), spot[0] + SPOT_HALF_WIDTH);
            canvas.line(from, spot[1], to, spot[1], LineStyle.LIMIT, LineStyle.LIMIT_THICKNESS);
        } else {
            canvas.polyline(points, LineStyle.LIMIT, LineStyle.LIMIT_THICKNESS, LineStyle.SOLID);
        }
    }

    private static boolean isSpot(List<float[]> points) {
        return points.size() == 1;
    }

    /** The label stands on the side of the limit away from the sweeps, or else on the other, at the first place where it fits. */
    private void label(LimitLine limit, List<float[]> points) throws IOException {
        boolean below = sweepsLieAbove(limit);
        if (!labelled(limit, points, below)) {
            labelled(limit, points, !below);
        }
    }

    private boolean labelled(LimitLine limit, List<float[]> points, boolean below) throws IOException {
        float width = canvas.bold().width(canvas.bold().printable(limit.label()), LABEL_SIZE);
        for (float place : LABEL_PLACES) {
            float x = isSpot(points)
                    ? Math.max(scale.left(), Math.min(points.get(0)[0], scale.right() - width))
                    : scale.left() + LABEL_GAP + place * (scale.right() - scale.left() - width - 2 * LABEL_GAP);
            double[] heights = points.stream()
                    .filter(point -> isSpot(points) || point[0] >= x - LABEL_GAP && point[0] <= x + width + LABEL_GAP)
                    .mapToDouble(point -> point[1])
                    .toArray();
            if (heights.length > 0) {
                float y = below
                        ? (float) DoubleStream.of(heights).max().orElseThrow() + LABEL_GAP + LABEL_SIZE
                        : (float) DoubleStream.of(heights).min().orElseThrow() - LABEL_GAP;
                if (y - LABEL_SIZE > scale.top() && y < scale.bottom() - LABEL_TO_FRAME) {
                    canvas.boldText(limit.label(), x, y, LABEL_SIZE, Palette.TEXT);
                    return true;
                }
            }
        }
        return false;
    }

    /** Whether most of what is drawn lies above a limit, at the same frequencies. */
    private boolean sweepsLieAbove(LimitLine limit) {
        int balance = 0;
        for (Line line : plot.lines()) {
            balance += balance(limit, line.megahertz(), line.values());
        }
        if (plot.band() != null) {
            balance += balance(limit, plot.band().megahertz(), plot.band().lowest());
        }
        return balance > 0;
    }

    /** How many more values lie above than below a limit, which is taken at its next point in frequency. */
    private static int balance(LimitLine limit, List<Double> megahertz, List<Double> values) {
        int balance = 0;
        int next = 0;
        for (int i = 0; i < values.size(); i++) {
            while (next < limit.megahertz().size() - 1 && limit.megahertz().get(next) < megahertz.get(i)) {
                next++;
            }
            balance += Double.compare(values.get(i), limit.values().get(next));
        }
        return balance;
    }
}
