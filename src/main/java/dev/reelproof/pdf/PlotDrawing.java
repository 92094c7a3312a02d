package dev.reelproof.pdf;

import dev.reelproof.certificate.CertificateContent.Band;
import dev.reelproof.certificate.CertificateContent.LimitLine;
import dev.reelproof.certificate.CertificateContent.Line;
import dev.reelproof.certificate.CertificateContent.Plot;
import java.awt.Color;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/** Draws one plot: sweeps thin, limit thick and dark, worst point ringed, frequency on a logarithmic axis. */
final class PlotDrawing {
    private static final float TITLE_SIZE = 8.5f;
    private static final float CAPTION_SIZE = 6.3f;
    private static final float TICK_SIZE = 6;
    private static final float KEY_SIZE = 6;
    private static final float TITLE_HEIGHT = 22;
    private static final float AXIS_HEIGHT = 12;
    private static final float KEY_LINE_HEIGHT = 9;
    private static final float LABEL_WIDTH = 26;
    private static final float KEY_SAMPLE = 13;
    private static final float KEY_GAP = 7;
    private static final float SWEEP_THICKNESS = 0.55f;
    private static final float WORST_THICKNESS = 0.8f;
    private static final float LIMIT_THICKNESS = 1.5f;
    private static final float GRID_THICKNESS = 0.35f;
    private static final float RING = 2.6f;
    private static final float SPOT_HALF_WIDTH = 5;
    private static final float LABEL_DISTANCE = 20;
    private static final float LIMIT_LABEL_GAP = 4;
    private static final float[] LABEL_PLACES = {0.02f, 0.2f, 0.4f, 0.6f, 0.8f, 1};
    private static final int Y_STEPS = 6;
    private static final double HEADROOM = 0.07;
    private static final int[] MANTISSAS = {1, 2, 5};
    private static final float[] SOLID = {};
    private static final float[] DASHED = {2.4f, 1.3f};
    private static final float[] DOTTED = {0.7f, 1.1f};

    private final PageCanvas canvas;
    private final Plot plot;
    private final float left;
    private final float right;
    private final float top;
    private final float bottom;
    private final float keyWidth;
    private final List<KeyEntry> key;
    private final double low;
    private final double high;
    private final BigDecimal step;

    /** An entry of the key: a sample of a line with its label. */
    private record KeyEntry(String label, Color colour, float thickness, float[] dashes) {}

    private PlotDrawing(PageCanvas canvas, Plot plot, float x, float y, float width, float height) {
        this.canvas = canvas;
        this.plot = plot;
        this.left = x + LABEL_WIDTH;
        this.right = x + width;
        this.keyWidth = width - LABEL_WIDTH;
        this.key = key();
        this.top = y + TITLE_HEIGHT;
        this.bottom = y + height - AXIS_HEIGHT - keyLines() * KEY_LINE_HEIGHT;
        double lowest = values().min().orElse(0);
        double highest = values().max().orElse(1);
        double span = highest > lowest ? highest - lowest : Math.max(Math.abs(highest), 1);
        this.step = niceStep(span / Y_STEPS);
        this.low = lowest - span * HEADROOM;
        this.high = highest + span * HEADROOM;
    }

    static void draw(PageCanvas canvas, Plot plot, float x, float y, float width, float height) throws IOException {
        PlotDrawing drawing = new PlotDrawing(canvas, plot, x, y, width, height);
        drawing.title(x, y);
        drawing.yAxis();
        drawing.xAxis();
        drawing.band();
        drawing.sweeps();
        drawing.limits();
        drawing.worst();
        canvas.strokeRectangle(
                drawing.left,
                drawing.top,
                drawing.right - drawing.left,
                drawing.bottom - drawing.top,
                Palette.MUTED,
                0.5f);
        drawing.drawKey();
    }

    private DoubleStream values() {
        Stream<List<Double>> bands = plot.band() == null
                ? Stream.empty()
                : Stream.of(plot.band().lowest(), plot.band().highest());
        Stream<List<Double>> lines = Stream.concat(
                plot.lines().stream().map(Line::values), plot.limits().stream().map(LimitLine::values));
        return Stream.concat(bands, lines).flatMap(List::stream).mapToDouble(Double::doubleValue);
    }

    /** The smallest of 1, 2, 5 times a power of ten that is not below the given step. */
    private static BigDecimal niceStep(double least) {
        int exponent = (int) Math.floor(Math.log10(least));
        for (int mantissa : MANTISSAS) {
            BigDecimal candidate = BigDecimal.valueOf(mantissa).scaleByPowerOfTen(exponent);
            if (candidate.doubleValue() >= least) {
                return candidate;
            }
        }
        return BigDecimal.ONE.scaleByPowerOfTen(exponent + 1);
    }

    private float x(double megahertz) {
        double share = Math.log(megahertz / plot.fromMegahertz()) / Math.log(plot.toMegahertz() / plot.fromMegahertz());
        return (float) (left + share * (right - left));
    }

    private float y(double value) {
        return (float) (bottom - (value - low) / (high - low) * (bottom - top));
    }

