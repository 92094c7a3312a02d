package dev.reelproof.pdf.check;

import dev.reelproof.pdf.signature.BrokenSignatureException;
import dev.reelproof.pdf.signature.DemoKey;
import dev.reelproof.pdf.signature.PdfSignature;
import java.io.IOException;
import java.security.cert.X509Certificate;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.pdmodel.PDDocument;

/** Says of a document's signature whether it fits, whose it is, and whether something came after it. */
final class SignatureStatements {
    private SignatureStatements() {}

    static List<Statement> of(PDDocument document, byte[] pdf, List<X509Certificate> trusted) throws IOException {
        List<Statement> statements = new ArrayList<>();
        PdfSignature signature;
        try {
            Optional<PdfSignature> found = PdfSignature.firstOf(document, pdf);
            if (found.isEmpty()) {
                return List.of(Statement.objects("It carries no signature."));
            }
            signature = found.get();
        } catch (BrokenSignatureException e) {
            return List.of(Statement.objects("Its signature does not fit: " + e.getMessage()));
        }
        statements.add(Statement.fits(
                "Signed by " + signature.signer().getSubjectX500Principal().getName() + ", " + time(signature)
                        + "; what was signed is unchanged."));
        if (signature.bytesAfter() > 0) {
            statements.add(Statement.objects("Something was appended after it was signed: a second revision of "
                    + signature.bytesAfter() + " bytes, which the signature does not cover."));
        }
        statements.add(signer(signature, trusted));
        return statements;
    }

    private static String time(PdfSignature signature) {
        Optional<Instant> stamped = signature.stamped();
        return stamped.isPresent()
                ? "before " + stamped.get() + " by a time stamp of "
                        + signature.stampedBy().orElse("an unnamed authority")
                : "at " + signature.claimed() + " by the signer's own clock";
    }

    private static Statement signer(PdfSignature signature, List<X509Certificate> trusted) {
        if (DemoKey.isSubjectOf(signature.signer())) {
            return Statement.leavesSignerOpen(
                    "The key is one for demonstration: anybody can make such a signature, it does not show who issued this.");
        }
        if (trusted.isEmpty()) {
            return Statement.leavesSignerOpen(
                    "The signer is not known to be the plant: give the plant's certificate, which"
                            + " you got from the plant itself, with --trust.");
        }
        Optional<String> objection = signature.objectionToTrust(trusted);
        return objection.isEmpty()
                ? Statement.fits("The signer is the one that was given with --trust.")
                : Statement.leavesSignerOpen(
                        "The signer is not the one that was given with --trust: " + objection.get());
    }
}
