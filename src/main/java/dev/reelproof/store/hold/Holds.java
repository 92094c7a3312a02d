package dev.reelproof.store.hold;

import dev.reelproof.access.Action;
import dev.reelproof.access.Caller;
import dev.reelproof.access.Callers;
import dev.reelproof.genealogy.Amount;
import dev.reelproof.genealogy.Hold;
import dev.reelproof.genealogy.HoldTarget;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.genealogy.PartialRelease;
import dev.reelproof.genealogy.Pedigree;
import dev.reelproof.store.AdvisoryLocks;
import dev.reelproof.store.SearchTooLargeException;
import dev.reelproof.store.UtcTimes;
import dev.reelproof.store.access.AuditTrail;
import dev.reelproof.store.lot.Lots;
import dev.reelproof.store.reel.Reels;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.QueryTimeoutException;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Supplier;
import org.hibernate.Session;
import org.hibernate.query.NativeQuery;

/**
 * Holds and their releases. Nothing is copied to what descends from what is held: whether a reel is held is asked from the reel
 * upwards, each time, so that what is registered later is held too.
 */
@ApplicationScoped
public class Holds {
    private static final String LONGEST_SEARCH = "10s";
    private static final String COLUMNS =
            "h.id, h.what, coalesce(h.lot, h.run, h.machine), h.window_from, h.window_to, h.reason, h.held_by,"
                    + " h.held_by_kind, h.held";
    private static final String IS_OPEN =
            """
            not exists (select from hold_release e
                        where e.plant = h.plant and e.hold = h.id and e.range_unit is null)""";

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
                    .formatted(IS_OPEN);

    private static final String STARTS_OF_LOT = "select cast(:name as text)";
    private static final String STARTS_OF_RUN = "select id from lot where run = :name and plant = :plant";
    private static final String STARTS_OF_MACHINE =
            """
            select l.id from lot l left join step_run r on r.plant = l.plant and r.id = l.run
            where l.plant = :plant and l.machine = :name and l.made >= :from and coalesce(r.started, l.made) <= :to""";

    private static final String COUNT_REELS_BELOW =
            """
            with recursive below(id) as (
                select id from (%s) as starts(id)
                union
                select i.child from below b join lot_input i on i.plant = :plant and i.parent = b.id)
            select count(*) from below b
            left join lot l on l.plant = :plant and l.id = b.id
            left join reel e on e.plant = :plant and e.id = b.id
            where l.kind = 'reel' or e.id is not null""";

    private final Session session;
    private final Callers callers;
    private final AuditTrail audit;
    private final Lots lots;
    private final Reels reels;

    Holds(Session session, Callers callers, AuditTrail audit, Lots lots, Reels reels) {
        this.session = session;
        this.callers = callers;
        this.audit = audit;
        this.lots = lots;
        this.reels = reels;
    }

    private static String turn(String plant) {
        return plant + "/holds";
    }

    /**
     * Lets no hold be placed until this transaction ends, so that a reel that is found free in it stays free as long. A hold that is
     * placed meanwhile waits, and one that was placed just before is seen.
     */
    @Transactional(Transactional.TxType.MANDATORY)
    public void keepOut(String plant) {
        AdvisoryLocks.share(session, turn(plant));
    }

