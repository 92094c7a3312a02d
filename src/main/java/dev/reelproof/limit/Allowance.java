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
    public record Step(PairCount pairs, int mayVary) {}

    public Allowance {
        steps = List.copyOf(steps);
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
