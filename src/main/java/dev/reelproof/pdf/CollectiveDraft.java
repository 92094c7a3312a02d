package dev.reelproof.pdf;

import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.certificate.CollectiveContent;
import dev.reelproof.wording.PaperWord;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.apache.pdfbox.pdmodel.PDDocument;

/**
 * A collective certificate whose pages are drawn but for its number and the time of its issue: statement, summary, then a page a reel
 * with what the reel's own certificate states and its table of results. Curves and notes stay with that certificate.
 */
public final class CollectiveDraft implements AutoCloseable {
    private static final float HEADING_TO_FACTS = 7;

    private final CollectiveContent content;
    private final PDDocument document;
    private final PageFlow flow;
    private final Letterhead letterhead;
    private final QrCode code;
    private final EndMark end;
    private final Provenance provenance;
    private boolean isFinished;

    private CollectiveDraft(
            CollectiveContent content,
            List<CertificateContent> reels,
            Provenance provenance,
            Optional<Logo> logo,
            PDDocument document)
            throws IOException {
        this.content = content;
        this.provenance = provenance;
        this.document = document;
        this.flow = new PageFlow(document, content);
        flow.runUnder(
                flow.say(PaperWord.COLLECTIVE_HEAD, "title", content.paper().title(), "order", content.order()));
        this.letterhead =
                new Letterhead(flow, content, logo.isEmpty() ? null : logo.get().in(document));
        FactsBlock.draw(flow, content);
        StatementBlock.draw(flow, content);
        this.code = QrCode.reserve(flow, provenance);
        SummaryTable.draw(flow, content);
        for (CertificateContent reel : reels) {
            page(reel);
        }
        this.end = new EndMark(flow);
        flow.beginLayer();
    }

    /**
     * Draws all of it but number and time of issue; the caller closes the draft.
     *
     * @param reels what the certificates that it names say, in the order of its lines
     * @param provenance what the reader may check it by
     * @param logo the plant's sign; empty for none
     * @throws IllegalArgumentException when a line has no certificate of that number and issue
     */
    public static CollectiveDraft of(
            CollectiveContent content, List<CertificateContent> reels, Provenance provenance, Optional<Logo> logo) {
        Map<String, CertificateContent> ofReel =
                reels.stream().collect(Collectors.toMap(CertificateContent::reel, Function.identity()));
        List<CertificateContent> inOrder =
                content.lines().stream().map(line -> of(line, ofReel)).toList();
        PDDocument document = new PDDocument();
        try {
            return new CollectiveDraft(content, inOrder, provenance, logo, document);
        } catch (IOException e) {
            closed(document);
            throw new UncheckedIOException(
                    "the collective certificate of order " + content.order() + " cannot be drawn", e);
        } catch (RuntimeException e) {
            closed(document);
            throw e;
        }
    }

    private static void closed(PDDocument document) {
        try {
            document.close();
        } catch (IOException e) {
            throw new UncheckedIOException("a document cannot be closed", e);
        }
    }

    private static CertificateContent of(CollectiveContent.Line line, Map<String, CertificateContent> ofReel) {
        CertificateContent reel = ofReel.get(line.reel());
        if (reel == null || !(reel.number().equals(line.certificate()) && reel.issue() == line.issue())) {
            throw new IllegalArgumentException("what certificate " + line.certificate() + ", issue " + line.issue()
                    + ", says of reel " + line.reel() + " was not given");
        }
        return reel;
    }

    private void page(CertificateContent reel) throws IOException {
        flow.runUnder(flow.say(PaperWord.RUNNING_HEAD, "title", content.paper().title(), "reel", reel.reel()));
        flow.turnPage();
        flow.heading(
                flow.say(
                        PaperWord.REEL_PAGE,
                        "reel",
                        reel.reel(),
                        "number",
                        reel.number(),
                        "issue",
                        String.valueOf(reel.issue())),
                0);
        flow.moveDown(HEADING_TO_FACTS);
        FactsBlock.drawOnCollective(flow, reel);
        StatementBlock.drawUnsigned(flow, reel);
        RequirementTable.draw(flow, reel, density(reel));
    }

    /** The roomiest that keeps the reel on its page; where none does, the tightest. */
    private Density density(CertificateContent reel) {
        float besides = PageLayout.HEADING_SIZE + PageLayout.HEADING_GAP + EndMark.HEIGHT_RESERVED;
        Density last = Density.TIGHT;
        for (Density density : Density.values()) {
            last = density;
            if (RequirementTable.height(flow, reel, density) + besides <= flow.room()) {
                break;
            }
        }
        return last;
    }

    /** What it will say; its number and time of issue only stand in for those that it will get. */
    public CollectiveContent content() {
        return content;
    }

    /** What people entered that cannot be printed, each with what it is and the letter that the typeface lacks. */
    public List<String> unprintable() {
        return UnprintableTexts.in(content, flow.font());
    }

    /**
     * Puts number and time on the pages and gives the PDF. A draft becomes one certificate.
     *
     * @param issued the content of the draft with the number and time that it got
     * @throws IllegalArgumentException when the content says anything else that the draft does not say
     * @throws IllegalStateException when the draft became a certificate before
     */
    public byte[] finish(CollectiveContent issued) {
        if (!content.numberedAs(issued).equals(issued)) {
            throw new IllegalArgumentException("collective certificate " + issued.number()
                    + " differs from its draft in more than number and time of issue");
        }
        if (isFinished) {
            throw new IllegalStateException("collective certificate " + issued.number()
                    + " needs a draft of its own; another was made of this one");
        }
        isFinished = true;
        try {
            letterhead.drawNumber(issued);
            code.draw(flow, issued);
            end.draw(issued);
            PageFooters.draw(flow, issued, flow.say(PaperWord.COLLECTIVE_FOOT, "order", issued.order()));
            flow.close();
            flow.structure().finish();
            PdfA.describe(document, issued, "order " + issued.order(), flow.font());
            Imprint.of(document, issued, provenance).writeTo(document);
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            document.save(out);
            return out.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException("collective certificate " + issued.number() + " cannot be drawn", e);
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
                    "a draft of a collective certificate of order " + content.order() + " cannot be closed", e);
        }
    }
}
