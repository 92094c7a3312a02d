package dev.reelproof.app.hold;

import dev.reelproof.app.ConflictException;
import dev.reelproof.genealogy.hold.Hold;
import dev.reelproof.store.SearchTooLargeException;
import dev.reelproof.store.hold.Holds;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.List;

/** Tells whether a reel is on hold, to whatever a hold stops: it asks in the transaction in which it acts. */
@ApplicationScoped
public class HoldCheck {
    private final Holds holds;
    private final FindHolds find;

    HoldCheck(Holds holds, FindHolds find) {
        this.holds = holds;
        this.find = find;
    }

    /**
     * The open holds that a reel is under. Until this transaction ends no other is placed.
     *
     * @throws ConflictException when this is not found in time
     */
    @Transactional(Transactional.TxType.MANDATORY)
    public List<Hold> openOf(String plant, String reel) {
        holds.keepOut(plant);
        try {
            return find.ofReel(plant, reel);
        } catch (SearchTooLargeException e) {
            throw new ConflictException(
                    "Whether reel " + reel + " is on hold could not be found out: " + e.getMessage());
        }
    }
}
