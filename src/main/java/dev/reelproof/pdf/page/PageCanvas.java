package dev.reelproof.pdf.page;

import java.awt.Color;
import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.graphics.state.RenderingMode;

/** Draws on one A4 page. Places and sizes are in points from the upper left corner, y downwards; y of a text is its baseline. */
public final class PageCanvas implements AutoCloseable {
    public static final float WIDTH = PDRectangle.A4.getWidth();
    public static final float HEIGHT = PDRectangle.A4.getHeight();

    /** From the baseline of a text up to the middle of its digits, in sizes of the text. */
    public static final float DIGIT_MIDDLE = 0.35f;

    /** Thickness of the outline that makes letters bold, in sizes of the text. */
    private static final float BOLD_OUTLINE = 0.032f;
    /** Distance of the control points from the ends of a quarter circle drawn as a cubic Bézier curve, in radii: 4/3 (√2 − 1). */
    private static final float QUARTER_CIRCLE_CONTROL = 0.5523f;

    /** Line join style 1 of PDF: lines of a path meet in a rounded corner. */
    private static final int ROUND_JOIN = 1;

    private static final float[] SOLID = {};

    private final PDDocument document;
    private final EmbeddedFont font;
    private final PDPage page;
    private PDPageContentStream stream;

    public PageCanvas(PDDocument document, EmbeddedFont font) throws IOException {
        this.document = document;
        this.font = font;
        this.page = new PDPage(PDRectangle.A4);
        document.addPage(page);
        this.stream = new PDPageContentStream(document, page, PDPageContentStream.AppendMode.OVERWRITE, true);
    }

    /** Compresses what was drawn so far, which takes long, and begins a layer on top of it. */
    public void beginLayer() throws IOException {
        stream.close();
        stream = new PDPageContentStream(document, page, PDPageContentStream.AppendMode.APPEND, true, true);
    }

    public EmbeddedFont font() {
        return font;
    }

    public void text(String text, float x, float y, float size, Color colour) throws IOException {
        draw(font.printable(text), x, y, size, colour, false);
    }

    /** Draws bold text: the typeface comes in one weight, so its outline is drawn as well. */
    public void boldText(String text, float x, float y, float size, Color colour) throws IOException {
        draw(font.printable(text), x, y, size, colour, true);
    }

    /** Draws text that ends at x. */
    public void textEndingAt(String text, float x, float y, float size, Color colour) throws IOException {
        String printable = font.printable(text);
        draw(printable, x - font.width(printable, size), y, size, colour, false);
    }

    public void boldTextEndingAt(String text, float x, float y, float size, Color colour) throws IOException {
        String printable = font.printable(text);
        draw(printable, x - font.width(printable, size), y, size, colour, true);
    }

    /** Draws text with its middle at x. */
    public void textCentredAt(String text, float x, float y, float size, Color colour) throws IOException {
        String printable = font.printable(text);
        draw(printable, x - font.width(printable, size) / 2, y, size, colour, false);
    }

    private void draw(String printable, float x, float y, float size, Color colour, boolean bold) throws IOException {
        stream.setNonStrokingColor(colour);
        stream.beginText();
        stream.setFont(font.typeface(), size);
        if (bold) {
            stream.setStrokingColor(colour);
            stream.setLineWidth(size * BOLD_OUTLINE);
            stream.setRenderingMode(RenderingMode.FILL_STROKE);
        } else {
            stream.setRenderingMode(RenderingMode.FILL);
        }
        stream.newLineAtOffset(x, HEIGHT - y);
        stream.showText(printable);
        stream.endText();
    }

    public void fillRectangle(float x, float y, float width, float height, Color fill) throws IOException {
        stream.setNonStrokingColor(fill);
        stream.addRect(x, HEIGHT - y - height, width, height);
        stream.fill();
    }

    public void strokeRectangle(float x, float y, float width, float height, Color colour, float thickness)
            throws IOException {
        stream.setStrokingColor(colour);
        stream.setLineWidth(thickness);
        stream.setLineDashPattern(SOLID, 0);
        stream.addRect(x, HEIGHT - y - height, width, height);
        stream.stroke();
    }

    public void line(float fromX, float fromY, float toX, float toY, Color colour, float thickness) throws IOException {
        polyline(List.of(new float[] {fromX, fromY}, new float[] {toX, toY}), colour, thickness, SOLID);
    }

    /** Draws a line through points; dashes are the lengths of strokes and gaps in turn, in points. */
    public void polyline(List<float[]> points, Color colour, float thickness, float[] dashes) throws IOException {
        stream.setStrokingColor(colour);
        stream.setLineWidth(thickness);
        stream.setLineDashPattern(dashes, 0);
        stream.setLineJoinStyle(ROUND_JOIN);
        trace(points);
        stream.stroke();
        stream.setLineDashPattern(SOLID, 0);
    }

    /** Fills the outline through points. */
    public void fillPolygon(List<float[]> points, Color fill) throws IOException {
        stream.setNonStrokingColor(fill);
        trace(points);
        stream.closePath();
        stream.fill();
    }

    private void trace(List<float[]> points) throws IOException {
        for (int i = 0; i < points.size(); i++) {
            float[] point = points.get(i);
            if (i == 0) {
                stream.moveTo(point[0], HEIGHT - point[1]);
            } else {
                stream.lineTo(point[0], HEIGHT - point[1]);
            }
        }
    }

    /** Draws a ring with white inside. */
    public void ring(float x, float y, float radius, Color colour, float thickness) throws IOException {
        float up = HEIGHT - y;
        float control = radius * QUARTER_CIRCLE_CONTROL;
        stream.setStrokingColor(colour);
        stream.setNonStrokingColor(Palette.PAPER);
        stream.setLineWidth(thickness);
        stream.moveTo(x + radius, up);
        stream.curveTo(x + radius, up + control, x + control, up + radius, x, up + radius);
        stream.curveTo(x - control, up + radius, x - radius, up + control, x - radius, up);
        stream.curveTo(x - radius, up - control, x - control, up - radius, x, up - radius);
        stream.curveTo(x + control, up - radius, x + radius, up - control, x + radius, up);
        stream.closePath();
        stream.fillAndStroke();
    }

    @Override
    public void close() throws IOException {
        stream.close();
    }
}
