package dev.reelproof.app.concession;

import dev.reelproof.record.concession.Concession;
import dev.reelproof.record.concession.ConcessionStanding;
import dev.reelproof.store.concession.Concessions;
import dev.reelproof.store.result.Records;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Finds out which reels may not leave because a concession of them is not decided or not done. */
@ApplicationScoped
public class ConcessionCheck {
    private final Concessions concessions;
    private final Records records;

    ConcessionCheck(Concessions concessions, Records records) {
        this.concessions = concessions;
        this.records = records;
    }

    /** What the concessions of a reel mean for it while one is open or a shortened reel is not tested; else empty. */
    @Transactional
    public Optional<ConcessionStanding> unfinished(String plant, String reel) {
        return unfinished(plant, reel, concessions.ofReel(plant, reel));
    }

    /** Those of these reels of which a concession is open, or that were shortened and not tested since. */
    @Transactional
    public Set<String> unfinishedAmong(String plant, Collection<String> reels) {
        return concessions.ofReels(plant, reels).entrySet().stream()
                .filter(entry ->
                        unfinished(plant, entry.getKey(), entry.getValue()).isPresent())
                .map(Map.Entry::getKey)
                .collect(Collectors.toUnmodifiableSet());
    }

    private Optional<ConcessionStanding> unfinished(String plant, String reel, List<Concession> ofReel) {
        // Most reels have none; the newest record is read for the others alone.
        return ofReel.isEmpty()
                ? Optional.empty()
                : records.newestOf(plant, reel)
                        .map(newest -> ConcessionStanding.of(ofReel, newest))
                        .filter(ConcessionStanding::isUnfinished);
    }
}
