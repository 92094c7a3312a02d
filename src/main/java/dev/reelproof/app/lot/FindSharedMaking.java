package dev.reelproof.app.lot;

import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.Plants;
import dev.reelproof.genealogy.Disposition;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotsTogether;
import dev.reelproof.genealogy.Pedigree;
import dev.reelproof.genealogy.RunId;
import dev.reelproof.genealogy.StepRun;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.store.lot.SharedMaking;
import dev.reelproof.store.lot.admission.StepRuns;
import dev.reelproof.store.reel.Dispositions;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Finds what shares the run of a step, or a machine within a time.
 *
 * <p>The plant is the caller's where none is named; a time that is absent is any.
 */
@ApplicationScoped
public class FindSharedMaking {
    private final SharedMaking making;
    private final StepRuns runs;
    private final Dispositions dispositions;
    private final Plants plants;

    FindSharedMaking(SharedMaking making, StepRuns runs, Dispositions dispositions, Plants plants) {
        this.making = making;
        this.runs = runs;
        this.dispositions = dispositions;
        this.plants = plants;
    }

    /** A run with the lots that are its outputs, in the order in which they were made. */
    public record RunWithOutputs(StepRun run, List<Pedigree.Member> outputs) {}

    /**
     * What shares a run or a machine's time.
     *
     * @param dispositions what was told last of where each of the reels is; reels of which nothing was are left out
     */
    public record Found(LotsTogether shared, Map<LotId, Disposition> dispositions) {}

    /**
     * A run with its outputs.
     *
     * @throws NothingThereException when it is not registered
     */
    public RunWithOutputs run(String run, @Nullable String plantNamed) {
        String plant = plants.named(plantNamed, "plant");
        StepRun found = registered(plant, run);
        return new RunWithOutputs(found, making.outputs(plant, found.id()));
    }

    /**
     * The outputs of a run, and the reels among or below them that were made within a time.
     *
     * @throws NothingThereException when the run is not registered
     * @throws IntakeException when the answer would take too long
     */
    public Found ofRun(
            String run, @Nullable String plantNamed, @Nullable OffsetDateTime from, @Nullable OffsetDateTime to) {
        String plant = plants.named(plantNamed, "plant");
        RunId id = registered(plant, run).id();
        return found(plant, LotFinder.inReason("query", () -> making.ofRun(plant, id, from, to)));
    }

    /**
     * What a machine made within a time, and the reels among or below that. An unknown machine made nothing.
     *
     * @throws IntakeException when the answer would take too long
     */
    public Found ofMachine(
            String machine, @Nullable String plantNamed, @Nullable OffsetDateTime from, @Nullable OffsetDateTime to) {
        String plant = plants.named(plantNamed, "plant");
        return found(plant, LotFinder.inReason("query", () -> making.ofMachine(plant, machine, from, to)));
    }

    private StepRun registered(String plant, String name) {
        return RunId.named(name)
                .flatMap(id -> runs.byId(plant, id))
                .orElseThrow(() ->
                        new NothingThereException("The run '" + name + "' is not registered at plant " + plant + "."));
    }

    private Found found(String plant, LotsTogether shared) {
        List<LotId> reels = shared.reels().stream().map(reel -> reel.lot().id()).toList();
        return new Found(shared, dispositions.latest(plant, reels));
    }
}
