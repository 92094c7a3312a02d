package dev.reelproof.api.reel;

import dev.reelproof.app.reel.TellDisposition;
import dev.reelproof.app.reel.TellDisposition.Report;
import dev.reelproof.genealogy.Disposition;
import dev.reelproof.genealogy.Disposition.State;
import dev.reelproof.intake.Faults;
import dev.reelproof.intake.SentObject;
import io.quarkus.security.Authenticated;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Where a reel is: in stock, shipped, scrapped. */
@Path("/api/v1/reels/{reel}/disposition")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Products and reels")
@Authenticated
public class ReelDispositionResource {
    private static final int LONGEST_NAME = 200;
    private static final int LONGEST_REASON = 1_000;

    private final TellDisposition tellDisposition;

    ReelDispositionResource(TellDisposition tellDisposition) {
        this.tellDisposition = tellDisposition;
    }

    /** What is told of where a reel is, for the description of the API. */
    @Schema(name = "DispositionReport")
    record SentReport(
            @Schema(
                            required = true,
                            enumeration = {"in-stock", "shipped", "scrapped"})
                    String state,
            @Schema(description = "to whom; required when it was shipped") @Nullable String to,
            @Schema(description = "required when a reel on hold was shipped: that it left already") @Nullable
                    String reason,
            @Nullable String plant) {}

    /** Where a reel is, who told it and when. */
    @Schema(name = "Disposition")
    public record DispositionAnswer(
            String state, @Nullable String to, @Nullable String reason, String actor, OffsetDateTime at) {
        public static DispositionAnswer of(Disposition entry) {
            return new DispositionAnswer(
                    entry.state().word(), entry.recipient(), entry.reason(), entry.actor(), entry.at());
        }
    }

    /** All that was told, newest first. */
    record HistoryAnswer(String reel, List<DispositionAnswer> dispositions) {}

    @POST
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(
            summary = "Tell where a reel is; what was told before stays, and the latest counts",
            description =
                    "What is on hold must not leave: that it was shipped is refused without a reason. With one it is"
                            + " taken down, since a reel may have left before it was held; the audit trail names the holds.")
    @RequestBody(
            required = true,
            content =
                    @Content(
                            mediaType = MediaType.APPLICATION_JSON,
                            schema = @Schema(implementation = SentReport.class)))
    @APIResponse(
            responseCode = "201",
            description = "told",
            content = @Content(schema = @Schema(implementation = DispositionAnswer.class)))
    @APIResponse(responseCode = "404", description = "the reel is not registered")
    @APIResponse(
            responseCode = "409",
            description =
                    "shipped without a reason, and the reel is on hold, waits for an engineer, or for a concession to be decided and done")
    @APIResponse(responseCode = "422", description = "what is told cannot be so")
    public Response tell(@PathParam("reel") String reel, byte[] body) {
        Disposition entry = tellDisposition.tell(reel, () -> report(body));
        return Response.created(URI.create("/api/v1/reels/" + entry.reel() + "/disposition"))
                .entity(DispositionAnswer.of(entry))
                .build();
    }

    private static Report report(byte[] body) {
        Faults faults = new Faults();
        SentObject sent = SentObject.read("disposition", body, faults)
                .allow("state", "to", "reason", "plant")
                .require("state");
        Optional<State> state = sent.text("state", LONGEST_NAME)
                .flatMap(word -> faults.attempt(sent.pointer("state"), () -> State.named(word)));
        Optional<String> to = sent.text("to", LONGEST_NAME);
        Optional<String> reason = sent.text("reason", LONGEST_REASON);
        Optional<String> plant = sent.text("plant", LONGEST_NAME);
        boolean isShipped = state.filter(State.SHIPPED::equals).isPresent();
        if (isShipped && !sent.has("to")) {
            sent.fault("to", "'to' is missing; say to whom the reel was shipped");
        } else if (state.isPresent() && !isShipped && sent.has("to")) {
            sent.fault("to", "only a reel that was shipped went to somebody; leave 'to' out");
        }
        faults.refuseIfAny();
        return new Report(state.orElseThrow(), to.orElse(null), reason.orElse(null), plant.orElse(null));
    }

    @GET
    @Operation(summary = "What was told of where a reel is, newest first; nothing for a reel that never left")
    public HistoryAnswer history(@PathParam("reel") String reel, @QueryParam("plant") @Nullable String plantNamed) {
        TellDisposition.History history = tellDisposition.history(plantNamed, reel);
        return new HistoryAnswer(
                history.reel().value(),
                history.entries().stream().map(DispositionAnswer::of).toList());
    }
}
