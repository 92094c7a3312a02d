package dev.reelproof.access;

import java.time.OffsetDateTime;
import org.jspecify.annotations.Nullable;

/**
 * What one person asked for and another decides.
 *
 * @param id unique within the plant
 * @param action the word of the action asked for
 * @param subject what it would be done to
 * @param reason why, as the requester put it
 * @param requestedBy the account of the requester
 * @param requested when
 * @param approved the decision; absent while it is open
 * @param decidedBy the account that decided
 * @param decided when
 * @param decisionReason why so
 */
public record Approval(
        long id,
        String action,
        String subject,
        String reason,
        String requestedBy,
        OffsetDateTime requested,
        @Nullable Boolean approved,
        @Nullable String decidedBy,
        @Nullable OffsetDateTime decided,
        @Nullable String decisionReason) {

    public Approval {
        boolean isDecided = approved != null;
        if (!(isDecided == (decidedBy != null)
                && isDecided == (decided != null)
                && isDecided == (decisionReason != null))) {
            throw new IllegalArgumentException(
                    "approval " + id + " is decided in part: a decision has a person, a time and a reason");
        }
        if (decidedBy != null && AccountName.fold(decidedBy).equals(AccountName.fold(requestedBy))) {
            throw new IllegalArgumentException("approval " + id + " was decided by its requester, " + requestedBy);
        }
    }

    /** An approval that nobody decided yet. */
    public static Approval open(
            long id, String action, String subject, String reason, String requestedBy, OffsetDateTime requested) {
        return new Approval(id, action, subject, reason, requestedBy, requested, null, null, null, null);
    }

    /**
     * The approval as another person decides it.
     *
     * @param why why so, as that person puts it
     * @throws ApprovalConflictException when that person asked for it, or it was decided before
     */
    public Approval decidedBy(Caller person, boolean approve, String why, OffsetDateTime now) {
        if (approved != null && decided != null) {
            throw new ApprovalConflictException(
                    "Approval " + id + " was " + (approved ? "given" : "refused") + " by " + decidedBy + " on "
                            + decided.toLocalDate() + "; a decision does not change: ask for a new approval.");
        }
        if (person.isPerson(requestedBy)) {
            throw new ApprovalConflictException(
                    "You asked for approval " + id + " yourself; somebody else must decide on it.");
        }
        return new Approval(id, action, subject, reason, requestedBy, requested, approve, person.name(), now, why);
    }
}
