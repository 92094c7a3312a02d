package dev.reelproof.access;

/** The caller may not do this; the message says what would be needed. */
public class PermissionDeniedException extends RuntimeException {
    public PermissionDeniedException(String message) {
        super(message);
    }
}
