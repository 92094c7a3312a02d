package dev.reelproof.store.lot;

import dev.reelproof.genealogy.CopperDiameter;
import dev.reelproof.genealogy.Implausible;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotInput;
import dev.reelproof.genealogy.RunId;
import dev.reelproof.genealogy.Sample;
import dev.reelproof.genealogy.StepRun;
import dev.reelproof.genealogy.Stock;
import dev.reelproof.quantity.Kind;
import dev.reelproof.store.UtcTimes;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.hibernate.Session;

/** Reads many lots at once, each table once. */
@ApplicationScoped
class LotReading {
    private final Session session;

    LotReading(Session session) {
        this.session = session;
    }

    private <T> List<T> rows(String query, Class<T> type, String plant, Collection<String> ids) {
        return session.createNativeQuery(query, type)
                .setParameter("plant", plant)
                .setParameter("ids", ids.toArray(String[]::new))
                .getResultList();
    }

    private static List<String> values(Collection<LotId> ids) {
        return ids.stream().map(LotId::value).toList();
    }

    private List<LotRow> lotRows(String plant, Collection<LotId> ids) {
        return ids.isEmpty()
                ? List.of()
                : rows(
                        "select * from lot where plant = :plant and id = any(:ids) order by id",
                        LotRow.class,
                        plant,
                        values(ids));
    }

    /** The registered lots among these. */
    @Transactional
    Map<LotId, RegisteredLot> lots(String plant, Collection<LotId> ids) {
        List<LotRow> rows = lotRows(plant, ids);
        if (rows.isEmpty()) {
            return Map.of();
        }
        List<String> found = rows.stream().map(row -> row.id).toList();
        Map<String, List<LotInput>> inputs = rows(
                        "select * from lot_input where plant = :plant and child = any(:ids) order by child, ordinal",
                        LotInputRow.class,
                        plant,
                        found)
                .stream()
                .collect(Collectors.groupingBy(
                        row -> row.child, Collectors.mapping(LotInputRow::toInput, Collectors.toList())));
        Map<LotId, List<Sample>> samples = samples(plant, found);
        Map<RunId, StepRun> runs = runs(plant, runIds(rows));
        Map<LotId, List<Implausible>> implausible = implausible(plant, ids);
        Map<LotId, RegisteredLot> lots = new TreeMap<>();
        for (LotRow row : rows) {
            LotId id = row.lotId();
            lots.put(
                    id,
                    new RegisteredLot(
                            row.toLot(
                                    inputs.getOrDefault(row.id, List.of()),
                                    row.run == null ? null : runs.get(new RunId(row.run)),
                                    samples.getOrDefault(id, List.of())),
                            UtcTimes.utc(row.registered),
                            implausible.getOrDefault(id, List.of())));
        }
        return lots;
    }

    private static List<RunId> runIds(List<LotRow> rows) {
        return rows.stream()
                .map(row -> row.run)
                .filter(Objects::nonNull)
                .distinct()
                .map(RunId::new)
                .toList();
    }

    /** The registered runs among these. */
    @Transactional
    Map<RunId, StepRun> runs(String plant, Collection<RunId> ids) {
        Map<RunId, StepRun> runs = new TreeMap<>();
        if (ids.isEmpty()) {
            return runs;
        }
        for (Object[] row : rows(
                """
                select id, step, machine, line, operator, shift, started, finished, cast(settings as text)
                from step_run where plant = :plant and id = any(:ids)""",
                Object[].class,
                plant,
                ids.stream().map(RunId::value).toList())) {
            int column = 0;
            RunId id = new RunId((String) row[column++]);
            runs.put(
                    id,
                    new StepRun(
                            id,
                            (String) row[column++],
                            (String) row[column++],
                            (String) row[column++],
                            (String) row[column++],
                            (String) row[column++],
                            UtcTimes.utc((Instant) row[column++]),
                            UtcTimes.utc((Instant) row[column++]),
                            LotJson.settings((String) row[column])));
        }
        return runs;
    }

    private Map<LotId, List<Sample>> samples(String plant, List<String> lots) {
        Map<LotId, List<Sample>> samples = new HashMap<>();
        for (Object[] row : rows(
                """
                select lot, property, value, unit, taken, at_value, at_unit from lot_sample
                where plant = :plant and lot = any(:ids) order by lot, ordinal""",
                Object[].class,
                plant,
                lots)) {
            int column = 0;
            samples.computeIfAbsent(new LotId((String) row[column++]), id -> new ArrayList<>())
                    .add(new Sample(
                            (String) row[column++],
                            (Double) row[column++],
                            (String) row[column++],
                            UtcTimes.utc((Instant) row[column++]),
                            (Double) row[column++],
                            (String) row[column]));
        }
        return samples;
    }

    /** What can hardly be so in these lots; nothing for those in which all fits. */
    @Transactional
    Map<LotId, List<Implausible>> implausible(String plant, Collection<LotId> ids) {
        Map<LotId, List<Implausible>> implausible = new HashMap<>();
        for (Object[] row : rows(
                """
                select lot, parent, message from implausible_link
                where plant = :plant and lot = any(:ids) order by lot, ordinal""",
                Object[].class,
                plant,
                values(ids))) {
            implausible
                    .computeIfAbsent(new LotId((String) row[0]), id -> new ArrayList<>())
                    .add(new Implausible(row[1] == null ? null : new LotId((String) row[1]), (String) row[2]));
        }
        return implausible;
    }

    /** What there is of each of these lots that is registered. */
    @Transactional
    Map<LotId, Stock> stocks(String plant, Collection<LotId> ids) {
        List<LotRow> rows = lotRows(plant, ids);
        if (rows.isEmpty()) {
            return new HashMap<>();
        }
        // Summed in the order of the children, so that the last digit is the same on every machine. The index has them
        // in that order; a sum that is told to order would sort them once more.
        Map<String, Double> taken = rows(
                        """
                        select parent.id, (
                            select sum(child.amount_base) from (
                                select amount_base from lot_input
                                where plant = :plant and lot_input.parent = parent.id order by lot_input.child) child)
                        from unnest(cast(:ids as text[])) parent(id)""",
                        Object[].class,
                        plant,
                        values(ids))
                .stream()
                .filter(row -> row[1] != null)
                .collect(Collectors.toMap(row -> (String) row[0], row -> (Double) row[1]));
        Map<RunId, StepRun> runs = runs(plant, runIds(rows));
        // Only what is measured by length needs a diameter to have a mass.
        List<String> wires = rows.stream()
                .filter(row -> row.kind().isBareCopper() && row.quantity().kind() == Kind.LENGTH)
                .map(row -> row.id)
                .toList();
        Map<LotId, List<Sample>> samples = wires.isEmpty() ? Map.of() : samples(plant, wires);
        Map<LotId, Stock> stocks = new HashMap<>();
        for (LotRow row : rows) {
            OptionalDouble copper = CopperDiameter.of(
                    row.kind(),
                    row.run == null ? Map.of() : runs.get(new RunId(row.run)).settings(),
                    samples.getOrDefault(row.lotId(), List.of()));
            stocks.put(
                    row.lotId(),
                    new Stock(
                            row.lotId(),
                            row.kind(),
                            row.quantity(),
                            taken.getOrDefault(row.id, 0.0),
                            UtcTimes.utc(row.made),
                            copper.isPresent() ? copper.getAsDouble() : null));
        }
        return stocks;
    }
}
