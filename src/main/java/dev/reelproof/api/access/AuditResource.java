package dev.reelproof.api.access;

import dev.reelproof.access.AuditFilter;
import dev.reelproof.api.QueryParameters;
import dev.reelproof.app.access.ReadAudit;
import io.quarkus.security.Authenticated;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** The audit trail. */
@Path("/api/v1/audit")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Audit trail and approvals")
public class AuditResource {
    private final ReadAudit audit;

    AuditResource(ReadAudit audit) {
        this.audit = audit;
    }

    @GET
    @Authenticated
    @Operation(
            summary = "Who changed what, newest first",
            description =
                    "For the roles quality-manager and administrator. 'subject' is a kind, a slash and an identifier,"
                            + " such as reel/R-1, or an identifier alone, of whatever kind. Page on with 'before' = the last id"
                            + " received.")
    @APIResponse(responseCode = "200", description = "the entries")
    @APIResponse(responseCode = "403", description = "the role may not read the audit trail")
    public AuditAnswer.Entries entries(
            @QueryParam("subject") @Nullable String subject,
            @QueryParam("actor") @Nullable String actor,
            @QueryParam("action") @Nullable String action,
            @QueryParam("before") @Nullable String before,
            @QueryParam("limit") @DefaultValue("50") String limit,
            @QueryParam("plant") @Nullable String plant) {
        audit.requirePermission(plant);
        AuditFilter filter = new AuditFilter(
                QueryParameters.textIfGiven("subject", subject),
                QueryParameters.textIfGiven("actor", actor),
                QueryParameters.textIfGiven("action", action),
                before == null ? null : QueryParameters.id("before", before));
        return new AuditAnswer.Entries(audit.entries(plant, filter, QueryParameters.limit(limit)).stream()
                .map(AuditAnswer::of)
                .toList());
    }
}
