package dev.reelproof.store.access;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.reelproof.access.AuditEntry;
import dev.reelproof.access.AuditFilter;
import dev.reelproof.access.Caller;
import dev.reelproof.access.Callers;
import dev.reelproof.seal.LeafKind;
import dev.reelproof.store.UtcTimes;
import dev.reelproof.store.seal.Sealing;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.hibernate.Session;
import org.hibernate.query.NativeQuery;
import org.jspecify.annotations.Nullable;

/** The audit trail. Entries are added and never changed; each is kept, or not, with the change that it tells of. */
@ApplicationScoped
public class AuditTrail {
    private static final ObjectMapper JSON = new ObjectMapper();

    /** A subject without its kind and the slash: as in the index audit_entry_identifier, or that index is not used. */
    private static final String IDENTIFIER = "substr(subject, strpos(subject, '/') + 1)";

    private final Session session;
    private final Callers callers;
    private final Sealing sealing;

    AuditTrail(Session session, Callers callers, Sealing sealing) {
        this.session = session;
        this.callers = callers;
        this.sealing = sealing;
    }

    /**
     * Writes what the current caller changed, in the transaction of the change.
     *
     * @param plant the plant whose trail it is
     * @param action what was done, such as {@code test-taken}
     * @param subject what it was done to: kind, slash, identifier, such as {@code reel/R-1}
     * @param reason why; absent when none was asked for
     * @param details what else there is to know, in values that JSON has; never a secret
     */
    @Transactional(Transactional.TxType.MANDATORY)
    public void write(String plant, String action, String subject, @Nullable String reason, Map<String, ?> details) {
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
        List<String> ids = session.createNativeQuery(
                        """
                        insert into audit_entry (plant, actor, actor_kind, from_address, action, subject, details)
                        select :plant, :actor, :kind, cast(:from as text), :action, entry.key, cast(entry.value as jsonb)
                        from json_each(cast(:details as json)) as entry
                        returning cast(id as text)""",
                        String.class)
                .setParameter("plant", plant)
                .setParameter("actor", caller.name())
                .setParameter("kind", caller.kind().word())
                .setParameter("from", caller.from())
                .setParameter("action", action)
                .setParameter("details", json(details))
                .getResultList();
        sealing.seal(LeafKind.AUDIT_ENTRY, plant, ids);
    }

    /** Writes what somebody did who is not the current caller yet, such as a person who just signed in. */
    @Transactional(Transactional.TxType.MANDATORY)
    public void write(
            Caller caller,
            String plant,
            String action,
            String subject,
            @Nullable String reason,
            Map<String, ?> details) {
        String id = session.createNativeQuery(
                        """
                        insert into audit_entry (plant, actor, actor_kind, from_address, action, subject, reason, details)
                        values (:plant, :actor, :kind, cast(:from as text), :action, :subject, cast(:reason as text),
                                cast(:details as jsonb))
                        returning cast(id as text)""",
                        String.class)
                .setParameter("plant", plant)
                .setParameter("actor", caller.name())
                .setParameter("kind", caller.kind().word())
                .setParameter("from", caller.from())
                .setParameter("action", action)
                .setParameter("subject", subject)
                .setParameter("reason", reason)
                .setParameter("details", json(details))
                .getSingleResult();
        sealing.seal(LeafKind.AUDIT_ENTRY, plant, List.of(id));
    }

    record EntryRow(
            long id,
            Instant at,
            String actor,
            String actorKind,
            @Nullable String from,
            String action,
            String subject,
            @Nullable String reason,
            String details) {
        AuditEntry entry() {
            return new AuditEntry(id, UtcTimes.utc(at), actor, actorKind, from, action, subject, reason, details);
        }
    }

    /** Entries of a plant, newest first. */
    @Transactional
    public List<AuditEntry> entries(String plant, AuditFilter filter, int limit) {
        Map<String, Object> conditions = new TreeMap<>();
        conditions.put("plant = :plant", plant);
        putUnlessNull(
                conditions, filter.namesKind() ? "subject = :subject" : IDENTIFIER + " = :subject", filter.subject());
        putUnlessNull(conditions, "actor = :actor", filter.actor());
        putUnlessNull(conditions, "action = :action", filter.action());
        putUnlessNull(conditions, "id < :before", filter.before());
        NativeQuery<EntryRow> query = session.createNativeQuery(
                "select id, at, actor, actor_kind, from_address, action, subject, reason, cast(details as text)"
                        + " from audit_entry where " + String.join(" and ", conditions.keySet())
                        + " order by id desc limit :limit",
                EntryRow.class);
        conditions.forEach(
                (condition, value) -> query.setParameter(condition.substring(condition.indexOf(':') + 1), value));
        return query.setParameter("limit", limit).getResultList().stream()
                .map(EntryRow::entry)
                .toList();
    }

    private static void putUnlessNull(Map<String, Object> conditions, String condition, @Nullable Object value) {
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
