package dev.reelproof.app.hold;

import dev.reelproof.access.Action;
import dev.reelproof.access.Caller;
import dev.reelproof.access.Callers;
import dev.reelproof.app.NothingThereException;
import dev.reelproof.genealogy.Amount;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.hold.Hold;
import dev.reelproof.genealogy.hold.ReleaseRefusedException;
import dev.reelproof.genealogy.hold.ReleaseRule;
import dev.reelproof.store.access.AuditTrail;
import dev.reelproof.store.hold.Holds;
import dev.reelproof.store.lot.Lots;
import dev.reelproof.store.reel.Reels;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.Map;
import java.util.Optional;

/** Releases a hold, whole or a stretch of the held lot; {@link ReleaseRule} says who may and what. */
@ApplicationScoped
public class ReleaseHold {
    private final Holds holds;
    private final Lots lots;
    private final Reels reels;
    private final Callers callers;
    private final AuditTrail audit;
    private final Clock clock;

    ReleaseHold(Holds holds, Lots lots, Reels reels, Callers callers, AuditTrail audit, Clock clock) {
        this.holds = holds;
        this.lots = lots;
        this.reels = reels;
        this.callers = callers;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * Releases a hold, as the current caller.
     *
     * @param range the stretch to be released; empty for the whole hold
     * @return the hold as it stands now
     * @throws dev.reelproof.access.PermissionDeniedException when the caller's roles do not allow it
     * @throws NothingThereException when the plant has no such hold
     * @throws ReleaseRefusedException when the rule forbids it
     */
    @Transactional
    public Hold release(String plant, long id, Optional<Hold.Range> range, String reason) {
        Caller caller = callers.current();
        caller.require(Action.RELEASE, plant);
        holds.lockForRelease(plant, id);
        Hold hold = holds.byId(plant, id).orElseThrow(() -> FindHolds.unknown(plant, Long.toString(id)));
        ReleaseRule.requireMayRelease(hold, caller.is(hold.byKind(), hold.by()), caller.kind() == Caller.Kind.PERSON);
        range.ifPresent(asked -> ReleaseRule.requireOnHeld(hold, asked, quantity(plant, hold)));
        Hold.Release release = new Hold.Release(range.orElse(null), reason, caller.name(), OffsetDateTime.now(clock));
        holds.keep(plant, hold, release);
        audit.write(
                plant,
                range.isPresent() ? "hold-released-in-part" : "hold-released",
                HoldAudit.subject(id),
                reason,
                details(hold, range));
        return hold.with(release);
    }

    private static Map<String, Object> details(Hold hold, Optional<Hold.Range> range) {
        Map<String, Object> details = HoldAudit.details(hold.target());
        details.put("heldBy", hold.by());
        range.ifPresent(released -> {
            details.put("rangeFrom", released.from());
            details.put("rangeTo", released.to());
            details.put("rangeUnit", released.unit());
        });
        return details;
    }

    /** How much there is of the held lot, or of the held reel where it is no lot; empty when neither is registered. */
    private Optional<Amount> quantity(String plant, Hold hold) {
        if (!hold.target().hasLength()) {
            return Optional.empty();
        }
        LotId id = new LotId(hold.target().name());
        return lots.byId(plant, id).map(lot -> lot.lot().quantity()).or(() -> reels.byId(plant, id.value())
                .map(reel -> new Amount(reel.length().metres(), "m")));
    }
}
