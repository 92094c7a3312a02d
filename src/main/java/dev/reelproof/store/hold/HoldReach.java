package dev.reelproof.store.hold;

import dev.reelproof.genealogy.LotKind;
import dev.reelproof.genealogy.hold.HoldTarget;
import dev.reelproof.store.UtcTimes;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.List;
import org.hibernate.Session;
import org.hibernate.query.NativeQuery;

/** Which holds reach a reel, and how many reels a hold reaches: searches up and down the links between lots. */
@ApplicationScoped
public class HoldReach {
    /** Only identifiers go round: each lot counts once, however many ways lead to it. While nothing is open, nothing is climbed. */
    private static final String FIND_OPEN_ABOVE =
            """
            with recursive above(id) as (
                select cast(:reel as text) where exists (select from hold h where h.plant = :plant and %1$s)
                union
                select i.parent from above a join lot_input i on i.plant = :plant and i.child = a.id),
            met as (
                select l.run, l.machine, coalesce(r.started, l.made) as began, l.made as ended
                from above a join lot l on l.plant = :plant and l.id = a.id
                left join step_run r on r.plant = l.plant and r.id = l.run),
            reached as (
                select h.id from above a join hold h on h.plant = :plant and h.lot = a.id
                union
                select h.id from met m join hold h on h.plant = :plant and h.run = m.run
                union
                select h.id from met m join hold h on h.plant = :plant and h.machine = m.machine
                    and h.window_from <= m.ended and h.window_to >= m.began)
            select h.id from hold h where h.plant = :plant and h.id in (select id from reached) and %1$s order by h.id"""
                    .formatted(Holds.IS_OPEN);

    private static final String STARTS_OF_LOT = "select cast(:name as text)";
    private static final String STARTS_OF_RUN = "select id from lot where run = :name and plant = :plant";
    private static final String STARTS_OF_MACHINE =
            """
            select l.id from lot l left join step_run r on r.plant = l.plant and r.id = l.run
            where l.plant = :plant and l.machine = :name and l.made >= :from and coalesce(r.started, l.made) <= :to""";

    private static final String BELOW =
            """
            with recursive below(id) as (
                select id from (%s) as starts(id)
                union
                select i.child from below b join lot_input i on i.plant = :plant and i.parent = b.id)
            """;

    private static final String CERTIFIED_REELS_BELOW = BELOW
            + """
            select b.id from below b
            where exists (select from certificate c where c.plant = :plant and c.reel = b.id) order by b.id limit :most""";

    private static final String COUNT_REELS_BELOW = BELOW
            + """
            select count(*) from below b
            left join lot l on l.plant = :plant and l.id = b.id
            left join reel e on e.plant = :plant and e.id = b.id
            where l.kind = :reelKind or e.id is not null""";

    private final Session session;

    HoldReach(Session session) {
        this.session = session;
    }

    /**
     * The numbers of the open holds above a reel, in order: of itself, its lot, an ancestor, the run of any of these, or their machine
     * at their time. Releases by length are not looked at.
     */
    @Transactional
    public List<Long> openAbove(String plant, String reel) {
        return session.createNativeQuery(FIND_OPEN_ABOVE, Long.class)
                .setParameter("plant", plant)
                .setParameter("reel", reel)
                .getResultList();
    }

    /** How many registered reels descend from what a hold names. */
    @Transactional
    public long countReelsBelow(String plant, HoldTarget target) {
        return below(COUNT_REELS_BELOW, Long.class, plant, target)
                .setParameter("reelKind", LotKind.REEL.word())
                .getSingleResult();
    }

    /**
     * The numbers of reels that have a certificate and descend from what a hold names, in order.
     *
     * @param most how many at most
     */
    @Transactional
    public List<String> certifiedReelsBelow(String plant, HoldTarget target, int most) {
        return below(CERTIFIED_REELS_BELOW, String.class, plant, target)
                .setParameter("most", most)
                .getResultList();
    }

    private <T> NativeQuery<T> below(String search, Class<T> type, String plant, HoldTarget target) {
        String starts =
                switch (target.what()) {
                    case LOT, REEL -> STARTS_OF_LOT;
                    case RUN -> STARTS_OF_RUN;
                    case MACHINE -> STARTS_OF_MACHINE;
                };
        NativeQuery<T> query = session.createNativeQuery(search.formatted(starts), type)
                .setParameter("plant", plant)
                .setParameter("name", target.name());
        if (target.from() != null) {
            query.setParameter("from", UtcTimes.instantOrNull(target.from()))
                    .setParameter("to", UtcTimes.instantOrNull(target.to()));
        }
        return query;
    }

    /** Whether the plant knows what is to be held: as registered, or from a report that waits. */
    @Transactional
    public boolean isKnown(String plant, HoldTarget target) {
        return switch (target.what()) {
            case LOT -> exists(
                    plant,
                    target,
                    """
                    exists (select from lot where plant = :plant and id = :name)
                    or exists (select from waiting_report where plant = :plant and lot = :name)
                    or exists (select from waiting_parent where plant = :plant and parent = :name)""");
            case REEL -> exists(plant, target, "exists (select from reel where plant = :plant and id = :name)")
                    || isLotOfKindReel(plant, target);
            case RUN -> exists(plant, target, "exists (select from step_run where plant = :plant and id = :name)");
            case MACHINE -> exists(plant, target, "exists (select from lot where plant = :plant and machine = :name)");
        };
    }

    private boolean exists(String plant, HoldTarget target, String search) {
        return session.createNativeQuery("select " + search, Boolean.class)
                .setParameter("plant", plant)
                .setParameter("name", target.name())
                .getSingleResult();
    }

    private boolean isLotOfKindReel(String plant, HoldTarget target) {
        return session.createNativeQuery(
                        "select exists (select from lot where plant = :plant and id = :name and kind = :reelKind)",
                        Boolean.class)
                .setParameter("plant", plant)
                .setParameter("name", target.name())
                .setParameter("reelKind", LotKind.REEL.word())
                .getSingleResult();
    }
}
