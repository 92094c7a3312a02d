package dev.reelproof.analysis;

import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * A suspect with the evidence against it: an association, not proof.
 *
 * @param group what exactly these reels met; no test of these reels tells several members apart; never empty
 * @param counts reels in and out of the exposure, and how many fail
 * @param p the chance of such evidence or stronger among all reels if the exposure had no effect
 * @param pWithinStrata the same with each reel compared within its stratum alone; it decides. Equal to p where there is one stratum
 * @param oddsRatioWithinStrata the odds ratio that the strata have in common; absent where it divides by zero
 * @param q the lowest level at which it is named, from {@code pWithinStrata} and corrected for all that were tested; 1 when it was not
 *     tested
 * @param tested whether it was tested; false when so few reels could not be significant whatever was found
 * @param onlyInTime whether it would be named among all reels, but not within their strata: it cannot be told from what else changed in
 *     time
 * @param riskDifference how much more often exposed reels fail, a share from −1 to 1, with its 95 % interval
 * @param margins what the margins say; null where failures are the evidence
 * @param dose how failing grows with the share of a reel that was made from the lot; absent where shares are not known or all equal
 * @param explainedBy suspects that explain this one: with one of them held fixed nothing significant is left of this one, but not the
 *     other way round
 * @param cannotBeToldFrom suspects of nearly the same reels: with either held fixed, nothing significant is left of the other
 */
public record Suspect(
        List<Exposure> group,
        CountTable counts,
        double p,
        double pWithinStrata,
        @Nullable Double oddsRatioWithinStrata,
        double q,
        boolean tested,
        boolean onlyInTime,
        Interval riskDifference,
        @Nullable Margins margins,
        @Nullable DoseEvidence dose,
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

    /** Whether it belongs to the test, to the making of the reels, or, where the same reels met both, to either. */
    public Side side() {
        boolean ofTest = group.stream().anyMatch(one -> one.factor().isOfTest());
        boolean ofMaking = group.stream().anyMatch(one -> !one.factor().isOfTest());
        return ofTest && ofMaking ? Side.BOTH : ofTest ? Side.TEST : Side.UPSTREAM;
    }

    /** Where a suspect lies. */
    public enum Side {
        /** In the test: bay, instrument, technician, day. */
        TEST,
        /** In what the reels went through before. */
        UPSTREAM,
        /** In one or the other: these reels do not tell. */
        BOTH;

        /** The word in answers. */
        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** The member of the group that stands for it. */
    public Exposure first() {
        return group.get(0);
    }
}
