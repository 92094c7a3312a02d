package dev.reelproof.api;

/** The service failed in the middle of a load; the message says what was kept. */
class LoadBrokeOffException extends RuntimeException {
    LoadBrokeOffException(String message, Throwable cause) {
        super(message, cause);
    }
}
