package dev.reelproof.store.reel;

import dev.reelproof.genealogy.Disposition;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.store.AdvisoryLocks;
import dev.reelproof.store.UtcTimes;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.hibernate.Session;
import org.jspecify.annotations.Nullable;

/** Where reels went. Entries are added, never changed; the latest counts. */
@ApplicationScoped
public class Dispositions {
    private final Session session;

    Dispositions(Session session) {
        this.session = session;
    }

    private record Row(
            String reel, String state, @Nullable String recipient, @Nullable String reason, String actor, Instant at) {
        Disposition entry() {
            return new Disposition(
                    new LotId(reel), Disposition.State.named(state), recipient, reason, actor, UtcTimes.utc(at));
        }
    }

    /** Adds an entry. */
    @Transactional
    public void add(String plant, Disposition entry) {
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
    public List<Disposition> of(String plant, LotId reel) {
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
    public Map<LotId, Disposition> latest(String plant, Collection<LotId> reels) {
        Map<LotId, Disposition> latest = new TreeMap<>();
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
