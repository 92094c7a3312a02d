package dev.reelproof.app.concession;

import dev.reelproof.record.concession.Concession;
import dev.reelproof.record.concession.ConcessionStanding;
import dev.reelproof.store.concession.Concessions;
import dev.reelproof.store.result.Records;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

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
        return standing(plant, reel, concessions.ofReel(plant, reel)).filter(ConcessionStanding::isUnfinished);
    }

    /** What the concessions of these reels mean for them, by reel, without those that have none or were never tested. */
    @Transactional
    public Map<String, ConcessionStanding> standings(String plant, Collection<String> reels) {
        Map<String, ConcessionStanding> standings = new HashMap<>();
        concessions.ofReels(plant, reels).forEach((reel, ofReel) -> standing(plant, reel, ofReel)
                .ifPresent(standing -> standings.put(reel, standing)));
        return standings;
    }

    private Optional<ConcessionStanding> standing(String plant, String reel, List<Concession> ofReel) {
        // Most reels have none; the newest record is read for the others alone.
        return ofReel.isEmpty()
                ? Optional.empty()
                : records.newestOf(plant, reel).map(newest -> ConcessionStanding.of(ofReel, newest));
    }
}
