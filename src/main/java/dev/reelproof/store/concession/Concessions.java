package dev.reelproof.store.concession;

import dev.reelproof.record.concession.Concession;
import dev.reelproof.record.concession.Terms;
import dev.reelproof.seal.LeafKind;
import dev.reelproof.store.AdvisoryLocks;
import dev.reelproof.store.RowJson;
import dev.reelproof.store.UtcTimes;
import dev.reelproof.store.seal.Sealing;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.hibernate.Session;
import org.hibernate.query.NativeQuery;
import org.jspecify.annotations.Nullable;

/** Keeps concessions and their decisions. Both are added, never changed. */
@ApplicationScoped
public class Concessions {
    private static final String SELECT = "select " + ConcessionRow.COLUMNS;

    private final Session session;
    private final Sealing sealing;

    Concessions(Session session, Sealing sealing) {
        this.session = session;
        this.sealing = sealing;
    }

    /** Keeps what was asked for, with the number that it gets; that of the argument is not read. */
    @Transactional(Transactional.TxType.MANDATORY)
    public Concession keep(String plant, Concession asked) {
        Terms terms = asked.terms();
        String product = terms instanceof Terms.Regrade regrade ? regrade.product() : null;
        Terms.@Nullable Shorten shorten = terms instanceof Terms.Shorten cut ? cut : null;
        long id = session.createNativeQuery(
                        """
                        insert into concession (plant, reel, record_id, kind, requirements, from_product, product, from_length,
                                                from_unit, length, length_unit, reason, requested_by, requested_role, requested)
                        values (:plant, :reel, :record, :kind, cast(:requirements as jsonb), :fromProduct, cast(:product as text),
                                :fromLength, :fromUnit, cast(:length as double precision), cast(:unit as text), :reason, :by, :role,
                                :now)
                        returning id""",
                        Long.class)
                .setParameter("plant", plant)
                .setParameter("reel", asked.reel())
                .setParameter("record", asked.record())
                .setParameter("kind", terms.kind().word())
                .setParameter("requirements", RowJson.sentences(asked.requirements()))
                .setParameter("fromProduct", asked.before().product())
                .setParameter("product", product)
                .setParameter("fromLength", asked.before().length())
                .setParameter("fromUnit", asked.before().unit())
                .setParameter("length", shorten == null ? null : shorten.value(), Double.class)
                .setParameter("unit", shorten == null ? null : shorten.unit())
                .setParameter("reason", asked.reason())
                .setParameter("by", asked.requestedBy().name())
                .setParameter("role", asked.requestedBy().role())
                .setParameter("now", UtcTimes.instant(asked.requested()))
                .getSingleResult();
        sealing.seal(LeafKind.CONCESSION, plant, List.of(Long.toString(id)));
        return byId(plant, id).orElseThrow();
    }

    /** Lets nobody else decide on a concession until this transaction ends. */
    @Transactional(Transactional.TxType.MANDATORY)
    public void lockForDecision(String plant, long id) {
        AdvisoryLocks.take(session, plant + "/concession/" + id);
    }

    /** Keeps a decision; the database takes one alone, and none by the person who asked. */
    @Transactional(Transactional.TxType.MANDATORY)
    public void keep(String plant, Concession concession, Concession.Decision decision) {
        session.createNativeMutationQuery(
                        """
                        insert into concession_decision (plant, concession, requested_by, approved, reason, decided_by, decided_role,
                                                         decided, new_record)
                        values (:plant, :concession, :requestedBy, :approved, :reason, :by, :role, :now, cast(:newRecord as uuid))""")
                .setParameter("plant", plant)
                .setParameter("concession", concession.id())
                .setParameter("requestedBy", concession.requestedBy().name())
                .setParameter("approved", decision.approved())
                .setParameter("reason", decision.reason())
                .setParameter("by", decision.by().name())
                .setParameter("role", decision.by().role())
                .setParameter("now", UtcTimes.instant(decision.at()))
                .setParameter("newRecord", decision.newRecord(), UUID.class)
                .executeUpdate();
        sealing.seal(LeafKind.CONCESSION_DECISION, plant, List.of(Long.toString(concession.id())));
    }

    /** The concession of that number. */
    @Transactional
    public Optional<Concession> byId(String plant, long id) {
        return concessions(session.createNativeQuery(
                                SELECT + " where c.plant = :plant and c.id = :id", ConcessionRow.class)
                        .setParameter("plant", plant)
                        .setParameter("id", id))
                .stream()
                .findFirst();
    }

    /** The concessions of a reel, newest first. */
    @Transactional
    public List<Concession> ofReel(String plant, String reel) {
        return concessions(session.createNativeQuery(
                        SELECT + " where c.plant = :plant and c.reel = :reel order by c.id desc", ConcessionRow.class)
                .setParameter("plant", plant)
                .setParameter("reel", reel));
    }

    /** The concessions of each of these reels that has one, newest first. */
    @Transactional
    public Map<String, List<Concession>> ofReels(String plant, Collection<String> reels) {
        return concessions(session.createNativeQuery(
                                SELECT + " where c.plant = :plant and c.reel = any(:reels) order by c.id desc",
                                ConcessionRow.class)
                        .setParameter("plant", plant)
                        .setParameter("reels", reels.toArray(String[]::new)))
                .stream()
                .collect(Collectors.groupingBy(Concession::reel));
    }

    /**
     * Concessions of a plant, newest first.
     *
     * @param undecided only those that nobody decided yet
     * @param before only those of a lower number
     */
    @Transactional
    public List<Concession> list(String plant, boolean undecided, long before, int limit) {
        return concessions(session.createNativeQuery(
                        SELECT + " where c.plant = :plant and c.id < :before"
                                + (undecided ? " and d.concession is null" : "") + " order by c.id desc limit :limit",
                        ConcessionRow.class)
                .setParameter("plant", plant)
                .setParameter("before", before)
                .setParameter("limit", limit));
    }

    private static List<Concession> concessions(NativeQuery<ConcessionRow> query) {
        return query.getResultList().stream().map(ConcessionRow::concession).toList();
    }
}
