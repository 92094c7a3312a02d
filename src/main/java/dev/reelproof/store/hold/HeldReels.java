package dev.reelproof.store.hold;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.List;
import org.hibernate.Session;

/** Tells of many reels at once which of them open holds reach. */
@ApplicationScoped
public class HeldReels {
    private static final String TOO_LONG =
            "which of the reels are on hold was not found within 10s; ask for fewer reels, or again when the database is less busy";

    /** Each lot counts once for each reel, however many ways lead to it. While nothing is open, nothing is climbed. */
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
                select a.reel, i.parent from above a join lot_input i on i.plant = :plant and i.child = a.id),
            met as materialized (
                select a.reel, a.id, l.run, l.machine, coalesce(r.started, l.made) as began, l.made as ended
                from above a
                left join lot l on l.plant = :plant and l.id = a.id
                left join step_run r on r.plant = l.plant and r.id = l.run),
            reached as (
                select m.reel, o.released_in_part from met m join open o on o.lot = m.id
                union all
                select m.reel, o.released_in_part from met m join open o on o.run = m.run
                union all
                select m.reel, o.released_in_part from met m join open o on o.machine = m.machine
                    and o.window_from <= m.ended and o.window_to >= m.began)
            select reel, bool_and(released_in_part) from reached group by reel""";

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
