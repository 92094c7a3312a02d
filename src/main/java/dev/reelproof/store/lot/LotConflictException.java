package dev.reelproof.store.lot;

/** Another lot is registered under the identifier; the message says in what it differs. */
public class LotConflictException extends RuntimeException {

    public LotConflictException(String message) {
        super(message);
    }
}
