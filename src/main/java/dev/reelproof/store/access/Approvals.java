package dev.reelproof.store.access;

import dev.reelproof.access.Action;
import dev.reelproof.access.Approval;
import dev.reelproof.store.AdvisoryLocks;
import dev.reelproof.store.UtcTimes;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.hibernate.Session;
import org.jspecify.annotations.Nullable;

/** Requests by one person and decisions by another. The database itself refuses a decision by the requester. */
@ApplicationScoped
public class Approvals {
    private static final String SELECT =
            """
            select id, action, subject, reason, requested_by, requested, approved, decided_by, decided, decision_reason
            from approval""";

    private final Session session;

    Approvals(Session session) {
        this.session = session;
    }

    record ApprovalRow(
            long id,
            String action,
            String subject,
            String reason,
            String requestedBy,
            Instant requested,
            @Nullable Boolean approved,
            @Nullable String decidedBy,
            @Nullable Instant decided,
            @Nullable String decisionReason) {
        Approval approval() {
            return new Approval(
                    id,
                    action,
                    subject,
                    reason,
                    requestedBy,
                    UtcTimes.utc(requested),
                    approved,
                    decidedBy,
                    UtcTimes.utcOrNull(decided),
                    decisionReason);
        }
    }

    /** Keeps a request, open as yet. */
    @Transactional(Transactional.TxType.MANDATORY)
    public Approval insert(
            String plant, Action action, String subject, String reason, String requestedBy, OffsetDateTime now) {
        long id = session.createNativeQuery(
                        """
                        insert into approval (plant, action, subject, reason, requested_by, requested)
                        values (:plant, :action, :subject, :reason, :by, :now) returning id""",
                        Long.class)
                .setParameter("plant", plant)
                .setParameter("action", action.word())
                .setParameter("subject", subject)
                .setParameter("reason", reason)
                .setParameter("by", requestedBy)
                .setParameter("now", UtcTimes.instant(now))
                .getSingleResult();
        return Approval.open(id, action.word(), subject, reason, requestedBy, now);
    }

    /** Lets nobody else ask for the same until this transaction ends. */
    @Transactional(Transactional.TxType.MANDATORY)
    public void lockSubject(String plant, Action action, String subject) {
        AdvisoryLocks.take(session, plant + "/approval/" + action.word() + "/" + subject);
    }

    /** The approval of an action on a subject that nobody decided yet; empty when there is none. */
    @Transactional
    public Optional<Approval> openOf(String plant, Action action, String subject) {
        return session
                .createNativeQuery(
                        SELECT
                                + """
                                 where plant = :plant and decided is null and action = :action and subject = :subject
                                order by id limit 1""",
                        ApprovalRow.class)
                .setParameter("plant", plant)
                .setParameter("action", action.word())
                .setParameter("subject", subject)
                .getResultList()
                .stream()
                .map(ApprovalRow::approval)
                .findFirst();
    }

    /** The approval of that id, which nobody else decides until the transaction ends. */
    @Transactional(Transactional.TxType.MANDATORY)
    public Optional<Approval> lock(String plant, long id) {
        return session.createNativeQuery(SELECT + " where plant = :plant and id = :id for update", ApprovalRow.class)
                .setParameter("plant", plant)
                .setParameter("id", id)
                .uniqueResultOptional()
                .map(ApprovalRow::approval);
    }

    /** Keeps the decision on an approval. */
    @Transactional(Transactional.TxType.MANDATORY)
    public void decide(String plant, Approval decided) {
        session.createNativeMutationQuery(
                        """
                        update approval set approved = :approved, decided_by = :by, decided = :at, decision_reason = :reason
                        where plant = :plant and id = :id""")
                .setParameter("approved", decided.approved())
                .setParameter("by", decided.decidedBy())
                .setParameter("at", UtcTimes.instantOrNull(decided.decided()))
                .setParameter("reason", decided.decisionReason())
                .setParameter("plant", plant)
                .setParameter("id", decided.id())
                .executeUpdate();
    }

    /**
     * Approvals of a plant, newest first.
     *
     * @param open only those that nobody decided yet
     * @param before only those of a lower id
     */
    @Transactional
    public List<Approval> list(String plant, boolean open, long before, int limit) {
        return session
                .createNativeQuery(
                        SELECT + " where plant = :plant and id < :before" + (open ? " and decided is null" : "")
                                + " order by id desc limit :limit",
                        ApprovalRow.class)
                .setParameter("plant", plant)
                .setParameter("before", before)
                .setParameter("limit", limit)
                .getResultList()
                .stream()
                .map(ApprovalRow::approval)
                .toList();
    }
}
