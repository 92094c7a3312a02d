package dev.reelproof.app.certificate;

import dev.reelproof.access.Action;
import dev.reelproof.access.Approval;
import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.Plants;
import dev.reelproof.app.access.AskApproval;
import jakarta.enterprise.context.ApplicationScoped;
import org.jspecify.annotations.Nullable;

/** Asks to have a certificate withdrawn; {@link WithdrawCertificate} does it once another person approves. */
@ApplicationScoped
public class AskWithdrawal {
    private final AskApproval approvals;
    private final Plants plants;

    AskWithdrawal(AskApproval approvals, Plants plants) {
        this.approvals = approvals;
        this.plants = plants;
    }

    /**
     * Refuses a caller who is not a person who may ask for it at a plant.
     *
     * @param plantNamed the plant; the caller's, else the home plant, when none is named
     * @return the plant
     * @throws dev.reelproof.access.PermissionDeniedException when the caller may not, or is no person
     */
    public String requirePermission(@Nullable String plantNamed) {
        return approvals.requirePermission(plants.forAction(Action.WITHDRAW, plantNamed, "plant"));
    }

    /**
     * Asks, as the current caller.
     *
     * @param number what may be a number
     * @throws dev.reelproof.access.PermissionDeniedException when the caller may not, or is no person
     * @throws NothingThereException when the plant issued no such certificate
     * @throws dev.reelproof.app.ConflictException when it was withdrawn before
     * @throws dev.reelproof.access.ApprovalConflictException when its withdrawal is asked for already
     */
    public Approval ask(String plant, String number, String reason) {
        return approvals.ask(plant, Action.WITHDRAW, WithdrawCertificate.subject(number), reason);
    }
}
