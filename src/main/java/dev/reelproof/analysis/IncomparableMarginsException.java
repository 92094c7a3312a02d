package dev.reelproof.analysis;

/** Margins of these reels cannot be ranked together; the message says why and what to ask instead. */
public class IncomparableMarginsException extends RuntimeException {
    private final Differ differ;

    /** In what the margins differ. */
    public enum Differ {
        /** They are against the limits of different products. */
        IN_PRODUCT,
        /** They are in different units. */
        IN_UNIT
    }

    IncomparableMarginsException(Differ differ, String message) {
        super(message);
        this.differ = differ;
    }

    /** In what the margins differ. */
    public Differ differ() {
        return differ;
    }
}
