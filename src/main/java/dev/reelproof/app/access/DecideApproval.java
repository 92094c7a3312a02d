package dev.reelproof.app.access;

import dev.reelproof.access.Action;
import dev.reelproof.access.Approval;
import dev.reelproof.access.Callers;
import dev.reelproof.app.NothingThereException;
import dev.reelproof.store.access.Approvals;
import dev.reelproof.store.access.AuditTrail;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Instance;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.OffsetDateTime;
import org.jspecify.annotations.Nullable;

/** Gives or refuses an approval that another person asked for; given, it makes the change that it is about. */
@ApplicationScoped
public class DecideApproval {
    private final AskApproval asking;
    private final Approvals approvals;
    private final Instance<ApprovedChange> changes;
    private final Callers callers;
    private final AuditTrail audit;
    private final Clock clock;

    DecideApproval(
            AskApproval asking,
            Approvals approvals,
            Instance<ApprovedChange> changes,
            Callers callers,
            AuditTrail audit,
            Clock clock) {
        this.asking = asking;
        this.approvals = approvals;
        this.changes = changes;
        this.callers = callers;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * Decides, as the current caller; refuses as {@link AskApproval#requirePermission}.
     *
     * @param plantNamed the plant; the caller's, else the home plant, when none is named
     * @return the approval as it stands now
     * @throws NothingThereException when the plant has none of that id
     * @throws dev.reelproof.access.ApprovalConflictException when the caller asked for it, or it was decided before
     */
    @Transactional
    public Approval decide(@Nullable String plantNamed, long id, boolean approve, String reason) {
        String plant = asking.requirePermission(plantNamed);
        Approval decided = approvals
                .lock(plant, id)
                .orElseThrow(() -> new NothingThereException("Plant " + plant + " has no approval " + id + "."))
                .decidedBy(callers.current(), approve, reason, OffsetDateTime.now(clock));
        approvals.decide(plant, decided);
        audit.write(
                plant,
                approve ? "approval-given" : "approval-refused",
                AskApproval.subject(decided),
                reason,
                AskApproval.about(decided));
        if (approve) {
            Action.named(decided.action()).ifPresent(action -> changes.stream()
                    .filter(change -> change.isMeant(action, decided.subject()))
                    .forEach(change -> change.carryOut(plant, decided)));
        }
        return decided;
    }
}
