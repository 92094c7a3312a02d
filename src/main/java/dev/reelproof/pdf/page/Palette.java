package dev.reelproof.pdf.page;

import java.awt.Color;

/** The colours of a certificate. They differ in lightness too, so that a grey print still tells them apart. */
public final class Palette {
    public static final Color TEXT = new Color(0x1b2229);
    public static final Color MUTED = new Color(0x56616b);
    public static final Color RULE = new Color(0xbfc7ce);
    public static final Color GRID = new Color(0xdfe4e8);
    public static final Color ZEBRA = new Color(0xf2f4f6);
    public static final Color ACCENT = new Color(0x234a5c);
    public static final Color BAND = new Color(0xc3ced6);
    public static final Color PAPER = Color.WHITE;

    /** Lines of plots: hues that stay apart for colour-blind eyes (after the palette of Okabe and Ito, from memory). */
    private static final Color[] LINES = {
        new Color(0x0b3c6f),
        new Color(0xd55e00),
        new Color(0x56b4e9),
        new Color(0x007a5a),
        new Color(0xb0508e),
        new Color(0xe69f00),
        new Color(0x6b4423),
        new Color(0x8c8c8c)
    };

    private Palette() {}

    /** How many lines have a colour of their own. */
    public static int lines() {
        return LINES.length;
    }

    /** The colour of a line; colours repeat. */
    public static Color line(int index) {
        return LINES[index % LINES.length];
    }
}
