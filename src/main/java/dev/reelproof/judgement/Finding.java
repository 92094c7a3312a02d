package dev.reelproof.judgement;

import dev.reelproof.limit.DecisionRule;
import dev.reelproof.measurement.Property;
import java.util.List;
import java.util.Objects;

/**
 * What was found for one requirement.
 *
 * @param requirement the requirement's id within its limit set
 * @param property what it limits
 * @param outcome pass, fail, either conditionally, or not tested
 * @param reason the sentence that the record keeps: why it was not tested, or why a failing figure was allowed; null when there is
 *     nothing to say
 * @param obstacles what kept it from being judged; none unless it is not tested
 * @param figure the worst figure; null when there was nothing to judge
 * @param points how many values were judged
 * @param varyingPairs the pairs left out under the set's allowance of pairs that may vary
 * @param decisionRule how uncertainty entered the decision
 */
public record Finding(
        String requirement,
        Property property,
        Outcome outcome,
        String reason,
        Obstacles obstacles,
        Figure figure,
        int points,
        List<Integer> varyingPairs,
        DecisionRule decisionRule) {

    /** @throws IllegalArgumentException when something stands in the way of a finding that was tested */
    public Finding {
        Objects.requireNonNull(obstacles, "what stands in the way is none at least");
        if (!(obstacles.isEmpty() || outcome == Outcome.NOT_TESTED)) {
            throw new IllegalArgumentException("requirement '" + requirement + "' is said to be " + outcome.word()
                    + " and to have obstacles: " + obstacles.sentence());
        }
        varyingPairs = List.copyOf(varyingPairs);
    }

    /** A finding of which the sentence alone is known; where it is not tested, that is what stood in the way. */
    public Finding(
            String requirement,
            Property property,
            Outcome outcome,
            String reason,
            Figure figure,
            int points,
            List<Integer> varyingPairs,
            DecisionRule decisionRule) {
        this(
                requirement,
                property,
                outcome,
                reason,
                Obstacles.asRecorded(outcome, reason),
                figure,
                points,
                varyingPairs,
                decisionRule);
    }
}
