package dev.reelproof.api.access;

import com.fasterxml.jackson.annotation.JsonRawValue;
import dev.reelproof.access.AuditEntry;
import java.time.OffsetDateTime;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** An entry of the audit trail as it is answered. */
@Schema(name = "AuditEntry")
record AuditAnswer(
        long id,
        OffsetDateTime at,
        String actor,
        @Schema(enumeration = {"person", "token", "service", "none"}) String actorKind,
        @Schema(description = "the network address of the request", nullable = true) @Nullable String from,
        String action,
        @Schema(description = "kind, slash, identifier, such as reel/R-1") String subject,
        @Schema(nullable = true) @Nullable String reason,
        @JsonRawValue @Schema(type = SchemaType.OBJECT) String details) {

    /** A list of entries. */
    @Schema(name = "AuditEntries")
    record Entries(List<AuditAnswer> entries) {}

    static AuditAnswer of(AuditEntry entry) {
        return new AuditAnswer(
                entry.id(),
                entry.at(),
                entry.actor(),
                entry.actorKind(),
                entry.from(),
                entry.action(),
                entry.subject(),
                entry.reason(),
                entry.detailsJson());
    }
}
