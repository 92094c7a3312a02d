package dev.reelproof.store.access;

import dev.reelproof.access.Action;
import dev.reelproof.access.Approval;
import dev.reelproof.access.ApprovalConflictException;
import dev.reelproof.access.Caller;
import dev.reelproof.access.Callers;
import io.quarkus.security.ForbiddenException;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.hibernate.Session;

/**
 * Requests by one person and decisions by another: the means of what needs two persons.
 *
 * <p>That the two differ is seen to here, for the sentence, and by the database, for certain.
 */
@ApplicationScoped
public class Approvals {
    private static final String COLUMNS =
            "id, action, subject, reason, requested_by, requested, approved, decided_by, decided, decision_reason";

    private final Session session;
    private final Callers callers;
    private final AuditTrail audit;

    Approvals(Session session, Callers callers, AuditTrail audit) {
        this.session = session;
        this.callers = callers;
        this.audit = audit;
    }

    /**
     * Asks for an approval, as the current caller.
     *
     * @throws ForbiddenException when the caller is not a person who may
     */
    @Transactional
    public Approval request(String plant, Action action, String subject, String reason, Instant now) {
        Caller caller = personWhoMay(plant);
        Object[] row = session.createNativeQuery(
                        """
                        insert into approval (plant, action, subject, reason, requested_by, requested)
                        values (:plant, :action, :subject, :reason, :by, :now) returning %s"""
                                .formatted(COLUMNS),
                        Object[].class)
                .setParameter("plant", plant)
                .setParameter("action", action.word())
                .setParameter("subject", subject)
                .setParameter("reason", reason)
                .setParameter("by", caller.name())
                .setParameter("now", now)
                .getSingleResult();
        Approval approval = approval(row);
        audit.write(plant, "approval-requested", subject(approval), reason, about(approval));
        return approval;
    }

    /**
     * Decides, as the current caller.
     *
     * @return the approval as it stands now; empty when the plant has none of that id
     * @throws ForbiddenException when the caller is not a person who may
     * @throws ApprovalConflictException when the caller asked for it, or it was decided before
     */
    @Transactional
    public Optional<Approval> decide(String plant, long id, boolean approve, String reason, Instant now) {
        Caller caller = personWhoMay(plant);
        Optional<Approval> asked = session.createNativeQuery(
                        "select " + COLUMNS + " from approval where plant = :plant and id = :id for update",
                        Object[].class)
                .setParameter("plant", plant)
                .setParameter("id", id)
                .uniqueResultOptional()
                .map(Approvals::approval);
        if (asked.isEmpty()) {
            return Optional.empty();
        }
        requireOpen(asked.get());
        if (caller.isPerson(asked.get().requestedBy())) {
            throw new ApprovalConflictException(
                    "You asked for approval " + id + " yourself; somebody else must decide on it.");
        }
        Object[] row = session.createNativeQuery(
                        """
                        update approval set approved = :approve, decided_by = :by, decided = :now, decision_reason = :reason
                        where plant = :plant and id = :id returning %s"""
                                .formatted(COLUMNS),
                        Object[].class)
                .setParameter("approve", approve)
                .setParameter("by", caller.name())
                .setParameter("now", now)
                .setParameter("reason", reason)
                .setParameter("plant", plant)
                .setParameter("id", id)
                .getSingleResult();
        Approval decided = approval(row);
        audit.write(plant, approve ? "approval-given" : "approval-refused", subject(decided), reason, about(decided));
        return Optional.of(decided);
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
                        "select " + COLUMNS + " from approval where plant = :plant and id < :before"
                                + (open ? " and decided is null" : "") + " order by id desc limit :limit",
                        Object[].class)
                .setParameter("plant", plant)
                .setParameter("before", before)
                .setParameter("limit", limit)
                .getResultList()
                .stream()
                .map(Approvals::approval)
                .toList();
    }

    private Caller personWhoMay(String plant) {
        Caller caller = callers.current();
        caller.require(Action.APPROVE, plant);
        caller.requirePerson();
        return caller;
    }

    private static void requireOpen(Approval approval) {
        if (approval.approved() != null) {
            throw new ApprovalConflictException("Approval " + approval.id() + " was "
                    + (approval.approved() ? "given" : "refused") + " by " + approval.decidedBy() + " on "
                    + approval.decided().toLocalDate() + "; a decision does not change: ask for a new approval.");
        }
    }

    private static String subject(Approval approval) {
        return "approval/" + approval.id();
    }

    private static Map<String, String> about(Approval approval) {
        return Map.of(
                "action", approval.action(),
                "subject", approval.subject(),
                "requestedBy", approval.requestedBy());
    }

    private static Approval approval(Object[] row) {
        return new Approval(
                ((Number) row[0]).longValue(),
                (String) row[1],
                (String) row[2],
                (String) row[3],
                (String) row[4],
                utc(row[5]),
                (Boolean) row[6],
                (String) row[7],
                utc(row[8]),
                (String) row[9]);
    }

    private static OffsetDateTime utc(Object instant) {
        return instant == null ? null : ((Instant) instant).atOffset(ZoneOffset.UTC);
    }
}
