package dev.reelproof.app;

/** What was asked for cannot be, as things stand; the message says why. */
public class ConflictException extends RuntimeException {
    public ConflictException(String message) {
        super(message);
    }
}
