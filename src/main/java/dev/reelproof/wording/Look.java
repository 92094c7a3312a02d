package dev.reelproof.wording;

import dev.reelproof.judgement.Verdict;
import java.util.Locale;

/** The looks that a verdict can have: a reel that is accepted only conditionally must not look like one that may simply go. */
public enum Look {
    ACCEPTED,
    CONDITIONAL,
    REJECTED,
    INCOMPLETE;

    /** The word in the HTTP contract. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The look of a verdict. */
    public static Look of(Verdict verdict, boolean conditional) {
        return switch (verdict) {
            case ACCEPTED -> conditional ? CONDITIONAL : ACCEPTED;
            case REJECTED -> REJECTED;
            case INCOMPLETE -> INCOMPLETE;
        };
    }
}
