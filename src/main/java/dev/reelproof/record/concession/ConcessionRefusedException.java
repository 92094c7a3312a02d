package dev.reelproof.record.concession;

/** A concession cannot be asked for or decided so; the message says why. */
public class ConcessionRefusedException extends RuntimeException {
    public ConcessionRefusedException(String message) {
        super(message);
    }
}
