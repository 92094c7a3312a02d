package dev.reelproof.limit;

import dev.reelproof.measurement.Property;
import java.util.List;
import java.util.Map;

/**
 * How many pairs of a core may vary from the requirements, and how far.
 *
 * @param steps the number allowed by pair count of the core
 * @param ceilings for each property that may vary, the bound that a varying pair must still meet, in the unit of that
 *     property's requirements in the set
 * @param source where the figures come from
 */
public record Allowance(List<Step> steps, Map<Property, Bound.Constant> ceilings, Source source) {

    /**
     * A step of the allowance.
     *
     * @param pairs pair counts of the core
     * @param mayVary how many pairs may vary
     */
    public record Step(PairCount pairs, int mayVary) {

        public Step {
            if (!(mayVary >= 0)) {
                throw new IllegalArgumentException("0 pairs or more may vary, not " + mayVary);
            }
        }
    }

    public Allowance {
        steps = List.copyOf(steps);
        for (int i = 0; i < steps.size(); i++) {
            for (Step before : steps.subList(0, i)) {
                if (before.pairs().overlaps(steps.get(i).pairs())) {
                    throw new IllegalArgumentException(
                            "the pair counts of step " + (i + 1) + " of an allowance overlap those of a step before");
                }
            }
        }
        ceilings = Map.copyOf(ceilings);
    }

    /** How many pairs of a core of so many pairs may vary; none when no step holds it. */
    public int pairsThatMayVary(int corePairs) {
        return steps.stream()
                .filter(step -> step.pairs().holds(corePairs))
                .mapToInt(Step::mayVary)
                .findFirst()
                .orElse(0);
    }
}
