package dev.reelproof.pdf.page;

import java.awt.Color;
import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;

/**
 * Draws on one page. Places and sizes are in points from the upper left corner, y downwards; y of a text is its baseline. x runs as on
 * A4; on a wider sheet all of it stands in the middle.
 *
 * <p>What is drawn between {@link #open} and {@link #shut} belongs to a part of the document's structure; all else is an artifact, which
 * a screen reader leaves out.
 */
public final class PageCanvas implements AutoCloseable {
    public static final float WIDTH = PDRectangle.A4.getWidth();

    /** From the baseline of a text up to the middle of its digits, in sizes of the text. */
    public static final float DIGIT_MIDDLE = 0.33f;

    /** Distance of the control points from the ends of a quarter circle drawn as a cubic Bézier curve, in radii: 4/3 (√2 − 1). */
    private static final float QUARTER_CIRCLE_CONTROL = 0.5523f;

    /** Line join style 1 of PDF: lines of a path meet in a rounded corner. */
    private static final int ROUND_JOIN = 1;

    private static final float[] SOLID = {};

    private final PDDocument document;
    private final Typeface typeface;
    private final StructureTree structure;
    private final PDPage page;
    private final float shift;
    private final float height;
    private PDPageContentStream stream;
    private boolean isOpen;

    public PageCanvas(PDDocument document, Typeface typeface, StructureTree structure, PDRectangle sheet)
            throws IOException {
        this.document = document;
        this.typeface = typeface;
        this.structure = structure;
        this.page = new PDPage(sheet);
        this.shift = (sheet.getWidth() - WIDTH) / 2;
        this.height = sheet.getHeight();
        document.addPage(page);
        structure.add(page);
        this.stream = new PDPageContentStream(document, page, PDPageContentStream.AppendMode.OVERWRITE, true);
    }

    /** Compresses what was drawn so far, which takes long, and begins a layer on top of it. */
    public void beginLayer() throws IOException {
        stream.close();
        stream = new PDPageContentStream(document, page, PDPageContentStream.AppendMode.APPEND, true, true);
    }

    public Typeface typeface() {
        return typeface;
    }

    public EmbeddedFont font() {
        return typeface.regular();
    }

    public EmbeddedFont bold() {
        return typeface.bold();
    }

    /** What is drawn from now on, until {@link #shut}, is content of a part of the structure. */
    public void open(StructureTree.Part part) throws IOException {
        if (isOpen) {
            throw new IllegalStateException("a part of the structure is open already");
        }
        stream.beginMarkedContent(part.type(), structure.content(part, page));
        isOpen = true;
    }

    public void shut() throws IOException {
        stream.endMarkedContent();
        isOpen = false;
    }

    private void beginArtifact() throws IOException {
        if (!isOpen) {
            stream.beginMarkedContent(COSName.ARTIFACT);
        }
    }

    private void endArtifact() throws IOException {
        if (!isOpen) {
            stream.endMarkedContent();
        }
    }

    public void text(String text, float x, float y, float size, Color colour) throws IOException {
        draw(font(), font().printable(text), x, y, size, colour);
    }

    public void boldText(String text, float x, float y, float size, Color colour) throws IOException {
        draw(bold(), bold().printable(text), x, y, size, colour);
    }

    /** Draws text that ends at x. */
    public void textEndingAt(String text, float x, float y, float size, Color colour) throws IOException {
        String printable = font().printable(text);
        draw(font(), printable, x - font().width(printable, size), y, size, colour);
    }

    public void boldTextEndingAt(String text, float x, float y, float size, Color colour) throws IOException {
        String printable = bold().printable(text);
        draw(bold(), printable, x - bold().width(printable, size), y, size, colour);
    }

    /** Draws text with its middle at x. */
    public void textCentredAt(String text, float x, float y, float size, Color colour) throws IOException {
        String printable = font().printable(text);
        draw(font(), printable, x - font().width(printable, size) / 2, y, size, colour);
    }

    private void draw(EmbeddedFont font, String printable, float x, float y, float size, Color colour)
            throws IOException {
        beginArtifact();
        stream.setNonStrokingColor(colour);
        stream.beginText();
        stream.setFont(font.typeface(), size);
        stream.newLineAtOffset(x + shift, height - y);
        stream.showText(printable);
        stream.endText();
        endArtifact();
    }

    /** Draws a picture into a rectangle with its upper left corner at x and y. */
    public void image(PDImageXObject image, float x, float y, float width, float imageHeight) throws IOException {
        beginArtifact();
        stream.drawImage(image, x + shift, height - y - imageHeight, width, imageHeight);
        endArtifact();
    }

    public void fillRectangle(float x, float y, float width, float rectangleHeight, Color fill) throws IOException {
        beginArtifact();
        stream.setNonStrokingColor(fill);
        stream.addRect(x + shift, height - y - rectangleHeight, width, rectangleHeight);
        stream.fill();
        endArtifact();
    }

    public void strokeRectangle(float x, float y, float width, float rectangleHeight, Color colour, float thickness)
            throws IOException {
        beginArtifact();
        stream.setStrokingColor(colour);
        stream.setLineWidth(thickness);
        stream.setLineDashPattern(SOLID, 0);
        stream.addRect(x + shift, height - y - rectangleHeight, width, rectangleHeight);
        stream.stroke();
        endArtifact();
    }

    public void line(float fromX, float fromY, float toX, float toY, Color colour, float thickness) throws IOException {
        polyline(List.of(new float[] {fromX, fromY}, new float[] {toX, toY}), colour, thickness, SOLID);
    }

    /** Draws a line through points; dashes are the lengths of strokes and gaps in turn, in points. */
    public void polyline(List<float[]> points, Color colour, float thickness, float[] dashes) throws IOException {
        beginArtifact();
        stream.setStrokingColor(colour);
        stream.setLineWidth(thickness);
        stream.setLineDashPattern(dashes, 0);
        stream.setLineJoinStyle(ROUND_JOIN);
        trace(points);
        stream.stroke();
        stream.setLineDashPattern(SOLID, 0);
        endArtifact();
    }

    /** Fills the outline through points. */
    public void fillPolygon(List<float[]> points, Color fill) throws IOException {
        beginArtifact();
        stream.setNonStrokingColor(fill);
        trace(points);
        stream.closePath();
        stream.fill();
        endArtifact();
    }

    private void trace(List<float[]> points) throws IOException {
        for (int i = 0; i < points.size(); i++) {
            float[] point = points.get(i);
            if (i == 0) {
                stream.moveTo(point[0] + shift, height - point[1]);
            } else {
                stream.lineTo(point[0] + shift, height - point[1]);
            }
        }
    }

    /** Draws a ring with white inside. */
    public void ring(float x, float y, float radius, Color colour, float thickness) throws IOException {
        float middle = x + shift;
        float up = height - y;
        float control = radius * QUARTER_CIRCLE_CONTROL;
        beginArtifact();
        stream.setStrokingColor(colour);
        stream.setNonStrokingColor(Palette.PAPER);
        stream.setLineWidth(thickness);
        stream.moveTo(middle + radius, up);
        stream.curveTo(middle + radius, up + control, middle + control, up + radius, middle, up + radius);
        stream.curveTo(middle - control, up + radius, middle - radius, up + control, middle - radius, up);
        stream.curveTo(middle - radius, up - control, middle - control, up - radius, middle, up - radius);
        stream.curveTo(middle + control, up - radius, middle + radius, up - control, middle + radius, up);
        stream.closePath();
        stream.fillAndStroke();
        endArtifact();
    }

    @Override
    public void close() throws IOException {
        stream.close();
    }
}
