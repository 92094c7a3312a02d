package dev.reelproof.store.lot.admission;

import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.RunId;
import dev.reelproof.genealogy.Sample;
import dev.reelproof.genealogy.Setting;
import dev.reelproof.genealogy.StepRun;
import dev.reelproof.genealogy.admission.Stock;
import dev.reelproof.genealogy.balance.CopperDiameter;
import dev.reelproof.quantity.Kind;
import dev.reelproof.store.UtcTimes;
import dev.reelproof.store.lot.Identifiers;
import dev.reelproof.store.lot.LotRow;
import dev.reelproof.store.lot.LotSamples;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.hibernate.Session;
import org.jspecify.annotations.Nullable;

/** Reads what registered lots had and what was taken of them. */
@ApplicationScoped
class Stocks {
    private final Session session;
    private final StepRuns runs;
    private final LotSamples samples;

    Stocks(Session session, StepRuns runs, LotSamples samples) {
        this.session = session;
        this.runs = runs;
        this.samples = samples;
    }

    private record Taken(String lot, @Nullable Double amount) {}

    /** The stock of each of these lots that is registered. */
    @Transactional
    Map<LotId, Stock> of(String plant, Collection<LotId> ids) {
        Map<LotId, Stock> stocks = new HashMap<>();
        List<LotRow> rows = ids.isEmpty() ? List.of() : rows(plant, ids);
        if (rows.isEmpty()) {
            return stocks;
        }
        Map<String, Double> taken = taken(plant, ids);
        Map<RunId, StepRun> runsById = runs.byIds(
                plant,
                rows.stream()
                        .map(LotRow::runId)
                        .filter(Objects::nonNull)
                        .distinct()
                        .toList());
        // Only what is measured by length needs a diameter to have a mass.
        List<LotId> wires = rows.stream()
                .filter(row -> row.lotKind().isBareCopper() && row.quantity().kind() == Kind.LENGTH)
                .map(LotRow::lotId)
                .toList();
        Map<LotId, List<Sample>> samplesOf = wires.isEmpty() ? Map.of() : samples.of(plant, wires);
        for (LotRow row : rows) {
            LotId id = row.lotId();
            OptionalDouble copper = CopperDiameter.of(
                    row.lotKind(), settings(row.runId(), runsById), samplesOf.getOrDefault(id, List.of()));
            stocks.put(
                    id,
                    new Stock(
                            id,
                            row.lotKind(),
                            row.quantity(),
                            taken.getOrDefault(row.id(), 0.0),
                            UtcTimes.utc(row.made()),
                            copper.isPresent() ? copper.getAsDouble() : null));
        }
        return stocks;
    }

    private static Map<String, Setting> settings(@Nullable RunId run, Map<RunId, StepRun> runsById) {
        return run == null
                ? Map.of()
                : Objects.requireNonNull(runsById.get(run), "a lot's run is registered")
                        .settings();
    }

    private List<LotRow> rows(String plant, Collection<LotId> ids) {
        return session.createNativeQuery(
                        "select " + LotRow.COLUMNS
                                + " from lot l where l.plant = :plant and l.id = any(:ids) order by l.id",
                        LotRow.class)
                .setParameter("plant", plant)
                .setParameter("ids", Identifiers.of(ids))
                .getResultList();
    }

    /**
     * What was taken of each of these lots, in metres or kilograms; lots of which nothing was are left out.
     *
     * <p>Summed in the order of the children, so that the last digit is the same on every machine. The index has them in that order;
     * a sum that is told to order would sort them once more.
     */
    private Map<String, Double> taken(String plant, Collection<LotId> ids) {
        return session
                .createNativeQuery(
                        """
                        select parent.id, (
                            select sum(child.amount_base) from (
                                select amount_base from lot_input
                                where plant = :plant and lot_input.parent = parent.id order by lot_input.child) child)
                        from unnest(cast(:ids as text[])) parent(id)""",
                        Taken.class)
                .setParameter("plant", plant)
                .setParameter("ids", Identifiers.of(ids))
                .getResultList()
                .stream()
                .filter(row -> row.amount() != null)
                .collect(Collectors.toMap(Taken::lot, Taken::amount));
    }
}