    /**
     * Places a hold, as the current caller.
     *
     * @throws io.quarkus.security.ForbiddenException when the caller may not
     */
    @Transactional
    public Hold place(String plant, HoldTarget target, String reason, OffsetDateTime now) {
        Caller caller = callers.current();
        caller.require(Action.HOLD, plant);
        AdvisoryLocks.take(session, turn(plant));
        boolean isMachine = target.what() == HoldTarget.What.MACHINE;
        boolean isRun = target.what() == HoldTarget.What.RUN;
        long id = session.createNativeQuery(
                        """
                        insert into hold (plant, what, lot, run, machine, window_from, window_to, reason, held_by, held_by_kind, held)
                        values (:plant, :what, cast(:lot as text), cast(:run as text), cast(:machine as text),
                                cast(:from as timestamptz), cast(:to as timestamptz), :reason, :by, :kind, :now)
                        returning id""",
                        Long.class)
                .setParameter("plant", plant)
                .setParameter("what", target.what().word())
                .setParameter("lot", isMachine || isRun ? null : target.name())
                .setParameter("run", isRun ? target.name() : null)
                .setParameter("machine", isMachine ? target.name() : null)
                .setParameter("from", UtcTimes.instant(target.from()), Instant.class)
                .setParameter("to", UtcTimes.instant(target.to()), Instant.class)
                .setParameter("reason", reason)
                .setParameter("by", caller.name())
                .setParameter("kind", caller.kind().word())
                .setParameter("now", UtcTimes.instant(now))
                .getSingleResult();
        audit.write(plant, "hold-placed", subject(id), reason, about(target));
        return new Hold(id, target, reason, caller.name(), caller.kind().word(), now, List.of());
    }

    private static String subject(long id) {
        return "hold/" + id;
    }

    private static Map<String, Object> about(HoldTarget target) {
        Map<String, Object> about = new TreeMap<>(Map.of(target.what().word(), target.name()));
        if (target.from() != null) {
            about.put("from", target.from().toString());
            about.put("to", target.to().toString());
        }
        return about;
    }

    /**
     * Releases a hold, or a stretch of the held lot, as the current caller.
     *
     * @param range null for the whole hold
     * @return the hold as it stands now; empty when the plant has none of that id
     * @throws io.quarkus.security.ForbiddenException when the caller is not a person who may
     * @throws HoldConflictException when the caller placed it, or it was released before
     * @throws RangeNotOnHeldException when the range does not lie on what is held
     */
    @Transactional
    public Optional<Hold> release(String plant, long id, Hold.Range range, String reason, OffsetDateTime now) {
        Caller caller = callers.current();
        caller.require(Action.RELEASE, plant);
        AdvisoryLocks.take(session, plant + "/" + subject(id));
        Optional<Hold> found = byId(plant, id);
        if (found.isEmpty()) {
            return found;
        }
        Hold hold = found.get();
        requireOpen(hold);
        if (caller.is(hold.byKind(), hold.by())) {
            throw new HoldConflictException("You placed hold " + id + " yourself; somebody else must release it.");
        }
        caller.requirePerson();
        Map<String, Object> details = about(hold.target());
        details.put("heldBy", hold.by());
        if (range != null) {
            requireOnTarget(plant, hold, range);
            details.put("rangeFrom", range.from());
            details.put("rangeTo", range.to());
            details.put("rangeUnit", range.unit());
        }
        session.createNativeMutationQuery(
                        """
                        insert into hold_release (plant, hold, ordinal, range_from, range_to, range_unit, reason, held_by,
                                                  held_by_kind, released_by, released)
                        values (:plant, :hold, :ordinal, cast(:from as double precision), cast(:to as double precision),
                                cast(:unit as text), :reason, :heldBy, :heldByKind, :by, :now)""")
                .setParameter("plant", plant)
                .setParameter("hold", id)
                .setParameter("ordinal", hold.releases().size())
                .setParameter("from", range == null ? null : range.from(), Double.class)
                .setParameter("to", range == null ? null : range.to(), Double.class)
                .setParameter("unit", range == null ? null : range.unit())
                .setParameter("reason", reason)
                .setParameter("heldBy", hold.by())
                .setParameter("heldByKind", hold.byKind())
                .setParameter("by", caller.name())
                .setParameter("now", UtcTimes.instant(now))
                .executeUpdate();
        audit.write(plant, range == null ? "hold-released" : "hold-released-in-part", subject(id), reason, details);
        return byId(plant, id);
    }

    private static void requireOpen(Hold hold) {
        if (!hold.isOpen()) {
            Hold.Release last = hold.releases().get(hold.releases().size() - 1);
            throw new HoldConflictException("Hold " + hold.id() + " was released by " + last.by() + " on "
                    + last.at().toLocalDate() + "; place a new hold if it must be held again.");
        }
    }

