package dev.reelproof.analysis;

import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;

/**
 * What reels can have in common. The order is that in which a group names its members: first the test, which is checked before a lot is
 * held, then what somebody can act upon.
 */
public enum Factor {
    /** The bay that the reel was tested in. */
    STATION,
    /** An instrument that measured the property. */
    INSTRUMENT,
    /** Who tested. */
    TECHNICIAN,
    /** The day in UTC on which the test ended. */
    TEST_DAY,
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

    private static final Set<Factor> OF_THE_TEST = EnumSet.of(STATION, INSTRUMENT, TECHNICIAN, TEST_DAY);

    /** Whether it belongs to the test and not to the making of the reel. */
    public boolean isOfTest() {
        return OF_THE_TEST.contains(this);
    }

    /** The factor as answers spell it, in kebab case: {@code step-run}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    @Override
    public String toString() {
        return word();
    }
}