    private void title(float x, float y) throws IOException {
        canvas.boldText(plot.title(), left, y + TITLE_SIZE, TITLE_SIZE, Palette.TEXT);
        float end = left + canvas.font().width(canvas.font().printable(plot.title()), TITLE_SIZE);
        canvas.text(plot.unit(), end + 5, y + TITLE_SIZE, CAPTION_SIZE + 0.5f, Palette.MUTED);
        if (plot.worst() != null) {
            String caption = "least margin " + plot.worst().margin() + ": "
                    + plot.worst().where();
            String line =
                    canvas.font().wrap(caption, CAPTION_SIZE, right - left, 1).get(0);
            canvas.text(line, left, y + TITLE_SIZE + CAPTION_SIZE + 2.5f, CAPTION_SIZE, Palette.MUTED);
        }
    }

    private void yAxis() throws IOException {
        long first = (long) Math.ceil(low / step.doubleValue());
        long last = (long) Math.floor(high / step.doubleValue());
        for (long k = first; k <= last; k++) {
            BigDecimal tick = step.multiply(BigDecimal.valueOf(k));
            float y = y(tick.doubleValue());
            canvas.line(left, y, right, y, Palette.GRID, GRID_THICKNESS);
            canvas.textEndingAt(number(tick), left - 3, y + TICK_SIZE * 0.35f, TICK_SIZE, Palette.MUTED);
        }
    }

    private static String number(BigDecimal value) {
        BigDecimal plain = value.signum() == 0 ? BigDecimal.ZERO : value.stripTrailingZeros();
        return plain.toPlainString().replace('-', '−');
    }

    private void xAxis() throws IOException {
        int decade = (int) Math.floor(Math.log10(plot.fromMegahertz()));
        int lastDecade = (int) Math.floor(Math.log10(plot.toMegahertz()));
        List<Double> decades = new ArrayList<>();
        List<Double> between = new ArrayList<>();
        for (; decade <= lastDecade; decade++) {
            for (int digit = 1; digit <= 9; digit++) {
                double frequency =
                        BigDecimal.valueOf(digit).scaleByPowerOfTen(decade).doubleValue();
                if (frequency > plot.fromMegahertz() && frequency < plot.toMegahertz()) {
                    float x = x(frequency);
                    canvas.line(x, top, x, bottom, digit == 1 ? Palette.RULE : Palette.GRID, GRID_THICKNESS);
                    if (digit == 1) {
                        decades.add(frequency);
                    } else if (digit == 2 || digit == 5) {
                        between.add(frequency);
                    }
                }
            }
        }
        List<Float> taken = new ArrayList<>();
        float y = bottom + TICK_SIZE + 2.5f;
        label(plot.fromMegahertz(), y, taken);
        String last = number(BigDecimal.valueOf(plot.toMegahertz())) + " MHz";
        canvas.textEndingAt(last, right + 2, y, TICK_SIZE, Palette.MUTED);
        taken.add(right - canvas.font().width(last, TICK_SIZE) / 2);
        for (double frequency : decades) {
            label(frequency, y, taken);
        }
        for (double frequency : between) {
            label(frequency, y, taken);
        }
    }

    private void label(double megahertz, float y, List<Float> taken) throws IOException {
        float x = x(megahertz);
        if (taken.stream().allMatch(other -> Math.abs(other - x) > LABEL_DISTANCE)) {
            canvas.textCentredAt(number(BigDecimal.valueOf(megahertz)), x, y, TICK_SIZE, Palette.MUTED);
            taken.add(x);
        }
    }

    private void band() throws IOException {
        Band band = plot.band();
        if (band == null || band.megahertz().isEmpty()) {
            return;
        }
        List<float[]> outline = new ArrayList<>();
        for (int i = 0; i < band.megahertz().size(); i++) {
            outline.add(
                    new float[] {x(band.megahertz().get(i)), y(band.highest().get(i))});
        }
        for (int i = band.megahertz().size() - 1; i >= 0; i--) {
            outline.add(new float[] {x(band.megahertz().get(i)), y(band.lowest().get(i))});
        }
        canvas.fillPolygon(outline, Palette.BAND);
    }

    private void sweeps() throws IOException {
        List<String> labels = labels();
        for (Line line : plot.lines()) {
            int index = labels.indexOf(line.label());
            List<float[]> points = points(line.megahertz(), line.values());
            float thickness = plot.band() == null ? SWEEP_THICKNESS : WORST_THICKNESS;
            canvas.polyline(points, Palette.line(index), thickness, dashes(index, line.end()));
        }
    }

    private float[] dashes(int index, String end) {
        if (index >= Palette.lines()) {
            return DOTTED;
        }
        return "far".equals(end) && plot.band() == null ? DASHED : SOLID;
    }

    private List<String> labels() {
        return plot.lines().stream().map(Line::label).distinct().toList();
    }

    private List<float[]> points(List<Double> megahertz, List<Double> values) {
        List<float[]> points = new ArrayList<>(megahertz.size());
        for (int i = 0; i < megahertz.size(); i++) {
            points.add(new float[] {x(megahertz.get(i)), y(values.get(i))});
        }
        return points;
    }

