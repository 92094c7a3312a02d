package dev.reelproof.access;

/** A decision that cannot be: the requester's own, or a second one; the message says which. */
public class ApprovalConflictException extends RuntimeException {
    public ApprovalConflictException(String message) {
        super(message);
    }
}
