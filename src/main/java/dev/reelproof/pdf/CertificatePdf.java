package dev.reelproof.pdf;

import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.pdf.page.EmbeddedFont;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import org.apache.pdfbox.pdmodel.PDDocument;

/**
 * Draws a certificate: facts, verdict and the table of requirements first, then the plots.
 *
 * <p>What it must carry follows the list of ISO/IEC 17025:2017, 7.8.2.1 (read): title, plant and address, an identification on
 * each page and a clear end, customer, item, method, dates, results with units, "relates only to the item tested", who authorises.
 */
public final class CertificatePdf {
    private static final int MOST_PAGES = 3;

    private CertificatePdf() {}

    /**
     * Draws a certificate as PDF/A-3b; the same content gives the same bytes under one version of Java and of this program.
     *
     * <p>One to three pages of A4. Only a content whose table alone fills more is given more pages: nothing is left out.
     */
    public static byte[] render(CertificateContent content) {
        byte[] bytes = null;
        try {
            for (Density density : Density.values()) {
                try (PDDocument document = new PDDocument()) {
                    draw(document, content, density);
                    ByteArrayOutputStream out = new ByteArrayOutputStream();
                    document.save(out);
                    bytes = out.toByteArray();
                    if (document.getNumberOfPages() <= MOST_PAGES) {
                        return bytes;
                    }
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException("certificate " + content.number() + " cannot be drawn", e);
        }
        return bytes;
    }

    private static void draw(PDDocument document, CertificateContent content, Density density) throws IOException {
        EmbeddedFont font = EmbeddedFont.in(document);
        PdfA.describe(document, content, font);
        try (PageFlow flow = new PageFlow(document, content, font)) {
            Letterhead.draw(flow, content);
            FactsBlock.draw(flow, content);
            VerdictBox.draw(flow, content);
            RequirementTable.draw(flow, content, density);
            NotesBlock.draw(flow, content);
            Signatures.draw(flow, content);
            PlotGallery.draw(flow, content, density);
            EndMark.draw(flow, content);
            PageFooters.draw(flow, content);
        }
    }
}