    private void requireOnTarget(String plant, Hold hold, Hold.Range range) {
        if (!hold.target().hasLength()) {
            throw new RangeNotOnHeldException("hold " + hold.id() + " is of " + hold.target()
                    + "; a range is a stretch of one lot: release the hold whole, and hold the lots that must stay");
        }
        Amount quantity = quantity(plant, new LotId(hold.target().name()))
                .orElseThrow(() -> new RangeNotOnHeldException("the length of " + hold.target()
                        + " is not known yet; register it first, or release the hold whole"));
        try {
            range.requireOn(hold.target().toString(), quantity);
        } catch (IllegalArgumentException e) {
            throw new RangeNotOnHeldException(e.getMessage());
        }
    }

    private Optional<Amount> quantity(String plant, LotId id) {
        return lots.byId(plant, id).map(lot -> lot.lot().quantity()).or(() -> reels.byId(plant, id.value())
                .map(reel -> new Amount(reel.length().metres(), "m")));
    }

    /** The hold of that id. */
    @Transactional
    public Optional<Hold> byId(String plant, long id) {
        return byIds(plant, List.of(id)).stream().findFirst();
    }

    private List<Hold> byIds(String plant, Collection<Long> ids) {
        return ids.isEmpty()
                ? List.of()
                : holds(
                        plant,
                        session.createNativeQuery(
                                        "select " + COLUMNS
                                                + " from hold h where h.plant = :plant and h.id = any(:ids) order by h.id",
                                        Object[].class)
                                .setParameter("ids", ids.toArray(Long[]::new)));
    }

    /**
     * Holds of a plant, newest first.
     *
     * @param open only those that were not released whole
     * @param before only those of a lower id
     */
    @Transactional
    public List<Hold> list(String plant, boolean open, long before, int limit) {
        return holds(
                plant,
                session.createNativeQuery(
                                "select " + COLUMNS + " from hold h where h.plant = :plant and h.id < :before"
                                        + (open ? " and " + IS_OPEN : "") + " order by h.id desc limit :limit",
                                Object[].class)
                        .setParameter("before", before)
                        .setParameter("limit", limit));
    }

    private List<Hold> holds(String plant, NativeQuery<Object[]> query) {
        List<Object[]> rows = query.setParameter("plant", plant).getResultList();
        Map<Long, List<Hold.Release>> releases = new HashMap<>();
        session.createNativeQuery(
                        """
                        select hold, range_from, range_to, range_unit, reason, released_by, released from hold_release
                        where plant = :plant and hold = any(:ids) order by hold, ordinal""",
                        Object[].class)
                .setParameter("plant", plant)
                .setParameter("ids", rows.stream().map(row -> (Long) row[0]).toArray(Long[]::new))
                .getResultList()
                .forEach(row -> releases.computeIfAbsent((Long) row[0], id -> new ArrayList<>())
                        .add(new Hold.Release(
                                row[3] == null
                                        ? null
                                        : new Hold.Range((Double) row[1], (Double) row[2], (String) row[3]),
                                (String) row[4],
                                (String) row[5],
                                UtcTimes.utc((Instant) row[6]))));
        return rows.stream()
                .map(row -> new Hold(
                        (Long) row[0],
                        new HoldTarget(
                                HoldTarget.What.named((String) row[1]),
                                (String) row[2],
                                UtcTimes.utc((Instant) row[3]),
                                UtcTimes.utc((Instant) row[4])),
                        (String) row[5],
                        (String) row[6],
                        (String) row[7],
                        UtcTimes.utc((Instant) row[8]),
                        releases.getOrDefault((Long) row[0], List.of())))
                .toList();
    }

    /**
     * The open holds that a reel is under: of itself, its lot, an ancestor, the run of any of these, or their machine at their time;
     * but for those of which a release by length frees it.
     *
     * @throws SearchTooLargeException when this is not found in time
     */
    @Transactional
    public List<Hold> ofReel(String plant, String reel) {
        return inTime(() -> {
            List<Long> ids = session.createNativeQuery(FIND_OPEN_ABOVE, Long.class)
                    .setParameter("plant", plant)
                    .setParameter("reel", reel)
                    .getResultList();
            return byIds(plant, ids).stream()
                    .filter(hold -> hold.releasedStretches().isEmpty() || !isFreed(plant, reel, hold))
                    .toList();
        });
    }

