package dev.reelproof.certificate.life;

import java.time.OffsetDateTime;
import java.util.Objects;

/**
 * That a certificate was taken back, with all its issues.
 *
 * @param reason why, as the person put it who asked for it
 * @param askedBy who asked for it
 * @param approvedBy who approved it: somebody else
 * @param at when
 */
public record Withdrawal(String reason, String askedBy, String approvedBy, OffsetDateTime at) {
    public Withdrawal {
        Objects.requireNonNull(reason, "a certificate is withdrawn for a reason");
        Objects.requireNonNull(at, "a certificate is withdrawn at some time");
        if (askedBy.equals(approvedBy)) {
            throw new IllegalArgumentException(
                    "a certificate is withdrawn by two persons, not by " + askedBy + " alone");
        }
    }
}
