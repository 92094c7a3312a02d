package dev.reelproof.store.reel;

import dev.reelproof.access.Callers;
import dev.reelproof.genealogy.Hold;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.store.AdvisoryLocks;
import dev.reelproof.store.UtcTimes;
import dev.reelproof.store.access.AuditTrail;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.hibernate.Session;

/** Where reels went. Entries are added, never changed; the latest counts. */
@ApplicationScoped
public class Dispositions {
    private final Session session;
    private final Callers callers;
    private final AuditTrail audit;

    Dispositions(Session session, Callers callers, AuditTrail audit) {
        this.session = session;
        this.callers = callers;
        this.audit = audit;
    }

    /** Where a reel can be. */
    public enum State {
        IN_STOCK("in-stock"),
        SHIPPED("shipped"),
        SCRAPPED("scrapped");

        private final String word;

        State(String word) {
            this.word = word;
        }

        /** The state as requests and answers spell it. */
        public String word() {
            return word;
        }

        /**
         * The state of that word.
         *
         * @throws IllegalArgumentException when there is none
         */
        public static State named(String word) {
            for (State state : values()) {
                if (state.word.equals(word)) {
                    return state;
                }
            }
            throw new IllegalArgumentException("unknown state '" + word + "'; a reel is in-stock, shipped or scrapped");
        }
    }

    /**
     * An entry.
     *
     * @param reel the reel
     * @param state where it is
     * @param recipient to whom it was shipped; null when it was not
     * @param reason why; null when not said
     * @param actor who told it
     * @param at when it was told, in UTC
     */
    public record Entry(LotId reel, State state, String recipient, String reason, String actor, OffsetDateTime at) {}

    /**
     * Adds an entry.
     *
     * @param recipient to whom; given when it was shipped, and only then
     * @param reason null when not said
     * @param held the open holds that it was shipped under all the same
     */
    @Transactional
    public Entry tell(
            String plant,
            LotId reel,
            State state,
            String recipient,
            String reason,
            List<Hold> held,
            OffsetDateTime now) {
        AdvisoryLocks.take(session, plant + "/disposition/" + reel);
        String actor = callers.current().name();
        session.createNativeMutationQuery(
                        """
                        insert into reel_disposition (plant, reel, state, recipient, reason, actor, at)
                        values (:plant, :reel, :state, cast(:recipient as text), cast(:reason as text), :actor, :now)""")
                .setParameter("plant", plant)
                .setParameter("reel", reel.value())
                .setParameter("state", state.word())
                .setParameter("recipient", recipient)
                .setParameter("reason", reason)
                .setParameter("actor", actor)
                .setParameter("now", UtcTimes.instant(now))
                .executeUpdate();
        Map<String, Object> details = new TreeMap<>(Map.of("state", state.word()));
        if (recipient != null) {
            details.put("to", recipient);
        }
        if (!held.isEmpty()) {
            details.put(
                    "held", held.stream().map(hold -> Long.toString(hold.id())).toList());
        }
        audit.write(plant, "reel-" + state.word(), "reel/" + reel, reason, details);
        return new Entry(reel, state, recipient, reason, actor, now);
    }

    private static Entry entry(Object[] row) {
        int column = 0;
        return new Entry(
                new LotId((String) row[column++]),
                State.named((String) row[column++]),
                (String) row[column++],
                (String) row[column++],
                (String) row[column++],
                UtcTimes.utc((Instant) row[column]));
    }

    /** All entries of a reel, newest first. */
    @Transactional
    public List<Entry> of(String plant, LotId reel) {
        List<Entry> entries = new ArrayList<>();
        session.createNativeQuery(
                        """
                        select reel, state, recipient, reason, actor, at from reel_disposition
                        where plant = :plant and reel = :reel order by id desc""",
                        Object[].class)
                .setParameter("plant", plant)
                .setParameter("reel", reel.value())
                .getResultList()
                .forEach(row -> entries.add(entry(row)));
        return entries;
    }

    /** The latest entry of each of these reels that has any. */
    @Transactional
    public Map<LotId, Entry> latest(String plant, Collection<LotId> reels) {
        Map<LotId, Entry> latest = new TreeMap<>();
        session.createNativeQuery(
                        """
                        select distinct on (reel) reel, state, recipient, reason, actor, at from reel_disposition
                        where plant = :plant and reel = any(:reels) order by reel, id desc""",
                        Object[].class)
                .setParameter("plant", plant)
                .setParameter("reels", reels.stream().map(LotId::value).toArray(String[]::new))
                .getResultList()
                .forEach(row -> latest.put(new LotId((String) row[0]), entry(row)));
        return latest;
    }
}
