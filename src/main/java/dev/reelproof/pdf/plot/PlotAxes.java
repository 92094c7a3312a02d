package dev.reelproof.pdf.plot;

import dev.reelproof.pdf.page.PageCanvas;
import dev.reelproof.pdf.page.Palette;
import dev.reelproof.pdf.page.PlainNumber;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

/** Draws the grid of a plot and the labels of its axes. */
final class PlotAxes {
    static final float LABEL_SIZE = 7;
    /** Height that the labels of frequency take below the frame, in points. */
    static final float HEIGHT = 12;
    /** Width that the labels of values take on the left of the frame, in points. */
    static final float WIDTH = 26;

    private static final float GRID_THICKNESS = 0.35f;
    private static final float VALUE_LABEL_GAP = 3;
    private static final float FREQUENCY_LABEL_GAP = 2.5f;
    private static final float LAST_LABEL_OVERHANG = 2;
    /** The middles of two labels of frequency stand further apart than this. */
    private static final float LABEL_DISTANCE = 20;

    private static final int DIGITS_PER_DECADE = 9;
    private static final List<Integer> LABELLED_WITHIN_DECADE = List.of(2, 5);

    private final PageCanvas canvas;
    private final PlotScale scale;

    private PlotAxes(PageCanvas canvas, PlotScale scale) {
        this.canvas = canvas;
        this.scale = scale;
    }

    static void draw(PageCanvas canvas, PlotScale scale) throws IOException {
        PlotAxes axes = new PlotAxes(canvas, scale);
        axes.values();
        axes.frequencies();
    }

    private void values() throws IOException {
        double step = scale.step().doubleValue();
        long first = (long) Math.ceil(scale.lowest() / step);
        long last = (long) Math.floor(scale.highest() / step);
        for (long k = first; k <= last; k++) {
            BigDecimal tick = scale.step().multiply(BigDecimal.valueOf(k));
            float y = scale.y(tick.doubleValue());
            canvas.line(scale.left(), y, scale.right(), y, Palette.GRID, GRID_THICKNESS);
            canvas.textEndingAt(
                    PlainNumber.of(tick),
                    scale.left() - VALUE_LABEL_GAP,
                    y + LABEL_SIZE * PageCanvas.DIGIT_MIDDLE,
                    LABEL_SIZE,
                    Palette.MUTED);
        }
    }

    /** Lines at each digit of each decade; labels at the ends, then at the decades, then between where there is room. */
    private void frequencies() throws IOException {
        int firstDecade = (int) Math.floor(Math.log10(scale.fromMegahertz()));
        int lastDecade = (int) Math.floor(Math.log10(scale.toMegahertz()));
        List<Double> decades = new ArrayList<>();
        List<Double> between = new ArrayList<>();
        for (int decade = firstDecade; decade <= lastDecade; decade++) {
            for (int digit = 1; digit <= DIGITS_PER_DECADE; digit++) {
                double frequency =
                        BigDecimal.valueOf(digit).scaleByPowerOfTen(decade).doubleValue();
                if (!(frequency > scale.fromMegahertz() && frequency < scale.toMegahertz())) {
                    continue;
                }
                float x = scale.x(frequency);
                canvas.line(
                        x, scale.top(), x, scale.bottom(), digit == 1 ? Palette.RULE : Palette.GRID, GRID_THICKNESS);
                if (digit == 1) {
                    decades.add(frequency);
                } else if (LABELLED_WITHIN_DECADE.contains(digit)) {
                    between.add(frequency);
                }
            }
        }
        frequencyLabels(decades, between);
    }

    private void frequencyLabels(List<Double> decades, List<Double> between) throws IOException {
        List<Float> taken = new ArrayList<>();
        float y = scale.bottom() + LABEL_SIZE + FREQUENCY_LABEL_GAP;
        label(scale.fromMegahertz(), y, taken);
        String last = PlainNumber.of(scale.toMegahertz()) + " MHz";
        canvas.textEndingAt(last, scale.right() + LAST_LABEL_OVERHANG, y, LABEL_SIZE, Palette.MUTED);
        taken.add(scale.right() - canvas.font().width(last, LABEL_SIZE) / 2);
        for (double frequency : decades) {
            label(frequency, y, taken);
        }
        for (double frequency : between) {
            label(frequency, y, taken);
        }
    }

    private void label(double megahertz, float y, List<Float> taken) throws IOException {
        float x = scale.x(megahertz);
        if (taken.stream().allMatch(other -> Math.abs(other - x) > LABEL_DISTANCE)) {
            canvas.textCentredAt(PlainNumber.of(megahertz), x, y, LABEL_SIZE, Palette.MUTED);
            taken.add(x);
        }
    }
}
