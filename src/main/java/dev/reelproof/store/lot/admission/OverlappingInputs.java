package dev.reelproof.store.lot.admission;

import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.Placement;
import dev.reelproof.store.lot.Identifiers;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.List;
import org.hibernate.Session;

/** Finds lots whose stretches of one parent lie across each other, without reading all that was made from it. */
@ApplicationScoped
public class OverlappingInputs {
    /** The database cannot estimate how many rows lie across a stretch, and a plan for many would read all before the first. */
    private static final String PLAN = "select set_config('enable_bitmapscan', 'off', true)";

    /**
     * Finds the inputs of these lots, each with those of other lots across its stretch. Where an earlier input has exactly the same
     * stretch, it gives that one alone: whatever else lies across was found when that one came. So each of many reports with the same
     * wrong position costs no more than the first.
     *
     * <p>"is not distinct" is written because no index serves it: the index of the parent would be read whole. "offset 0" makes it one
     * look for each lot, also while the table has no statistics.
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

    OverlappingInputs(Session session) {
        this.session = session;
    }

    /**
     * An input with its place.
     *
     * @param lot the child
     * @param ordinal the place of the input among the child's inputs
     */
    public record PlacedInput(LotId lot, int ordinal, Placement placement) {}

    /**
     * Inputs of two lots that lie across each other on their parent, be it by a rounding alone.
     *
     * @param made of one of the lots that were asked for
     * @param other of any other lot, which may have been asked for too
     */
    public record Pair(LotId parent, PlacedInput made, PlacedInput other) {}

    private record Row(
            String parent,
            String child,
            int ordinal,
            double from,
            double to,
            String unit,
            double ontoFrom,
            double ontoTo,
            String ontoUnit,
            String otherChild,
            int otherOrdinal,
            double otherFrom,
            double otherTo,
            String otherUnit,
            double otherOntoFrom,
            double otherOntoTo,
            String otherOntoUnit) {
        Pair pair() {
            return new Pair(
                    new LotId(parent),
                    new PlacedInput(
                            new LotId(child), ordinal, new Placement(from, to, unit, ontoFrom, ontoTo, ontoUnit)),
                    new PlacedInput(
                            new LotId(otherChild),
                            otherOrdinal,
                            new Placement(otherFrom, otherTo, otherUnit, otherOntoFrom, otherOntoTo, otherOntoUnit)));
        }
    }

    /** The inputs of these lots that lie across one of another lot, those registered in this transaction included. */
    @Transactional(Transactional.TxType.MANDATORY)
    public List<Pair> of(String plant, Collection<LotId> lots) {
        session.createNativeQuery(PLAN, String.class).getSingleResult();
        return session
                .createNativeQuery(FIND, Row.class)
                .setParameter("plant", plant)
                .setParameter("ids", Identifiers.of(lots))
                .getResultList()
                .stream()
                .map(Row::pair)
                .toList();
    }
}
