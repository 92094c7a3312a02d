package dev.reelproof.api.certificate;

import dev.reelproof.app.certificate.StandingOfCertificates.Stands;
import dev.reelproof.certificate.IssuedCertificate;
import java.time.OffsetDateTime;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** A certificate in a list, with its state. */
@Schema(name = "CertificateLine")
public record CertificateLine(
        String number,
        int issue,
        String plant,
        String reel,
        UUID record,
        OffsetDateTime issued,
        @Nullable String order,
        @Nullable String customer,
        String pdf,
        String pdfSha256,
        @Schema(description = "whether it may be relied on now: current, in-question, superseded, withdrawn")
                String state) {

    public static CertificateLine of(Stands stands) {
        IssuedCertificate one = stands.certificate();
        return new CertificateLine(
                one.number(),
                one.issue(),
                one.plant(),
                one.reel(),
                one.record(),
                one.issued(),
                one.order(),
                one.customer(),
                "/api/v1/certificates/" + one.number() + ".pdf",
                one.pdfSha256(),
                stands.standing().word());
    }
}
