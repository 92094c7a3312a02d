package dev.reelproof.store.lot;

import dev.reelproof.genealogy.Implausible;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.OverlappingCuts;
import dev.reelproof.genealogy.Placement;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import org.hibernate.Session;

/** Finds lots that took the same stretch of one parent, without reading all that were made from it. */
@ApplicationScoped
class Overlaps {
    /** What is found of a link by its position has its own ordinals: it may be found later than the rest, and twice. */
    private static final int FIRST_ORDINAL = 1_000_000;

    /** How many rows lie across a stretch cannot be estimated: a plan for many would read all before the first. */
    private static final String PLAN = "select set_config('enable_bitmapscan', 'off', true)";

    /**
     * Links of these lots, each with those of other lots across its stretch. Where one that was there before has exactly the same
     * stretch, that one alone: whatever else lies across was found when it came. So of many reports with one wrong position each
     * costs no more than the first.
     *
     * <p>"is not distinct" because no index takes it: the parent's own would be read whole. "offset 0" keeps one look for each lot,
     * also while the table has no statistics.
     */
    private static final String FIND =
            """
            select n.parent, n.child, n.ordinal,
                   n.position_from, n.position_to, n.position_unit, n.onto_from, n.onto_to, n.onto_unit, o.*
            from unnest(cast(:ids as text[])) as made(id)
            cross join lateral (select * from lot_input where plant = :plant and child = made.id offset 0) n
            cross join lateral (
                with across as not materialized (
                    select s.child, s.ordinal,
                           s.position_from, s.position_to, s.position_unit, s.onto_from, s.onto_to, s.onto_unit
                    from lot_input s
                    where s.onto_unit is not null
                      and stretch_of(s.parent, s.onto_from, s.onto_to, s.onto_unit)
                          && stretch_of(n.parent, n.onto_from, n.onto_to, n.onto_unit)
                      and (s.plant, s.parent) is not distinct from (n.plant, n.parent)
                      and s.child <> n.child),
                same as materialized (
                    select * from across a
                    where least(a.onto_from, a.onto_to) = least(n.onto_from, n.onto_to)
                      and greatest(a.onto_from, a.onto_to) = greatest(n.onto_from, n.onto_to)
                      and a.onto_unit = n.onto_unit
                      and (a.child < n.child or a.child <> all(:ids))
                    limit 1)
                select * from same
                union all
                select * from across where not exists (select from same)) o
            where n.onto_unit is not null""";

    private final Session session;

    Overlaps(Session session) {
        this.session = session;
    }

    /**
     * A link of which a part went into another lot too.
     *
     * @param ordinal the place of the doubt among those of the lot: the same each time that it is found
     */
    record Link(LotId lot, int ordinal, Implausible doubt) {}

    /** The links of these lots, of the transaction's own too, that share a stretch with another lot, and those of the others. */
    List<Link> find(String plant, String[] lots) {
        session.createNativeQuery(PLAN, Object[].class).getSingleResult();
        List<Link> found = new ArrayList<>();
        session.createNativeQuery(FIND, Object[].class)
                .setParameter("plant", plant)
                .setParameter("ids", lots)
                .getResultList()
                .forEach(row -> {
                    LotId parent = new LotId((String) row[0]);
                    Cut cut = Cut.of(row, 1);
                    Cut other = Cut.of(row, 1 + Cut.COLUMNS);
                    if (OverlappingCuts.overlap(cut.placement(), other.placement())) {
                        found.add(cut.of(parent));
                        found.add(other.of(parent));
                    }
                });
        return found;
    }

    /** A link, as {@link #FIND} gives each of two. */
    private record Cut(LotId lot, int ordinal, Placement placement) {
        static final int COLUMNS = 8;

        static Cut of(Object[] row, int first) {
            int column = first;
            return new Cut(
                    new LotId((String) row[column++]),
                    (Integer) row[column++],
                    new Placement(
                            (Double) row[column++],
                            (Double) row[column++],
                            (String) row[column++],
                            (Double) row[column++],
                            (Double) row[column++],
                            (String) row[column]));
        }

        Link of(LotId parent) {
            return new Link(lot, FIRST_ORDINAL + ordinal, OverlappingCuts.doubt(parent, placement));
        }
    }
}
