package dev.reelproof.pdf.check;

import dev.reelproof.pdf.Imprint;
import java.io.IOException;
import java.security.cert.X509Certificate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;

/**
 * What a certificate's PDF shows by itself.
 *
 * @param statements what was found, in order
 */
public record PaperCheck(List<Statement> statements) {

    public PaperCheck {
        statements = List.copyOf(statements);
    }

    /**
     * Checks a PDF.
     *
     * @param trusted the plant's certificates, or those of who vouches for them; may be empty
     * @throws IOException when it is no PDF that can be read
     */
    public static PaperCheck of(byte[] pdf, List<X509Certificate> trusted) throws IOException {
        List<Statement> statements = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            Optional<Imprint> imprint = Imprint.of(document);
            if (imprint.isEmpty()) {
                statements.add(
                        Statement.objects("It does not say which certificate it is: this program did not make it,"
                                + " or somebody took that out."));
            } else {
                statements.add(Statement.fits("Certificate " + imprint.get().number() + ", issue "
                        + imprint.get().issue() + "."));
            }
            statements.addAll(SignatureStatements.of(document, pdf, trusted));
            if (imprint.isPresent()) {
                statements.addAll(ContentStatements.of(document, imprint.get()));
                statements.addAll(LogStatements.of(document, imprint.get()));
            }
        }
        return new PaperCheck(statements);
    }

    public Conclusion conclusion() {
        return Conclusion.of(statements);
    }
}
