package dev.reelproof.store;

/** A pedigree has more lots, or takes longer to find, than one answer may; the message says what to ask instead. */
public class SearchTooLargeException extends RuntimeException {

    public SearchTooLargeException(String message) {
        super(message);
    }
}
