package dev.reelproof.store.suspect;

import dev.reelproof.analysis.Evidence;
import dev.reelproof.analysis.ReelFinding;
import dev.reelproof.analysis.ReelSelection;
import dev.reelproof.analysis.TestOccasion;
import dev.reelproof.analysis.TracedPopulation;
import dev.reelproof.analysis.Upstream;
import dev.reelproof.analysis.UpstreamLot;
import dev.reelproof.genealogy.Amount;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.judgement.Outcome;
import dev.reelproof.measurement.Equipment;
import dev.reelproof.measurement.Property;
import dev.reelproof.store.SearchTooLargeException;
import dev.reelproof.store.StatementTimeout;
import dev.reelproof.store.UtcTimes;
import dev.reelproof.store.lot.LotJson;
import dev.reelproof.store.result.EquipmentJson;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.hibernate.Session;
import org.jspecify.annotations.Nullable;

/** Finds the reels that were tested within a time, what was found of a property, and everything that they were made from. */
@ApplicationScoped
public class PopulationQuery {
    /** The most reels of one population. */
    public static final int MOST_REELS = 20_000;

    private static final Duration LONGEST_SEARCH = Duration.ofSeconds(30);

    /**
     * Of each reel the newest record within the time, in the order of test, with where, with what, by whom and when it was tested; of
     * each record the worst finding of the property and the least margin. What a regrade judged again is no test of its own.
     */
    private static final String FIND_TESTED =
            """
            with newest as (
                select distinct on (t.reel) t.reel, t.id, t.received, t.product, t.station, t.technician,
                       cast(t.equipment as text) as equipment, t.finished
                from test_record t
                left join upload u on u.plant = t.plant and u.record_id = t.id
                where t.plant = :plant and t.finished >= coalesce(cast(:from as timestamptz), '-infinity')
                  and t.finished <= coalesce(cast(:to as timestamptz), 'infinity')
                  and t.product = coalesce(cast(:product as text), t.product)
                  and not exists (select from judged_again j where j.plant = t.plant and j.record_id = t.id)
                order by t.reel, u.tested desc nulls last, u.attempt desc
                limit :most)
            select n.reel, n.product, coalesce(bool_or(f.outcome = any(:rejecting)), false),
                   count(f.outcome) > 0 and not bool_or(f.outcome = :notTested), min(f.margin), min(f.unit), max(f.unit),
                   n.station, n.technician, n.equipment, n.finished
            from newest n
            left join finding f on f.plant = :plant and f.record_id = n.id and f.received = n.received and f.property = :property
            group by n.reel, n.product, n.station, n.technician, n.equipment, n.finished
            order by n.reel""";

    /** Each lot above the reels, and the reels themselves where they are lots. */
    private static final String FIND_LOTS =
            """
            with recursive upstream(lot) as (
                select unnest(cast(:reels as text[]))
                union
                select i.parent from upstream u join lot_input i on i.plant = :plant and i.child = u.lot)
            select l.id, l.kind, l.quantity_value, l.quantity_unit, coalesce(s.step, l.step), coalesce(s.machine, l.machine), l.run,
                   s.line, s.operator, s.shift, cast(s.settings as text)
            from upstream u
            join lot l on l.plant = :plant and l.id = u.lot
            left join step_run s on s.plant = :plant and s.id = l.run""";

    /** What each of these was made from, in one order on every machine, so that sums have the same last digit. */
    private static final String FIND_LINKS =
            """
            select i.child, i.parent, i.amount_base
            from unnest(cast(:lots as text[])) as made(lot)
            join lot_input i on i.plant = :plant and i.child = made.lot
            order by i.child, i.parent""";

    private final Session session;
    private final StatementTimeout timeout;

    PopulationQuery(Session session, StatementTimeout timeout) {
        this.session = session;
        this.timeout = timeout;
    }

