package dev.reelproof.access;

import java.time.OffsetDateTime;
import org.jspecify.annotations.Nullable;

/**
 * One change, and who made it.
 *
 * @param id grows with time, within a plant
 * @param at when, by the database's clock
 * @param actor the account or token
 * @param actorKind person, token, service or none
 * @param from the network address of the request, if there was one
 * @param action what was done, such as {@code test-taken}
 * @param subject what it was done to: its kind, a slash, its identifier, such as {@code reel/R-1}
 * @param reason why, as the caller put it, where a reason was asked for
 * @param detailsJson what else there is to know: a JSON object
 */
public record AuditEntry(
        long id,
        OffsetDateTime at,
        String actor,
        String actorKind,
        @Nullable String from,
        String action,
        String subject,
        @Nullable String reason,
        String detailsJson) {}
