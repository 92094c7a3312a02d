package dev.reelproof.pdf.plot;

import dev.reelproof.certificate.Distribution;
import dev.reelproof.pdf.page.PageCanvas;
import dev.reelproof.pdf.page.Palette;
import dev.reelproof.wording.Figures;
import java.io.IOException;
import java.util.Collections;
import java.util.List;

/** Draws how many sweeps have which margin: bars over classes of margin, with the least, the greatest and the most of them in figures. */
public final class HistogramDrawing {
    private static final float TITLE_SIZE = 8;
    private static final float SIZE = 7;
    private static final float HEAD = 22;
    private static final float FOOT = 12;
    private static final float GAP_OF_BARS = 0.6f;
    private static final float AXIS = 0.6f;
    private static final float AXIS_TO_LABEL = 2;
    private static final int DIGITS = 4;

    private HistogramDrawing() {}

    /**
     * Draws into the rectangle with its upper left corner at x and y.
     *
     * @param count what is counted, in words
     */
    public static void draw(
            PageCanvas canvas, Distribution distribution, String count, float x, float y, float width, float height)
            throws IOException {
        String title = canvas.bold().firstLine(distribution.title(), TITLE_SIZE, width);
        canvas.boldText(title, x, y + TITLE_SIZE, TITLE_SIZE, Palette.TEXT);
        canvas.text(canvas.font().firstLine(count, SIZE, width), x, y + TITLE_SIZE + SIZE + 2, SIZE, Palette.MUTED);
        List<Integer> counts = distribution.counts();
        int most = Collections.max(counts);
        float base = y + height - FOOT;
        float highest = height - FOOT - HEAD - SIZE;
        float step = width / counts.size();
        for (int i = 0; i < counts.size(); i++) {
            float bar = highest * counts.get(i) / most;
            canvas.fillRectangle(x + i * step, base - bar, step - GAP_OF_BARS, bar, Palette.BAR);
        }
        int place = counts.indexOf(most);
        float middle = Math.max(x + SIZE, Math.min(x + width - SIZE, x + (place + 1 / 2f) * step));
        canvas.textCentredAt(String.valueOf(most), middle, base - highest - AXIS_TO_LABEL, SIZE, Palette.TEXT);
        canvas.line(x, base, x + width, base, Palette.TEXT, AXIS);
        List<Double> edges = distribution.edges();
        float label = base + SIZE + AXIS_TO_LABEL;
        canvas.text(Figures.significant(edges.get(0), DIGITS), x, label, SIZE, Palette.TEXT);
        String last = Figures.significant(edges.get(edges.size() - 1), DIGITS);
        canvas.textEndingAt(last, x + width, label, SIZE, Palette.TEXT);
    }
}
