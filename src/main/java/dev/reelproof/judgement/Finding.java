package dev.reelproof.judgement;

import dev.reelproof.limit.DecisionRule;
import dev.reelproof.measurement.Property;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * What was found for one requirement.
 *
 * @param requirement the requirement's id within its limit set
 * @param property what it limits
 * @param outcome pass, fail, either conditionally, or not tested
 * @param reason the sentence that the record keeps: why it was not tested, or why a failing figure was allowed; absent when there
 *     is nothing to say
 * @param obstacles what kept it from being judged; none unless it is not tested
 * @param figure the worst figure; absent when there was nothing to judge
 * @param points how many values were judged
 * @param varyingPairs the pairs left out under the set's allowance of pairs that may vary
 * @param decisionRule how uncertainty entered the decision
 * @param doubt where it is least sure that the requirement is met; absent where no uncertainty is known, or none was kept
 */
public record Finding(
        String requirement,
        Property property,
        Outcome outcome,
        @Nullable String reason,
        Obstacles obstacles,
        @Nullable Figure figure,
        int points,
        List<Integer> varyingPairs,
        DecisionRule decisionRule,
        @Nullable Doubt doubt) {

    /**
     * Checks that the parts agree.
     *
     * @throws IllegalArgumentException when a finding that was tested has no figure or has obstacles, one that was not has no reason, or
     *     a conditional one stands under a rule without conditional outcomes
     */
    public Finding {
        if (requirement == null || requirement.isBlank()) {
            throw new IllegalArgumentException("a finding names its requirement");
        }
        if (outcome != Outcome.NOT_TESTED && figure == null) {
            throw new IllegalArgumentException(
                    "requirement '" + requirement + "' is said to be " + outcome.word() + " without a figure");
        }
        if (outcome == Outcome.NOT_TESTED && (reason == null || reason.isBlank())) {
            throw new IllegalArgumentException(
                    "requirement '" + requirement + "' is said to be not tested without a reason");
        }
        if ((outcome == Outcome.CONDITIONAL_PASS || outcome == Outcome.CONDITIONAL_FAIL)
                && !decisionRule.isConditional()) {
            throw new IllegalArgumentException("requirement '" + requirement + "' is said to be " + outcome.word()
                    + ", which the rule '" + decisionRule.words() + "' does not know");
        }
        if (!(points >= 0)) {
            throw new IllegalArgumentException(
                    "requirement '" + requirement + "' judges 0 values or more, not " + points);
        }
        Objects.requireNonNull(obstacles, "what stands in the way is none at least");
        if (!(obstacles.isEmpty() || outcome == Outcome.NOT_TESTED)) {
            throw new IllegalArgumentException("requirement '" + requirement + "' is said to be " + outcome.word()
                    + " and to have obstacles: " + obstacles.sentence());
        }
        varyingPairs = List.copyOf(varyingPairs);
        if (!varyingPairs.stream().allMatch(pair -> pair >= 1)) {
            throw new IllegalArgumentException(
                    "requirement '" + requirement + "' leaves out pairs from 1, not " + varyingPairs);
        }
    }

    /**
     * The worst figure of a finding that has one.
     *
     * @throws IllegalStateException when there was nothing to judge
     */
    public Figure worst() {
        if (figure == null) {
            throw new IllegalStateException("requirement '" + requirement + "' was not judged and has no figure");
        }
        return figure;
    }

    /** A finding of which the sentence alone is known; where it is not tested, that is what stood in the way. */
    public Finding(
            String requirement,
            Property property,
            Outcome outcome,
            @Nullable String reason,
            @Nullable Figure figure,
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
                decisionRule,
                null);
    }
}
