package dev.reelproof.analysis;

/**
 * How suspects are searched for.
 *
 * @param evidence what counts against them
 * @param level the rate of false alarms among those named, more than 0 and at most 0.5
 * @param minimumExposed the fewest exposed reels that are evidence at all, at least 1
 * @param strataBy which reels they are compared with
 */
public record SuspectQuestion(Evidence evidence, double level, int minimumExposed, StrataBy strataBy) {
    /** The level where none is given. */
    public static final double USUAL_LEVEL = 0.05;

    /** The highest level: above it, more than half of what is named may be false. */
    public static final double HIGHEST_LEVEL = 0.5;

    /** The minimum where none is given. */
    public static final int USUAL_MINIMUM_EXPOSED = 3;

    public SuspectQuestion {
        if (!(level > 0 && level <= HIGHEST_LEVEL)) {
            throw new IllegalArgumentException(
                    "the level must be more than 0 and at most " + HIGHEST_LEVEL + ", not " + level);
        }
        if (!(minimumExposed >= 1)) {
            throw new IllegalArgumentException(
                    "the minimum of exposed reels must be a whole number from 1, not " + minimumExposed);
        }
    }

    /** The question with the usual strata. */
    public SuspectQuestion(Evidence evidence, double level, int minimumExposed) {
        this(evidence, level, minimumExposed, StrataBy.WEEK);
    }

    /** The question with the usual level, minimum and strata. */
    public static SuspectQuestion of(Evidence evidence) {
        return new SuspectQuestion(evidence, USUAL_LEVEL, USUAL_MINIMUM_EXPOSED);
    }

    /**
     * The same question at another level.
     *
     * @throws IllegalArgumentException when it is not more than 0 and at most {@value #HIGHEST_LEVEL}
     */
    public SuspectQuestion withLevel(double newLevel) {
        return new SuspectQuestion(evidence, newLevel, minimumExposed, strataBy);
    }

    /**
     * The same question with another minimum of exposed reels.
     *
     * @throws IllegalArgumentException when it is less than 1
     */
    public SuspectQuestion withMinimumExposed(int newMinimum) {
        return new SuspectQuestion(evidence, level, newMinimum, strataBy);
    }

    /** The same question with other strata. */
    public SuspectQuestion withStrata(StrataBy newStrata) {
        return new SuspectQuestion(evidence, level, minimumExposed, newStrata);
    }
}
