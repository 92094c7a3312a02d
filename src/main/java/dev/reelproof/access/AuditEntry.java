package dev.reelproof.access;

import java.time.OffsetDateTime;

/**
 * One change, and who made it.
 *
 * @param id grows with time, within a plant
 * @param at when, by the database's clock
 * @param actor the account or token
 * @param actorKind person, token, service or none
 * @param from the network address of the request; null when there was none
 * @param action what was done, such as {@code test-taken}
 * @param subject what it was done to: its kind, a slash, its identifier, such as {@code reel/R-1}
 * @param reason why, as the caller put it; null when none was asked for
 * @param detailsJson what else there is to know: a JSON object
 */
public record AuditEntry(
        long id,
        OffsetDateTime at,
        String actor,
        String actorKind,
        String from,
        String action,
        String subject,
        String reason,
        String detailsJson) {}
