package dev.reelproof.api.access;

import dev.reelproof.access.Approval;
import java.time.OffsetDateTime;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** An approval as it is answered. */
@Schema(name = "Approval")
public record ApprovalAnswer(
        long id,
        String action,
        String subject,
        String reason,
        String requestedBy,
        OffsetDateTime requested,
        @Schema(description = "the decision; null while it is open", nullable = true) @Nullable Boolean approve,
        @Schema(nullable = true) @Nullable String decidedBy,
        @Schema(nullable = true) @Nullable OffsetDateTime decided,
        @Schema(nullable = true) @Nullable String decisionReason) {

    /** A list of approvals. */
    @Schema(name = "Approvals")
    record Listed(List<ApprovalAnswer> approvals) {}

    /** What is sent to ask for one, for the description of the API. */
    @Schema(name = "ApprovalRequest")
    record Request(String action, String subject, String reason) {}

    /** What is sent to decide on one, for the description of the API. */
    @Schema(name = "ApprovalDecision")
    record Decision(boolean approve, String reason) {}

    public static ApprovalAnswer of(Approval approval) {
        return new ApprovalAnswer(
                approval.id(),
                approval.action(),
                approval.subject(),
                approval.reason(),
                approval.requestedBy(),
                approval.requested(),
                approval.approved(),
                approval.decidedBy(),
                approval.decided(),
                approval.decisionReason());
    }
}
