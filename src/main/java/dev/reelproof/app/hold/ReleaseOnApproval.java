package dev.reelproof.app.hold;

import dev.reelproof.access.Action;
import dev.reelproof.access.Approval;
import dev.reelproof.app.ConflictException;
import dev.reelproof.app.access.ApprovalEffect;
import dev.reelproof.genealogy.hold.ReleaseRefusedException;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.store.hold.Holds;
import jakarta.inject.Singleton;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalLong;

/** The approval of a release releases the whole hold; its subject is {@code hold/} and the hold's number. */
@Singleton
class ReleaseOnApproval implements ApprovalEffect {
    private static final String KIND = "hold/";

    private final ReleaseHold releasing;
    private final Holds holds;

    ReleaseOnApproval(ReleaseHold releasing, Holds holds) {
        this.releasing = releasing;
        this.holds = holds;
    }

    @Override
    public Action action() {
        return Action.RELEASE;
    }

    @Override
    public void requireSubject(String plant, String subject) {
        OptionalLong id = id(subject);
        if (id.isEmpty()
                || holds.byId(plant, id.getAsLong())
                        .filter(hold -> hold.isOpen())
                        .isEmpty()) {
            throw IntakeException.of(
                    IntakeException.Kind.CONTENT,
                    "/subject",
                    "plant " + plant + " has no open hold '" + subject + "'; name it such as hold/12");
        }
    }

    @Override
    public void take(String plant, Approval approved) {
        String reason =
                Objects.requireNonNull(approved.decisionReason(), "what was approved was approved for a reason");
        try {
            releasing.release(plant, id(approved.subject()).orElseThrow(), Optional.empty(), reason);
        } catch (ReleaseRefusedException e) {
            throw new ConflictException(Objects.requireNonNull(e.getMessage(), "who refuses says why"));
        }
    }

    private static OptionalLong id(String subject) {
        if (!subject.startsWith(KIND)) {
            return OptionalLong.empty();
        }
        try {
            return OptionalLong.of(Long.parseLong(subject.substring(KIND.length())));
        } catch (NumberFormatException e) {
            // What is no number is the number of no hold.
            return OptionalLong.empty();
        }
    }
}
