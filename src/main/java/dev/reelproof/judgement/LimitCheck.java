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
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Holds a value against the limit of one requirement, by its rounding and decision rule, and writes down the chain behind it. */
final class LimitCheck {
    private static final double TEN = 10;

    private final LimitSet limitSet;
    private final Requirement requirement;
    private final Propagation propagation;
    private final DecisionRule rule;
    private final double turnedByRounding;

    LimitCheck(LimitSet limitSet, Requirement requirement, Propagation propagation) {
        this.limitSet = limitSet;
        this.requirement = requirement;
        this.propagation = propagation;
        this.rule = limitSet.decisionRuleOf(requirement);
        this.turnedByRounding = placesOfLimit();
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

    /**
     * A count is a whole number of faults over a known length: nothing in it is rounded. Nor is what is held against a guard band: the
     * band is measured from the value itself, and half a place more or less would be as wide as the band.
     */
    private RoundingRule rounding() {
        return requirement.unit().kind() == Kind.COUNT || needsUncertainty()
                ? RoundingRule.ABSOLUTE
                : limitSet.rounding();
    }

    /** How near the limit rounding can turn a decision: one of the places that the limit is printed with; 0 where nothing is rounded. */
    double turnedByRounding() {
        return turnedByRounding;
    }

    private double placesOfLimit() {
        if (rounding() == RoundingRule.ABSOLUTE) {
            return 0;
        }
        return Stream.of(requirement.limit().lower(), requirement.limit().upper())
                .flatMap(Optional::stream)
                .flatMapToInt(bound -> bound.decimals().stream())
                .mapToDouble(places -> Math.pow(TEN, -places))
                .max()
                .orElse(0);
    }

    /**
     * What a value comes to by the decision rule.
     *
     * @param guardBand w, in the unit of the value; 0 for simple acceptance
     */
    Outcome outcome(double value, double megahertz, double guardBand) {
        return compare(value, megahertz).outcome(rule, guardBand);
    }

    /** The guard band w of a standard uncertainty, in the unit of the value. */
    double guardBand(double standard) {
        return rule.multiple() * propagation.coverageFactor() * standard;
    }

    static Obstacle noUncertainty(Budget budget) {
        return new Obstacle(Obstacle.Kind.NO_UNCERTAINTY, Map.of("why", budget.missing()));
    }

    /**
     * Where a figure lies.
     *
     * @param subject the reel for a statistic
     * @param units those that a statistic was taken of, where it was taken of each
     * @param megahertz its frequency, MHz; absent where it has none
     * @param limitAt the frequency that its limit is taken at, MHz
     */
    record Place(Subject subject, @Nullable Units units, @Nullable Double megahertz, double limitAt) {}

    /**
     * The figure of a value, with the last steps of its chain added: rounding, limit, margin and uncertainty.
     *
     * @param measured the raw value; absent where values were sent in different units
     * @param measuredUnit the unit of the raw value; absent where that is
     * @param steps the chain up to the value; added to
     */
    Figure figure(
            Place place,
            @Nullable Double measured,
            @Nullable String measuredUnit,
            double value,
            boolean derived,
            Budget budget,
            List<Step> steps) {
        double limitAt = place.limitAt;
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
                place.subject,
                place.units,
                place.megahertz,
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
                    guardBand(budget.standard()),
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
