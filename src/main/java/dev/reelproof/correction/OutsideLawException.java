package dev.reelproof.correction;

/** A value was to be corrected where the law is not stated to hold; the message says what would be right. */
public class OutsideLawException extends RuntimeException {

    public OutsideLawException(String message) {
        super(message);
    }
}
