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
        String pdfSha256) {

    static final String COLUMNS = "plant, number, issue, record_id, reel, issued, order_number, customer, pdf_sha256";

    IssuedCertificate toCertificate() {
        return new IssuedCertificate(
                plant, number, issue, recordId, reel, UtcTimes.utc(issued), order, customer, pdfSha256);
    }
}
