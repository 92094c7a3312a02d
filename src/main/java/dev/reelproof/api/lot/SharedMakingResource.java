package dev.reelproof.api.lot;

import dev.reelproof.api.Quantity;
import dev.reelproof.api.QueryParameters;
import dev.reelproof.api.reel.ReelDispositionResource;
import dev.reelproof.app.lot.FindSharedMaking;
import dev.reelproof.genealogy.Pedigree;
import dev.reelproof.genealogy.StepRun;
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
import org.jspecify.annotations.Nullable;

/** Reels that share the run of a step, or a machine within a time. */
@Path("/api/v1")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Lots")
@Authenticated
public class SharedMakingResource {
    private final FindSharedMaking making;

    SharedMakingResource(FindSharedMaking making) {
        this.making = making;
    }

    /** A run as it was told. */
    record RunAnswer(
            String id,
            @Nullable String step,
            @Nullable String machine,
            @Nullable String line,
            @Nullable String operator,
            @Nullable String shift,
            @Nullable OffsetDateTime started,
            @Nullable OffsetDateTime finished,
            @Schema(type = SchemaType.OBJECT) Map<String, Object> settings,
            List<Output> outputs) {}

    /** A lot that a run or machine made. */
    record Output(
            String id,
            String kind,
            Quantity quantity,
            OffsetDateTime made,
            @Nullable String step,
            @Nullable String machine,
            @Nullable String run) {
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
                @Nullable String order,
                @Nullable String customer,
                ReelDispositionResource.@Nullable DispositionAnswer disposition) {}
    }

    @GET
    @Path("/runs/{run}")
    @Operation(summary = "One run of a step, with the lots that are its outputs")
    public RunAnswer run(@PathParam("run") String name, @QueryParam("plant") @Nullable String plantNamed) {
        FindSharedMaking.RunWithOutputs found = making.run(name, plantNamed);
        StepRun run = found.run();
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
                found.outputs().stream().map(Output::of).toList());
    }

    @GET
    @Path("/runs/{run}/reels")
    @Operation(
            summary = "Reels that share a run of a step: its outputs, and the reels among them or below, made from…to")
    public SharedAnswer reelsOfRun(
            @PathParam("run") String name,
            @QueryParam("plant") @Nullable String plantNamed,
            @QueryParam("from") @Nullable String from,
            @QueryParam("to") @Nullable String to) {
        return answer(
                making.ofRun(name, plantNamed, QueryParameters.time("from", from), QueryParameters.time("to", to)));
    }

    @GET
    @Path("/machines/{machine}/reels")
    @Operation(
            summary =
                    "Reels that share a machine within a time: what it made from…to, and the reels among that or below",
            description = "A lot counts when its run overlaps the time. An unknown machine made nothing.")
    public SharedAnswer reelsOfMachine(
            @PathParam("machine") String machine,
            @QueryParam("plant") @Nullable String plantNamed,
            @QueryParam("from") @Nullable String from,
            @QueryParam("to") @Nullable String to) {
        return answer(making.ofMachine(
                machine, plantNamed, QueryParameters.time("from", from), QueryParameters.time("to", to)));
    }

    private static SharedAnswer answer(FindSharedMaking.Found found) {
        return new SharedAnswer(
                found.shared().outputs().stream().map(Output::of).toList(),
                found.shared().reelCount(),
                found.shared().reels().stream()
                        .map(reel -> new SharedAnswer.SharingReel(
                                reel.lot().id().value(),
                                reel.lot().made(),
                                reel.order(),
                                reel.customer(),
                                Optional.ofNullable(found.dispositions()
                                                .get(reel.lot().id()))
                                        .map(ReelDispositionResource.DispositionAnswer::of)
                                        .orElse(null)))
                        .toList());
    }
}
