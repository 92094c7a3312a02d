package dev.reelproof.store.reel;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.judgement.Outcome;
import dev.reelproof.judgement.Verdict;
import dev.reelproof.measurement.LengthMarks;
import dev.reelproof.record.ReelLine;
import dev.reelproof.record.RegisteredReel;
import dev.reelproof.search.Searched;
import dev.reelproof.store.AdvisoryLocks;
import dev.reelproof.store.RowJson;
import dev.reelproof.store.UtcTimes;
import dev.reelproof.store.search.SearchIndex;
import jakarta.enterprise.context.ApplicationScoped;
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
import org.jspecify.annotations.Nullable;

/** The reels of each plant. */
@ApplicationScoped
public class Reels {
    private final Session session;
    private final SearchIndex searched;

    Reels(Session session, SearchIndex searched) {
        this.session = session;
        this.searched = searched;
    }

    /** A reel beside its newest record, which one that was never tested does not have. */
    private record LineRow(
            String plant,
            String id,
            String product,
            double lengthMetres,
            double lengthSent,
            String lengthUnit,
            @Nullable Double firstMark,
            @Nullable Double lastMark,
            @Nullable String markUnit,
            @Nullable String orderNumber,
            @Nullable String customer,
            Instant registered,
            @Nullable UUID record,
            @Nullable String verdict,
            boolean conditionalPass,
            @Nullable Instant received,
            @Nullable Instant finished) {
        ReelLine line() {
            Verdict cameTo = verdict == null ? null : Verdict.valueOf(verdict.toUpperCase(Locale.ROOT));
            return new ReelLine(
                    new ReelRow(
                                    plant,
                                    id,
                                    product,
                                    lengthMetres,
                                    lengthSent,
                                    lengthUnit,
                                    firstMark,
                                    lastMark,
                                    markUnit,
                                    orderNumber,
                                    customer,
                                    registered)
                            .reel(),
                    record,
                    cameTo,
                    cameTo == Verdict.ACCEPTED && conditionalPass,
                    UtcTimes.utcOrNull(received),
                    UtcTimes.utcOrNull(finished));
        }
    }

    /**
     * Registers a reel or changes what is registered of it; the time of the first registration stays. Its product must be
     * registered. The same registration again changes nothing.
     *
     * @return what it changed
     */
    @Transactional
    public Changes put(RegisteredReel reel) {
        AdvisoryLocks.take(session, reel.plant() + "/reel/" + reel.id());
        Changes changes = Changes.between(byId(reel.plant(), reel.id()).map(Reels::registration), registration(reel));
        if (!changes.isEmpty()) {
            LengthMarks marks = reel.lengthMarks();
            session.createNativeMutationQuery(
                            """
                            insert into reel (plant, id, product, length_m, length_sent, length_unit, first_mark, last_mark,
                                              mark_unit, order_number, customer, registered)
                            values (:plant, :id, :product, :metres, :sent, :unit, cast(:firstMark as double precision),
                                    cast(:lastMark as double precision), cast(:markUnit as text), cast(:order as text),
                                    cast(:customer as text), :now)
                            on conflict (plant, id) do update set product = excluded.product, length_m = excluded.length_m,
                                length_sent = excluded.length_sent, length_unit = excluded.length_unit,
                                first_mark = excluded.first_mark, last_mark = excluded.last_mark, mark_unit = excluded.mark_unit,
                                order_number = excluded.order_number, customer = excluded.customer""")
                    .setParameter("plant", reel.plant())
                    .setParameter("id", reel.id())
                    .setParameter("product", reel.product())
                    .setParameter("metres", reel.length().metres())
                    .setParameter("sent", reel.sentLength())
                    .setParameter("unit", reel.sentUnit())
                    .setParameter("firstMark", marks == null ? null : marks.first(), Double.class)
                    .setParameter("lastMark", marks == null ? null : marks.last(), Double.class)
                    .setParameter("markUnit", marks == null ? null : marks.unit())
                    .setParameter("order", reel.order())
                    .setParameter("customer", reel.customer())
                    .setParameter("now", UtcTimes.instant(reel.registered()))
                    .executeUpdate();
            haveFound(reel);
        }
        return changes;
    }

    private void haveFound(RegisteredReel reel) {
        Instant at = UtcTimes.instant(reel.registered());
        searched.put(reel.plant(), Searched.REEL, reel.id(), at);
        searched.put(reel.plant(), Searched.ORDER, reel.order(), at);
        searched.put(reel.plant(), Searched.CUSTOMER, reel.customer(), at);
        searched.put(reel.plant(), Searched.PRODUCT, reel.product(), at);
    }

