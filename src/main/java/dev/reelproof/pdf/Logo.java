package dev.reelproof.pdf;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.graphics.image.LosslessFactory;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;

/** A plant's sign for the head of its certificates, on white paper. */
public final class Logo {
    private static final List<String> FORMATS = List.of("png", "jpeg");
    private static final int MOST_BYTES = 1 << 20;
    private static final int MOST_PIXELS_A_SIDE = 2_000;

    private final BufferedImage picture;

    private Logo(BufferedImage picture) {
        this.picture = picture;
    }

    /**
     * The sign in a file.
     *
     * @throws IllegalArgumentException when it is no picture in PNG or JPEG, or larger than a sign needs to be
     */
    public static Logo of(byte[] file) {
        if (!(file.length <= MOST_BYTES)) {
            throw new IllegalArgumentException(
                    "the picture has " + file.length + " bytes; at most " + MOST_BYTES + " are taken");
        }
        try (ImageInputStream in = ImageIO.createImageInputStream(new ByteArrayInputStream(file))) {
            Iterator<ImageReader> readers = ImageIO.getImageReaders(in);
            while (readers.hasNext()) {
                ImageReader reader = readers.next();
                if (FORMATS.contains(reader.getFormatName().toLowerCase(Locale.ROOT))) {
                    reader.setInput(in);
                    return read(reader);
                }
            }
            throw new IllegalArgumentException("the picture is neither PNG nor JPEG");
        } catch (IOException e) {
            throw new IllegalArgumentException("the picture cannot be read: " + e.getMessage(), e);
        }
    }

    private static Logo read(ImageReader reader) throws IOException {
        int width = reader.getWidth(0);
        int height = reader.getHeight(0);
        if (!(width <= MOST_PIXELS_A_SIDE && height <= MOST_PIXELS_A_SIDE)) {
            throw new IllegalArgumentException("the picture has " + width + " × " + height + " pixels; at most "
                    + MOST_PIXELS_A_SIDE + " a side are taken");
        }
        BufferedImage onPaper = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D brush = onPaper.createGraphics();
        brush.setColor(Color.WHITE);
        brush.fillRect(0, 0, width, height);
        brush.drawImage(reader.read(0), 0, 0, null);
        brush.dispose();
        return new Logo(onPaper);
    }

    PDImageXObject in(PDDocument document) throws IOException {
        return LosslessFactory.createFromImage(document, picture);
    }
}
