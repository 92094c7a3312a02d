package dev.reelproof.network;

import java.util.Locale;

/** What a port of a network file carries: one conductor against ground, or one mode of a whole pair. */
public enum PortMode {
    SINGLE,
    DIFFERENTIAL,
    COMMON;

    /** The word in the HTTP contract. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
