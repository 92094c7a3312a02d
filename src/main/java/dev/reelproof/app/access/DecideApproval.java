package dev.reelproof.app.access;

import dev.reelproof.access.Action;
import dev.reelproof.access.Approval;
import dev.reelproof.access.ApprovalConflictException;
import dev.reelproof.access.Callers;
import dev.reelproof.app.NothingThereException;
import dev.reelproof.store.access.Approvals;
import dev.reelproof.store.access.AuditTrail;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.OffsetDateTime;
import org.jspecify.annotations.Nullable;

/** Gives or refuses an approval that another person asked for; given, it makes the change that it is about. */
@ApplicationScoped
public class DecideApproval {
    private final AskApproval asking;
    private final Approvals approvals;
    private final ApprovalEffects effects;
    private final Callers callers;
    private final AuditTrail audit;
    private final Clock clock;

    DecideApproval(
            AskApproval asking,
            Approvals approvals,
            ApprovalEffects effects,
            Callers callers,
            AuditTrail audit,
            Clock clock) {
        this.asking = asking;
        this.approvals = approvals;
        this.effects = effects;
        this.callers = callers;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * Decides, as the current caller, and does what is approved in the same transaction; refuses as {@link
     * AskApproval#requirePermission}.
     *
     * @param plantNamed the plant; the caller's, else the home plant, when none is named
     * @return the approval as it stands now
     * @throws NothingThereException when the plant has none of that id
     * @throws ApprovalConflictException when the caller asked for it, it was decided before, or its approval would do nothing
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
            effectOf(decided).take(plant, decided);
        }
        return decided;
    }

    /** What was asked for before approvals had an effect can only be refused. */
    private ApprovalEffect effectOf(Approval approval) {
        return Action.named(approval.action())
                .flatMap(effects::of)
                .orElseThrow(() -> new ApprovalConflictException("An approval of '" + approval.action()
                        + "' does nothing; refuse request " + approval.id() + "."));
    }
}
