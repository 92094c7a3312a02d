package dev.reelproof.analysis;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A suspect with the evidence against it. An association, not proof.
 *
 * @param group what was met by exactly these reels: several members cannot be told apart by any test of these reels; never empty
 * @param counts reels in and out of the exposure, and how many fail
 * @param p the chance of such evidence or stronger, were the exposure without effect
 * @param q the least level at which it is named, all tested taken together; 1 when it was not tested
 * @param tested whether it was tested: false when so few reels could not be significant whatever came out
 * @param riskDifference how much more often exposed reels fail, a share from −1 to 1, with its 95 % interval
 * @param margins what the margins say; null where failures are the evidence
 * @param explainedBy suspects that explain this one: with them held fixed nothing is left of it, but not the other way round
 * @param cannotBeToldFrom suspects that meet nearly the same reels: with either held fixed, nothing is left of the other
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
