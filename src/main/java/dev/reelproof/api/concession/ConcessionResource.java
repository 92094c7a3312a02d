package dev.reelproof.api.concession;

import dev.reelproof.access.Action;
import dev.reelproof.access.Callers;
import dev.reelproof.api.QueryParameters;
import dev.reelproof.app.concession.ApproveConcession;
import dev.reelproof.app.concession.FindConcessions;
import dev.reelproof.app.concession.RefuseConcession;
import dev.reelproof.record.concession.Concession;
import dev.reelproof.wording.Wording;
import io.quarkus.security.Authenticated;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Concessions, and the decision on them by somebody other than who asked. */
@Path("/api/v1/concessions")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Concessions")
@Authenticated
public class ConcessionResource {
    private final FindConcessions find;
    private final ApproveConcession approving;
    private final RefuseConcession refusing;
    private final Callers callers;

    ConcessionResource(FindConcessions find, ApproveConcession approving, RefuseConcession refusing, Callers callers) {
        this.find = find;
        this.approving = approving;
        this.refusing = refusing;
        this.callers = callers;
    }

    @GET
    @Operation(summary = "Concessions, newest first", description = "Page on with 'before' = the last id received.")
    public ConcessionAnswer.Listed list(
            @QueryParam("reel") @Nullable String reel,
            @QueryParam("open") @DefaultValue("false") boolean open,
            @QueryParam("before") @Nullable String before,
            @QueryParam("limit") @DefaultValue("50") String limit,
            @QueryParam("plant") @Nullable String plant) {
        long newest = before == null ? Long.MAX_VALUE : QueryParameters.id("before", before);
        return new ConcessionAnswer.Listed(find.list(plant, reel, open, newest, QueryParameters.limit(limit)).stream()
                .map(standing -> ConcessionAnswer.of(standing, Wording.english()))
                .toList());
    }

    @GET
    @Path("/{id}")
    @Operation(summary = "A concession, how it stands, and what its approval does")
    @APIResponse(
            responseCode = "200",
            description = "the concession",
            content = @Content(schema = @Schema(implementation = ConcessionAnswer.class)))
    @APIResponse(responseCode = "404", description = "no such concession")
    public ConcessionAnswer get(@PathParam("id") String id, @QueryParam("plant") @Nullable String plant) {
        return answer(plant, QueryParameters.id("id", id));
    }

    @POST
    @Path("/{id}/approval")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(
            summary = "Approve a concession that somebody else asked for",
            description =
                    "It is done at once: the reel may have a certificate as it is, is regraded and its test judged again,"
                            + " or gets its new length and must be tested again. For persons of the role quality-manager.")
    @RequestBody(
            required = true,
            content = @Content(schema = @Schema(implementation = ConcessionAnswer.Decision.class)))
    @APIResponse(
            responseCode = "200",
            description = "approved, and done",
            content = @Content(schema = @Schema(implementation = ConcessionAnswer.class)))
    @APIResponse(responseCode = "403", description = "the role may not, or it is a token")
    @APIResponse(responseCode = "404", description = "no such concession")
    @APIResponse(
            responseCode = "409",
            description =
                    "asked for by the same person, decided before, lapsed, or the reel does not meet the new product's limits")
    public ConcessionAnswer approve(
            @PathParam("id") String id, @QueryParam("plant") @Nullable String plant, byte[] body) {
        requireMayDecide();
        Concession approved = approving.approve(plant, QueryParameters.id("id", id), SentConcession.reason(body));
        return answer(plant, approved.id());
    }

    @POST
    @Path("/{id}/refusal")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(
            summary = "Refuse a concession that somebody else asked for",
            description = "For persons of the role quality-manager.")
    @RequestBody(
            required = true,
            content = @Content(schema = @Schema(implementation = ConcessionAnswer.Decision.class)))
    @APIResponse(
            responseCode = "200",
            description = "refused; the reel stays as it is",
            content = @Content(schema = @Schema(implementation = ConcessionAnswer.class)))
    @APIResponse(responseCode = "403", description = "the role may not, or it is a token")
    @APIResponse(responseCode = "404", description = "no such concession")
    @APIResponse(responseCode = "409", description = "asked for by the same person, decided before, or lapsed")
    public ConcessionAnswer refuse(
            @PathParam("id") String id, @QueryParam("plant") @Nullable String plant, byte[] body) {
        requireMayDecide();
        Concession refused = refusing.refuse(plant, QueryParameters.id("id", id), SentConcession.reason(body));
        return answer(plant, refused.id());
    }

    /** Before the body is read, so that whoever may not learns that first; the use case asks again, with the plant. */
    private void requireMayDecide() {
        callers.current().require(Action.DECIDE_CONCESSION);
        callers.current().requirePerson();
    }

    private ConcessionAnswer answer(@Nullable String plant, long id) {
        return ConcessionAnswer.of(find.byId(plant, id), Wording.english());
    }
}
