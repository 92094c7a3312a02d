package dev.reelproof.access;

/** Nobody is signed in, where somebody has to be; the message says how to sign in. */
public class NotAuthenticatedException extends RuntimeException {
    public NotAuthenticatedException(String message) {
        super(message);
    }
}
