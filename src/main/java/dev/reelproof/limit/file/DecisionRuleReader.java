package dev.reelproof.limit.file;

import dev.reelproof.limit.DecisionRule;
import java.util.Optional;

/** Reads how uncertainty enters a decision: of a whole limit set, or of one requirement. */
final class DecisionRuleReader {
    private DecisionRuleReader() {}

    /** The rule that an entry states; empty where it states none or a fault was noted. */
    static Optional<DecisionRule> read(Entry entry) {
        if (!entry.has("decision-rule")) {
            return Optional.empty();
        }
        Entry rule = entry.at("decision-rule");
        if (rule.text("rule").equals("simple-acceptance")) {
            rule.refuse("multiple", "simple acceptance has no guard band, so no multiple of U");
            rule.refuse("outcomes", "simple acceptance has no guard band; its outcomes are pass and fail");
            return Optional.of(DecisionRule.SIMPLE_ACCEPTANCE);
        }
        if (!rule.has("multiple") || !rule.has("outcomes")) {
            rule.fault(
                    "a guard band needs its width as a multiple of U, such as 'multiple: 1.0', and 'outcomes: two' or"
                            + " 'outcomes: four'");
            return Optional.empty();
        }
        DecisionRule.Form form = rule.text("outcomes").equals("two")
                ? DecisionRule.Form.GUARD_BAND_TWO
                : DecisionRule.Form.GUARD_BAND_FOUR;
        return Optional.of(new DecisionRule(form, rule.number("multiple")));
    }
}
