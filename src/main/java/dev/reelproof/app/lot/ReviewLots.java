package dev.reelproof.app.lot;

import dev.reelproof.app.Plants;
import dev.reelproof.genealogy.ImplausibleLot;
import dev.reelproof.genealogy.IncompleteLot;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.admission.RefusedReport;
import dev.reelproof.genealogy.admission.WaitingReport;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.store.lot.ImplausibleLots;
import dev.reelproof.store.lot.IncompleteLots;
import dev.reelproof.store.lot.LotSearches;
import dev.reelproof.store.lot.WaitingList;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.OffsetDateTime;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Reviews what is still missing or odd in the lots that came. The plant is the caller's where none is named. */
@ApplicationScoped
public class ReviewLots {
    /** The most that one list has. */
    public static final int MOST_LISTED = LotSearches.MOST_LISTED;

    private final WaitingList waiting;
    private final ImplausibleLots implausible;
    private final IncompleteLots incomplete;
    private final Plants plants;

    ReviewLots(WaitingList waiting, ImplausibleLots implausible, IncompleteLots incomplete, Plants plants) {
        this.waiting = waiting;
        this.implausible = implausible;
        this.incomplete = incomplete;
        this.plants = plants;
    }

    /**
     * Reports that wait for parents, oldest first, and those that waited in vain, newest first.
     *
     * @param count how many reports wait
     */
    public record Waiting(int count, List<WaitingReport> waiting, List<RefusedReport> refusedLater) {}

    /**
     * What is not told yet.
     *
     * @param waitingCount how many reports wait
     * @param waiting the oldest of them
     * @param reelsWithoutInputs registered reels of whose making nothing was told
     * @param lacking lots that lack a kind of input that lots of their kind always have
     */
    public record Incomplete(
            int waitingCount,
            List<WaitingReport> waiting,
            List<LotId> reelsWithoutInputs,
            List<IncompleteLot> lacking) {}

    /** Reports that wait, and those that turned out wrong when their parents came. */
    public Waiting waiting(@Nullable String plantNamed, int limit) {
        String plant = plants.named(plantNamed, "plant");
        return new Waiting(waiting.count(plant), waiting.waiting(plant, limit), waiting.refusedLater(plant, limit));
    }

    /** Lots in which something can hardly be so, those in which it was found last first. */
    public List<ImplausibleLot> implausible(@Nullable String plantNamed, int limit) {
        return implausible.newest(plants.named(plantNamed, "plant"), limit);
    }

    /**
     * What is not told yet: all reports that wait, and of the lots made and the reels registered within a time those that lack inputs.
     *
     * @param from the earliest time; absent for any
     * @param to the latest time, itself included; absent for any
     * @throws IntakeException when the answer would take too long
     */
    public Incomplete incomplete(
            @Nullable String plantNamed, @Nullable OffsetDateTime from, @Nullable OffsetDateTime to, int limit) {
        String plant = plants.named(plantNamed, "plant");
        return LotFinder.inReason(
                "query",
                () -> new Incomplete(
                        waiting.count(plant),
                        waiting.waiting(plant, limit),
                        incomplete.reelsWithoutInputs(plant, from, to, limit),
                        incomplete.lacking(plant, from, to, limit)));
    }
}
