package dev.reelproof.genealogy.admission;

import dev.reelproof.genealogy.Lot;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.RunId;
import dev.reelproof.genealogy.StepRun;
import java.util.Map;
import java.util.Set;

/**
 * What a plant knows of everything that some reports name.
 *
 * @param registered the registered lots under the reports' identifiers
 * @param waiting the lots under these identifiers whose reports wait for their parents
 * @param reelNumbers those of the identifiers that are numbers of registered reels
 * @param runs the registered runs among those that the reports name
 * @param stocks what is left of each registered lot that goes into one of the reports' lots
 */
public record KnownLots(
        Map<LotId, Lot> registered,
        Map<LotId, Lot> waiting,
        Set<LotId> reelNumbers,
        Map<RunId, StepRun> runs,
        Map<LotId, Stock> stocks) {

    public KnownLots {
        registered = Map.copyOf(registered);
        waiting = Map.copyOf(waiting);
        reelNumbers = Set.copyOf(reelNumbers);
        runs = Map.copyOf(runs);
        stocks = Map.copyOf(stocks);
    }
}
