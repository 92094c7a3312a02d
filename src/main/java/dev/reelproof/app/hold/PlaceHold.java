package dev.reelproof.app.hold;

import dev.reelproof.access.Action;
import dev.reelproof.access.Caller;
import dev.reelproof.access.Callers;
import dev.reelproof.genealogy.hold.Hold;
import dev.reelproof.genealogy.hold.HoldTarget;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.store.access.AuditTrail;
import dev.reelproof.store.hold.HoldReach;
import dev.reelproof.store.hold.Holds;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.Map;

/**
 * Places a hold on a lot, a reel, the run of a step, or what a machine made within a time. What it reaches is in question from then
 * on; the entry of the audit trail names the certificates.
 */
@ApplicationScoped
public class PlaceHold {
    private final Holds holds;
    private final HoldReach reach;
    private final QuestionedByHold questioned;
    private final Callers callers;
    private final AuditTrail audit;
    private final Clock clock;

    PlaceHold(
            Holds holds, HoldReach reach, QuestionedByHold questioned, Callers callers, AuditTrail audit, Clock clock) {
        this.holds = holds;
        this.reach = reach;
        this.questioned = questioned;
        this.callers = callers;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * Places a hold, as the current caller.
     *
     * @throws dev.reelproof.access.PermissionDeniedException when the caller may not
     * @throws IntakeException when the plant does not know what is to be held
     */
    @Transactional
    public Hold place(String plant, HoldTarget target, String reason) {
        Caller caller = callers.current();
        caller.require(Action.HOLD, plant);
        requireKnown(plant, target);
        holds.lockForPlacing(plant);
        Hold hold =
                holds.keep(plant, target, reason, caller.name(), caller.kind().word(), OffsetDateTime.now(clock));
        Map<String, Object> details = HoldAudit.details(target);
        details.putAll(questioned.by(plant, target));
        audit.write(plant, "hold-placed", HoldAudit.subject(hold.id()), reason, details);
        return hold;
    }

    private void requireKnown(String plant, HoldTarget target) {
        if (!reach.isKnown(plant, target)) {
            String what = target.what().word();
            throw IntakeException.of(
                    IntakeException.Kind.CONTENT,
                    "/" + what,
                    "unknown " + what + " '" + target.name() + "' at plant " + plant
                            + "; a hold that names nothing would hold nothing: check the name");
        }
    }
}
