package dev.reelproof.pdf.plot;

import dev.reelproof.certificate.CertificateContent.Line;
import dev.reelproof.certificate.CertificateContent.Plot;
import dev.reelproof.measurement.End;
import dev.reelproof.pdf.page.EmbeddedFont;
import dev.reelproof.pdf.page.PageCanvas;
import dev.reelproof.pdf.page.Palette;
import dev.reelproof.wording.PaperWord;
import dev.reelproof.wording.Wording;
import java.awt.Color;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Draws what is what in a plot, in as many lines of text as the width asks for. */
final class PlotLegend {
    private static final float SIZE = 7;
    private static final float LINE_HEIGHT = 9;
    private static final float SAMPLE_LENGTH = 13;
    private static final float SAMPLE_GAP = 2.5f;
    private static final float ENTRY_GAP = 7;
    private static final float BAND_SAMPLE = 5;

    /** An entry: a sample of a line with its label. */
    private record Entry(String label, Color colour, float thickness) {}

    private final EmbeddedFont font;
    private final float availableWidth;
    private final List<Entry> entries = new ArrayList<>();

    PlotLegend(Plot plot, Wording words, EmbeddedFont font, float availableWidth) {
        this.font = font;
        this.availableWidth = availableWidth;
        if (plot.band() != null) {
            String all = words.paper(PaperWord.ALL_SWEEPS, "count", String.valueOf(plot.sweeps()));
            entries.add(new Entry(all, Palette.BAND, BAND_SAMPLE));
        }
        for (Line line : plot.lines()) {
            String name = line.label() + end(line, words);
            entries.add(new Entry(
                    name.isEmpty()
                            ? words.paper(PaperWord.ONE_SWEEP)
                            : words.paper(PaperWord.WORST_SWEEP, "label", name),
                    LineStyle.WORST,
                    LineStyle.WORST_THICKNESS));
        }
    }

    private static String end(Line line, Wording words) {
        return Arrays.stream(End.values())
                .filter(end -> end.word().equals(line.end()))
                .findFirst()
                .map(end -> ", " + words.end(end))
                .orElse("");
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
            canvas.line(x, middle, x + SAMPLE_LENGTH, middle, entry.colour(), entry.thickness());
            canvas.text(entry.label(), x + SAMPLE_LENGTH + SAMPLE_GAP, y, SIZE, Palette.TEXT);
            x += width(entry);
        }
    }
}
