package dev.reelproof.pdf.plot;

import dev.reelproof.certificate.CertificateContent.Plot;
import dev.reelproof.pdf.page.EmbeddedFont;
import dev.reelproof.pdf.page.PageCanvas;
import dev.reelproof.pdf.page.Palette;
import java.awt.Color;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** Draws which line of a plot is which, in as many lines of text as the width asks for. */
final class PlotLegend {
    private static final float SIZE = 6;
    private static final float LINE_HEIGHT = 9;
    private static final float SAMPLE_LENGTH = 13;
    private static final float SAMPLE_GAP = 2.5f;
    private static final float ENTRY_GAP = 7;
    private static final float SWEEP_SAMPLE = 1;
    private static final float BAND_SAMPLE = 5;

    /** An entry: a sample of a line with its label. */
    private record Entry(String label, Color colour, float thickness, float[] dashes) {}

    private final EmbeddedFont font;
    private final float availableWidth;
    private final List<Entry> entries;

    PlotLegend(Plot plot, EmbeddedFont font, float availableWidth) {
        this.font = font;
        this.availableWidth = availableWidth;
        this.entries = plot.band() == null ? ofSweeps(plot) : ofBand(plot);
    }

    private static List<Entry> ofBand(Plot plot) {
        List<Entry> entries = new ArrayList<>();
        entries.add(new Entry("all " + plot.sweeps() + " sweeps", Palette.BAND, BAND_SAMPLE, LineStyle.SOLID));
        plot.lines()
                .forEach(line -> entries.add(new Entry(
                        "the worst: " + line.label() + (line.end().isEmpty() ? "" : ", " + line.end() + " end"),
                        Palette.line(0),
                        LineStyle.WORST_THICKNESS,
                        LineStyle.SOLID)));
        return entries;
    }

    private static List<Entry> ofSweeps(Plot plot) {
        List<Entry> entries = new ArrayList<>();
        List<String> labels = LineStyle.labels(plot);
        for (int i = 0; i < labels.size(); i++) {
            String label = labels.get(i).isEmpty() ? "reel" : labels.get(i);
            entries.add(new Entry(label, Palette.line(i), SWEEP_SAMPLE, LineStyle.ofLabel(i)));
        }
        if (plot.lines().stream().anyMatch(LineStyle::isFar)) {
            entries.add(new Entry("near end", Palette.MUTED, LineStyle.SWEEP_THICKNESS, LineStyle.SOLID));
            entries.add(new Entry("far end", Palette.MUTED, LineStyle.SWEEP_THICKNESS, LineStyle.DASHED));
        }
        return entries;
    }

    private float width(Entry entry) {
        return SAMPLE_LENGTH + SAMPLE_GAP + font.width(font.printable(entry.label()), SIZE) + ENTRY_GAP;
    }

    /** Its height in points. */
    float height() {
        int lines = 1;
        float used = 0;
        for (Entry entry : entries) {
            if (used > 0 && used + width(entry) > availableWidth) {
                lines++;
                used = 0;
            }
            used += width(entry);
        }
        return lines * LINE_HEIGHT;
    }

    void draw(PageCanvas canvas, float left, float top) throws IOException {
        float x = left;
        float y = top + SIZE;
        for (Entry entry : entries) {
            if (x > left && x + width(entry) > left + availableWidth) {
                x = left;
                y += LINE_HEIGHT;
            }
            float middle = y - SIZE * PageCanvas.DIGIT_MIDDLE;
            canvas.polyline(
                    List.of(new float[] {x, middle}, new float[] {x + SAMPLE_LENGTH, middle}),
                    entry.colour(),
                    entry.thickness(),
                    entry.dashes());
            canvas.text(entry.label(), x + SAMPLE_LENGTH + SAMPLE_GAP, y, SIZE, Palette.TEXT);
            x += width(entry);
        }
    }
}
