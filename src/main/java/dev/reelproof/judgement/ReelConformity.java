package dev.reelproof.judgement;

import java.util.List;
import java.util.Optional;

/**
 * Source: Boole's inequality (any text on probability).
 *
 * <p>How sure it is that every judged value of a reel meets its limit, within two bounds.
 *
 * <ul>
 *   <li>Equation: 1 − Σ (1 − pᵢ) ≤ P(all conform) ≤ min pᵢ
 *   <li>Symbols: pᵢ probability of conformity of value i, over the values of all requirements
 *   <li>Range: any values, however their errors depend on each other
 *   <li>Edge cases: a sum of 1 or more bounds nothing from below, so that the lower bound is 0
 *   <li>Known error: counts only requirements whose values have an uncertainty; a count of faults has none
 * </ul>
 *
 * @param atLeast the lower bound, 0 to 1
 * @param atMost the upper bound, 0 to 1
 * @param counted how many requirements are in it
 * @param withoutUncertainty how many judged requirements are not, having no uncertainty
 */
public record ReelConformity(double atLeast, double atMost, int counted, int withoutUncertainty) {

    /** @throws IllegalArgumentException when the bounds are no probabilities in order, or nothing is counted */
    public ReelConformity {
        if (!(atLeast >= 0 && atLeast <= atMost && atMost <= 1)) {
            throw new IllegalArgumentException(
                    "bounds of a probability lie between 0 and 1 in order, not " + atLeast + " and " + atMost);
        }
        if (!(counted >= 1 && withoutUncertainty >= 0)) {
            throw new IllegalArgumentException(
                    "bounds are of one requirement or more, not of " + counted + " beside " + withoutUncertainty);
        }
    }

    /** The bounds for what was judged; empty where no requirement has an uncertainty. */
    static Optional<ReelConformity> of(List<Finding> findings) {
        double sum = 0;
        double least = 1;
        int counted = 0;
        int without = 0;
        for (Finding finding : findings) {
            Doubt doubt = finding.doubt();
            if (finding.outcome() == Outcome.NOT_TESTED) {
                continue;
            }
            if (doubt == null) {
                without++;
            } else {
                sum += doubt.sum();
                least = Math.min(least, doubt.probability());
                counted++;
            }
        }
        return counted == 0
                ? Optional.empty()
                : Optional.of(new ReelConformity(Math.min(least, Math.max(0, 1 - sum)), least, counted, without));
    }
}
