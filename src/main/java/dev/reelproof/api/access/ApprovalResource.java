package dev.reelproof.api.access;

import dev.reelproof.access.Action;
import dev.reelproof.access.Approval;
import dev.reelproof.api.QueryParameters;
import dev.reelproof.app.access.AskApproval;
import dev.reelproof.app.access.DecideApproval;
import dev.reelproof.intake.Faults;
import dev.reelproof.intake.SentObject;
import io.quarkus.security.Authenticated;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** What one person asks for and another decides. */
@Path("/api/v1/approvals")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Audit trail and approvals")
@Authenticated
public class ApprovalResource {
    private static final int LONGEST_SUBJECT = 200;
    private static final int LONGEST_REASON = 1000;

    private final AskApproval asking;
    private final DecideApproval deciding;

    ApprovalResource(AskApproval asking, DecideApproval deciding) {
        this.asking = asking;
        this.deciding = deciding;
    }

    @GET
    @Operation(summary = "Approvals, newest first", description = "Page on with 'before' = the last id received.")
    public ApprovalAnswer.Listed list(
            @QueryParam("open") @DefaultValue("false") boolean open,
            @QueryParam("before") @Nullable String before,
            @QueryParam("limit") @DefaultValue("50") String limit,
            @QueryParam("plant") @Nullable String plant) {
        long newest = before == null ? Long.MAX_VALUE : QueryParameters.id("before", before);
        return new ApprovalAnswer.Listed(asking.list(plant, open, newest, QueryParameters.limit(limit)).stream()
                .map(ApprovalAnswer::of)
                .toList());
    }

    @POST
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(
            summary = "Ask for an approval",
            description =
                    "Of 'release' (subject such as hold/12), 'withdraw' (certificate/NORTH-2026-000001) or 'change-limits'"
                            + " (limit-set/category-6a-cable/1/wrong). For persons of the roles engineer and quality-manager.")
    @RequestBody(required = true, content = @Content(schema = @Schema(implementation = ApprovalAnswer.Request.class)))
    @APIResponse(
            responseCode = "201",
            description = "asked for",
            content = @Content(schema = @Schema(implementation = ApprovalAnswer.class)))
    @APIResponse(responseCode = "403", description = "the role may not, or it is a token")
    @APIResponse(responseCode = "404", description = "no certificate, or no revision of a limit set, of that name")
    @APIResponse(responseCode = "409", description = "asked for already, or done before")
    @APIResponse(
            responseCode = "422",
            description = "an action that approval would not do, no such subject, or no reason")
    public Response request(@QueryParam("plant") @Nullable String plant, byte[] body) {
        asking.requirePermission(plant);
        Faults faults = new Faults();
        SentObject root = SentObject.read("approval", body, faults)
                .allow("action", "subject", "reason")
                .require("action", "subject", "reason");
        Optional<String> word = root.text("action", LONGEST_SUBJECT);
        Optional<Action> action = word.flatMap(Action::named);
        if (word.isPresent() && action.isEmpty()) {
            root.fault("action", "unknown action '" + word.get() + "'; there are " + String.join(", ", Action.words()));
        }
        Optional<String> subject = root.text("subject", LONGEST_SUBJECT);
        Optional<String> reason = root.text("reason", LONGEST_REASON);
        faults.refuseIfAny();
        Approval asked = asking.ask(plant, action.orElseThrow(), subject.orElseThrow(), reason.orElseThrow());
        return Response.status(Response.Status.CREATED)
                .entity(ApprovalAnswer.of(asked))
                .build();
    }

    @POST
    @Path("/{id}/decision")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(
            summary = "Decide on an approval that somebody else asked for",
            description = "What is approved is done at once. For persons of the roles engineer and quality-manager.")
    @RequestBody(required = true, content = @Content(schema = @Schema(implementation = ApprovalAnswer.Decision.class)))
    @APIResponse(responseCode = "200", description = "decided, and done when it was approved")
    @APIResponse(responseCode = "403", description = "the role may not, or it is a token")
    @APIResponse(responseCode = "404", description = "no such approval")
    @APIResponse(responseCode = "409", description = "asked for by the same person, decided before, or cannot be done")
    public ApprovalAnswer decide(String id, @QueryParam("plant") @Nullable String plant, byte[] body) {
        asking.requirePermission(plant);
        long number = QueryParameters.id("id", id);
        Faults faults = new Faults();
        SentObject root = SentObject.read("decision", body, faults)
                .allow("approve", "reason")
                .require("approve", "reason");
        Optional<Boolean> approve = root.truth("approve");
        Optional<String> reason = root.text("reason", LONGEST_REASON);
        faults.refuseIfAny();
        return ApprovalAnswer.of(deciding.decide(plant, number, approve.orElseThrow(), reason.orElseThrow()));
    }
}
