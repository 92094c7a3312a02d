package dev.reelproof.app.concession;

import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.Plants;
import dev.reelproof.record.concession.Concession;
import dev.reelproof.record.concession.Concession.State;
import dev.reelproof.record.concession.ConcessionStanding;
import dev.reelproof.store.concession.Concessions;
import dev.reelproof.store.result.Records;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Finds concessions, and how they stand. */
@ApplicationScoped
public class FindConcessions {
    private final Concessions concessions;
    private final Records records;
    private final Plants plants;

    FindConcessions(Concessions concessions, Records records, Plants plants) {
        this.concessions = concessions;
        this.records = records;
        this.plants = plants;
    }

    /**
     * A concession as it stands.
     *
     * @param concession what was asked for and decided
     * @param state how it stands now
     * @param bearing what it means for the newest test of its reel; empty unless it is approved
     */
    public record Standing(Concession concession, State state, Optional<ConcessionStanding> bearing) {
        /** One that was just asked for. */
        public static Standing open(Concession asked) {
            return new Standing(asked, State.OPEN, Optional.empty());
        }
    }

    /**
     * Concessions of a plant, newest first.
     *
     * @param plantNamed the plant; the caller's when none is named
     * @param reel only those of this reel
     * @param open only those that can be decided: undecided and not lapsed
     * @param before only those of a lower number
     * @param limit how many at most; of open ones those that lapsed are counted and not told
     */
    @Transactional
    public List<Standing> list(
            @Nullable String plantNamed, @Nullable String reel, boolean open, long before, int limit) {
        String plant = plants.named(plantNamed, "plant");
        List<Concession> found = reel == null
                ? concessions.list(plant, open, before, limit)
                : concessions.ofReel(plant, reel).stream()
                        .filter(concession -> concession.id() < before)
                        .limit(limit)
                        .toList();
        return found.stream()
                .map(concession -> standing(plant, concession))
                .filter(standing -> !open || standing.state() == State.OPEN)
                .toList();
    }

    /**
     * A concession.
     *
     * @param plantNamed the plant; the caller's when none is named
     * @throws NothingThereException when the plant has none of that number
     */
    @Transactional
    public Standing byId(@Nullable String plantNamed, long id) {
        String plant = plants.named(plantNamed, "plant");
        return standing(plant, concessions.byId(plant, id).orElseThrow(() -> unknown(plant, id)));
    }

    private Standing standing(String plant, Concession concession) {
        State state =
                concession.state(records.newestIdOf(plant, concession.reel()).orElse(concession.record()));
        Optional<ConcessionStanding> bearing = state == State.APPROVED
                ? records.newestOf(plant, concession.reel())
                        .map(newest -> ConcessionStanding.of(List.of(concession), newest))
                : Optional.empty();
        return new Standing(concession, state, bearing);
    }

    static NothingThereException unknown(String plant, long id) {
        return new NothingThereException("Plant " + plant + " has no concession " + id + ".");
    }
}