    /** A reel with what its newest record says, in the columns of {@link #FIND_TESTED}. */
    record TestedRow(
            String reel,
            String product,
            boolean failing,
            boolean tested,
            @Nullable Double margin,
            @Nullable String leastUnit,
            @Nullable String greatestUnit,
            @Nullable String station,
            @Nullable String technician,
            String equipment,
            Instant finished) {

        ReelFinding toFinding(Property property, Map<String, List<Equipment>> read) {
            Set<String> units =
                    Stream.of(leastUnit, greatestUnit).filter(Objects::nonNull).collect(Collectors.toUnmodifiableSet());
            return new ReelFinding(
                    reel,
                    product,
                    failing,
                    tested,
                    margin,
                    units,
                    TestOccasion.of(
                            station,
                            technician,
                            // A bay tests many reels with the same instruments: each list is read once.
                            read.computeIfAbsent(equipment, EquipmentJson::read),
                            property,
                            UtcTimes.utc(finished)));
        }
    }

    /** A lot, in the columns of {@link #FIND_LOTS}. */
    record LotRow(
            String id,
            String kind,
            double quantity,
            String unit,
            @Nullable String step,
            @Nullable String machine,
            @Nullable String run,
            @Nullable String line,
            @Nullable String operator,
            @Nullable String shift,
            @Nullable String settings) {

        UpstreamLot toLot() {
            return new UpstreamLot(
                    id,
                    LotKind.named(kind),
                    new Amount(quantity, unit),
                    step,
                    machine,
                    run,
                    line,
                    operator,
                    shift,
                    settings == null ? Map.of() : LotJson.settings(settings));
        }
    }

    /**
     * Finds the population.
     *
     * @param evidence what counts against a suspect; reels that do not have it are left out
     * @throws SearchTooLargeException when there are more than {@value #MOST_REELS} reels, or the search takes too long
     */
    @Transactional
    public TracedPopulation find(ReelSelection selection, Evidence evidence) {
        return find(selection, evidence, LONGEST_SEARCH);
    }

    /** As {@link #find(ReelSelection, Evidence)}, with the longest that one statement may take. */
    @Transactional
    TracedPopulation find(ReelSelection selection, Evidence evidence, Duration longest) {
        return timeout.within(
                longest,
                "the reels and what they were made from were not found within " + longest.toSeconds()
                        + " s; ask for a shorter time, or for one product",
                () -> {
                    List<ReelFinding> findings = tested(selection);
                    List<ReelFinding> counted = findings.stream()
                            .filter(finding -> finding.countsFor(evidence))
                            .toList();
                    return TracedPopulation.of(
                            counted, upstream(selection.plant(), counted), findings.size() - counted.size());
                });
    }

    private List<ReelFinding> tested(ReelSelection selection) {
        List<TestedRow> rows = session.createNativeQuery(FIND_TESTED, TestedRow.class)
                .setParameter("plant", selection.plant())
                .setParameter("from", UtcTimes.instantOrNull(selection.from()))
                .setParameter("to", UtcTimes.instantOrNull(selection.to()))
                .setParameter("product", selection.product())
                .setParameter("property", selection.property().id())
                .setParameter("rejecting", Outcome.rejectingWords().toArray(String[]::new))
                .setParameter("notTested", Outcome.NOT_TESTED.word())
                .setParameter("most", MOST_REELS + 1)
                .getResultList();
        if (rows.size() > MOST_REELS) {
            throw new SearchTooLargeException("more than " + MOST_REELS
                    + " reels were tested in that time; ask for a shorter time, or for one product");
        }
        Map<String, List<Equipment>> read = new HashMap<>();
        return rows.stream()
                .map(row -> row.toFinding(selection.property(), read))
                .toList();
    }

    private Upstream upstream(String plant, List<ReelFinding> findings) {
        String[] reels = findings.stream().map(ReelFinding::reel).toArray(String[]::new);
        List<UpstreamLot> lots = session
                .createNativeQuery(FIND_LOTS, LotRow.class)
                .setParameter("plant", plant)
                .setParameter("reels", reels)
                .getResultList()
                .stream()
                .map(LotRow::toLot)
                .toList();
        List<Upstream.Link> links = session.createNativeQuery(FIND_LINKS, Upstream.Link.class)
                .setParameter("plant", plant)
                .setParameter("lots", lots.stream().map(UpstreamLot::id).toArray(String[]::new))
                .getResultList();
        return new Upstream(lots, links);
    }
}
