package dev.reelproof.store.lot.admission;

import dev.reelproof.genealogy.Lot;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotInput;
import dev.reelproof.genealogy.RunId;
import dev.reelproof.genealogy.admission.KnownLots;
import dev.reelproof.store.lot.Identifiers;
import dev.reelproof.store.lot.LotReading;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.hibernate.Session;

/** Reads what is known of everything that some reports name, with a few statements for all of them. */
@ApplicationScoped
public class KnownLotsReading {
    private final Session session;
    private final LotReading lots;
    private final Stocks stocks;
    private final StepRuns runs;
    private final WaitingReports waiting;

    KnownLotsReading(Session session, LotReading lots, Stocks stocks, StepRuns runs, WaitingReports waiting) {
        this.session = session;
        this.lots = lots;
        this.stocks = stocks;
        this.runs = runs;
        this.waiting = waiting;
    }

    /** What a plant knows of these lots, their parents and their runs. */
    @Transactional(Transactional.TxType.MANDATORY)
    public KnownLots of(String plant, Collection<Lot> reported) {
        Set<LotId> ids = new TreeSet<>();
        Set<LotId> parents = new TreeSet<>();
        Set<RunId> runIds = new TreeSet<>();
        for (Lot lot : reported) {
            ids.add(lot.id());
            lot.inputs().stream().map(LotInput::lot).forEach(parents::add);
            if (lot.run() != null) {
                runIds.add(lot.run().id());
            }
        }
        Map<LotId, Lot> registered = lots.byIds(plant, ids).entrySet().stream()
                .collect(Collectors.toMap(
                        Map.Entry::getKey, one -> one.getValue().lot()));
        return new KnownLots(
                registered,
                waiting.among(plant, ids),
                reelNumbers(plant, ids),
                runs.byIds(plant, runIds),
                stocks.of(plant, parents));
    }

    private Set<LotId> reelNumbers(String plant, Collection<LotId> ids) {
        return session
                .createNativeQuery("select id from reel where plant = :plant and id = any(:ids)", String.class)
                .setParameter("plant", plant)
                .setParameter("ids", Identifiers.of(ids))
                .getResultList()
                .stream()
                .map(LotId::new)
                .collect(Collectors.toSet());
    }
}
