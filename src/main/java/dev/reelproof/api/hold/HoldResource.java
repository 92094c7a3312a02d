package dev.reelproof.api.hold;

import dev.reelproof.access.Action;
import dev.reelproof.api.Quantity;
import dev.reelproof.api.QueryParameters;
import dev.reelproof.api.access.AuditResource;
import dev.reelproof.app.ConflictException;
import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.Plants;
import dev.reelproof.genealogy.Hold;
import dev.reelproof.genealogy.HoldTarget;
import dev.reelproof.intake.Faults;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.intake.SentObject;
import dev.reelproof.store.SearchTooLargeException;
import dev.reelproof.store.hold.HoldConflictException;
import dev.reelproof.store.hold.Holds;
import dev.reelproof.store.hold.RangeNotOnHeldException;
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
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** What is on hold, and its release by somebody else. */
@Path("/api/v1/holds")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Holds")
@Authenticated
public class HoldResource {
    private static final int LONGEST_NAME = 200;
    private static final int LONGEST_REASON = 1_000;
    private static final String MACHINE = HoldTarget.What.MACHINE.word();
    private static final List<String> TARGETS =
            Stream.of(HoldTarget.What.values()).map(HoldTarget.What::word).toList();

    private final Holds holds;
    private final Plants plants;

    HoldResource(Holds holds, Plants plants) {
        this.holds = holds;
        this.plants = plants;
    }

    @GET
    @Operation(summary = "Holds, newest first", description = "Page on with 'before' = the last id received.")
    public HoldAnswer.Listed list(
            @QueryParam("open") @DefaultValue("false") boolean open,
            @QueryParam("before") String before,
            @QueryParam("limit") @DefaultValue("50") String limit,
            @QueryParam("plant") String plantNamed) {
        String plant = plants.named(plantNamed, "plant");
        long newest = before == null ? Long.MAX_VALUE : AuditResource.id(before, "before");
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
    public HoldAnswer get(@PathParam("id") String id, @QueryParam("plant") String plantNamed) {
        String plant = plants.named(plantNamed, "plant");
        return counted(plant, number(id).flatMap(n -> holds.byId(plant, n)).orElseThrow(() -> unknown(plant, id)));
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
    public Response place(@QueryParam("plant") String plantNamed, byte[] body) {
        plants.forAction(Action.HOLD, plantNamed, "plant");
        Faults faults = new Faults();
        SentObject sent = SentObject.read("hold", body, faults)
                .allow("lot", "reel", "run", "machine", "from", "to", "reason", "plant")
                .require("reason");
        Optional<String> reason = sent.text("reason", LONGEST_REASON);
        Optional<String> plantSent = sent.text("plant", LONGEST_NAME);
        Optional<HoldTarget> target = target(sent);
        faults.refuseIfAny();
        String plant =
                plantSent.isPresent() ? plants.named(plantSent.get(), "/plant") : plants.named(plantNamed, "plant");
        requireKnown(plant, target.orElseThrow());
        Hold hold = holds.place(plant, target.get(), reason.orElseThrow(), now());
        return Response.created(URI.create("/api/v1/holds/" + hold.id()))
                .entity(counted(plant, hold))
                .build();
    }

    private static Optional<HoldTarget> target(SentObject sent) {
        List<String> named = TARGETS.stream().filter(sent::has).toList();
        if (named.size() != 1) {
            sent.fault("give exactly one of " + String.join(", ", TARGETS) + "; "
                    + (named.isEmpty() ? "none is given" : String.join(" and ", named) + " are given"));
            return Optional.empty();
        }
        String key = named.get(0);
        if (key.equals(MACHINE)) {
            sent.require("from", "to");
        }
        Optional<String> name = key.equals(MACHINE) ? sent.text(key, LONGEST_NAME) : sent.identifier(key);
        Optional<OffsetDateTime> from = sent.time("from");
        Optional<OffsetDateTime> to = sent.time("to");
        if (name.isEmpty() || sent.has("from") != from.isPresent() || sent.has("to") != to.isPresent()) {
            return Optional.empty();
        }
        if (key.equals(MACHINE) && (from.isEmpty() || to.isEmpty())) {
            return Optional.empty();
        }
        return sent.faults()
                .attempt(
                        sent.pointer(key),
                        () -> new HoldTarget(
                                HoldTarget.What.named(key), name.get(), from.orElse(null), to.orElse(null)));
    }

    private void requireKnown(String plant, HoldTarget target) {
        if (!holds.isKnown(plant, target)) {
            String what = target.what().word();
            throw IntakeException.of(
                    IntakeException.Kind.CONTENT,
                    "/" + what,
                    "unknown " + what + " '" + target.name() + "' at plant " + plant
                            + "; a hold that names nothing would hold nothing: check the name");
        }
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
    public HoldAnswer release(@PathParam("id") String id, @QueryParam("plant") String plantNamed, byte[] body) {
        String plant = plants.forAction(Action.RELEASE, plantNamed, "plant");
        Faults faults = new Faults();
        SentObject sent = SentObject.read("release", body, faults)
                .allow("reason", "range")
                .require("reason");
        Optional<String> reason = sent.text("reason", LONGEST_REASON);
        Optional<Hold.Range> range = sent.object("range").flatMap(HoldResource::range);
        faults.refuseIfAny();
        try {
            return counted(
                    plant,
                    number(id)
                            .flatMap(n -> holds.release(plant, n, range.orElse(null), reason.orElseThrow(), now()))
                            .orElseThrow(() -> unknown(plant, id)));
        } catch (HoldConflictException e) {
            throw new ConflictException(e.getMessage());
        } catch (RangeNotOnHeldException e) {
            throw IntakeException.of(IntakeException.Kind.CONTENT, "/range", e.getMessage());
        }
    }

    private static Optional<Hold.Range> range(SentObject sent) {
        sent.allow("from", "to").require("from", "to");
        Optional<Quantity> from = sent.quantity("from", Quantity::new);
        Optional<Quantity> to = sent.quantity("to", Quantity::new);
        if (from.isEmpty() || to.isEmpty()) {
            return Optional.empty();
        }
        if (!from.get().unit().equals(to.get().unit())) {
            sent.fault(
                    "to",
                    "is in " + to.get().unit() + ", and 'from' in " + from.get().unit()
                            + "; give both ends of a range in one unit");
            return Optional.empty();
        }
        return sent.faults()
                .attempt(
                        sent.pointer(),
                        () -> new Hold.Range(
                                from.get().value(), to.get().value(), from.get().unit()));
    }

    /** In a transaction of its own: a hold stands, though its reels be too many to be counted. */
    private HoldAnswer counted(String plant, Hold hold) {
        Long reels;
        try {
            reels = holds.countReels(plant, hold);
        } catch (SearchTooLargeException e) {
            reels = null;
        }
        return HoldAnswer.of(hold, reels);
    }

    /** The number of a hold; nothing when no hold can have it. */
    private static Optional<Long> number(String id) {
        try {
            return Optional.of(Long.parseLong(id));
        } catch (NumberFormatException e) {
            return Optional.empty();
        }
    }

    private static NothingThereException unknown(String plant, String id) {
        return new NothingThereException("Plant " + plant + " has no hold '" + id + "'.");
    }

    private static OffsetDateTime now() {
        return OffsetDateTime.now(ZoneOffset.UTC).truncatedTo(ChronoUnit.MILLIS);
    }
}
