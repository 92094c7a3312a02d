package dev.reelproof.app.access;

import dev.reelproof.access.Action;
import dev.reelproof.access.Approval;

/** A change that one person asks for, and that is made by the approval of another, in its transaction. */
public interface ApprovedChange {

    /** Whether an approval of this action on this subject asks for this change. */
    boolean isMeant(Action action, String subject);

    /**
     * Refuses what cannot be asked for: the caller may not, the subject is not there, or it was done before.
     *
     * @throws dev.reelproof.access.PermissionDeniedException when the caller's roles do not allow it
     * @throws dev.reelproof.app.NothingThereException when there is no such subject
     * @throws dev.reelproof.app.ConflictException when it was done before
     */
    void requireAskable(String plant, String subject);

    /**
     * Makes the change.
     *
     * @param given the approval as it was given
     * @throws dev.reelproof.app.ConflictException when it was done before
     */
    void carryOut(String plant, Approval given);
}
