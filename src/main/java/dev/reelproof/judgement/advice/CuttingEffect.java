package dev.reelproof.judgement.advice;

import java.util.Locale;

/** What cutting a reel does to the value that a requirement judges. */
public enum CuttingEffect {
    CHANGES_WITH_THE_LENGTH,
    /** It is referred to a fixed length of cable. */
    REFERRED_TO_A_LENGTH,
    /** It counts faults, and where they sit is not known. */
    COUNTS_FAULTS,
    /** It is measured into an end and comes mostly from the cable near it. */
    MEASURED_INTO_AN_END,
    /** It is a ratio of values that change alike. */
    RATIO,
    /** It is of the material and the make. */
    OF_THE_MATERIAL,
    NO_KNOWN_LAW;

    /** The word under which catalogues keep it. */
    public String id() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
