package dev.reelproof.store.hold;

import dev.reelproof.store.StatementTimeout;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Duration;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.hibernate.Session;

/** Tells of many reels at once which are under an open hold, as {@link Holds#ofReel} does of one. */
@ApplicationScoped
public class HeldReels {
    private static final Duration LONGEST_SEARCH = Duration.ofSeconds(10);
    private static final String TOO_LONG =
            "which of the reels are on hold was not found within 10s; ask for fewer reels, or again when the database is less busy";

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
    private final StatementTimeout timeout;
    private final Holds holds;

    HeldReels(Session session, StatementTimeout timeout, Holds holds) {
        this.session = session;
        this.timeout = timeout;
        this.holds = holds;
    }

    /** @param inPartOnly whether of every hold above it some stretch was released, which may have freed it */
    private record Row(String reel, boolean inPartOnly) {}

    /**
     * Those of some reels that are under an open hold.
     *
     * @throws dev.reelproof.store.SearchTooLargeException when this is not found in time
     */
    @Transactional
    public Set<String> among(String plant, Collection<String> reels) {
        List<Row> rows = timeout.within(LONGEST_SEARCH, TOO_LONG, () -> session.createNativeQuery(FIND, Row.class)
                .setParameter("plant", plant)
                .setParameter("reels", reels.toArray(String[]::new))
                .getResultList());
        Set<String> held = new HashSet<>();
        for (Row row : rows) {
            if (!row.inPartOnly() || !holds.ofReel(plant, row.reel()).isEmpty()) {
                held.add(row.reel());
            }
        }
        return held;
    }
}
