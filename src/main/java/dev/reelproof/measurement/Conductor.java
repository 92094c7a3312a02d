package dev.reelproof.measurement;

import java.util.Locale;

/** One of the two conductors of a pair; the trade also says tip and ring. */
public enum Conductor {
    A,
    B;

    /** The letter in the HTTP contract. */
    public String letter() {
        return name().toLowerCase(Locale.ROOT);
    }
}