    private boolean isFreed(String plant, String reel, Hold hold) {
        LotId id = new LotId(reel);
        return lots.ancestorsOfReel(plant, id)
                .map(pedigree -> freed(pedigree, hold).contains(id))
                .orElse(false);
    }

    private static Set<LotId> freed(Pedigree pedigree, Hold hold) {
        return PartialRelease.freed(pedigree, new LotId(hold.target().name()), hold.releasedStretches());
    }

    /**
     * How many registered reels a hold holds now; none once it was released.
     *
     * @throws SearchTooLargeException when they are too many to be counted in time
     */
    @Transactional
    public long countReels(String plant, Hold hold) {
        if (!hold.isOpen()) {
            return 0;
        }
        return inTime(() -> {
            if (!hold.releasedStretches().isEmpty()) {
                LotId held = new LotId(hold.target().name());
                Optional<Pedigree> pedigree =
                        lots.allDescendants(plant, held).or(() -> lots.ancestorsOfReel(plant, held));
                if (pedigree.isPresent()) {
                    Set<LotId> freed = freed(pedigree.get(), hold);
                    return pedigree.get().lots().stream()
                            .map(Pedigree.Entry::lot)
                            .filter(lot -> lot.kind() == LotKind.REEL && !freed.contains(lot.id()))
                            .count();
                }
            }
            return countBelow(plant, hold.target());
        });
    }

    private long countBelow(String plant, HoldTarget target) {
        String starts =
                switch (target.what()) {
                    case LOT, REEL -> STARTS_OF_LOT;
                    case RUN -> STARTS_OF_RUN;
                    case MACHINE -> STARTS_OF_MACHINE;
                };
        NativeQuery<Long> query = session.createNativeQuery(COUNT_REELS_BELOW.formatted(starts), Long.class)
                .setParameter("plant", plant)
                .setParameter("name", target.name());
        if (target.from() != null) {
            query.setParameter("from", UtcTimes.instant(target.from()))
                    .setParameter("to", UtcTimes.instant(target.to()));
        }
        return query.getSingleResult();
    }

    /** Whether the plant knows what is to be held: as registered, or from a report that waits. */
    @Transactional
    public boolean isKnown(String plant, HoldTarget target) {
        String search =
                switch (target.what()) {
                    case LOT -> """
                            exists (select from lot where plant = :plant and id = :name)
                            or exists (select from waiting_report where plant = :plant and lot = :name)
                            or exists (select from waiting_parent where plant = :plant and parent = :name)""";
                    case REEL -> """
                            exists (select from lot where plant = :plant and id = :name and kind = 'reel')
                            or exists (select from reel where plant = :plant and id = :name)""";
                    case RUN -> "exists (select from step_run where plant = :plant and id = :name)";
                    case MACHINE -> "exists (select from lot where plant = :plant and machine = :name)";
                };
        return session.createNativeQuery("select " + search, Boolean.class)
                .setParameter("plant", plant)
                .setParameter("name", target.name())
                .getSingleResult();
    }

    /** Bounds a search, and nothing that follows it in the transaction. */
    private <T> T inTime(Supplier<T> search) {
        String before = session.createNativeQuery("select current_setting('statement_timeout')", String.class)
                .getSingleResult();
        limitTime(LONGEST_SEARCH);
        try {
            T found = search.get();
            limitTime(before);
            return found;
        } catch (QueryTimeoutException e) {
            throw new SearchTooLargeException("what holds concern was not found within " + LONGEST_SEARCH
                    + "; ask again when the database is less busy");
        }
    }

    private void limitTime(String most) {
        session.createNativeQuery("select set_config('statement_timeout', :most, true)", String.class)
                .setParameter("most", most)
                .getSingleResult();
    }
}
