package dev.reelproof.app.hold;

import dev.reelproof.app.NothingThereException;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.genealogy.Pedigree;
import dev.reelproof.genealogy.hold.Hold;
import dev.reelproof.genealogy.hold.PartialRelease;
import dev.reelproof.store.SearchTooLargeException;
import dev.reelproof.store.StatementTimeout;
import dev.reelproof.store.hold.HeldReels;
import dev.reelproof.store.hold.HoldReach;
import dev.reelproof.store.hold.Holds;
import dev.reelproof.store.lot.Lots;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Duration;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Collectors;

/**
 * Finds holds: by number, newest first, those that a reel is under, and how many reels one holds. Nothing is copied to what descends
 * from what is held: the search climbs from the reel each time, so that what is registered later is held too.
 */
@ApplicationScoped
public class FindHolds {
    private static final Duration LONGEST_SEARCH = Duration.ofSeconds(10);

    private final Holds holds;
    private final HoldReach reach;
    private final HeldReels heldReels;
    private final Lots lots;
    private final StatementTimeout timeout;

    FindHolds(Holds holds, HoldReach reach, HeldReels heldReels, Lots lots, StatementTimeout timeout) {
        this.holds = holds;
        this.reach = reach;
        this.heldReels = heldReels;
        this.lots = lots;
        this.timeout = timeout;
    }

    /** What is said of a hold that is not there. */
    public static NothingThereException unknown(String plant, String id) {
        return new NothingThereException("Plant " + plant + " has no hold '" + id + "'.");
    }

    /**
     * Holds of a plant, newest first.
     *
     * @param open only those that nobody has released whole
     * @param before only those of a lower number
     */
    @Transactional
    public List<Hold> list(String plant, boolean open, long before, int limit) {
        return holds.list(plant, open, before, limit);
    }

    /**
     * The hold of that number.
     *
     * @throws NothingThereException when the plant has none
     */
    @Transactional
    public Hold byId(String plant, long id) {
        return holds.byId(plant, id).orElseThrow(() -> unknown(plant, Long.toString(id)));
    }

    /**
     * The open holds that a reel is under: of itself, its lot, an ancestor, the run of any of these, or their machine at their time;
     * without those of which a release by length frees it.
     *
     * @throws SearchTooLargeException when this is not found in time
     */
    @Transactional
    public List<Hold> ofReel(String plant, String reel) {
        return inTime(() -> holds.byIds(plant, reach.openAbove(plant, reel)).stream()
                .filter(hold -> hold.releasedStretches().isEmpty() || !isFreed(plant, reel, hold))
                .toList());
    }

    /**
     * Those of some reels that are under an open hold, found for all of them at once.
     *
     * @throws SearchTooLargeException when this is not found in time
     */
    @Transactional
    public Set<String> heldAmong(String plant, Collection<String> reels) {
        return inTime(() -> heldReels.among(plant, reels).stream()
                .filter(reached ->
                        !reached.inPartOnly() || !ofReel(plant, reached.reel()).isEmpty())
                .map(HeldReels.Reached::reel)
                .collect(Collectors.toUnmodifiableSet()));
    }

    private boolean isFreed(String plant, String reel, Hold hold) {
        LotId id = new LotId(reel);
        return lots.ancestorsOfReel(plant, id)
                .map(pedigree -> freed(pedigree, hold).contains(id))
                .orElse(false);
    }

    private static Set<LotId> freed(Pedigree pedigree, Hold hold) {
        return PartialRelease.freed(pedigree, new LotId(hold.target().name()), hold.releasedStretches());
    }

    /**
     * How many registered reels a hold holds now, none once it was released; empty when they are too many to be counted in time.
     *
     * <p>In a transaction of its own: a hold stands, though nobody can count its reels.
     */
    public OptionalLong countReels(String plant, Hold hold) {
        if (!hold.isOpen()) {
            return OptionalLong.of(0);
        }
        try {
            return OptionalLong.of(
                    QuarkusTransaction.requiringNew().call(() -> inTime(() -> countReelsInTime(plant, hold))));
        } catch (SearchTooLargeException e) {
            return OptionalLong.empty();
        }
    }

    private long countReelsInTime(String plant, Hold hold) {
        if (!hold.releasedStretches().isEmpty()) {
            LotId held = new LotId(hold.target().name());
            Optional<Pedigree> pedigree = lots.allDescendants(plant, held).or(() -> lots.ancestorsOfReel(plant, held));
            if (pedigree.isPresent()) {
                Set<LotId> freed = freed(pedigree.get(), hold);
                return pedigree.get().lots().stream()
                        .map(Pedigree.Entry::lot)
                        .filter(lot -> lot.kind() == LotKind.REEL && !freed.contains(lot.id()))
                        .count();
            }
        }
        return reach.countReelsBelow(plant, hold.target());
    }

    private <T> T inTime(Supplier<T> search) {
        return timeout.within(
                LONGEST_SEARCH,
                "what holds concern was not found within " + LONGEST_SEARCH.toSeconds()
                        + " s; ask again when the database is less busy",
                search);
    }
}
