package dev.reelproof.pdf;

import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.pdf.page.EmbeddedFont;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import org.apache.pdfbox.pdmodel.PDDocument;

/**
 * A certificate whose pages are drawn but for its number, its issue and the time of its issue. To lay out the pages takes long, to put
 * these on them does not: whoever numbers certificates need not make others wait for the layout.
 */
public final class CertificateDraft implements AutoCloseable {
    private final CertificateContent content;
    private final PDDocument document;
    private final EmbeddedFont font;
    private final PageFlow flow;
    private final Provenance provenance;
    private final QrCode code;
    private boolean isFinished;

    private CertificateDraft(
            CertificateContent content, Provenance provenance, PDDocument document, Density density)
            throws IOException {
        this.content = content;
        this.provenance = provenance;
        this.document = document;
        this.font = EmbeddedFont.in(document);
        this.flow = new PageFlow(document, content, font);
        Letterhead.draw(flow, content);
        FactsBlock.draw(flow, content);
        VerdictBox.draw(flow, content);
        this.code = QrCode.reserve(flow, provenance);
        RequirementTable.draw(flow, content, density);
        NotesBlock.draw(flow, content);
        Signatures.draw(flow, content);
        PlotGallery.draw(flow, content, density);
        EndMark.makeRoom(flow);
        flow.beginLayer();
    }

    /** What the certificate will say; its number, issue and time of issue only stand in for those that it will get. */
    public CertificateContent content() {
        return content;
    }

    /** Draws the pages as loosely as keeps them within the most that a certificate should have. */
    static CertificateDraft of(CertificateContent content, Provenance provenance, int mostPages) throws IOException {
        Density[] densities = Density.values();
        for (int i = 0; ; i++) {
            PDDocument document = new PDDocument();
            try {
                CertificateDraft draft = new CertificateDraft(content, provenance, document, densities[i]);
                if (document.getNumberOfPages() <= mostPages || i == densities.length - 1) {
                    draft.attach();
                    return draft;
                }
                draft.close();
            } catch (IOException | RuntimeException e) {
                document.close();
                throw e;
            }
        }
    }

    /** Compressing what is attached takes long: it is done before the certificate has a number. */
    private void attach() throws IOException {
        if (provenance.result().isPresent()) {
            provenance.result().get().attachTo(document);
        }
    }

    /**
     * Puts number, issue and time on the pages and gives the PDF. A draft becomes one certificate.
     *
     * @param issued the content of the draft with the number, issue and time that the certificate got
     * @throws IllegalArgumentException when the content says anything else that the draft does not say
     * @throws IllegalStateException when the draft became a certificate before
     */
    public byte[] finish(CertificateContent issued) {
        if (!content.numberedAs(issued).equals(issued)) {
            throw new IllegalArgumentException("certificate " + issued.number()
                    + " differs from its draft in more than number, issue and time of issue");
        }
        if (isFinished) {
            throw new IllegalStateException(
                    "certificate " + issued.number() + " needs a draft of its own; another was made of this one");
        }
        isFinished = true;
        try {
            Letterhead.drawNumber(flow, issued);
            code.draw(flow, issued);
            EndMark.draw(flow, issued);
            PageFooters.draw(flow, issued);
            flow.close();
            PdfA.describe(document, issued, font);
            Imprint.of(document, issued, provenance).writeTo(document);
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            document.save(out);
            return out.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException("certificate " + issued.number() + " cannot be drawn", e);
        }
    }

    @Override
    public void close() {
        try {
            if (!isFinished) {
                flow.close();
            }
            document.close();
        } catch (IOException e) {
            throw new UncheckedIOException(
                    "a draft of a certificate of reel " + content.reel() + " cannot be closed", e);
        }
    }
}
