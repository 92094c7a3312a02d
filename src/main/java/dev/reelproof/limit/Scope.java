package dev.reelproof.limit;

import java.util.Locale;

/** Which combinations of pairs a requirement counts. */
public enum Scope {
    /** All within the core. */
    CORE,
    /** Both pairs in one unit. */
    WITHIN_UNIT,
    /** The pairs in two units that touch. */
    ADJACENT_UNITS,
    /** The pairs in two units that do not touch. */
    NONADJACENT_UNITS;

    /** The word used in limit set files. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
