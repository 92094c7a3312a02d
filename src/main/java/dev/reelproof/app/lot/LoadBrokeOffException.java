package dev.reelproof.app.lot;

/** The service failed in the middle of a load; the message says what was kept. */
public class LoadBrokeOffException extends RuntimeException {
    public LoadBrokeOffException(String message, Throwable cause) {
        super(message, cause);
    }
}
