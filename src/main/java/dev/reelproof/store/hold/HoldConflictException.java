package dev.reelproof.store.hold;

/** A release that cannot be: by the holder, or of what was released before; the message says which. */
public class HoldConflictException extends RuntimeException {

    HoldConflictException(String message) {
        super(message);
    }
}
