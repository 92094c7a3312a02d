package dev.reelproof.store.order;

import dev.reelproof.access.Caller;
import dev.reelproof.access.Role;
import dev.reelproof.certificate.CertificateBatch;
import dev.reelproof.store.AdvisoryLocks;
import dev.reelproof.store.UtcTimes;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.hibernate.Session;
import org.jspecify.annotations.Nullable;

/** Certificates asked for by order, and how far they have come. */
@ApplicationScoped
public class CertificateBatches {
    private final Session session;

    CertificateBatches(Session session) {
        this.session = session;
    }

    /** What came of a reel. */
    public enum Outcome {
        ISSUED("issued"),
        ISSUED_BEFORE("issued-before"),
        NOT_ISSUED("not-issued");

        private final String word;

        Outcome(String word) {
            this.word = word;
        }
    }

    private record Row(
            long id, String order, Instant asked, String askedBy, long reels, long issued, long issuedBefore) {}

    private record TaskRow(
            String plant,
            long batch,
            int ordinal,
            String reel,
            Instant asked,
            String askedBy,
            String askedByKind,
            String askedAs,
            @Nullable String askedAt,
            @Nullable String askedFrom) {}

    /**
     * A reel that waits for its certificate.
     *
     * @param ordinal its place in the batch
     * @param asked when the batch was asked for
     * @param caller who asked
     */
    public record Task(String plant, long batch, int ordinal, String reel, OffsetDateTime asked, Caller caller) {}

    /** Lets one transaction at a time ask for an order's certificates, until it ends. */
    @Transactional(Transactional.TxType.MANDATORY)
    public void lock(String plant, String order) {
        AdvisoryLocks.take(session, plant + "/certificate-batch/" + order);
    }

    /** Keeps that somebody asks for the certificates of all reels of an order. */
    @Transactional(Transactional.TxType.MANDATORY)
    public long ask(String plant, String order, Caller caller, OffsetDateTime now) {
        long id = session.createNativeQuery(
                        """
                        insert into certificate_batch (plant, order_number, asked, asked_by, asked_by_kind, asked_as, asked_at,
                                                       asked_from)
                        values (:plant, :order, :now, :name, :kind, :roles, cast(:at as text), cast(:from as text))
                        returning id""",
                        Long.class)
                .setParameter("plant", plant)
                .setParameter("order", order)
                .setParameter("now", now.toInstant())
                .setParameter("name", caller.name())
                .setParameter("kind", caller.kind().word())
                .setParameter("roles", Role.joined(caller.roles()))
                .setParameter("at", caller.plant())
                .setParameter("from", caller.from())
                .getSingleResult();
        session.createNativeMutationQuery(
                        """
                        insert into certificate_batch_reel (plant, batch, ordinal, reel)
                        select plant, :batch, row_number() over (order by id), id
                        from reel where plant = :plant and order_number = :order""")
                .setParameter("plant", plant)
                .setParameter("order", order)
                .setParameter("batch", id)
                .executeUpdate();
        return id;
    }

    /** The newest batch of an order; empty when nobody asked. */
    @Transactional
    public Optional<CertificateBatch> newest(String plant, String order) {
        return session.createNativeQuery(
                        "select id from certificate_batch where plant = :plant and order_number = :order"
                                + " order by id desc limit 1",
                        Long.class)
                .setParameter("plant", plant)
                .setParameter("order", order)
                .uniqueResultOptional()
                .flatMap(id -> byId(plant, id));
    }

    /** The batch of that number; empty when the plant has none. */
    @Transactional
    public Optional<CertificateBatch> byId(String plant, long id) {
        return session.createNativeQuery(
                        """
                        select b.id, b.order_number, b.asked, b.asked_by, count(r.reel),
                               count(*) filter (where r.outcome = :issued), count(*) filter (where r.outcome = :before)
                        from certificate_batch b
                        left join certificate_batch_reel r on r.plant = b.plant and r.batch = b.id
                        where b.plant = :plant and b.id = :id
                        group by b.plant, b.id""",
                        Row.class)
                .setParameter("plant", plant)
                .setParameter("id", id)
                .setParameter("issued", Outcome.ISSUED.word)
                .setParameter("before", Outcome.ISSUED_BEFORE.word)
                .uniqueResultOptional()
                .map(row -> new CertificateBatch(
                        plant,
                        row.id(),
                        row.order(),
                        UtcTimes.utc(row.asked()),
                        row.askedBy(),
                        (int) row.reels(),
                        (int) row.issued(),
                        (int) row.issuedBefore(),
                        notIssued(plant, id)));
    }

    private List<CertificateBatch.NotIssued> notIssued(String plant, long id) {
        return session.createNativeQuery(
                        """
                        select reel, reason from certificate_batch_reel
                        where plant = :plant and batch = :id and outcome = :notIssued order by ordinal""",
                        CertificateBatch.NotIssued.class)
                .setParameter("plant", plant)
                .setParameter("id", id)
                .setParameter("notIssued", Outcome.NOT_ISSUED.word)
                .getResultList();
    }

    /**
     * Takes the reel that has waited longest and that nobody works on; until this transaction ends nobody else takes it.
     *
     * @return empty when none waits
     */
    @Transactional(Transactional.TxType.MANDATORY)
    public Optional<Task> takeNext() {
        return session.createNativeQuery(
                        """
                        select r.plant, r.batch, r.ordinal, r.reel, b.asked, b.asked_by, b.asked_by_kind, b.asked_as, b.asked_at,
                               b.asked_from
                        from certificate_batch_reel r join certificate_batch b on b.plant = r.plant and b.id = r.batch
                        where r.done is null
                        order by r.batch, r.ordinal limit 1
                        for update of r skip locked""",
                        TaskRow.class)
                .uniqueResultOptional()
                .map(row -> new Task(
                        row.plant(),
                        row.batch(),
                        row.ordinal(),
                        row.reel(),
                        UtcTimes.utc(row.asked()),
                        new Caller(
                                kind(row.askedByKind()),
                                row.askedBy(),
                                row.askedAt(),
                                Role.read(row.askedAs()),
                                row.askedFrom())));
    }

    private static Caller.Kind kind(String word) {
        return Arrays.stream(Caller.Kind.values())
                .filter(kind -> kind.word().equals(word))
                .findFirst()
                .orElseThrow();
    }

    /**
     * Keeps what came of a reel, in the transaction that took it.
     *
     * @param certificate the number; null when there is none
     * @param reason why there is none; null when there is one
     */
    @Transactional(Transactional.TxType.MANDATORY)
    public void done(
            Task task, Outcome outcome, @Nullable String certificate, @Nullable String reason, OffsetDateTime now) {
        session.createNativeMutationQuery(
                        """
                        update certificate_batch_reel
                        set outcome = :outcome, certificate = cast(:certificate as text), reason = cast(:reason as text), done = :now
                        where plant = :plant and batch = :batch and ordinal = :ordinal""")
                .setParameter("plant", task.plant())
                .setParameter("batch", task.batch())
                .setParameter("ordinal", task.ordinal())
                .setParameter("outcome", outcome.word)
                .setParameter("certificate", certificate)
                .setParameter("reason", reason)
                .setParameter("now", now.toInstant())
                .executeUpdate();
    }
}
