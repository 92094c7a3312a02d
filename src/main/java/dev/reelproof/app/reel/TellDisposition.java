package dev.reelproof.app.reel;

import dev.reelproof.app.hold.HeldException;
import dev.reelproof.app.hold.HoldCheck;
import dev.reelproof.genealogy.Hold;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.store.reel.Dispositions;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.OffsetDateTime;
import java.util.List;

/**
 * Takes down where reels went. What is on hold must not leave; but what left before it was held is taken down, with the reason: a
 * recall needs it.
 */
@ApplicationScoped
public class TellDisposition {
    private final Dispositions dispositions;
    private final HoldCheck holds;

    TellDisposition(Dispositions dispositions, HoldCheck holds) {
        this.dispositions = dispositions;
        this.holds = holds;
    }

    /**
     * Tells where a reel is.
     *
     * @param recipient to whom; given when it was shipped, and only then
     * @param reason null when not said
     * @throws HeldException when it was shipped, is on hold, and no reason says why all the same
     */
    @Transactional
    public Dispositions.Entry tell(
            String plant, LotId reel, Dispositions.State state, String recipient, String reason, OffsetDateTime now) {
        List<Hold> held = state == Dispositions.State.SHIPPED ? holds.openOf(plant, reel.value()) : List.of();
        if (!held.isEmpty() && reason == null) {
            throw HeldException.notToBeShipped(reel.value(), held);
        }
        return dispositions.tell(plant, reel, state, recipient, reason, held, now);
    }
}
