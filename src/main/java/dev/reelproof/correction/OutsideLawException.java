package dev.reelproof.correction;

/** A law was asked for a value outside the range that it is stated for; the message says how to get a value inside. */
public class OutsideLawException extends RuntimeException {

    public OutsideLawException(String message) {
        super(message);
    }
}
