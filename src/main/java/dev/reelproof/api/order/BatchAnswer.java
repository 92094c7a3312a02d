package dev.reelproof.api.order;

import dev.reelproof.certificate.CertificateBatch;
import dev.reelproof.wording.OrderWords;
import java.time.OffsetDateTime;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** How far the certificates of an order have come. */
@Schema(name = "CertificateBatch")
record BatchAnswer(
        String id,
        String order,
        OffsetDateTime asked,
        String askedBy,
        int reels,
        int done,
        int issued,
        int issuedBefore,
        boolean finished,
        @Schema(description = "the reels that got none, and why") List<NotIssued> notIssued,
        @Schema(description = "the same in a sentence") String sentence) {

    /** A reel without a certificate. */
    @Schema(name = "CertificateNotIssued")
    record NotIssued(String reel, String reason) {}

    static BatchAnswer of(CertificateBatch batch) {
        return new BatchAnswer(
                Long.toString(batch.id()),
                batch.order(),
                batch.asked(),
                batch.askedBy(),
                batch.reels(),
                batch.done(),
                batch.issued(),
                batch.issuedBefore(),
                batch.isFinished(),
                batch.notIssued().stream()
                        .map(one -> new NotIssued(one.reel(), one.reason()))
                        .toList(),
                OrderWords.english()
                        .progress(
                                batch.done(),
                                batch.reels(),
                                batch.issued(),
                                batch.issuedBefore(),
                                batch.notIssued().size()));
    }
}
