package dev.reelproof.store.hold;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.List;
import org.hibernate.Session;

/** Tells of many reels at once which of them open holds reach. */
@ApplicationScoped
public class HeldReels {
    /**
     * Each lot counts once for each reel, however many ways lead to it. While nothing is open, nothing is climbed. {@code offset 0}
     * keeps the database from reading a whole table where it cannot guess how few lots are above: each is found by its key.
     */
    private static final String FIND =
            """
            with recursive open as materialized (
                select h.id, h.lot, h.run, h.machine, h.window_from, h.window_to,
                       exists (select from hold_release e where e.plant = h.plant and e.hold = h.id) as released_in_part
                from hold h
                where h.plant = :plant
                  and not exists (select from hold_release e
                                  where e.plant = h.plant and e.hold = h.id and e.range_unit is null)),
            above(reel, id) as (
                select reel, reel from unnest(cast(:reels as text[])) as reel where exists (select from open)
                union
                select a.reel, i.parent
                from above a
                cross join lateral (select parent from lot_input where plant = :plant and child = a.id offset 0) i),
            lots as (select distinct id from above),
            met as materialized (
                select s.id, l.run, l.machine, coalesce(r.started, l.made) as began, l.made as ended
                from lots s
                left join lateral (select run, machine, made from lot where plant = :plant and id = s.id offset 0) l on true
                left join step_run r on r.plant = :plant and r.id = l.run),
            reached as (
                select m.id, o.released_in_part from met m join open o on o.lot = m.id
                union all
                select m.id, o.released_in_part from met m join open o on o.run = m.run
                union all
                select m.id, o.released_in_part from met m join open o on o.machine = m.machine
                    and o.window_from <= m.ended and o.window_to >= m.began)
            select a.reel, bool_and(h.released_in_part) from above a join reached h on h.id = a.id group by a.reel""";

    private final Session session;

    HeldReels(Session session) {
        this.session = session;
    }

    /**
     * A reel that open holds reach.
     *
     * @param reel its number
     * @param inPartOnly whether of every hold above it some stretch was released, which may have freed it
     */
    public record Reached(String reel, boolean inPartOnly) {}

    /** Those of some reels that open holds reach. */
    @Transactional
    public List<Reached> among(String plant, Collection<String> reels) {
        return session.createNativeQuery(FIND, Reached.class)
                .setParameter("plant", plant)
                .setParameter("reels", reels.toArray(String[]::new))
                .getResultList();
    }
}
