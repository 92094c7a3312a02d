package dev.reelproof.judgement;

import dev.reelproof.limit.DecisionRule;
import dev.reelproof.limit.Limit;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.RoundingRule;
import dev.reelproof.measurement.Subject;
import dev.reelproof.quantity.Kind;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Holds a value against the limit of one requirement, by its rounding and decision rule, and writes down the chain behind it. */
final class LimitCheck {
    private final LimitSet limitSet;
    private final Requirement requirement;
    private final Propagation propagation;
    private final DecisionRule rule;

    LimitCheck(LimitSet limitSet, Requirement requirement, Propagation propagation) {
        this.limitSet = limitSet;
        this.requirement = requirement;
        this.propagation = propagation;
        this.rule = limitSet.decisionRuleOf(requirement);
    }

    Requirement requirement() {
        return requirement;
    }

    Propagation propagation() {
        return propagation;
    }

    boolean needsUncertainty() {
        return rule.needsUncertainty();
    }

    /** Compares with the limit of the requirement at a frequency in MHz. */
    Comparison compare(double value, double megahertz) {
        return compare(value, requirement.limit(), megahertz);
    }

    /** Compares with another limit, by the rounding that holds for the requirement. */
    Comparison compare(double value, Limit limit, double megahertz) {
        return Comparison.of(value, limit, megahertz, rounding());
    }

    /** A count is a whole number of faults over a known length: nothing in it is rounded. */
    private RoundingRule rounding() {
        return requirement.unit().kind() == Kind.COUNT ? RoundingRule.ABSOLUTE : limitSet.rounding();
    }

    /**
     * What a value comes to by the decision rule.
     *
     * @param guardBand w, in the unit of the value; 0 for simple acceptance
     */
    Outcome outcome(double value, double megahertz, double guardBand) {
        return compare(value, megahertz).outcome(rule, guardBand);
    }

    /** The guard band w of a known budget, in the unit of the value. */
    double guardBand(Budget budget) {
        return rule.multiple() * propagation.coverageFactor() * budget.standard();
    }

    static Obstacle noUncertainty(Budget budget) {
        return new Obstacle(Obstacle.Kind.NO_UNCERTAINTY, Map.of("why", budget.missing()));
    }

    /**
     * The figure of a value, with the last steps of its chain added: rounding, limit, margin and uncertainty.
     *
     * @param megahertz the frequency of the figure, MHz; absent where it has none
     * @param limitAt the frequency that the limit is taken at, MHz
     * @param measured the raw value; absent where values were sent in different units
     * @param measuredUnit the unit of the raw value; absent where that is
     * @param steps the chain up to the value; added to
     */
    Figure figure(
            Subject subject,
            @Nullable Double megahertz,
            double limitAt,
            @Nullable Double measured,
            @Nullable String measuredUnit,
            double value,
            boolean derived,
            Budget budget,
            List<Step> steps) {
        Comparison comparison = compare(value, limitAt);
        String unit = requirement.unit().text();
        if (comparison.judged() != value) {
            steps.add(new Step(
                    "rounded",
                    "to the places of the limit, a tie to the even digit",
                    comparison.judged(),
                    unit,
                    "ASTM E29, rounding method (from memory)"));
        }
        steps.add(new Step(
                "limit",
                requirement.limit().sense() + " " + comparison.bound().formula(limitAt),
                comparison.limit(),
                unit,
                requirement.source().words()));
        steps.add(new Step(
                "margin", "how far the value lies on the good side of the limit", comparison.margin(), unit, null));
        Uncertainty uncertainty = budget.isKnown() ? uncertainty(value, limitAt, budget, steps) : null;
        return new Figure(
                subject,
                megahertz,
                measured,
                measuredUnit,
                value,
                comparison.judged(),
                comparison.limit(),
                comparison.margin(),
                unit,
                derived,
                uncertainty,
                steps);
    }

    private Uncertainty uncertainty(double value, double limitAt, Budget budget, List<Step> steps) {
        String unit = requirement.unit().text();
        budget.contributions().forEach(contribution -> steps.add(contribution.step(unit)));
        Step expanded = propagation.expanded(budget, unit);
        steps.add(expanded);
        if (rule.needsUncertainty()) {
            steps.add(new Step(
                    "guard band",
                    "w = multiple · U; " + rule.words() + "; the margin is held against w",
                    guardBand(budget),
                    unit,
                    "ILAC-G8:09/2019, " + rule.clause() + " (read)"));
        }
        double probability = Conformity.probability(value, requirement.limit(), limitAt, budget.standard());
        steps.add(new Step(
                "probability of conformity",
                "that the true value meets the limit, from the value, its standard uncertainty and a normal distribution",
                probability,
                "",
                Conformity.CITATION));
        return new Uncertainty(expanded.value(), propagation.coverageFactor(), probability);
    }
}
