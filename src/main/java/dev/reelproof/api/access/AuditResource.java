package dev.reelproof.api.access;

import dev.reelproof.access.Action;
import dev.reelproof.access.Callers;
import dev.reelproof.api.QueryParameters;
import dev.reelproof.app.Plants;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.store.access.AuditTrail;
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

/** The audit trail. */
@Path("/api/v1/audit")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "AuditTrail trail and approvals")
public class AuditResource {
    private final AuditTrail audit;
    private final Callers callers;
    private final Plants plants;

    AuditResource(AuditTrail audit, Callers callers, Plants plants) {
        this.audit = audit;
        this.callers = callers;
        this.plants = plants;
    }

    @GET
    @Authenticated
    @Operation(
            summary = "Who changed what, newest first",
            description =
                    "For the roles quality-manager and administrator. Page on with 'before' = the last id received.")
    @APIResponse(responseCode = "401", description = "nobody signed in")
    @APIResponse(responseCode = "403", description = "the role may not read the audit trail")
    public AuditAnswer.Entries entries(
            @QueryParam("subject") String subject,
            @QueryParam("actor") String actor,
            @QueryParam("action") String action,
            @QueryParam("before") String before,
            @QueryParam("limit") @DefaultValue("50") String limit,
            @QueryParam("plant") String plantNamed) {
        String plant = plants.named(plantNamed, "plant");
        callers.current().require(Action.READ_AUDIT, plant);
        AuditTrail.Filter filter = new AuditTrail.Filter(
                plain(subject, "subject"),
                plain(actor, "actor"),
                plain(action, "action"),
                before == null ? null : id(before, "before"));
        return new AuditAnswer.Entries(audit.entries(plant, filter, QueryParameters.limit(limit)).stream()
                .map(AuditAnswer::of)
                .toList());
    }

    /** The database holds no control characters and refuses to be asked for them. */
    private static String plain(String text, String where) {
        if (text != null && text.codePoints().anyMatch(Character::isISOControl)) {
            throw IntakeException.of(IntakeException.Kind.CONTENT, where, "holds a control character");
        }
        return text;
    }

    /** A whole number that names an entry or an approval. */
    public static long id(String text, String where) {
        try {
            long id = Long.parseLong(text.trim());
            if (id >= 1) {
                return id;
            }
        } catch (NumberFormatException e) {
            // Said below, as for a number out of range.
        }
        throw IntakeException.of(
                IntakeException.Kind.CONTENT, where, "must be a whole number from 1, not '" + text + "'");
    }
}
