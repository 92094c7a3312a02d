package dev.reelproof.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.certificate.CertificateSamples;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.Test;

/** A plant's sign stands on its certificates, which stay archivable with it; what is no picture is refused. */
class LogoTest {
    private static byte[] picture(int width, int height, String format) throws IOException {
        int kind = format.equals("png") ? BufferedImage.TYPE_INT_ARGB : BufferedImage.TYPE_INT_RGB;
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        assertTrue(ImageIO.write(new BufferedImage(width, height, kind), format, out), format);
        return out.toByteArray();
    }

    private static String refusal(byte[] file) {
        return Objects.requireNonNull(assertThrows(IllegalArgumentException.class, () -> Logo.of(file))
                .getMessage());
    }

    @Test
    void aPictureStandsOnTheFirstPageAndTheFileStaysArchivable() throws Exception {
        CertificateContent content = CertificateSamples.conditional();
        for (String format : List.of("png", "jpeg")) {
            byte[] pdf;
            try (CertificateDraft draft =
                    CertificatePdf.draft(content, Provenance.NONE, Optional.of(Logo.of(picture(300, 80, format))))) {
                pdf = draft.finish(content);
            }
            CertificatePdfTest.requireCompliant(pdf);
            try (PDDocument document = Loader.loadPDF(pdf)) {
                int pictures = 0;
                for (var name : document.getPage(0).getResources().getXObjectNames()) {
                    pictures += document.getPage(0).getResources().isImageXObject(name) ? 1 : 0;
                }
                assertEquals(1, pictures, format);
            }
        }
    }

    @Test
    void whatIsNoSignIsRefused() throws IOException {
        assertTrue(refusal("<svg/>".getBytes(StandardCharsets.UTF_8)).contains("neither PNG nor JPEG"));
        assertTrue(refusal(picture(10, 10, "gif")).contains("neither PNG nor JPEG"));
        assertTrue(refusal(picture(2001, 1, "png")).contains("2001 × 1"));
        assertTrue(refusal(new byte[(1 << 20) + 1]).contains("bytes"));
    }
}
