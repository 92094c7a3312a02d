package dev.reelproof.pdf.plot;

import dev.reelproof.pdf.page.Palette;
import java.awt.Color;

/**
 * How what stands in a plot is told apart without colour: what was measured is a grey band with an edge, the worst sweep a thin line, the
 * limit a thick one. Lengths are in points.
 */
final class LineStyle {
    static final float WORST_THICKNESS = 0.7f;
    static final float LIMIT_THICKNESS = 1.6f;
    static final float EDGE_THICKNESS = 0.3f;

    static final Color WORST = Palette.ACCENT;
    static final Color LIMIT = Palette.TEXT;

    static final float[] SOLID = {};

    private LineStyle() {}
}
