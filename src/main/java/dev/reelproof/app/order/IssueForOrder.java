package dev.reelproof.app.order;

import dev.reelproof.access.Action;
import dev.reelproof.access.Callers;
import dev.reelproof.app.NothingThereException;
import dev.reelproof.certificate.CertificateBatch;
import dev.reelproof.store.access.AuditTrail;
import dev.reelproof.store.order.CertificateBatches;
import dev.reelproof.store.order.Orders;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.Map;
import java.util.Optional;

/** Asks for the certificates of all reels of an order; they are issued one after the other, and nobody waits for them. */
@ApplicationScoped
public class IssueForOrder {
    private final Orders orders;
    private final CertificateBatches batches;
    private final IssueWaiting waiting;
    private final Callers callers;
    private final AuditTrail audit;
    private final Clock clock;

    IssueForOrder(
            Orders orders,
            CertificateBatches batches,
            IssueWaiting waiting,
            Callers callers,
            AuditTrail audit,
            Clock clock) {
        this.orders = orders;
        this.batches = batches;
        this.waiting = waiting;
        this.callers = callers;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * What came of asking.
     *
     * @param isNew false when somebody had asked, and it is not finished yet
     */
    public record Asked(CertificateBatch batch, boolean isNew) {}

    /**
     * Asks for the certificates of all reels that an order has now; while a batch of the order is not finished, gives that one.
     *
     * @throws dev.reelproof.access.PermissionDeniedException when the caller may not
     * @throws NothingThereException when no reel is registered for the order
     */
    public Asked ask(String plant, String order) {
        callers.current().require(Action.ISSUE, plant);
        Asked asked = QuarkusTransaction.joiningExisting().call(() -> keep(plant, order));
        waiting.wake();
        return asked;
    }

    private Asked keep(String plant, String order) {
        batches.lock(plant, order);
        Optional<CertificateBatch> open = batches.newest(plant, order).filter(batch -> !batch.isFinished());
        if (open.isPresent()) {
            return new Asked(open.get(), false);
        }
        int reels = orders.countReels(plant, order);
        if (reels == 0) {
            throw FindOrder.unknown(plant, order);
        }
        long id = batches.ask(plant, order, callers.current(), OffsetDateTime.now(clock));
        audit.write(
                plant,
                "certificates-asked",
                "order/" + order,
                null,
                Map.of("batch", Long.toString(id), "reels", reels));
        return new Asked(batches.byId(plant, id).orElseThrow(), true);
    }

    /**
     * How far a batch has come.
     *
     * @throws NothingThereException when the plant has none of that number
     */
    @Transactional
    public CertificateBatch progress(String plant, long id) {
        return batches.byId(plant, id)
                .orElseThrow(() ->
                        new NothingThereException("Plant " + plant + " has no batch of certificates '" + id + "'."));
    }
}
