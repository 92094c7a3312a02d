package dev.reelproof.pdf;

import dev.reelproof.certificate.Declaration;
import dev.reelproof.certificate.NumberedPaper;
import dev.reelproof.pdf.page.EmbeddedFont;
import dev.reelproof.pdf.page.PageCanvas;
import dev.reelproof.pdf.page.Palette;
import dev.reelproof.pdf.page.StructureTree;
import dev.reelproof.pdf.page.StructureTree.Part;
import dev.reelproof.pdf.page.Typeface;
import dev.reelproof.wording.Catalogue;
import dev.reelproof.wording.PaperWord;
import dev.reelproof.wording.Wording;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;

/** Fills the pages of a paper from top to bottom: keeps how far down the present page is and begins the next. */
final class PageFlow implements AutoCloseable {
    private static final float RUNNING_HEAD_RULE = 5;
    private static final float RUNNING_HEAD_GAP = 12;

    private final PDDocument document;
    private final String plant;
    private final Typeface typeface;
    private final StructureTree structure;
    private final Wording words;
    private final PDRectangle sheet;
    private final List<PageCanvas> pages = new ArrayList<>();
    private String head = "";
    private PageCanvas canvas;
    private float y;

    PageFlow(PDDocument document, NumberedPaper content) throws IOException {
        this.document = document;
        this.plant = content.plant().name();
        this.typeface = Typeface.in(document);
        this.structure = new StructureTree(document);
        this.words =
                Wording.of(Catalogue.of(Locale.forLanguageTag(content.paper().language())));
        this.sheet = content.paper().sheet() == Declaration.Sheet.LETTER ? PDRectangle.LETTER : PDRectangle.A4;
        this.canvas = page();
        this.y = PageLayout.TOP;
    }

    /** What is drawn, as one piece of content. */
    interface Drawing {
        void draw() throws IOException;
    }

    /** Draws what belongs to a part of the document's structure; it must stay on one page. */
    void as(Part part, Drawing drawing) throws IOException {
        canvas.open(part);
        drawing.draw();
        canvas.shut();
    }

    /** The whole document's structure. */
    Part whole() {
        return structure.whole();
    }

    StructureTree structure() {
        return structure;
    }

    /** A label, heading or sentence of the paper in its language, with its parts filled in. */
    String say(PaperWord word, String... parts) {
        return words.paper(word, parts);
    }

    Wording words() {
        return words;
    }

    /** The page that is being filled. */
    PageCanvas canvas() {
        return canvas;
    }

    EmbeddedFont font() {
        return typeface.regular();
    }

    EmbeddedFont bold() {
        return typeface.bold();
    }

    /** All pages so far, in order. */
    List<PageCanvas> pages() {
        return pages;
    }

    /** How far down the page is filled, in points from its upper edge. */
    float y() {
        return y;
    }

    /** What may be drawn between head and foot ends here. */
    float bottom() {
        return sheet.getHeight() - PageLayout.BOTTOM_MARGIN;
    }

    /** Baseline of the foot of a page. */
    float foot() {
        return sheet.getHeight() - PageLayout.FOOT_MARGIN;
    }

    /** What is left of this page. */
    float room() {
        return bottom() - y;
    }

    void moveDown(float points) {
        y += points;
    }

    void moveTo(float newY) {
        y = newY;
    }

    /** Begins a new page when the height, in points, is not left on this one; says whether it did. */
    boolean makeRoom(float height) throws IOException {
        if (y + height <= bottom()) {
            return false;
        }
        turnPage();
        return true;
    }

    /** Says what stands at the head of the pages that follow, beside the plant's name. */
    void runUnder(String newHead) {
        head = newHead;
    }

    /** Begins a new page. */
    void turnPage() throws IOException {
        canvas = page();
        y = PageLayout.TOP;
        runningHead();
    }

    /** Draws a heading of the second level; what it heads follows on the same page, being so high. */
    void heading(String text, float heightOfWhatFollows) throws IOException {
        float size = PageLayout.HEADING_SIZE;
        makeRoom(size + PageLayout.HEADING_GAP + heightOfWhatFollows);
        moveDown(size);
        as(whole().add("H2"), () -> canvas.boldText(text, PageLayout.MARGIN, y, size, Palette.ACCENT));
        moveDown(PageLayout.HEADING_GAP);
    }

    /** Draws a paragraph across the page, whole on one page where it can be. */
    void paragraph(String text, float size, float gapBelow) throws IOException {
        float leading = size * PageLayout.LEADING;
        List<String> lines = font().wrap(text, size, PageLayout.BODY_WIDTH);
        makeRoom(Math.min(lines.size() * leading, bottom() / 2));
        Part part = whole().add("P");
        for (String line : lines) {
            makeRoom(leading);
            as(part, () -> canvas.text(line, PageLayout.MARGIN, y + size, size, Palette.MUTED));
            moveDown(leading);
        }
        moveDown(gapBelow);
    }

    private PageCanvas page() throws IOException {
        PageCanvas page = new PageCanvas(document, typeface, structure, sheet);
        pages.add(page);
        return page;
    }

    private void runningHead() throws IOException {
        float size = PageLayout.NOTE_SIZE;
        String left = font().firstLine(plant, size, PageLayout.COLUMN_WIDTH);
        String right = font().firstLine(head, size, PageLayout.COLUMN_WIDTH);
        canvas.text(left, PageLayout.MARGIN, y, size, Palette.MUTED);
        canvas.textEndingAt(right, PageLayout.RIGHT, y, size, Palette.MUTED);
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
