package dev.reelproof.api.lot;

import dev.reelproof.api.Listing;
import dev.reelproof.api.Quantity;
import dev.reelproof.api.reel.ReelDispositionResource;
import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.Plants;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.Pedigree;
import dev.reelproof.genealogy.RunId;
import dev.reelproof.genealogy.StepRun;
import dev.reelproof.store.lot.LotQuestions;
import dev.reelproof.store.reel.Dispositions;
import io.quarkus.security.Authenticated;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** Reels that share the run of a step, or a machine within a time. */
@Path("/api/v1")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Lots")
@Authenticated
public class SharedMakingResource {
    private final LotQuestions questions;
    private final Dispositions dispositions;
    private final Plants plants;

    SharedMakingResource(LotQuestions questions, Dispositions dispositions, Plants plants) {
        this.questions = questions;
        this.dispositions = dispositions;
        this.plants = plants;
    }

    /** A run as it was told. */
    record RunAnswer(
            String id,
            String step,
            String machine,
            String line,
            String operator,
            String shift,
            OffsetDateTime started,
            OffsetDateTime finished,
            @Schema(type = SchemaType.OBJECT) Map<String, Object> settings,
            List<Output> outputs) {}

    /** A lot that a run or machine made. */
    record Output(
            String id, String kind, Quantity quantity, OffsetDateTime made, String step, String machine, String run) {
        static Output of(Pedigree.Member lot) {
            return new Output(
                    lot.id().value(),
                    lot.kind().word(),
                    LotAnswer.asSent(lot.quantity()),
                    lot.made(),
                    lot.step(),
                    lot.machine(),
                    lot.run() == null ? null : lot.run().value());
        }
    }

    /**
     * What shares a run or a machine's time.
     *
     * @param count how many reels there are; {@code reels} lists no more than 10,000 of them
     */
    record SharedAnswer(List<Output> outputs, int count, List<SharingReel> reels) {

        /** A reel, and where it is as far as it was told. */
        record SharingReel(
                String reel,
                OffsetDateTime made,
                String order,
                String customer,
                ReelDispositionResource.DispositionAnswer disposition) {}
    }

    @GET
    @Path("/runs/{run}")
    @Operation(summary = "One run of a step, with the lots that are its outputs")
    public RunAnswer run(@PathParam("run") String name, @QueryParam("plant") String plantNamed) {
        String plant = plants.named(plantNamed, "plant");
        StepRun run = find(plant, name);
        return new RunAnswer(
                run.id().value(),
                run.step(),
                run.machine(),
                run.line(),
                run.operator(),
                run.shift(),
                run.started(),
                run.finished(),
                LotAnswer.settings(run.settings()),
                questions.outputs(plant, run.id()).stream().map(Output::of).toList());
    }

    private StepRun find(String plant, String name) {
        return identifier(name)
                .flatMap(id -> questions.run(plant, id))
                .orElseThrow(() ->
                        new NothingThereException("The run '" + name + "' is not registered at plant " + plant + "."));
    }

    private static Optional<RunId> identifier(String name) {
        try {
            return Optional.of(new RunId(name));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    @GET
    @Path("/runs/{run}/reels")
    @Operation(
            summary = "Reels that share a run of a step: its outputs, and the reels among them or below, made from…to")
    public SharedAnswer reelsOfRun(
            @PathParam("run") String name,
            @QueryParam("plant") String plantNamed,
            @QueryParam("from") String from,
            @QueryParam("to") String to) {
        String plant = plants.named(plantNamed, "plant");
        RunId run = find(plant, name).id();
        OffsetDateTime begin = Listing.time("from", from);
        OffsetDateTime end = Listing.time("to", to);
        return answer(plant, Listing.inReason(() -> questions.sharingRun(plant, run, begin, end)));
    }

    @GET
    @Path("/machines/{machine}/reels")
    @Operation(
            summary =
                    "Reels that share a machine within a time: what it made from…to, and the reels among that or below",
            description = "A lot counts when its run overlaps the time. An unknown machine made nothing.")
    public SharedAnswer reelsOfMachine(
            @PathParam("machine") String machine,
            @QueryParam("plant") String plantNamed,
            @QueryParam("from") String from,
            @QueryParam("to") String to) {
        String plant = plants.named(plantNamed, "plant");
        OffsetDateTime begin = Listing.time("from", from);
        OffsetDateTime end = Listing.time("to", to);
        return answer(plant, Listing.inReason(() -> questions.sharingMachine(plant, machine, begin, end)));
    }

    private SharedAnswer answer(String plant, LotQuestions.Shared shared) {
        Map<LotId, Dispositions.Entry> where = dispositions.latest(
                plant, shared.reels().stream().map(reel -> reel.lot().id()).toList());
        return new SharedAnswer(
                shared.outputs().stream().map(Output::of).toList(),
                shared.reelCount(),
                shared.reels().stream()
                        .map(reel -> new SharedAnswer.SharingReel(
                                reel.lot().id().value(),
                                reel.lot().made(),
                                reel.order(),
                                reel.customer(),
                                Optional.ofNullable(where.get(reel.lot().id()))
                                        .map(ReelDispositionResource.DispositionAnswer::of)
                                        .orElse(null)))
                        .toList());
    }
}
