package dev.reelproof.store.limits;

import dev.reelproof.limit.WrongRevision;
import dev.reelproof.seal.LeafKind;
import dev.reelproof.store.AdvisoryLocks;
import dev.reelproof.store.UtcTimes;
import dev.reelproof.store.seal.Sealing;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.hibernate.Session;

/** The revisions of limit sets that a plant found wrong. Such a mark is added, never changed. */
@ApplicationScoped
public class WrongRevisions {
    private final Session session;
    private final Sealing sealing;

    WrongRevisions(Session session, Sealing sealing) {
        this.session = session;
        this.sealing = sealing;
    }

    private record Row(String limitSet, int revision, String reason, String askedBy, String markedBy, Instant marked) {
        WrongRevision wrong() {
            return new WrongRevision(limitSet, revision, reason, askedBy, markedBy, UtcTimes.utc(marked));
        }
    }

    /** Lets no revision be marked until this transaction ends, so that what it finds right stays right as long. */
    @Transactional(Transactional.TxType.MANDATORY)
    public void keepOut(String plant) {
        AdvisoryLocks.share(session, marking(plant));
    }

    /** Waits until whatever kept marks out has ended, and marks alone until this transaction ends. */
    @Transactional(Transactional.TxType.MANDATORY)
    public void lockForMarking(String plant) {
        AdvisoryLocks.take(session, marking(plant));
    }

    private static String marking(String plant) {
        return plant + "/limits-found-wrong";
    }

    /**
     * Keeps a mark; the database takes one a revision, by two persons.
     *
     * @param approval the id of the approval by which it is done
     */
    @Transactional(Transactional.TxType.MANDATORY)
    public void keep(String plant, WrongRevision wrong, long approval) {
        session.createNativeMutationQuery(
                        """
                        insert into limit_revision_wrong (plant, limit_set, revision, reason, asked_by, marked_by, marked, approval)
                        values (:plant, :set, :revision, :reason, :asked, :by, :at, :approval)""")
                .setParameter("plant", plant)
                .setParameter("set", wrong.limitSet())
                .setParameter("revision", wrong.revision())
                .setParameter("reason", wrong.reason())
                .setParameter("asked", wrong.askedBy())
                .setParameter("by", wrong.approvedBy())
                .setParameter("at", UtcTimes.instant(wrong.at()))
                .setParameter("approval", approval)
                .executeUpdate();
        sealing.seal(LeafKind.LIMITS_FOUND_WRONG, plant, List.of(wrong.limitSet() + "/" + wrong.revision()));
    }

    /** All that a plant found wrong, in order. */
    @Transactional
    public List<WrongRevision> all(String plant) {
        return session
                .createNativeQuery(
                        """
                        select limit_set, revision, reason, asked_by, marked_by, marked from limit_revision_wrong
                        where plant = :plant order by limit_set, revision""",
                        Row.class)
                .setParameter("plant", plant)
                .getResultList()
                .stream()
                .map(Row::wrong)
                .toList();
    }

    /** What a plant found wrong with a revision; empty when nothing. */
    @Transactional
    public Optional<WrongRevision> of(String plant, String limitSet, int revision) {
        return all(plant).stream()
                .filter(wrong -> wrong.limitSet().equals(limitSet) && wrong.revision() == revision)
                .findFirst();
    }
}
