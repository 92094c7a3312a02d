package dev.reelproof.app.access;

import dev.reelproof.access.Action;
import dev.reelproof.access.Approval;
import dev.reelproof.intake.IntakeException;

/** What the approval of an action does. An action that none of these does cannot be asked for: its approval would do nothing. */
public interface ApprovalEffect {

    /** What it does when it is approved. */
    Action action();

    /**
     * Refuses a subject that is not there, or to which it cannot be done.
     *
     * @throws IntakeException at {@code /subject}, saying why
     */
    void requireSubject(String plant, String subject);

    /**
     * Does what was approved, as the person who approves, in the transaction of the decision: when it fails, nothing was decided.
     *
     * @param approved the approval with its decision
     */
    void take(String plant, Approval approved);
}
