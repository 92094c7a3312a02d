package dev.reelproof.genealogy.hold;

import dev.reelproof.genealogy.Amount;
import dev.reelproof.genealogy.hold.ReleaseRefusedException.Reason;
import java.util.Optional;

/**
 * Who may release what of a hold: a person, other than whoever placed it, while it is open; the whole hold, or a stretch that lies on
 * the held lot.
 */
public final class ReleaseRule {
    private ReleaseRule() {}

    /**
     * Requires that somebody may release a hold.
     *
     * @param isHolder whether the same person or program placed it
     * @param isPerson whether it is a person who asks, not a program
     * @throws ReleaseRefusedException when the hold was released before, or it is the holder or a program who asks
     */
    public static void requireMayRelease(Hold hold, boolean isHolder, boolean isPerson) {
        if (!hold.isOpen()) {
            Hold.Release last = hold.releases().get(hold.releases().size() - 1);
            throw new ReleaseRefusedException(
                    Reason.RELEASED_BEFORE,
                    "Hold " + hold.id() + " was released by " + last.by() + " on "
                            + last.at().toLocalDate() + "; place a new hold if it must be held again.");
        }
        if (isHolder) {
            throw new ReleaseRefusedException(
                    Reason.OWN_HOLD, "You placed hold " + hold.id() + " yourself; somebody else must release it.");
        }
        if (!isPerson) {
            throw new ReleaseRefusedException(
                    Reason.NO_PERSON,
                    "A person releases a hold, not a program; sign in with an account, not with an API token.");
        }
    }

    /**
     * Requires that a range lies on what is held.
     *
     * @param quantity how much of it there is; empty while nothing was registered of it
     * @throws ReleaseRefusedException when the hold is not of one lot, its quantity is not known, or the range lies elsewhere
     */
    public static void requireOnHeld(Hold hold, Hold.Range range, Optional<Amount> quantity) {
        HoldTarget target = hold.target();
        if (!target.hasLength()) {
            throw notOnHeld("hold " + hold.id() + " is of " + target
                    + "; a range is a stretch of one lot: release the hold whole, and hold the lots that must stay");
        }
        Amount held = quantity.orElseThrow(() -> notOnHeld(
                "the length of " + target + " is not known yet; register it first, or release the hold whole"));
        try {
            range.requireOn(target.toString(), held);
        } catch (IllegalArgumentException e) {
            throw notOnHeld(e.getMessage());
        }
    }

    private static ReleaseRefusedException notOnHeld(String message) {
        return new ReleaseRefusedException(Reason.NOT_ON_HELD, message);
    }
}
