package dev.reelproof.analysis;

import java.util.Locale;

/** What reels can have in common. The order is that in which a group names its members: first what somebody can act upon. */
public enum Factor {
    /** One lot of wire, cable or material. */
    LOT,
    /** One run of a step. */
    STEP_RUN,
    MACHINE,
    DIE,
    /** Another setting of a machine that is a word: its name, a colon and the word. */
    SETTING,
    LINE,
    OPERATOR,
    SHIFT,
    /** A kind of material that not every reel has in it. */
    MATERIAL,
    /** A step that not every reel went through. */
    STEP,
    /** The cable type. */
    PRODUCT;

    /** The factor as answers spell it, in kebab case: {@code step-run}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    @Override
    public String toString() {
        return word();
    }
}
