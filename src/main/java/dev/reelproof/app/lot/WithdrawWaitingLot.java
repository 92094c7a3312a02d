package dev.reelproof.app.lot;

import dev.reelproof.access.Action;
import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.Plants;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.store.access.AuditTrail;
import dev.reelproof.store.lot.LotLocks;
import dev.reelproof.store.lot.admission.WaitingReports;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * Withdraws a report that waits for parents that will never come. The audit trail keeps all of it; what waits for its lot goes on
 * waiting.
 */
@ApplicationScoped
public class WithdrawWaitingLot {
    private final WaitingReports waiting;
    private final LotLocks locks;
    private final AuditTrail audit;
    private final Plants plants;

    WithdrawWaitingLot(WaitingReports waiting, LotLocks locks, AuditTrail audit, Plants plants) {
        this.waiting = waiting;
        this.locks = locks;
        this.audit = audit;
        this.plants = plants;
    }

    /**
     * Withdraws the report of a lot, as the current caller.
     *
     * @param plantNamed the plant; the caller's when none is named
     * @param reason gives why; it is asked once the caller may
     * @throws NothingThereException when no report of that lot waits
     */
    @Transactional
    public void withdraw(String lot, @Nullable String plantNamed, Supplier<String> reason) {
        String plant = plants.forAction(Action.REGISTER, plantNamed, "plant");
        String why = reason.get();
        boolean isWithdrawn =
                LotId.named(lot).filter(id -> withdraw(plant, id, why)).isPresent();
        if (!isWithdrawn) {
            throw new NothingThereException("No report of lot '" + lot + "' waits at plant " + plant
                    + "; one whose parents came is registered, and stays so.");
        }
    }

    private boolean withdraw(String plant, LotId lot, String why) {
        locks.takeAll(plant);
        Optional<Map<String, ?>> withdrawn = waiting.withdraw(plant, lot);
        withdrawn.ifPresent(report -> audit.write(plant, "lot-withdrawn", "lot/" + lot, why, report));
        return withdrawn.isPresent();
    }
}
