package dev.reelproof.certificate;

import dev.reelproof.store.certificate.Certificates;
import java.time.OffsetDateTime;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A certificate as issued; its PDF is kept beside it, see {@link Certificates#pdf}.
 *
 * @param plant the plant
 * @param number unique within the plant
 * @param issue from 1
 * @param record the record that it certifies
 * @param reel the reel's number
 * @param issued when
 * @param order the customer order; null when none
 * @param customer the customer; null when none
 * @param pdfSha256 digest of the PDF, hexadecimal
 * @param reissue why and by whom it was issued again; null for the first issue
 */
public record IssuedCertificate(
        String plant,
        String number,
        int issue,
        UUID record,
        String reel,
        OffsetDateTime issued,
        @Nullable String order,
        @Nullable String customer,
        String pdfSha256,
        @Nullable Reissue reissue) {

    /**
     * Why a number was issued again, with other details of customer, order or consignee and the same results.
     *
     * @param reason why
     * @param by who issued it
     * @param consignee to whom the goods go; null when not stated
     */
    public record Reissue(String reason, String by, @Nullable String consignee) {
        public Reissue {
            if (reason == null || reason.isBlank() || by == null || by.isBlank()) {
                throw new IllegalArgumentException("a certificate is issued again by somebody, for a reason");
            }
        }
    }
}
