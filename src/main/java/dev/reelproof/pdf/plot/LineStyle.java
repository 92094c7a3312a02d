package dev.reelproof.pdf.plot;

import dev.reelproof.certificate.CertificateContent.Line;
import dev.reelproof.certificate.CertificateContent.Plot;
import dev.reelproof.pdf.page.Palette;
import java.util.List;

/** How the lines of a plot are told apart: a colour for each label, dashes for the far end. Lengths are in points. */
final class LineStyle {
    static final float SWEEP_THICKNESS = 0.55f;
    /** Of the worst sweep, where a band stands for all. */
    static final float WORST_THICKNESS = 0.8f;

    static final float[] SOLID = {};
    static final float[] DASHED = {2.4f, 1.3f};
    private static final float[] DOTTED = {0.7f, 1.1f};
    private static final String FAR = "far";

    private LineStyle() {}

    /** The labels of a plot's lines, each once, in order: the place in this list gives the colour. */
    static List<String> labels(Plot plot) {
        return plot.lines().stream().map(Line::label).distinct().toList();
    }

    static boolean isFar(Line line) {
        return FAR.equals(line.end());
    }

    /** The dashes of a label's lines at the near end: dotted once the colours repeat. */
    static float[] ofLabel(int label) {
        return label >= Palette.lines() ? DOTTED : SOLID;
    }

    /** The dashes of a line; where a band stands for all sweeps, ends are not told apart. */
    static float[] of(Plot plot, Line line, int label) {
        boolean dashed = label < Palette.lines() && isFar(line) && plot.band() == null;
        return dashed ? DASHED : ofLabel(label);
    }
}
