package dev.reelproof.pdf.check;

import dev.reelproof.pdf.Imprint;
import dev.reelproof.pdf.InclusionProofJson;
import dev.reelproof.pdf.ResultAttachment;
import dev.reelproof.seal.CarriedProof;
import dev.reelproof.seal.TreeHead;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.pdmodel.PDDocument;

/** Checks the proof that the attached result is in the plant's log, by what the document carries. */
final class LogStatements {
    private LogStatements() {}

    static List<Statement> of(PDDocument document, Imprint imprint) throws IOException {
        if (imprint.resultSha256().isEmpty()) {
            return List.of();
        }
        Optional<byte[]> text = ContentStatements.file(document, ResultAttachment.PROOF_NAME);
        if (text.isEmpty()) {
            return List.of(Statement.fits("It carries no proof that it is in the plant's log."));
        }
        return List.of(of(text.get(), imprint.resultSha256().get()));
    }

    private static Statement of(byte[] text, String sha256) {
        CarriedProof carried;
        try {
            carried = InclusionProofJson.read(new String(text, StandardCharsets.UTF_8));
        } catch (IllegalArgumentException e) {
            return Statement.objects("Its proof of the plant's log cannot be read: " + e.getMessage());
        }
        TreeHead head = carried.proof().head().head();
        return carried.faultAsTo(sha256)
                .map(fault -> Statement.objects("It is not shown to be in the plant's log. " + fault))
                .orElseGet(() -> Statement.fits("The attached result is entry "
                        + carried.proof().index() + " of the log of plant " + head.plant() + ", by its head of "
                        + head.at()
                        + " over " + head.size() + " entries; the plant publishes the key that signed it, "
                        + carried.key().id() + "."));
    }
}
