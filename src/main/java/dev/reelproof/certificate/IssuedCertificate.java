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
        String pdfSha256) {}
