package dev.reelproof.app.access;

import dev.reelproof.access.Action;
import dev.reelproof.access.Approval;
import dev.reelproof.access.ApprovalConflictException;
import dev.reelproof.access.Caller;
import dev.reelproof.access.Callers;
import dev.reelproof.app.Plants;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.store.access.Approvals;
import dev.reelproof.store.access.AuditTrail;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Asks for an approval, which another person gives or refuses. */
@ApplicationScoped
public class AskApproval {
    private final Approvals approvals;
    private final ApprovalEffects effects;
    private final Callers callers;
    private final Plants plants;
    private final AuditTrail audit;
    private final Clock clock;

    AskApproval(
            Approvals approvals,
            ApprovalEffects effects,
            Callers callers,
            Plants plants,
            AuditTrail audit,
            Clock clock) {
        this.approvals = approvals;
        this.effects = effects;
        this.callers = callers;
        this.plants = plants;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * Approvals of a plant, newest first.
     *
     * @param plantNamed the plant; the caller's, else the home plant, when none is named
     * @param open only those that nobody decided yet
     * @param before only those of a lower id
     */
    public List<Approval> list(@Nullable String plantNamed, boolean open, long before, int limit) {
        return approvals.list(plants.named(plantNamed, "plant"), open, before, limit);
    }

    /**
     * Refuses a caller who is not a person who may approve at a plant: that person may ask, and decide on what others asked for.
     *
     * @param plantNamed the plant; the caller's, else the home plant, when none is named
     * @return the plant
     * @throws dev.reelproof.access.PermissionDeniedException when the caller may not
     */
    public String requirePermission(@Nullable String plantNamed) {
        String plant = plants.named(plantNamed, "plant");
        Caller caller = callers.current();
        caller.require(Action.APPROVE, plant);
        caller.requirePerson();
        return plant;
    }

    /**
     * /**
     * Asks, as the current caller; refuses as {@link #requirePermission} and as the effect does that the approval would have.
     *
     * @throws IntakeException when the approval of the action would do nothing
     * @throws ApprovalConflictException when the same is asked for already
     */
    @Transactional
    public Approval ask(@Nullable String plantNamed, Action action, String subject, String reason) {
        String plant = requirePermission(plantNamed);
        ApprovalEffect effect = effects.of(action)
                .orElseThrow(() -> IntakeException.of(
                        IntakeException.Kind.CONTENT,
                        "/action",
                        "an approval of '" + action.word() + "' would do nothing; what can be asked for here: "
                                + effects.inWords()));
        effect.requireSubject(plant, subject);
        approvals.lockSubject(plant, action, subject);
        approvals.openOf(plant, action, subject).ifPresent(open -> {
            throw new ApprovalConflictException("Approval " + open.id() + ", asked for by " + open.requestedBy()
                    + ", is open for the same; another person decides on it.");
        });
        String requester = callers.current().name();
        Approval asked = approvals.insert(plant, action, subject, reason, requester, OffsetDateTime.now(clock));
        audit.write(plant, "approval-requested", subject(asked), reason, about(asked));
        return asked;
    }

    /** An approval as the audit trail names it. */
    static String subject(Approval approval) {
        return "approval/" + approval.id();
    }

    /** What the audit trail tells of an approval. */
    static Map<String, String> about(Approval approval) {
        return Map.of(
                "action", approval.action(),
                "subject", approval.subject(),
                "requestedBy", approval.requestedBy());
    }
}
