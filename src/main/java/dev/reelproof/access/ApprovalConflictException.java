package dev.reelproof.access;

/** A decision that cannot be: by the requester, or on what was decided before; the message says which. */
public class ApprovalConflictException extends RuntimeException {
    public ApprovalConflictException(String message) {
        super(message);
    }
}
