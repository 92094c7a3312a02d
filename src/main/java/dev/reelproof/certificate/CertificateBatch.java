package dev.reelproof.certificate;

import java.time.OffsetDateTime;
import java.util.List;

/**
 * Certificates that somebody asked for, of all reels of an order at that time.
 *
 * @param plant the plant
 * @param id its number within the plant
 * @param order the order
 * @param asked when it was asked for
 * @param askedBy who asked
 * @param reels how many reels it has
 * @param issued how many certificates were issued
 * @param issuedBefore how many reels had one already
 * @param notIssued the reels that got none, in order, with the reason
 */
public record CertificateBatch(
        String plant,
        long id,
        String order,
        OffsetDateTime asked,
        String askedBy,
        int reels,
        int issued,
        int issuedBefore,
        List<NotIssued> notIssued) {

    /** A reel that got no certificate, and why. */
    public record NotIssued(String reel, String reason) {}

    public CertificateBatch {
        notIssued = List.copyOf(notIssued);
        if (!(issued >= 0 && issuedBefore >= 0 && issued + issuedBefore + notIssued.size() <= reels)) {
            throw new IllegalArgumentException("a batch of " + reels + " reels has " + issued + " issued, "
                    + issuedBefore + " issued before and " + notIssued.size() + " not issued");
        }
    }

    /** How many reels are done with. */
    public int done() {
        return issued + issuedBefore + notIssued.size();
    }

    /** Whether none waits. */
    public boolean isFinished() {
        return done() == reels;
    }
}
