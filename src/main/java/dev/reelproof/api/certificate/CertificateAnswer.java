package dev.reelproof.api.certificate;

import dev.reelproof.certificate.IssuedCertificate;
import java.time.OffsetDateTime;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A certificate in the HTTP contract. */
public record CertificateAnswer(
        String number,
        int issue,
        String plant,
        String reel,
        UUID record,
        OffsetDateTime issued,
        @Nullable String order,
        @Nullable String customer,
        String pdf,
        String pdfSha256) {

    public static CertificateAnswer of(IssuedCertificate certificate) {
        return new CertificateAnswer(
                certificate.number(),
                certificate.issue(),
                certificate.plant(),
                certificate.reel(),
                certificate.record(),
                certificate.issued(),
                certificate.order(),
                certificate.customer(),
                "/api/v1/certificates/" + certificate.number() + ".pdf",
                certificate.pdfSha256());
    }
}
