package dev.reelproof.api.certificate;

import dev.reelproof.app.certificate.VerifyCertificate;
import dev.reelproof.certificate.IssuedCertificate;
import java.time.OffsetDateTime;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** What anyone may know of a certificate whose number they have: nothing of order, customer or figures. */
@Schema(name = "CertificateVerification")
record CertificateVerification(
        String number,
        @Schema(description = "true: a number that was never issued is answered with 404") boolean genuine,
        @Schema(description = "whether no later issue of the number exists") boolean current,
        int issue,
        OffsetDateTime issued,
        String reel,
        String product,
        @Schema(description = "SHA-256 of the issue's PDF, hexadecimal") String pdfSha256,
        @Schema(
                        description = "whether the digest asked about is that of an issued PDF; null when none was",
                        nullable = true)
                @Nullable
                Boolean matches) {

    static CertificateVerification of(VerifyCertificate.Verified verified) {
        IssuedCertificate certificate = verified.certificate();
        return new CertificateVerification(
                certificate.number(),
                true,
                verified.isNewest(),
                certificate.issue(),
                certificate.issued(),
                certificate.reel(),
                verified.product(),
                certificate.pdfSha256(),
                verified.matches().orElse(null));
    }
}
