package dev.reelproof.pdf;

import dev.reelproof.certificate.NumberedPaper;
import java.util.Optional;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.jspecify.annotations.Nullable;

/**
 * What a certificate's PDF says of itself to programs, in its information dictionary: what the pages print, so that both can be
 * compared.
 *
 * @param number the certificate's number
 * @param issue which issue of it
 * @param pages how many pages it has
 * @param resultSha256 digest of the attached result, hexadecimal; empty when none is attached
 */
public record Imprint(String number, int issue, int pages, Optional<String> resultSha256) {
    private static final String NUMBER = "CertificateNumber";
    private static final String ISSUE = "CertificateIssue";
    private static final String PAGES = "CertificatePages";
    private static final String RESULT = "ResultSHA256";

    static Imprint of(PDDocument document, NumberedPaper content, Provenance provenance) {
        return new Imprint(
                content.number(),
                content.issue(),
                document.getNumberOfPages(),
                provenance.result().map(ResultAttachment::sha256));
    }

    void writeTo(PDDocument document) {
        PDDocumentInformation information = document.getDocumentInformation();
        information.setCustomMetadataValue(NUMBER, number);
        information.setCustomMetadataValue(ISSUE, Integer.toString(issue));
        information.setCustomMetadataValue(PAGES, Integer.toString(pages));
        resultSha256.ifPresent(digest -> information.setCustomMetadataValue(RESULT, digest));
    }

    /** What a document says of itself; empty when it is no certificate of ours. */
    public static Optional<Imprint> of(PDDocument document) {
        PDDocumentInformation information = document.getDocumentInformation();
        @Nullable String number = information.getCustomMetadataValue(NUMBER);
        @Nullable String issue = information.getCustomMetadataValue(ISSUE);
        @Nullable String pages = information.getCustomMetadataValue(PAGES);
        if (number == null || issue == null || pages == null) {
            return Optional.empty();
        }
        try {
            return Optional.of(new Imprint(
                    number,
                    Integer.parseInt(issue),
                    Integer.parseInt(pages),
                    Optional.ofNullable(information.getCustomMetadataValue(RESULT))));
        } catch (NumberFormatException e) {
            return Optional.empty();
        }
    }
}
