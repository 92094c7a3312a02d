package dev.reelproof.judgement;

import dev.reelproof.limit.DecisionRule;
import dev.reelproof.measurement.Property;
import java.util.List;

/**
 * What was found for one requirement.
 *
 * @param requirement the requirement's id within its limit set
 * @param property what it limits
 * @param outcome pass, fail, either conditionally, or not tested
 * @param reason why it was not tested, or why a failing figure was allowed; null when there is nothing to say
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
        Figure figure,
        int points,
        List<Integer> varyingPairs,
        DecisionRule decisionRule) {

    public Finding {
        varyingPairs = List.copyOf(varyingPairs);
    }
}
