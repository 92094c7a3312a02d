package dev.reelproof.store.suspect;

import dev.reelproof.analysis.Evidence;
import dev.reelproof.analysis.ReelFinding;
import dev.reelproof.analysis.ReelSelection;
import dev.reelproof.analysis.TracedPopulation;
import dev.reelproof.analysis.UpstreamLot;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.judgement.Outcome;
import dev.reelproof.store.SearchTooLargeException;
import dev.reelproof.store.StatementTimeout;
import dev.reelproof.store.UtcTimes;
import dev.reelproof.store.lot.LotJson;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Duration;
import java.util.BitSet;
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

    /** Of each reel the newest record within the time; of each record the worst finding of the property and the least margin. */
    private static final String FIND_TESTED =
            """
            with newest as (
                select distinct on (reel) reel, id, received, product
                from test_record
                where plant = :plant and finished >= coalesce(cast(:from as timestamptz), '-infinity')
                  and finished <= coalesce(cast(:to as timestamptz), 'infinity')
                  and product = coalesce(cast(:product as text), product)
                order by reel, attempt desc
                limit :most)
            select n.reel, n.product, coalesce(bool_or(f.outcome = any(:rejecting)), false),
                   count(f.outcome) > 0 and not bool_or(f.outcome = :notTested), min(f.margin), min(f.unit), max(f.unit)
            from newest n
            left join finding f on f.plant = :plant and f.record_id = n.id and f.received = n.received and f.property = :property
            group by n.reel, n.product
            order by n.reel""";

    /**
     * Each lot above the reels, and the reels themselves where they are lots, with the places of the reels. The recursion carries
     * place and lot only: a reel that a lot reaches through eight conductors meets it once.
     */
    private static final String FIND_UPSTREAM =
            """
            with recursive upstream(place, lot) as (
                select cast(r.place - 1 as int), r.reel
                from unnest(cast(:reels as text[])) with ordinality as r(reel, place)
                union
                select u.place, i.parent
                from upstream u join lot_input i on i.plant = :plant and i.child = u.lot),
            met as (select lot, array_agg(place) as places from upstream group by lot)
            select l.id, l.kind, coalesce(s.step, l.step), coalesce(s.machine, l.machine), l.run, s.line, s.operator, s.shift,
                   cast(s.settings as text), array_to_string(m.places, ',')
            from met m
            join lot l on l.plant = :plant and l.id = m.lot
            left join step_run s on s.plant = :plant and s.id = l.run""";

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
            @Nullable String greatestUnit) {

        ReelFinding toFinding() {
            Set<String> units =
                    Stream.of(leastUnit, greatestUnit).filter(Objects::nonNull).collect(Collectors.toUnmodifiableSet());
            return new ReelFinding(reel, product, failing, tested, margin, units);
        }
    }

    /** A lot with the reels that it went into, in the columns of {@link #FIND_UPSTREAM}. */
    record UpstreamRow(
            String id,
            String kind,
            @Nullable String step,
            @Nullable String machine,
            @Nullable String run,
            @Nullable String line,
            @Nullable String operator,
            @Nullable String shift,
            @Nullable String settings,
            String places) {

        UpstreamLot toLot() {
            return new UpstreamLot(
                    id,
                    LotKind.named(kind),
                    step,
                    machine,
                    run,
                    line,
                    operator,
                    shift,
                    settings == null ? Map.of() : LotJson.settings(settings));
        }

        BitSet toPlaces() {
            BitSet set = new BitSet();
            for (String place : places.split(",")) {
                set.set(Integer.parseInt(place));
            }
            return set;
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
        return rows.stream().map(TestedRow::toFinding).toList();
    }

    private Map<UpstreamLot, BitSet> upstream(String plant, List<ReelFinding> findings) {
        Map<UpstreamLot, BitSet> upstream = new HashMap<>();
        session.createNativeQuery(FIND_UPSTREAM, UpstreamRow.class)
                .setParameter("plant", plant)
                .setParameter("reels", findings.stream().map(ReelFinding::reel).toArray(String[]::new))
                .getResultList()
                .forEach(row -> upstream.put(row.toLot(), row.toPlaces()));
        return upstream;
    }
}
