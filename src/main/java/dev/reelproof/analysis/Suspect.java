package dev.reelproof.analysis;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A suspect with the evidence against it: an association, not proof.
 *
 * @param group what exactly these reels met; no test of these reels tells several members apart; never empty
 * @param counts reels in and out of the exposure, and how many fail
 * @param p the chance of such evidence or stronger if the exposure had no effect
 * @param q the lowest level at which it is named, corrected for all that were tested; 1 when it was not tested
 * @param tested whether it was tested; false when so few reels could not be significant whatever was found
 * @param riskDifference how much more often exposed reels fail, a share from −1 to 1, with its 95 % interval
 * @param margins what the margins say; null where failures are the evidence
 * @param explainedBy suspects that explain this one: with one of them held fixed nothing significant is left of this one, but not the
 *     other way round
 * @param cannotBeToldFrom suspects of nearly the same reels: with either held fixed, nothing significant is left of the other
 */
public record Suspect(
        List<Exposure> group,
        CountTable counts,
        double p,
        double q,
        boolean tested,
        Interval riskDifference,
        @Nullable Margins margins,
        List<Exposure> explainedBy,
        List<Exposure> cannotBeToldFrom) {
    /**
     * What the margins say.
     *
     * @param shareLower the share of pairs of an exposed and another reel in which the exposed one has the lower margin: 0.5 without
     *     effect, 1 at most
     * @param shift how much higher the margins of exposed reels lie (negative: lower), in the unit of the margins, with its 95 %
     *     interval
     */
    public record Margins(double shareLower, Interval shift) {}

    public Suspect {
        if (group.isEmpty()) {
            throw new IllegalArgumentException("a suspect needs a name");
        }
        group = List.copyOf(group);
        explainedBy = List.copyOf(explainedBy);
        cannotBeToldFrom = List.copyOf(cannotBeToldFrom);
    }

    /** The member of the group that stands for it. */
    public Exposure first() {
        return group.get(0);
    }
}
