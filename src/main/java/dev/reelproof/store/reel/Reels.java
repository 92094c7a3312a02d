package dev.reelproof.store.reel;

import dev.reelproof.genealogy.LotId;
import dev.reelproof.store.AdvisoryLocks;
import dev.reelproof.store.Changes;
import dev.reelproof.store.RowJson;
import dev.reelproof.store.UtcTimes;
import dev.reelproof.store.access.AuditTrail;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.hibernate.Session;

/** The reels of each plant. */
@ApplicationScoped
public class Reels {
    private final Session session;
    private final AuditTrail audit;

    Reels(Session session, AuditTrail audit) {
        this.session = session;
        this.audit = audit;
    }

    /**
     * Registers a reel or changes what is registered of it; the time of the first registration stays. Its product must be
     * registered. The same registration again changes nothing.
     *
     * @return whether it is new
     */
    @Transactional
    public boolean put(RegisteredReel reel) {
        String name = "reel/" + reel.id();
        AdvisoryLocks.take(session, reel.plant() + "/" + name);
        Optional<RegisteredReel> before = byId(reel.plant(), reel.id());
        Map<String, Object> changes = Changes.between(before.map(RowJson::reel).orElse("{}"), RowJson.reel(reel));
        if (before.isPresent() && changes.isEmpty()) {
            return false;
        }
        session.createNativeMutationQuery(
                        """
                        insert into reel (plant, id, product, length_m, length_sent, length_unit, order_number, customer, registered)
                        values (:plant, :id, :product, :metres, :sent, :unit, cast(:order as text), cast(:customer as text), :now)
                        on conflict (plant, id) do update set product = excluded.product, length_m = excluded.length_m,
                            length_sent = excluded.length_sent, length_unit = excluded.length_unit,
                            order_number = excluded.order_number, customer = excluded.customer""")
                .setParameter("plant", reel.plant())
                .setParameter("id", reel.id())
                .setParameter("product", reel.product())
                .setParameter("metres", reel.length().metres())
                .setParameter("sent", reel.sentLength())
                .setParameter("unit", reel.sentUnit())
                .setParameter("order", reel.order())
                .setParameter("customer", reel.customer())
                .setParameter("now", UtcTimes.instant(reel.registered()))
                .executeUpdate();
        session.flush();
        session.clear();
        audit.write(reel.plant(), before.isEmpty() ? "reel-registered" : "reel-changed", name, null, changes);
        return before.isEmpty();
    }

    @Transactional
    public Optional<RegisteredReel> byId(String plant, String id) {
        return ReelRow.<ReelRow>find("plant = ?1 and id = ?2", plant, id)
                .firstResultOptional()
                .map(ReelRow::toReel);
    }

    /** The registered reels among these. */
    @Transactional
    public Map<LotId, RegisteredReel> byIds(String plant, Collection<LotId> ids) {
        return session
                .createNativeQuery("select * from reel where plant = :plant and id = any(:ids)", ReelRow.class)
                .setParameter("plant", plant)
                .setParameter("ids", ids.stream().map(LotId::value).toArray(String[]::new))
                .getResultList()
                .stream()
                .map(ReelRow::toReel)
                .collect(Collectors.toMap(reel -> new LotId(reel.id()), Function.identity()));
    }

    /**
     * Keeps other transactions from adding to a reel until this one ends.
     *
     * @throws IllegalArgumentException when there is no such reel
     */
    @Transactional(Transactional.TxType.MANDATORY)
    public void lock(String plant, String id) {
        boolean there = ReelRow.<ReelRow>find("plant = ?1 and id = ?2", plant, id)
                .withLock(LockModeType.PESSIMISTIC_WRITE)
                .firstResultOptional()
                .isPresent();
        if (!there) {
            throw new IllegalArgumentException("unknown reel '" + id + "'");
        }
    }

    /**
     * Reels whose number, product, order or customer contains the text, whatever its case; the newest tested first, then the
     * newest registered.
     *
     * @param text what to look for; empty for all
     * @param limit how many at most
     */
    @Transactional
    public List<ReelLine> search(String plant, String text, int limit) {
        // An upload's row is not partitioned and knows the newest record; its time leads to the one partition.
        List<Object[]> found = session.createNativeQuery(
                        """
                        select r.id, u.record_id, t.verdict, u.received
                        from reel r
                        left join lateral (select record_id, received from upload
                                           where plant = r.plant and reel = r.id
                                           order by attempt desc limit 1) u on true
                        left join test_record t
                          on t.plant = r.plant and t.id = u.record_id and t.received = u.received
                        where r.plant = :plant and r.searched like :pattern escape '!'
                        order by u.received desc nulls last, r.registered desc, r.id
                        limit :limit""",
                        Object[].class)
                .setParameter("plant", plant)
                .setParameter("pattern", containing(text))
                .setParameter("limit", limit)
                .getResultList();
        return found.stream()
                .map(row -> new ReelLine(
                        byId(plant, (String) row[0]).orElseThrow(),
                        (UUID) row[1],
                        (String) row[2],
                        UtcTimes.utc((Instant) row[3])))
                .toList();
    }

    /** The pattern of {@code like … escape '!'} for a text within a searched column. */
    public static String containing(String text) {
        String literal = text.strip().toLowerCase(Locale.ROOT).replaceAll("[!%_]", "!$0");
        return "%" + literal + "%";
    }
}
