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

    /** What is drawn between head and foot ends this far above the lower edge at the latest. */
    static final float BOTTOM_MARGIN = 46;

    /** The foot of a page stands this far above its lower edge. */
    static final float FOOT_MARGIN = 28;

    /** Between columns that stand side by side. */
    static final float GUTTER = 18;

    private static final int COLUMNS = 2;
    static final float COLUMN_WIDTH = (BODY_WIDTH - GUTTER) / COLUMNS;
    static final float SECOND_COLUMN = MARGIN + COLUMN_WIDTH + GUTTER;

    /** Nothing is set smaller. */
    static final float LEAST_SIZE = 7;

    /** Size of the text of facts and address. */
    static final float FACT_SIZE = 8.4f;

    /** Size of the text of notes. */
    static final float NOTE_SIZE = 7.2f;

    /** Size of a heading. */
    static final float HEADING_SIZE = 9.6f;

    /** From a heading's baseline to what it heads. */
    static final float HEADING_GAP = 5;

    /** From one baseline to the next, in sizes of the text. */
    static final float LEADING = 1.24f;

    /** A text in a cell is cut after so many lines. */
    static final int MOST_LINES = 12;

    static final float THIN_RULE = 0.6f;

    private PageLayout() {}
}
