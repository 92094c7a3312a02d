package dev.reelproof.store.lot;

import dev.reelproof.genealogy.Amount;
import dev.reelproof.genealogy.Implausibility;
import dev.reelproof.genealogy.Lot;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotInput;
import dev.reelproof.genealogy.RegisteredLot;
import dev.reelproof.genealogy.RunId;
import dev.reelproof.genealogy.Sample;
import dev.reelproof.genealogy.StepRun;
import dev.reelproof.store.UtcTimes;
import dev.reelproof.store.lot.admission.StepRuns;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.hibernate.Session;
import org.jspecify.annotations.Nullable;

/** Reads many whole lots at once, each table once. */
@ApplicationScoped
public class LotReading {
    private final Session session;
    private final StepRuns runs;
    private final LotSamples samples;
    private final ImplausibleLots implausible;

    LotReading(Session session, StepRuns runs, LotSamples samples, ImplausibleLots implausible) {
        this.session = session;
        this.runs = runs;
        this.samples = samples;
        this.implausible = implausible;
    }

    private record Row(
            String id,
            String kind,
            double value,
            String unit,
            Instant made,
            @Nullable String step,
            @Nullable String machine,
            @Nullable String run,
            Instant registered) {
        LotRow lot() {
            return new LotRow(id, kind, value, unit, made, step, machine, run);
        }
    }

    private record InputRow(
            String child,
            String parent,
            double value,
            String unit,
            @Nullable Double positionFrom,
            @Nullable Double positionTo,
            @Nullable String positionUnit,
            @Nullable Double ontoFrom,
            @Nullable Double ontoTo,
            @Nullable String ontoUnit) {
        LotId childId() {
            return new LotId(child);
        }

        LotInput input() {
            return new LotInput(
                    new LotId(parent),
                    new Amount(value, unit),
                    PlacementColumns.read(positionFrom, positionTo, positionUnit, ontoFrom, ontoTo, ontoUnit));
        }
    }

    /** The registered lots among these. */
    @Transactional
    public Map<LotId, RegisteredLot> byIds(String plant, Collection<LotId> ids) {
        Map<LotId, RegisteredLot> lots = new TreeMap<>();
        List<Row> rows = ids.isEmpty() ? List.of() : rows(plant, ids);
        if (rows.isEmpty()) {
            return lots;
        }
        List<LotId> found = rows.stream().map(row -> new LotId(row.id())).toList();
        Map<LotId, List<LotInput>> inputsOf = inputs(plant, found);
        Map<LotId, List<Sample>> samplesOf = samples.of(plant, found);
        Map<RunId, StepRun> runsById = runs.byIds(
                plant,
                rows.stream()
                        .map(row -> row.lot().runId())
                        .filter(Objects::nonNull)
                        .distinct()
                        .toList());
        Map<LotId, List<Implausibility>> implausibleOf = implausible.of(plant, found);
        for (Row row : rows) {
            LotRow lot = row.lot();
            LotId id = lot.lotId();
            lots.put(
                    id,
                    new RegisteredLot(
                            new Lot(
                                    id,
                                    plant,
                                    lot.lotKind(),
                                    lot.quantity(),
                                    UtcTimes.utc(lot.made()),
                                    lot.step(),
                                    lot.machine(),
                                    inputsOf.getOrDefault(id, List.of()),
                                    lot.run() == null ? null : runsById.get(lot.runId()),
                                    samplesOf.getOrDefault(id, List.of())),
                            UtcTimes.utc(row.registered()),
                            implausibleOf.getOrDefault(id, List.of())));
        }
        return lots;
    }

    private List<Row> rows(String plant, Collection<LotId> ids) {
        return session.createNativeQuery(
                        "select " + LotRow.COLUMNS
                                + ", l.registered from lot l where l.plant = :plant and l.id = any(:ids) order by l.id",
                        Row.class)
                .setParameter("plant", plant)
                .setParameter("ids", Identifiers.of(ids))
                .getResultList();
    }

    private Map<LotId, List<LotInput>> inputs(String plant, Collection<LotId> lots) {
        return session
                .createNativeQuery(
                        """
                        select child, parent, quantity_value, quantity_unit,
                               position_from, position_to, position_unit, onto_from, onto_to, onto_unit
                        from lot_input where plant = :plant and child = any(:lots) order by child, ordinal""",
                        InputRow.class)
                .setParameter("plant", plant)
                .setParameter("lots", Identifiers.of(lots))
                .getResultList()
                .stream()
                .collect(Collectors.groupingBy(
                        InputRow::childId, Collectors.mapping(InputRow::input, Collectors.toList())));
    }
}
