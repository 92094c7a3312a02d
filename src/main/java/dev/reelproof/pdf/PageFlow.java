package dev.reelproof.pdf;

import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.pdf.page.EmbeddedFont;
import dev.reelproof.pdf.page.PageCanvas;
import dev.reelproof.pdf.page.Palette;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;

/** Fills the pages of a certificate from top to bottom: keeps how far down the present page is and begins the next. */
final class PageFlow implements AutoCloseable {
    private static final float RUNNING_HEAD_RULE = 5;
    private static final float RUNNING_HEAD_GAP = 12;

    /** What the running head takes of every page but the first, in points. */
    static final float RUNNING_HEAD_HEIGHT = RUNNING_HEAD_RULE + RUNNING_HEAD_GAP;

    private final PDDocument document;
    private final CertificateContent content;
    private final EmbeddedFont font;
    private final List<PageCanvas> pages = new ArrayList<>();
    private PageCanvas canvas;
    private float y;

    PageFlow(PDDocument document, CertificateContent content, EmbeddedFont font) throws IOException {
        this.document = document;
        this.content = content;
        this.font = font;
        beginPage();
    }

    /** The page that is being filled. */
    PageCanvas canvas() {
        return canvas;
    }

    EmbeddedFont font() {
        return font;
    }

    /** All pages so far, in order. */
    List<PageCanvas> pages() {
        return pages;
    }

    /** How far down the page is filled, in points from its upper edge. */
    float y() {
        return y;
    }

    void moveDown(float points) {
        y += points;
    }

    void moveTo(float newY) {
        y = newY;
    }

    /** Begins a new page when the height, in points, is not left on this one; says whether it did. */
    boolean makeRoom(float height) throws IOException {
        if (y + height <= PageLayout.BOTTOM) {
            return false;
        }
        beginPage();
        return true;
    }

    private void beginPage() throws IOException {
        canvas = new PageCanvas(document, font);
        pages.add(canvas);
        y = PageLayout.TOP;
        if (pages.size() > 1) {
            runningHead();
        }
    }

    private void runningHead() throws IOException {
        float size = PageLayout.HEADING_SIZE;
        String plant = font.firstLine(content.plant().name(), size, PageLayout.COLUMN_WIDTH);
        String reel = font.firstLine("Test certificate, reel " + content.reel(), size, PageLayout.COLUMN_WIDTH);
        canvas.text(plant, PageLayout.MARGIN, y, size, Palette.MUTED);
        canvas.textEndingAt(reel, PageLayout.RIGHT, y, size, Palette.MUTED);
        y += RUNNING_HEAD_RULE;
        canvas.line(PageLayout.MARGIN, y, PageLayout.RIGHT, y, Palette.RULE, PageLayout.THIN_RULE);
        y += RUNNING_HEAD_GAP;
    }

    /** Ends what was drawn on all pages so far; what follows is drawn on top of it. */
    void beginLayer() throws IOException {
        for (PageCanvas page : pages) {
            page.beginLayer();
        }
    }

    @Override
    public void close() throws IOException {
        for (PageCanvas page : pages) {
            page.close();
        }
    }
}
