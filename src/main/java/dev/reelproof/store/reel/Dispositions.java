package dev.reelproof.store.reel;

import dev.reelproof.genealogy.LotId;
import dev.reelproof.store.AdvisoryLocks;
import dev.reelproof.store.UtcTimes;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.hibernate.Session;

/** Where reels went. Entries are added, never changed; the latest counts. */
@ApplicationScoped
public class Dispositions {
    private final Session session;

    Dispositions(Session session) {
        this.session = session;
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
    public record Entry(LotId reel, State state, String recipient, String reason, String actor, OffsetDateTime at) {

        public Entry {
            if (reel == null || state == null || at == null) {
                throw new IllegalArgumentException("where a reel is needs the reel, the state and the time");
            }
            if (actor == null || actor.isBlank()) {
                throw new IllegalArgumentException("where reel " + reel + " is needs who told it");
            }
            if ((state == State.SHIPPED) != (recipient != null)) {
                throw new IllegalArgumentException(
                        "reel " + reel + " is said to be " + state.word() + " and to have gone to " + recipient
                                + "; what was shipped went to somebody, and nothing else did");
            }
        }
    }

    private record Row(String reel, String state, String recipient, String reason, String actor, Instant at) {
        Entry entry() {
            return new Entry(new LotId(reel), State.named(state), recipient, reason, actor, UtcTimes.utc(at));
        }
    }

    /** Adds an entry. */
    @Transactional
    public void add(String plant, Entry entry) {
        AdvisoryLocks.take(session, plant + "/disposition/" + entry.reel());
        session.createNativeMutationQuery(
                        """
                        insert into reel_disposition (plant, reel, state, recipient, reason, actor, at)
                        values (:plant, :reel, :state, cast(:recipient as text), cast(:reason as text), :actor, :at)""")
                .setParameter("plant", plant)
                .setParameter("reel", entry.reel().value())
                .setParameter("state", entry.state().word())
                .setParameter("recipient", entry.recipient())
                .setParameter("reason", entry.reason())
                .setParameter("actor", entry.actor())
                .setParameter("at", UtcTimes.instant(entry.at()))
                .executeUpdate();
    }

    /** All entries of a reel, newest first. */
    @Transactional
    public List<Entry> of(String plant, LotId reel) {
        return session
                .createNativeQuery(
                        """
                        select reel, state, recipient, reason, actor, at from reel_disposition
                        where plant = :plant and reel = :reel order by id desc""",
                        Row.class)
                .setParameter("plant", plant)
                .setParameter("reel", reel.value())
                .getResultList()
                .stream()
                .map(Row::entry)
                .toList();
    }

    /** The latest entry of each of these reels that has any. */
    @Transactional
    public Map<LotId, Entry> latest(String plant, Collection<LotId> reels) {
        Map<LotId, Entry> latest = new TreeMap<>();
        session.createNativeQuery(
                        """
                        select distinct on (reel) reel, state, recipient, reason, actor, at from reel_disposition
                        where plant = :plant and reel = any(:reels) order by reel, id desc""",
                        Row.class)
                .setParameter("plant", plant)
                .setParameter("reels", reels.stream().map(LotId::value).toArray(String[]::new))
                .getResultList()
                .forEach(row -> latest.put(new LotId(row.reel()), row.entry()));
        return latest;
    }
}
