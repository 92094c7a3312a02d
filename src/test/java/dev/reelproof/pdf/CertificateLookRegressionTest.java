package dev.reelproof.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.certificate.CertificateSamples;
import dev.reelproof.certificate.CertificateType;
import dev.reelproof.certificate.Circumstances;
import dev.reelproof.certificate.Declaration;
import java.awt.image.BufferedImage;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The pages look as they did when somebody last looked at them. Small pictures are compared, a mean of 4 × 4 points at a time, so that
 * another smoothing of letters does not count and a line that moved does. With the system property {@code reelproof.look} the pictures
 * are written anew: look at them before you keep them.
 */
class CertificateLookRegressionTest {
    private static final Path KEPT = Path.of("src/test/resources/look");
    private static final float DOTS_PER_INCH = 45;
    private static final int BLOCK = 4;

    /** Of 255. Letters smoothed otherwise move the mean of a block by less, black text where there was none by more. */
    private static final double MOST = 30;

    private static byte[] pdf(String language, Declaration.Sheet sheet, int pairs, String customer) {
        CertificateSamples samples = CertificateSamples.of(pairs, 40);
        Declaration declaration = new Declaration(
                CertificateType.INSPECTION_CERTIFICATE_3_1,
                Locale.forLanguageTag(language),
                sheet,
                Declaration.UnitSystem.BOTH,
                new Declaration.Signatory("A. Example", "quality manager"),
                false);
        CertificateContent content = samples.content(declaration, Circumstances.NONE, customer);
        Provenance provenance =
                new Provenance(Optional.of(SignedSamples.SERVICE), Optional.empty(), Provenance.Signing.PLANT);
        try (CertificateDraft draft = CertificatePdf.draft(content, provenance, Optional.empty())) {
            return draft.finish(content);
        }
    }

    private static List<BufferedImage> pages(byte[] pdf) throws IOException {
        List<BufferedImage> pages = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PDFRenderer renderer = new PDFRenderer(document);
            for (int page = 0; page < document.getNumberOfPages(); page++) {
                pages.add(renderer.renderImageWithDPI(page, DOTS_PER_INCH, ImageType.GRAY));
            }
        }
        return pages;
    }

    /** The greatest difference of the means of a block. */
    private static double difference(BufferedImage one, BufferedImage other) {
        assertEquals(one.getWidth(), other.getWidth());
        assertEquals(one.getHeight(), other.getHeight());
        double greatest = 0;
        for (int y = 0; y + BLOCK <= one.getHeight(); y += BLOCK) {
            for (int x = 0; x + BLOCK <= one.getWidth(); x += BLOCK) {
                greatest = Math.max(greatest, Math.abs(mean(one, x, y) - mean(other, x, y)));
            }
        }
        return greatest;
    }

    private static double mean(BufferedImage picture, int left, int top) {
        double sum = 0;
        for (int y = top; y < top + BLOCK; y++) {
            for (int x = left; x < left + BLOCK; x++) {
                sum += picture.getRaster().getSample(x, y, 0);
            }
        }
        return sum / (BLOCK * BLOCK);
    }

    @ParameterizedTest
    @CsvSource({"en, A4, 4", "de, LETTER, 4", "fr, A4, 12", "es, LETTER, 12"})
    void eachPageLooksAsItDid(String language, Declaration.Sheet sheet, int pairs) throws IOException {
        List<BufferedImage> pages = pages(pdf(language, sheet, pairs, "Example Networks (invented customer)"));
        for (int page = 0; page < pages.size(); page++) {
            File kept = KEPT.resolve(language + "-" + pairs + "-" + (page + 1) + ".png")
                    .toFile();
            if (System.getProperty("reelproof.look") != null) {
                Files.createDirectories(KEPT);
                ImageIO.write(pages.get(page), "png", kept);
            }
            double difference = difference(ImageIO.read(kept), pages.get(page));
            assertTrue(difference <= MOST, kept.getName() + " differs by " + difference);
        }
        File next = KEPT.resolve(language + "-" + pairs + "-" + (pages.size() + 1) + ".png")
                .toFile();
        assertTrue(!next.exists(), "fewer pages than there were");
    }

    @Test
    void aLineMoreIsSeen() throws IOException {
        BufferedImage one = pages(pdf("en", Declaration.Sheet.A4, 4, "Example")).get(0);
        BufferedImage other =
                pages(pdf("en", Declaration.Sheet.A4, 4, "Example ".repeat(9))).get(0);
        assertTrue(difference(one, other) > 2 * MOST, "difference: " + difference(one, other));
    }
}
