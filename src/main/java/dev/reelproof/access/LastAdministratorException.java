package dev.reelproof.access;

/** A change that would leave nobody who may manage accounts. */
public class LastAdministratorException extends RuntimeException {
    public LastAdministratorException() {
        super("This is the last active administrator; give another account the role administrator first.");
    }
}
