package dev.reelproof.store.hold;

/** A range to be released does not lie on what is held; the message says what would. */
public class RangeNotOnHeldException extends RuntimeException {

    RangeNotOnHeldException(String message) {
        super(message);
    }
}
