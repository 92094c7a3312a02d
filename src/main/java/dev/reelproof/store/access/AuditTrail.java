package dev.reelproof.store.access;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.reelproof.access.AuditEntry;
import dev.reelproof.access.Caller;
import dev.reelproof.access.Callers;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.hibernate.Session;
import org.hibernate.query.NativeQuery;

/** The audit trail: added to, never changed. An entry stands or falls with the change that it tells of. */
@ApplicationScoped
public class AuditTrail {
    private static final ObjectMapper JSON = new ObjectMapper();

    private final Session session;
    private final Callers callers;

    AuditTrail(Session session, Callers callers) {
        this.session = session;
        this.callers = callers;
    }

    /**
     * Writes what the current caller changed, in the transaction of the change.
     *
     * @param plant the plant whose trail it is
     * @param action what was done, such as {@code test-taken}
     * @param subject what it was done to: kind, slash, identifier, such as {@code reel/R-1}
     * @param reason why; null when none was asked for
     * @param details what else there is to know, in values that JSON has; never a secret
     */
    @Transactional(Transactional.TxType.MANDATORY)
    public void write(String plant, String action, String subject, String reason, Map<String, ?> details) {
        write(callers.current(), plant, action, subject, reason, details);
    }

    /**
     * Writes one entry a subject, of what the current caller changed in many of them at once.
     *
     * @param details by subject, as in {@link #write}
     */
    @Transactional(Transactional.TxType.MANDATORY)
    public void writeAll(String plant, String action, Map<String, ? extends Map<String, ?>> details) {
        Caller caller = callers.current();
        session.createNativeMutationQuery(
                        """
                        insert into audit_entry (plant, actor, actor_kind, from_address, action, subject, details)
                        select :plant, :actor, :kind, cast(:from as text), :action, entry.key, cast(entry.value as jsonb)
                        from json_each(cast(:details as json)) as entry""")
                .setParameter("plant", plant)
                .setParameter("actor", caller.name())
                .setParameter("kind", caller.kind().word())
                .setParameter("from", caller.from())
                .setParameter("action", action)
                .setParameter("details", json(details))
                .executeUpdate();
    }

    /** Writes what somebody did who is not the current caller by now, such as one who just signed in. */
    @Transactional(Transactional.TxType.MANDATORY)
    public void write(
            Caller caller, String plant, String action, String subject, String reason, Map<String, ?> details) {
        session.createNativeMutationQuery(
                        """
                        insert into audit_entry (plant, actor, actor_kind, from_address, action, subject, reason, details)
                        values (:plant, :actor, :kind, cast(:from as text), :action, :subject, cast(:reason as text),
                                cast(:details as jsonb))""")
                .setParameter("plant", plant)
                .setParameter("actor", caller.name())
                .setParameter("kind", caller.kind().word())
                .setParameter("from", caller.from())
                .setParameter("action", action)
                .setParameter("subject", subject)
                .setParameter("reason", reason)
                .setParameter("details", json(details))
                .executeUpdate();
    }

    /**
     * What is looked for; null stands for any.
     *
     * @param subject exactly this subject
     * @param actor exactly this actor
     * @param action exactly this action
     * @param before only entries of a lower id
     */
    public record Filter(String subject, String actor, String action, Long before) {}

    /** Entries of a plant, newest first. */
    @Transactional
    public List<AuditEntry> entries(String plant, Filter filter, int limit) {
        Map<String, Object> conditions = new TreeMap<>();
        conditions.put("plant = :plant", plant);
        putUnlessNull(conditions, "subject = :subject", filter.subject());
        putUnlessNull(conditions, "actor = :actor", filter.actor());
        putUnlessNull(conditions, "action = :action", filter.action());
        putUnlessNull(conditions, "id < :before", filter.before());
        NativeQuery<Object[]> query = session.createNativeQuery(
                "select id, at, actor, actor_kind, from_address, action, subject, reason, cast(details as text)"
                        + " from audit_entry where " + String.join(" and ", conditions.keySet())
                        + " order by id desc limit :limit",
                Object[].class);
        conditions.forEach(
                (condition, value) -> query.setParameter(condition.substring(condition.indexOf(':') + 1), value));
        return query.setParameter("limit", limit).getResultList().stream()
                .map(row -> new AuditEntry(
                        ((Number) row[0]).longValue(),
                        ((Instant) row[1]).atOffset(ZoneOffset.UTC),
                        (String) row[2],
                        (String) row[3],
                        (String) row[4],
                        (String) row[5],
                        (String) row[6],
                        (String) row[7],
                        (String) row[8]))
                .toList();
    }

    private static void putUnlessNull(Map<String, Object> conditions, String condition, Object value) {
        if (value != null) {
            conditions.put(condition, value);
        }
    }

    private static String json(Map<String, ?> details) {
        try {
            return JSON.writeValueAsString(details);
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException("details of an audit entry cannot be written as JSON", e);
        }
    }
}
