package dev.reelproof.api.hold;

import dev.reelproof.access.Action;
import dev.reelproof.access.PermissionDeniedException;
import dev.reelproof.api.QueryParameters;
import dev.reelproof.app.ConflictException;
import dev.reelproof.app.Plants;
import dev.reelproof.app.hold.FindHolds;
import dev.reelproof.app.hold.PlaceHold;
import dev.reelproof.app.hold.ReleaseHold;
import dev.reelproof.genealogy.hold.Hold;
import dev.reelproof.genealogy.hold.ReleaseRefusedException;
import dev.reelproof.intake.IntakeException;
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
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.Objects;
import java.util.OptionalLong;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** What is on hold, and its release by somebody else. */
@Path("/api/v1/holds")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Holds")
@Authenticated
public class HoldResource {
    private final PlaceHold placing;
    private final ReleaseHold releasing;
    private final FindHolds holds;
    private final Plants plants;

    HoldResource(PlaceHold placing, ReleaseHold releasing, FindHolds holds, Plants plants) {
        this.placing = placing;
        this.releasing = releasing;
        this.holds = holds;
        this.plants = plants;
    }

    @GET
    @Operation(summary = "Holds, newest first", description = "Page on with 'before' = the last id received.")
    public HoldAnswer.Listed list(
            @QueryParam("open") @DefaultValue("false") boolean open,
            @QueryParam("before") @Nullable String before,
            @QueryParam("limit") @DefaultValue("50") String limit,
            @QueryParam("plant") @Nullable String plantNamed) {
        String plant = plants.named(plantNamed, "plant");
        long newest = before == null ? Long.MAX_VALUE : QueryParameters.id("before", before);
        return new HoldAnswer.Listed(holds.list(plant, open, newest, QueryParameters.limit(limit)).stream()
                .map(hold -> HoldAnswer.of(hold, null))
                .toList());
    }

    @GET
    @Path("/{id}")
    @Operation(summary = "A hold with its releases, and how many reels it holds now")
    @APIResponse(
            responseCode = "200",
            description = "the hold",
            content = @Content(schema = @Schema(implementation = HoldAnswer.class)))
    @APIResponse(responseCode = "404", description = "no such hold")
    public HoldAnswer get(@PathParam("id") String id, @QueryParam("plant") @Nullable String plantNamed) {
        String plant = plants.named(plantNamed, "plant");
        return counted(plant, holds.byId(plant, number(plant, id)));
    }

    @POST
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(
            summary = "Hold a lot, a reel, the run of a step, or what a machine made within a time",
            description = "All that descends from it is held with it, also what is registered later: such reels get no"
                    + " certificate and must not leave. For the roles engineer and quality-manager.")
    @RequestBody(
            required = true,
            content =
                    @Content(
                            mediaType = MediaType.APPLICATION_JSON,
                            schema = @Schema(implementation = HoldAnswer.Request.class)))
    @APIResponse(
            responseCode = "201",
            description = "held; Location names the hold",
            content = @Content(schema = @Schema(implementation = HoldAnswer.class)))
    @APIResponse(responseCode = "403", description = "the role may not")
    @APIResponse(responseCode = "422", description = "no reason, not exactly one thing to hold, or an unknown one")
    public Response place(@QueryParam("plant") @Nullable String plantNamed, byte[] body) {
        plants.forAction(Action.HOLD, plantNamed, "plant");
        SentHold.Placing sent = SentHold.placing(body);
        String plant = sent.plant() != null ? plants.named(sent.plant(), "/plant") : plants.named(plantNamed, "plant");
        Hold hold = placing.place(plant, sent.target(), sent.reason());
        return Response.created(URI.create("/api/v1/holds/" + hold.id()))
                .entity(counted(plant, hold))
                .build();
    }

    @POST
    @Path("/{id}/release")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(
            summary = "Release what somebody else holds, whole or a stretch of the held lot",
            description =
                    "With a range, what descends wholly from that stretch becomes free, as far as the positions tell it;"
                            + " what cannot be placed stays held. For persons of the roles engineer and quality-manager.")
    @RequestBody(
            required = true,
            content =
                    @Content(
                            mediaType = MediaType.APPLICATION_JSON,
                            schema = @Schema(implementation = HoldAnswer.ReleaseRequest.class)))
    @APIResponse(
            responseCode = "200",
            description = "released; the hold as it stands now",
            content = @Content(schema = @Schema(implementation = HoldAnswer.class)))
    @APIResponse(responseCode = "403", description = "the role may not, or it is a token")
    @APIResponse(responseCode = "404", description = "no such hold")
    @APIResponse(responseCode = "409", description = "placed by the same person or token, or released before")
    @APIResponse(responseCode = "422", description = "no reason, or a range that does not lie on the held lot")
    public HoldAnswer release(
            @PathParam("id") String id, @QueryParam("plant") @Nullable String plantNamed, byte[] body) {
        String plant = plants.forAction(Action.RELEASE, plantNamed, "plant");
        SentHold.Releasing sent = SentHold.releasing(body);
        try {
            return counted(plant, releasing.release(plant, number(plant, id), sent.range(), sent.reason()));
        } catch (ReleaseRefusedException e) {
            throw refused(e);
        }
    }

    private static RuntimeException refused(ReleaseRefusedException refusal) {
        String message = Objects.requireNonNull(refusal.getMessage(), "who refuses says why");
        return switch (refusal.reason()) {
            case RELEASED_BEFORE, OWN_HOLD -> new ConflictException(message);
            case NO_PERSON -> new PermissionDeniedException(message);
            case NOT_ON_HELD -> IntakeException.of(IntakeException.Kind.CONTENT, "/range", message);
        };
    }

    private HoldAnswer counted(String plant, Hold hold) {
        OptionalLong reels = holds.countReels(plant, hold);
        return HoldAnswer.of(hold, reels.isPresent() ? reels.getAsLong() : null);
    }

    /** The number of a hold, from its path segment. */
    private static long number(String plant, String id) {
        try {
            return Long.parseLong(id);
        } catch (NumberFormatException e) {
            throw FindHolds.unknown(plant, id);
        }
    }
}
