package dev.reelproof.store.certificate;

import dev.reelproof.certificate.IssuedCertificate;
import dev.reelproof.store.UtcTimes;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A certificate without what it says and how it looks, as {@link #COLUMNS} give it. */
record CertificateSummaryRow(
        String plant,
        String number,
        int issue,
        UUID recordId,
        String reel,
        Instant issued,
        @Nullable String order,
        @Nullable String customer,
        String pdfSha256,
        @Nullable String reissueReason,
        @Nullable String reissuedBy,
        @Nullable String consignee) {

    static final String COLUMNS = "plant, number, issue, record_id, reel, issued, order_number, customer, pdf_sha256,"
            + " reissue_reason, reissued_by, consignee";

    IssuedCertificate toCertificate() {
        return new IssuedCertificate(
                plant,
                number,
                issue,
                recordId,
                reel,
                UtcTimes.utc(issued),
                order,
                customer,
                pdfSha256,
                reissueReason == null || reissuedBy == null
                        ? null
                        : new IssuedCertificate.Reissue(reissueReason, reissuedBy, consignee));
    }
}
