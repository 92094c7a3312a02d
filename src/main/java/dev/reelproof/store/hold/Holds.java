package dev.reelproof.store.hold;

import dev.reelproof.genealogy.hold.Hold;
import dev.reelproof.genealogy.hold.HoldTarget;
import dev.reelproof.seal.LeafKind;
import dev.reelproof.store.AdvisoryLocks;
import dev.reelproof.store.UtcTimes;
import dev.reelproof.store.seal.Sealing;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.hibernate.Session;

/** Keeps holds and their releases. Both are added, never changed. */
@ApplicationScoped
public class Holds {
    /** Whether nobody has released the whole of hold h. */
    static final String IS_OPEN =
            """
            not exists (select from hold_release e
                        where e.plant = h.plant and e.hold = h.id and e.range_unit is null)""";

    private final Session session;
    private final Sealing sealing;

    Holds(Session session, Sealing sealing) {
        this.session = session;
        this.sealing = sealing;
    }

    /**
     * Lets no hold be placed until this transaction ends, so that a reel that it finds free stays free as long. A hold that is placed
     * meanwhile waits, and one that was placed just before is seen.
     */
    @Transactional(Transactional.TxType.MANDATORY)
    public void keepOut(String plant) {
        AdvisoryLocks.share(session, placing(plant));
    }

    /** Waits until whatever kept holds out has ended, and places holds alone until this transaction ends. */
    @Transactional(Transactional.TxType.MANDATORY)
    public void lockForPlacing(String plant) {
        AdvisoryLocks.take(session, placing(plant));
    }

    private static String placing(String plant) {
        return plant + "/holds";
    }

    /** Lets nobody else release a hold until this transaction ends. */
    @Transactional(Transactional.TxType.MANDATORY)
    public void lockForRelease(String plant, long id) {
        AdvisoryLocks.take(session, plant + "/hold/" + id);
    }

    /**
     * Keeps a hold.
     *
     * @param by who places it
     * @param byKind what kind of caller that is
     */
    @Transactional(Transactional.TxType.MANDATORY)
    public Hold keep(String plant, HoldTarget target, String reason, String by, String byKind, OffsetDateTime now) {
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
                .setParameter("from", UtcTimes.instantOrNull(target.from()), Instant.class)
                .setParameter("to", UtcTimes.instantOrNull(target.to()), Instant.class)
                .setParameter("reason", reason)
                .setParameter("by", by)
                .setParameter("kind", byKind)
                .setParameter("now", UtcTimes.instant(now))
                .getSingleResult();
        sealing.seal(LeafKind.HOLD, plant, List.of(Long.toString(id)));
        return new Hold(id, target, reason, by, byKind, now, List.of());
    }

    /** Keeps a release of a hold; the database takes none by the person who placed it, and none after the whole was released. */
    @Transactional(Transactional.TxType.MANDATORY)
    public void keep(String plant, Hold hold, Hold.Release release) {
        Hold.Range range = release.range();
        session.createNativeMutationQuery(
                        """
                        insert into hold_release (plant, hold, ordinal, range_from, range_to, range_unit, reason, held_by,
                                                  held_by_kind, released_by, released)
                        values (:plant, :hold, :ordinal, cast(:from as double precision), cast(:to as double precision),
                                cast(:unit as text), :reason, :heldBy, :heldByKind, :by, :now)""")
                .setParameter("plant", plant)
                .setParameter("hold", hold.id())
                .setParameter("ordinal", hold.releases().size())
                .setParameter("from", range == null ? null : range.from(), Double.class)
                .setParameter("to", range == null ? null : range.to(), Double.class)
                .setParameter("unit", range == null ? null : range.unit())
                .setParameter("reason", release.reason())
                .setParameter("heldBy", hold.by())
                .setParameter("heldByKind", hold.byKind())
                .setParameter("by", release.by())
                .setParameter("now", UtcTimes.instant(release.at()))
                .executeUpdate();
        sealing.seal(
                LeafKind.HOLD_RELEASE,
                plant,
                List.of(hold.id() + "/" + hold.releases().size()));
    }

    /** The hold of that number. */
    @Transactional
    public Optional<Hold> byId(String plant, long id) {
        return byIds(plant, List.of(id)).stream().findFirst();
    }

    /** The holds of these numbers, in the order of their numbers. */
    @Transactional
    public List<Hold> byIds(String plant, Collection<Long> ids) {
        if (ids.isEmpty()) {
            return List.of();
        }
        return withReleases(
                plant,
                session.createNativeQuery(
                                "select " + HoldRow.COLUMNS
                                        + " from hold h where h.plant = :plant and h.id = any(:ids) order by h.id",
                                HoldRow.class)
                        .setParameter("plant", plant)
                        .setParameter("ids", ids.toArray(Long[]::new))
                        .getResultList());
    }

    /**
     * Holds of a plant, newest first.
     *
     * @param open only those that nobody has released whole
     * @param before only those of a lower number
     */
    @Transactional
    public List<Hold> list(String plant, boolean open, long before, int limit) {
        return withReleases(
                plant,
                session.createNativeQuery(
                                "select " + HoldRow.COLUMNS + " from hold h where h.plant = :plant and h.id < :before"
                                        + (open ? " and " + IS_OPEN : "") + " order by h.id desc limit :limit",
                                HoldRow.class)
                        .setParameter("plant", plant)
                        .setParameter("before", before)
                        .setParameter("limit", limit)
                        .getResultList());
    }

    private List<Hold> withReleases(String plant, List<HoldRow> holds) {
        Map<Long, List<ReleaseRow>> releases = session
                .createNativeQuery(
                        "select " + ReleaseRow.COLUMNS
                                + " from hold_release where plant = :plant and hold = any(:ids) order by hold, ordinal",
                        ReleaseRow.class)
                .setParameter("plant", plant)
                .setParameter("ids", holds.stream().map(HoldRow::id).toArray(Long[]::new))
                .getResultList()
                .stream()
                .collect(Collectors.groupingBy(ReleaseRow::hold));
        return holds.stream()
                .map(hold -> hold.toHold(releases.getOrDefault(hold.id(), List.of())))
                .toList();
    }
}
