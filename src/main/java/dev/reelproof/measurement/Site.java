package dev.reelproof.measurement;

/** Where on a cable a property is measured. */
public enum Site {
    /** The cable as a whole. */
    REEL,
    /** One conductor of a pair. */
    CONDUCTOR,
    /** One pair. */
    PAIR,
    /** Two pairs, the same whichever is named first. */
    COMBINATION,
    /** Two pairs, the disturbed one first. */
    ORDERED_COMBINATION
}
