package dev.reelproof.pdf;

import java.awt.Color;
import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.graphics.state.RenderingMode;

/** One A4 page to draw on. Places are in points from the upper left corner, y downwards; text stands on y. */
final class Sheet implements AutoCloseable {
    static final float WIDTH = PDRectangle.A4.getWidth();
    static final float HEIGHT = PDRectangle.A4.getHeight();

    private static final float BOLD_STROKE = 0.032f;
    /** Distance of the control points of a quarter circle drawn as a cubic curve, in radii. */
    private static final float QUARTER = 0.5523f;

    private final Type type;
    private final PDPageContentStream stream;

    Sheet(PDDocument document, Type type) throws IOException {
        this.type = type;
        PDPage page = new PDPage(PDRectangle.A4);
        document.addPage(page);
        this.stream = new PDPageContentStream(document, page, PDPageContentStream.AppendMode.OVERWRITE, true);
    }

    Type type() {
        return type;
    }

    void text(String text, float x, float y, float size, Color ink) throws IOException {
        draw(type.clean(text), x, y, size, ink, false);
    }

    /** The typeface comes in one weight: bold is the same with its outline drawn. */
    void bold(String text, float x, float y, float size, Color ink) throws IOException {
        draw(type.clean(text), x, y, size, ink, true);
    }

    /** Text that ends at x. */
    void textLeftOf(String text, float x, float y, float size, Color ink) throws IOException {
        String clean = type.clean(text);
        draw(clean, x - type.width(clean, size), y, size, ink, false);
    }

    void boldLeftOf(String text, float x, float y, float size, Color ink) throws IOException {
        String clean = type.clean(text);
        draw(clean, x - type.width(clean, size), y, size, ink, true);
    }

    /** Text with its middle at x. */
    void textAround(String text, float x, float y, float size, Color ink) throws IOException {
        String clean = type.clean(text);
        draw(clean, x - type.width(clean, size) / 2, y, size, ink, false);
    }

    private void draw(String clean, float x, float y, float size, Color ink, boolean bold) throws IOException {
        stream.setNonStrokingColor(ink);
        stream.beginText();
        stream.setFont(type.font(), size);
        if (bold) {
            stream.setStrokingColor(ink);
            stream.setLineWidth(size * BOLD_STROKE);
            stream.setRenderingMode(RenderingMode.FILL_STROKE);
        } else {
            stream.setRenderingMode(RenderingMode.FILL);
        }
        stream.newLineAtOffset(x, HEIGHT - y);
        stream.showText(clean);
        stream.endText();
    }

    void box(float x, float y, float width, float height, Color fill) throws IOException {
        stream.setNonStrokingColor(fill);
        stream.addRect(x, HEIGHT - y - height, width, height);
        stream.fill();
    }

    void frame(float x, float y, float width, float height, Color ink, float thickness) throws IOException {
        stream.setStrokingColor(ink);
        stream.setLineWidth(thickness);
        stream.setLineDashPattern(new float[0], 0);
        stream.addRect(x, HEIGHT - y - height, width, height);
        stream.stroke();
    }

    void line(float fromX, float fromY, float toX, float toY, Color ink, float thickness) throws IOException {
        path(List.of(new float[] {fromX, fromY}, new float[] {toX, toY}), ink, thickness, new float[0]);
    }

    /** A line through points. */
    void path(List<float[]> points, Color ink, float thickness, float[] dashes) throws IOException {
        stream.setStrokingColor(ink);
        stream.setLineWidth(thickness);
        stream.setLineDashPattern(dashes, 0);
        stream.setLineJoinStyle(1);
        trace(points);
        stream.stroke();
        stream.setLineDashPattern(new float[0], 0);
    }

    /** A filled outline through points. */
    void shape(List<float[]> points, Color fill) throws IOException {
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

    /** A ring with white inside. */
    void ring(float x, float y, float radius, Color ink, float thickness) throws IOException {
        float up = HEIGHT - y;
        float control = radius * QUARTER;
        stream.setStrokingColor(ink);
        stream.setNonStrokingColor(Ink.PAPER);
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
