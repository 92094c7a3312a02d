package dev.reelproof.app;

/** What was asked for is not there; the message says what would be. */
public class NothingThereException extends RuntimeException {
    public NothingThereException(String message) {
        super(message);
    }
}
