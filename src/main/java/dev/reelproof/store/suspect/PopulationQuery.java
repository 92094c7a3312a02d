package dev.reelproof.store.suspect;

import dev.reelproof.analysis.Exposure;
import dev.reelproof.analysis.Factor;
import dev.reelproof.analysis.Population;
import dev.reelproof.analysis.TestedReel;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.measurement.Property;
import dev.reelproof.store.SearchTooLargeException;
import dev.reelproof.store.UtcTimes;
import dev.reelproof.store.lot.LotJson;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.QueryTimeoutException;
import jakarta.transaction.Transactional;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.hibernate.Session;

/** Reels tested within a time, with what was found of a property and all that they have behind them. */
@ApplicationScoped
public class PopulationQuery {
    /** The most reels of one population. */
    public static final int MOST_REELS = 20_000;

    private static final Duration LONGEST_SEARCH = Duration.ofSeconds(30);

    /**
     * Of each reel the newest record within the time; of each record the worst finding of the property: fail, then not tested, and the
     * least margin.
     */
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
            select n.reel, n.product, coalesce(bool_or(f.outcome = 'fail'), false),
                   count(f.outcome) = 0 or bool_or(f.outcome = 'not-tested'), min(f.margin), min(f.unit), max(f.unit)
            from newest n
            left join finding f on f.plant = :plant and f.record_id = n.id and f.received = n.received and f.property = :property
            group by n.reel, n.product
            order by n.reel""";

    /**
     * Each lot above the reels, and the reels themselves where they are lots, with the places of the reels. Only place and lot go
     * round: a reel that a lot reaches through eight conductors meets it once.
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

    PopulationQuery(Session session) {
        this.session = session;
    }

    /**
     * Which reels are asked about.
     *
     * @param plant the plant
     * @param property the property
     * @param from the earliest end of a test; null for any
     * @param to the latest end of a test, itself included; null for any
     * @param product the one product; null for all
     */
    public record Selection(String plant, Property property, OffsetDateTime from, OffsetDateTime to, String product) {}

    /**
     * The reels found.
     *
     * @param population those with a finding and with inputs reported
     * @param notTested how many were left out because the property was not tested, or its margin is not known where it is needed
     * @param untraced how many were left out because nothing was reported of what they were made from
     * @param products the products of the population
     * @param units the units of its margins
     */
    public record Found(Population population, int notTested, int untraced, Set<String> products, Set<String> units) {}

    private record Tested(TestedReel reel, String product, Set<String> units) {}

    /**
     * The population.
     *
     * @param needsMargins whether reels without a margin are left out
     * @throws SearchTooLargeException when it has more than {@value #MOST_REELS} reels, or takes too long to find
     */
    @Transactional
    public Found find(Selection selection, boolean needsMargins) {
        return find(selection, needsMargins, LONGEST_SEARCH);
    }

    /** As {@link #find(Selection, boolean)}, with the longest that one statement may take. */
    @Transactional
    Found find(Selection selection, boolean needsMargins, Duration longest) {
        session.createNativeQuery("select set_config('statement_timeout', :most, true)", String.class)
                .setParameter("most", Long.toString(longest.toMillis()))
                .getSingleResult();
        try {
            return read(selection, needsMargins);
        } catch (QueryTimeoutException e) {
            throw new SearchTooLargeException("the reels and what they were made from were not found within "
                    + longest.toSeconds() + " s; ask for a shorter time, or for one product");
        }
    }

    private Found read(Selection selection, boolean needsMargins) {
        List<Object[]> rows = session.createNativeQuery(FIND_TESTED, Object[].class)
                .setParameter("plant", selection.plant())
                .setParameter("from", UtcTimes.instant(selection.from()))
                .setParameter("to", UtcTimes.instant(selection.to()))
                .setParameter("product", selection.product())
                .setParameter("property", selection.property().id())
                .setParameter("most", MOST_REELS + 1)
                .getResultList();
        if (rows.size() > MOST_REELS) {
            throw new SearchTooLargeException("more than " + MOST_REELS
                    + " reels were tested in that time; ask for a shorter time, or for one product");
        }
        List<Tested> tested = new ArrayList<>();
        for (Object[] row : rows) {
            boolean isFailing = (Boolean) row[2];
            Double margin = (Double) row[4];
            if (isFailing || !(Boolean) row[3]) {
                if (margin != null || !needsMargins) {
                    tested.add(new Tested(
                            new TestedReel((String) row[0], isFailing, margin),
                            (String) row[1],
                            units(row[5], row[6])));
                }
            }
        }
        return traced(selection.plant(), tested, rows.size() - tested.size());
    }

    private static Set<String> units(Object least, Object greatest) {
        return least == null
                ? Set.of()
                : least.equals(greatest) ? Set.of((String) least) : Set.of((String) least, (String) greatest);
    }

    private Found traced(String plant, List<Tested> tested, int notTested) {
        Map<UpstreamLot, BitSet> upstream = upstream(plant, tested);
        BitSet traced = new BitSet();
        upstream.forEach((lot, places) -> places.stream()
                .filter(place -> !isItself(lot, tested.get(place)))
                .forEach(traced::set));
        int[] places = traced.stream().toArray();
        Map<Integer, Integer> newPlaces = new HashMap<>();
        Map<Exposure, BitSet> exposed = new TreeMap<>();
        List<TestedReel> reels = new ArrayList<>();
        Set<String> products = new TreeSet<>();
        Set<String> units = new TreeSet<>();
        for (int place : places) {
            Tested one = tested.get(place);
            newPlaces.put(place, reels.size());
            note(exposed, new Exposure(Factor.PRODUCT, one.product()), reels.size());
            reels.add(one.reel());
            products.add(one.product());
            units.addAll(one.units());
        }
        upstream.forEach((lot, met) -> {
            Set<Exposure> exposures = lot.exposures();
            met.stream().filter(traced::get).forEach(place -> {
                int newPlace = newPlaces.get(place);
                exposures.forEach(exposure -> note(exposed, exposure, newPlace));
                if (!isItself(lot, tested.get(place))) {
                    note(exposed, lot.asExposure(), newPlace);
                }
            });
        });
        return new Found(Population.of(reels, exposed), notTested, tested.size() - reels.size(), products, units);
    }

    private static boolean isItself(UpstreamLot lot, Tested reel) {
        return lot.id().equals(reel.reel().reel());
    }

    private static void note(Map<Exposure, BitSet> exposed, Exposure exposure, int place) {
        exposed.computeIfAbsent(exposure, met -> new BitSet()).set(place);
    }

    private Map<UpstreamLot, BitSet> upstream(String plant, List<Tested> tested) {
        Map<UpstreamLot, BitSet> upstream = new HashMap<>();
        List<Object[]> rows = session.createNativeQuery(FIND_UPSTREAM, Object[].class)
                .setParameter("plant", plant)
                .setParameter(
                        "reels", tested.stream().map(one -> one.reel().reel()).toArray(String[]::new))
                .getResultList();
        for (Object[] row : rows) {
            int column = 0;
            UpstreamLot lot = new UpstreamLot(
                    (String) row[column++],
                    LotKind.named((String) row[column++]),
                    (String) row[column++],
                    (String) row[column++],
                    (String) row[column++],
                    (String) row[column++],
                    (String) row[column++],
                    (String) row[column++],
                    row[column] == null ? Map.of() : LotJson.settings((String) row[column]));
            BitSet places = new BitSet();
            for (String place : ((String) row[column + 1]).split(",")) {
                places.set(Integer.parseInt(place));
            }
            upstream.put(lot, places);
        }
        return upstream;
    }
}
