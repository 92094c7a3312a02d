package dev.reelproof.access;

import java.time.OffsetDateTime;

/**
 * What one person asked for and another decides.
 *
 * @param id unique within the plant
 * @param action the word of the action asked for
 * @param subject what it would be done to
 * @param reason why, as the requester put it
 * @param requestedBy the account of the requester
 * @param requested when
 * @param approved the decision; null while it is open
 * @param decidedBy the account that decided; null while it is open
 * @param decided when; null while it is open
 * @param decisionReason why so; null while it is open
 */
public record Approval(
        long id,
        String action,
        String subject,
        String reason,
        String requestedBy,
        OffsetDateTime requested,
        Boolean approved,
        String decidedBy,
        OffsetDateTime decided,
        String decisionReason) {}
