package dev.reelproof.access;

import org.jspecify.annotations.Nullable;

/**
 * What entries of the audit trail are looked for; what is absent stands for any.
 *
 * @param subject this subject, as kind, slash and identifier; or an identifier alone, of whatever kind
 * @param actor this actor
 * @param action this action
 * @param before only entries of a lower id
 */
public record AuditFilter(
        @Nullable String subject, @Nullable String actor, @Nullable String action, @Nullable Long before) {
    private static final String AFTER_THE_KIND = "/";

    /** Whether the subject says its kind; without it, entries of every kind that have this identifier are meant. */
    public boolean namesKind() {
        return subject != null && subject.contains(AFTER_THE_KIND);
    }
}
