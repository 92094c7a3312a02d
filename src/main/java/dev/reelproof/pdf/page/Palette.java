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
    public static final Color BAND = new Color(0xd3dbe1);
    public static final Color PAPER = Color.WHITE;
    public static final Color BAR = new Color(0x7d8b97);

    private Palette() {}
}
