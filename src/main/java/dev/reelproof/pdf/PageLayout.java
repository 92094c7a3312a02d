package dev.reelproof.pdf;

import dev.reelproof.pdf.page.PageCanvas;

/** Margins and sizes that the sections of a certificate share, in points (1/72 inch) from the upper left corner of a page. */
final class PageLayout {
    /** Left and right margin. */
    static final float MARGIN = 42;

    static final float RIGHT = PageCanvas.WIDTH - MARGIN;
    static final float BODY_WIDTH = RIGHT - MARGIN;

    /** Where the first line of a page may begin. */
    static final float TOP = 40;

    private static final float BOTTOM_MARGIN = 46;
    private static final float FOOT_MARGIN = 28;

    /** What is drawn between head and foot ends here at the latest. */
    static final float BOTTOM = PageCanvas.HEIGHT - BOTTOM_MARGIN;

    /** Baseline of the foot of a page. */
    static final float FOOT = PageCanvas.HEIGHT - FOOT_MARGIN;

    /** Between columns that stand side by side. */
    static final float GUTTER = 18;

    private static final int COLUMNS = 2;
    static final float COLUMN_WIDTH = (BODY_WIDTH - GUTTER) / COLUMNS;
    static final float SECOND_COLUMN = MARGIN + COLUMN_WIDTH + GUTTER;

    /** Size of the text of facts and address. */
    static final float FACT_SIZE = 7.8f;

    /** Size of the text of notes. */
    static final float NOTE_SIZE = 6.3f;

    /** Size of a heading over notes or plots. */
    static final float HEADING_SIZE = NOTE_SIZE + 1;

    /** From one baseline to the next, in sizes of the text. */
    static final float LEADING = 1.28f;

    /** A text in a cell or a note is cut after so many lines. */
    static final int MOST_LINES = 6;

    static final float THIN_RULE = 0.6f;

    private PageLayout() {}
}
