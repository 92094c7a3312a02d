package dev.reelproof.pdf;

import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.wording.PaperWord;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.pdmodel.PDDocument;

/**
 * A certificate whose pages are drawn but for its number, its issue and the time of its issue. To lay out the pages takes long, to put
 * these on them does not: whoever numbers certificates need not make others wait for the layout.
 */
public final class CertificateDraft implements AutoCloseable {
    /** A last page filled less than this looks lost. */
    private static final float LEAST_FILLED = 0.5f;

    private final CertificateContent content;
    private final PDDocument document;
    private final PageFlow flow;
    private final Letterhead letterhead;
    private final EndMark end;
    private final Provenance provenance;
    private final QrCode code;
    private boolean isFinished;

    private CertificateDraft(
            CertificateContent content,
            Provenance provenance,
            Optional<Logo> logo,
            PDDocument document,
            Filling filling)
            throws IOException {
        this.content = content;
        this.provenance = provenance;
        this.document = document;
        this.flow = new PageFlow(document, content);
        flow.runUnder(flow.say(PaperWord.RUNNING_HEAD, "title", content.paper().title(), "reel", content.reel()));
        this.letterhead =
                new Letterhead(flow, content, logo.isEmpty() ? null : logo.get().in(document));
        FactsBlock.draw(flow, content);
        StatementBlock.draw(flow, content);
        this.code = QrCode.reserve(flow, provenance);
        RequirementTable.draw(flow, content, filling.density());
        NotesBlock.draw(flow, content);
        PlotGallery.draw(flow, content, filling.spreads());
        DistributionGallery.draw(flow, content);
        WorstPairsAnnex.draw(flow, content);
        this.end = new EndMark(flow);
        flow.beginLayer();
    }

    /** What the certificate will say; its number, issue and time of issue only stand in for those that it will get. */
    public CertificateContent content() {
        return content;
    }

    /**
     * How the pages are filled.
     *
     * @param density how tight the table is set
     * @param spreads whether a row of plots that would stand alone on the last page takes another with it
     */
    private record Filling(Density density, boolean spreads) {}

    /**
     * Draws the pages. Where the last one stays nearly empty or there are more than a certificate should have, the table is set tighter as
     * far as that saves a page; where none is saved, plots are spread over the pages.
     */
    static CertificateDraft of(CertificateContent content, Provenance provenance, Optional<Logo> logo, int mostPages)
            throws IOException {
        Density chosen = Density.values()[0];
        CertificateDraft best = of(content, provenance, logo, new Filling(chosen, false));
        for (Density density : List.of(Density.values()).subList(1, Density.values().length)) {
            if (best.pages() <= mostPages && best.isFilled()) {
                break;
            }
            CertificateDraft tighter = of(content, provenance, logo, new Filling(density, false));
            if (tighter.pages() < best.pages()) {
                best.close();
                best = tighter;
                chosen = density;
            } else {
                tighter.close();
            }
        }
        if (!best.isFilled()) {
            best.close();
            best = of(content, provenance, logo, new Filling(chosen, true));
        }
        best.attach();
        return best;
    }

    private static CertificateDraft of(
            CertificateContent content, Provenance provenance, Optional<Logo> logo, Filling filling)
            throws IOException {
        PDDocument document = new PDDocument();
        try {
            return new CertificateDraft(content, provenance, logo, document, filling);
        } catch (IOException | RuntimeException e) {
            document.close();
            throw e;
        }
    }

    private int pages() {
        return document.getNumberOfPages();
    }

    private boolean isFilled() {
        return pages() == 1 || flow.y() > flow.bottom() * LEAST_FILLED;
    }

    /** What people entered that cannot be printed, each with what it is and the letter that the typeface lacks. */
    public List<String> unprintable() {
        return UnprintableTexts.in(content, flow.font());
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
            letterhead.drawNumber(issued);
            code.draw(flow, issued);
            end.draw(issued);
            PageFooters.draw(flow, issued);
            flow.close();
            flow.structure().finish();
            PdfA.describe(document, issued, "reel " + issued.reel(), flow.font());
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