    /** What is registered of a reel, as the audit trail compares it. */
    private static String registration(RegisteredReel reel) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("product", reel.product());
        node.putObject("length").put("value", reel.sentLength()).put("unit", reel.sentUnit());
        LengthMarks marks = reel.lengthMarks();
        if (marks != null) {
            node.putObject("lengthMarks")
                    .put("first", marks.first())
                    .put("last", marks.last())
                    .put("unit", marks.unit());
        }
        node.put("order", reel.order());
        node.put("customer", reel.customer());
        return RowJson.write(node);
    }

    /** The reel of a number; empty when there is none. */
    @Transactional
    public Optional<RegisteredReel> byId(String plant, String id) {
        return session.createNativeQuery(
                        "select " + ReelRow.COLUMNS + " from reel r where r.plant = :plant and r.id = :id",
                        ReelRow.class)
                .setParameter("plant", plant)
                .setParameter("id", id)
                .uniqueResultOptional()
                .map(ReelRow::reel);
    }

    /** The registered reels among these. */
    @Transactional
    public Map<LotId, RegisteredReel> byIds(String plant, Collection<LotId> ids) {
        return session
                .createNativeQuery(
                        "select " + ReelRow.COLUMNS + " from reel r where r.plant = :plant and r.id = any(:ids)",
                        ReelRow.class)
                .setParameter("plant", plant)
                .setParameter("ids", ids.stream().map(LotId::value).toArray(String[]::new))
                .getResultList()
                .stream()
                .map(ReelRow::reel)
                .collect(Collectors.toMap(reel -> new LotId(reel.id()), Function.identity()));
    }

    /**
     * Keeps other transactions from adding to a reel until this one ends.
     *
     * @throws IllegalArgumentException when there is no such reel
     */
    @Transactional(Transactional.TxType.MANDATORY)
    public void lock(String plant, String id) {
        boolean isLocked = session.createNativeQuery(
                        "select id from reel where plant = :plant and id = :id for no key update", String.class)
                .setParameter("plant", plant)
                .setParameter("id", id)
                .uniqueResultOptional()
                .isPresent();
        if (!isLocked) {
            throw new IllegalArgumentException("unknown reel '" + id + "'");
        }
    }

    /**
     * As {@link #lock}, for a transaction that also changes what is registered of the reel: in the order of {@link #put}, so that the
     * two never wait for each other.
     *
     * @throws IllegalArgumentException when there is no such reel
     */
    @Transactional(Transactional.TxType.MANDATORY)
    public void lockForChange(String plant, String id) {
        AdvisoryLocks.take(session, plant + "/reel/" + id);
        lock(plant, id);
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
        return lines("r.searched like :which escape '!'", plant, containing(text), limit);
    }

    /** These reels, as {@link #search} lists and orders them; those that are not registered are left out. */
    @Transactional
    public List<ReelLine> linesOf(String plant, Collection<String> ids) {
        return lines("r.id = any(cast(:which as text[]))", plant, ids.toArray(String[]::new), ids.size());
    }

    private List<ReelLine> lines(String condition, String plant, Object which, int limit) {
        // An upload's row is not partitioned and knows the newest record; its time leads to the one partition.
        // The newest has no later test; asked so, it is found of many reels at once without a look-up a reel.
        // Only the records of the reels that are listed are looked up.
        return session
                .createNativeQuery(
                        """
                        select %s, t.id, t.verdict,
                               exists (select from finding f
                                       where f.plant = t.plant and f.record_id = t.id and f.received = t.received
                                         and f.outcome = :conditionalPass),
                               coalesce(again.received, r.newest), t.finished
                        from (select r.*, u.record_id, u.received as newest, u.tested
                              from reel r
                              left join upload u on u.plant = r.plant and u.reel = r.id
                                and not exists (select from upload later where later.plant = u.plant
                                                and later.reel = u.reel and (later.tested, later.attempt) > (u.tested, u.attempt))
                              where r.plant = :plant and %s
                              order by u.tested desc nulls last, u.received desc nulls last, r.registered desc, r.id
                              limit :limit) r
                        left join lateral (select j.record_id, j.received from judged_again j
                                           where j.plant = r.plant and j.of_record = r.record_id
                                           order by j.received desc limit 1) again on true
                        left join test_record t on t.plant = r.plant and t.id = coalesce(again.record_id, r.record_id)
                          and t.received = coalesce(again.received, r.newest)
                        order by r.tested desc nulls last, r.newest desc nulls last, r.registered desc, r.id"""
                                .formatted(ReelRow.COLUMNS, condition),
                        LineRow.class)
                .setParameter("plant", plant)
                .setParameter("conditionalPass", Outcome.CONDITIONAL_PASS.word())
                .setParameter("which", which)
                .setParameter("limit", limit)
                .getResultList()
                .stream()
                .map(LineRow::line)
                .toList();
    }

    /** The pattern of {@code like … escape '!'} for a text within a searched column. */
    public static String containing(String text) {
        String literal = text.strip().toLowerCase(Locale.ROOT).replaceAll("[!%_]", "!$0");
        return "%" + literal + "%";
    }
}
