package dev.reelproof.store;

/** A pedigree has more lots, or takes longer to find, than one answer may; the message says what to ask instead. */
public class PedigreeTooLargeException extends RuntimeException {

    public PedigreeTooLargeException(String message) {
        super(message);
    }
}
