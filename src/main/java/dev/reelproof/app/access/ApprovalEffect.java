package dev.reelproof.app.access;

import dev.reelproof.access.Action;
import dev.reelproof.access.Approval;
import dev.reelproof.intake.IntakeException;

/** What the approval of an action does. An action that none of these does cannot be asked for: its approval would do nothing. */
public interface ApprovalEffect {

    /** What it does when it is approved. */
    Action action();

    /**
     * Refuses what cannot be asked for: the caller may not, the subject is not there, or it was done before.
     *
     * @throws dev.reelproof.access.PermissionDeniedException when the caller's roles do not allow it
     * @throws IntakeException at {@code /subject}, when the text names no such subject
     * @throws dev.reelproof.app.NothingThereException when there is none of that name
     * @throws dev.reelproof.app.ConflictException when it was done before
     */
    void requireSubject(String plant, String subject);

    /**
     * Does what was approved, as the person who approves, in the transaction of the decision: when it fails, nothing was decided.
     *
     * @param approved the approval with its decision
     * @throws dev.reelproof.app.ConflictException when it cannot be done any more
     */
    void take(String plant, Approval approved);
}
