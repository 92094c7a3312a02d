package dev.reelproof.app.certificate;

/** A certificate cannot be signed at present; the message says why. What has a number already is kept and signed later. */
public class CannotBeSignedException extends RuntimeException {
    public CannotBeSignedException(String message, Throwable cause) {
        super(message, cause);
    }
}