    private void limits() throws IOException {
        for (LimitLine limit : plot.limits()) {
            List<float[]> points = points(limit.megahertz(), limit.values());
            if (points.size() == 1) {
                float[] spot = points.get(0);
                canvas.line(
                        Math.max(left, spot[0] - SPOT_HALF_WIDTH),
                        spot[1],
                        Math.min(right, spot[0] + SPOT_HALF_WIDTH),
                        spot[1],
                        Palette.TEXT,
                        LIMIT_THICKNESS);
            } else {
                canvas.polyline(points, Palette.TEXT, LIMIT_THICKNESS, SOLID);
            }
            limitLabel(limit, points);
        }
    }

    /** The label stands on the side of the limit away from the sweeps, or else on the other, at the first place where it fits. */
    private void limitLabel(LimitLine limit, List<float[]> points) throws IOException {
        boolean below = sweepsAbove(limit);
        if (!labelled(limit, points, below)) {
            labelled(limit, points, !below);
        }
    }

    private boolean labelled(LimitLine limit, List<float[]> points, boolean below) throws IOException {
        float width = canvas.font().width(canvas.font().printable(limit.label()), TICK_SIZE);
        for (float place : LABEL_PLACES) {
            float x = points.size() == 1
                    ? Math.max(left, Math.min(points.get(0)[0], right - width))
                    : left + LIMIT_LABEL_GAP + place * (right - left - width - 2 * LIMIT_LABEL_GAP);
            double[] heights = points.stream()
                    .filter(point -> points.size() == 1
                            || point[0] >= x - LIMIT_LABEL_GAP && point[0] <= x + width + LIMIT_LABEL_GAP)
                    .mapToDouble(point -> point[1])
                    .toArray();
            if (heights.length > 0) {
                float y = below
                        ? (float) DoubleStream.of(heights).max().orElseThrow() + LIMIT_LABEL_GAP + TICK_SIZE
                        : (float) DoubleStream.of(heights).min().orElseThrow() - LIMIT_LABEL_GAP;
                if (y - TICK_SIZE > top && y < bottom - 1) {
                    canvas.boldText(limit.label(), x, y, TICK_SIZE, Palette.TEXT);
                    return true;
                }
            }
        }
        return false;
    }

    /** Whether most of what is drawn lies above a limit, at the same frequencies. */
    private boolean sweepsAbove(LimitLine limit) {
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

    private void worst() throws IOException {
        if (plot.worst() != null) {
            float x = Math.min(right, Math.max(left, x(plot.worst().megahertz())));
            float y = Math.min(bottom, Math.max(top, y(plot.worst().value())));
            canvas.ring(x, y, RING, Palette.TEXT, 1);
        }
    }

    private List<KeyEntry> key() {
        List<KeyEntry> entries = new ArrayList<>();
        List<String> labels = labels();
        if (plot.band() != null) {
            entries.add(new KeyEntry("all " + plot.sweeps() + " sweeps", Palette.BAND, 5, SOLID));
            plot.lines()
                    .forEach(line -> entries.add(new KeyEntry(
                            "the worst: " + line.label() + (line.end().isEmpty() ? "" : ", " + line.end() + " end"),
                            Palette.line(0),
                            WORST_THICKNESS,
                            SOLID)));
        } else {
            for (int i = 0; i < labels.size(); i++) {
                String label = labels.get(i).isEmpty() ? "reel" : labels.get(i);
                entries.add(new KeyEntry(label, Palette.line(i), 1, dashes(i, "near")));
            }
            if (plot.lines().stream().anyMatch(line -> "far".equals(line.end()))) {
                entries.add(new KeyEntry("near end", Palette.MUTED, SWEEP_THICKNESS, SOLID));
                entries.add(new KeyEntry("far end", Palette.MUTED, SWEEP_THICKNESS, DASHED));
            }
        }
        return entries;
    }

    private float width(KeyEntry entry) {
        return KEY_SAMPLE + 2.5f + canvas.font().width(canvas.font().printable(entry.label()), KEY_SIZE) + KEY_GAP;
    }

    private int keyLines() {
        int lines = 1;
        float used = 0;
        for (KeyEntry entry : key) {
            if (used > 0 && used + width(entry) > keyWidth) {
                lines++;
                used = 0;
            }
            used += width(entry);
        }
        return lines;
    }

    private void drawKey() throws IOException {
        float x = left;
        float y = bottom + AXIS_HEIGHT + KEY_SIZE;
        for (KeyEntry entry : key) {
            if (x > left && x + width(entry) > left + keyWidth) {
                x = left;
                y += KEY_LINE_HEIGHT;
            }
            float middle = y - KEY_SIZE * 0.35f;
            canvas.polyline(
                    List.of(new float[] {x, middle}, new float[] {x + KEY_SAMPLE, middle}),
                    entry.colour(),
                    entry.thickness(),
                    entry.dashes());
            canvas.text(entry.label(), x + KEY_SAMPLE + 2.5f, y, KEY_SIZE, Palette.TEXT);
            x += width(entry);
        }
    }
}
