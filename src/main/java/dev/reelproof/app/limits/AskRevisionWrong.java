package dev.reelproof.app.limits;

import dev.reelproof.access.Action;
import dev.reelproof.access.Approval;
import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.Plants;
import dev.reelproof.app.access.AskApproval;
import dev.reelproof.limit.WrongRevision;
import dev.reelproof.store.limits.WrongRevisions;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Asks to have a revision of a limit set marked as wrong; {@link MarkRevisionWrong} does it once another person approves. */
@ApplicationScoped
public class AskRevisionWrong {
    private final AskApproval approvals;
    private final WrongRevisions wrongRevisions;
    private final Plants plants;

    AskRevisionWrong(AskApproval approvals, WrongRevisions wrongRevisions, Plants plants) {
        this.approvals = approvals;
        this.wrongRevisions = wrongRevisions;
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
        return approvals.requirePermission(plants.forAction(Action.CHANGE_LIMITS, plantNamed, "plant"));
    }

    /**
     * Asks, as the current caller.
     *
     * @throws dev.reelproof.access.PermissionDeniedException when the caller may not, or is no person
     * @throws NothingThereException when there is no such revision
     * @throws dev.reelproof.app.ConflictException when it was marked before
     * @throws dev.reelproof.access.ApprovalConflictException when it is asked for already
     */
    public Approval ask(String plant, String limitSet, int revision, String reason) {
        return approvals.ask(plant, Action.CHANGE_LIMITS, MarkRevisionWrong.subject(limitSet, revision), reason);
    }

    /** The revisions that the caller's plant found wrong. */
    public List<WrongRevision> marked() {
        return wrongRevisions.all(plants.named(null, "plant"));
    }
}
