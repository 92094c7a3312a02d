package dev.reelproof.measurement;

import java.util.Locale;

/** An end of the cable: near is the one that the instrument is at. */
public enum End {
    NEAR,
    FAR;

    /** The word in the HTTP contract. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
