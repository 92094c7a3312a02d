package dev.reelproof.api;

/** What was asked for cannot be, as things stand; the message says why. */
class ConflictException extends RuntimeException {
    ConflictException(String message) {
        super(message);
    }
}
