package dev.reelproof.api.limits;

import dev.reelproof.api.QueryParameters;
import dev.reelproof.api.access.ApprovalAnswer;
import dev.reelproof.app.limits.AskLimits;
import dev.reelproof.app.limits.AskRevisionWrong;
import dev.reelproof.intake.Faults;
import dev.reelproof.intake.SentObject;
import dev.reelproof.limit.LimitAt;
import dev.reelproof.limit.WrongRevision;
import dev.reelproof.quantity.FrequencyGrid;
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
import java.util.List;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Limit sets. */
@Path("/api/v1/limit-sets")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Limit sets")
@Authenticated
public class LimitSetResource {
    private static final int LONGEST_REASON = 1_000;

    private final AskLimits askLimits;
    private final AskRevisionWrong askWrong;

    LimitSetResource(AskLimits askLimits, AskRevisionWrong askWrong) {
        this.askLimits = askLimits;
        this.askWrong = askWrong;
    }

    /** What is sent to have a revision marked as wrong, for the description of the API. */
    @Schema(name = "RevisionFoundWrong")
    record FoundWrong(String reason) {}

    @GET
    @Operation(summary = "All limit sets, every revision")
    public LimitSetAnswer.Lines list() {
        List<WrongRevision> wrong = askWrong.marked();
        return new LimitSetAnswer.Lines(askLimits.all().stream()
                .map(set -> LimitSetAnswer.Line.of(set, wrong))
                .toList());
    }

    @POST
    @Path("/{id}/revisions/{revision}/found-wrong")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(
            summary = "Ask to have a revision marked as found wrong at a plant; another person approves",
            description =
                    "The answer is the open approval; POST /api/v1/approvals/{id}/decision by another person marks it. What the"
                            + " plant certified by it is in question from then on, and nothing more is certified by it. For"
                            + " persons of the role quality-manager.")
    @RequestBody(required = true, content = @Content(schema = @Schema(implementation = FoundWrong.class)))
    @APIResponse(
            responseCode = "201",
            description = "asked for",
            content = @Content(schema = @Schema(implementation = ApprovalAnswer.class)))
    @APIResponse(responseCode = "403", description = "the role may not, or it is a token")
    @APIResponse(responseCode = "404", description = "no such set or revision")
    @APIResponse(responseCode = "409", description = "marked before, or asked for already")
    @APIResponse(responseCode = "422", description = "no reason, or the revision is no number")
    public Response foundWrong(
            String id, String revision, @QueryParam("plant") @Nullable String plantNamed, byte[] body) {
        String plant = askWrong.requirePermission(plantNamed);
        int number = QueryParameters.whole("revision", revision);
        Faults faults = new Faults();
        SentObject sent = SentObject.read("mark", body, faults).allow("reason").require("reason");
        Optional<String> reason = sent.text("reason", LONGEST_REASON);
        faults.refuseIfAny();
        return Response.status(Response.Status.CREATED)
                .entity(ApprovalAnswer.of(askWrong.ask(plant, id, number, reason.orElseThrow())))
                .build();
    }

    @GET
    @Path("/{id}")
    @Operation(
            summary = "A limit set with all that it demands",
            description = "Without revision: the one in force today.")
    public LimitSetAnswer get(String id, @QueryParam("revision") @Nullable String revision) {
        return LimitSetAnswer.of(askLimits.limitSet(id, whole("revision", revision)));
    }

    @GET
    @Path("/{id}/{property}")
    @Operation(
            summary = "The limit of a property or requirement, at a frequency where it has one",
            description =
                    "Where a property has several requirements: that on each value by itself first, in the set's order;"
                            + " 'requirements' names all. pairs chooses where the limit depends on the pair count.")
    @APIResponse(responseCode = "200", description = "the limit")
    @APIResponse(responseCode = "404", description = "no such set, or nothing on this property in it")
    @APIResponse(responseCode = "422", description = "the frequency is missing, malformed or outside the range")
    public LimitSetAnswer.At limit(
            String id,
            String property,
            @QueryParam("frequency") @Nullable String frequency,
            @QueryParam("unit") @DefaultValue("MHz") String unit,
            @QueryParam("pairs") @Nullable String pairs,
            @QueryParam("revision") @Nullable String revision) {
        LimitAt limit = askLimits.limit(
                id,
                property,
                Optional.ofNullable(frequency).map(text -> megahertz(text, unit)),
                whole("pairs", pairs),
                whole("revision", revision));
        return LimitSetAnswer.At.of(limit.requirement(), limit.megahertz(), limit.requirements());
    }

    private static Optional<Integer> whole(String name, @Nullable String asked) {
        return Optional.ofNullable(asked).map(text -> QueryParameters.whole(name, text));
    }

    private static double megahertz(String asked, String unit) {
        double number = QueryParameters.number("frequency", asked.strip());
        double megahertz;
        try {
            megahertz = FrequencyGrid.megahertz(number, unit);
        } catch (IllegalArgumentException e) {
            throw QueryParameters.refused("unit", e);
        }
        if (megahertz > 0 && Double.isFinite(megahertz)) {
            return megahertz;
        }
        throw QueryParameters.refused("frequency", "must be a positive number, not '" + asked + "'");
    }
}
