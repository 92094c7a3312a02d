package dev.reelproof.judgement;

import dev.reelproof.correction.OutsideLawException;
import dev.reelproof.correction.SummaryStatistics;
import dev.reelproof.limit.Bound;
import dev.reelproof.limit.DecisionRule;
import dev.reelproof.limit.Domain;
import dev.reelproof.limit.Limit;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.RoundingRule;
import dev.reelproof.limit.Scope;
import dev.reelproof.limit.Statistic;
import dev.reelproof.measurement.Subject;
import dev.reelproof.quantity.Kind;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** Holds a population against the limit of one requirement and finds the worst place. */
final class Evaluator {
    /** Margins that differ by less than this share of the limit are equal: the lowest frequency, then the lowest pair counts. */
    private static final double EQUAL_MARGINS = 1e-9;

    private static final double PERCENT = 100;

    private static final Comparator<Candidate> LOWEST_FIRST = Comparator.comparingDouble(Candidate::frequencyOrZero)
            .thenComparing(candidate -> candidate.series.subject());

    private final LimitSet limitSet;
    private final Requirement requirement;
    private final Propagation propagation;
    private final DecisionRule rule;

    Evaluator(LimitSet limitSet, Requirement requirement, Propagation propagation) {
        this.limitSet = limitSet;
        this.requirement = requirement;
        this.propagation = propagation;
        this.rule = limitSet.decisionRuleOf(requirement);
    }

    /**
     * One value that is judged.
     *
     * @param guardBand w; 0 until it is known, and for simple acceptance
     */
    private record Candidate(Series series, int index, double limitAt, double guardBand) {

        Candidate guardedBy(double width) {
            return new Candidate(series, index, limitAt, width);
        }

        Double megahertz() {
            return series.grid() == null ? null : (Double) series.grid().megahertz(index);
        }

        double frequencyOrZero() {
            return series.grid() == null ? 0 : series.grid().megahertz(index);
        }

        double value() {
            return series.corrected(index);
        }

        String words() {
            return value() + " (" + series.subject().words() + ")";
        }

        TreeSet<Integer> pairs() {
            TreeSet<Integer> pairs = new TreeSet<>();
            Subject subject = series.subject();
            if (subject.pair() != null) {
                pairs.add(subject.pair());
            }
            if (subject.partner() != null) {
                pairs.add(subject.partner());
            }
            return pairs;
        }
    }

    /**
     * Evaluates what is there.
     *
     * @param population the values
     * @param without pairs that are left out of the arithmetic
     */
    Evaluation evaluate(GatheredSeries population, Set<Integer> without) {
        List<Obstacle> obstacles = new ArrayList<>();
        List<Candidate> candidates = new ArrayList<>();
        for (Series series : population.series()) {
            for (int i = 0; i < series.size(); i++) {
                Candidate candidate = new Candidate(series, i, limitAt(series, i), 0);
                if (!isJudged(series, i) || candidate.pairs().stream().anyMatch(without::contains)) {
                    continue;
                }
                if (series.obstacle(i).isPresent()) {
                    addOnce(obstacles, series.obstacle(i).get());
                    continue;
                }
                candidates.add(candidate);
            }
        }
        if (candidates.isEmpty()) {
            return new Evaluation(null, null, 0, obstacles, List.of());
        }
        List<Step> rules = rules(candidates.size(), without);
        return requirement.statistic() == Statistic.INDIVIDUAL
                ? individual(candidates, rules, obstacles)
                : statistic(candidates, rules, obstacles);
    }

    /** What had to be there, and what was left out, as steps of the chain. */
    private List<Step> rules(int points, Set<Integer> without) {
        List<Step> steps = new ArrayList<>();
        String set = "limit set " + limitSet.id() + " revision " + limitSet.revision();
        String where = "";
        if (requirement.domain() instanceof Domain.Spot spot) {
            where = " at " + spot.megahertz() + " MHz";
        } else if (requirement.domain() instanceof Domain.Range range) {
            where = " from " + range.from() + " to " + range.to()
                    + " MHz, over which a sweep may have no step wider than "
                    + limitSet.grid().megahertz() + " MHz or " + limitSet.grid().decades()
                    + " decades, whichever is wider";
        }
        steps.add(new Step(
                "covered",
                "values judged"
                        + (requirement.scope() == Scope.CORE
                                ? ""
                                : ", of " + requirement.scope().word()) + where,
                points,
                "count",
                set));
        limitSet.allowance().filter(allowance -> !without.isEmpty()).ifPresent(allowance -> Optional.ofNullable(
                        allowance.ceilings().get(requirement.property()))
                .ifPresent(ceiling -> steps.add(new Step(
                        "allowed to vary",
                        "pair "
                                + String.join(
                                        ", ",
                                        without.stream().map(String::valueOf).toList())
                                + " left out; its values must still be "
                                + requirement.limit().sense() + " the ceiling",
                        ceiling.value(),
                        requirement.unit().text(),
                        allowance.source().words()))));
        return steps;
    }

    /** The frequency that the limit is taken at; a single value stated for a whole range meets the limit where it begins. */
    private double limitAt(Series series, int index) {
        if (series.grid() != null) {
            return series.grid().megahertz(index);
        }
        return requirement.domain() instanceof Domain.Range range ? range.from() : 0;
    }

    private boolean isJudged(Series series, int index) {
        return series.grid() == null
                || isWithin(requirement.domain(), series.grid().megahertz(index));
    }

    /** Whether a frequency in MHz is one that a requirement is judged at. */
    static boolean isWithin(Domain domain, double megahertz) {
        if (domain instanceof Domain.Spot spot) {
            return Coverage.isAt(megahertz, spot.megahertz());
        }
        if (domain instanceof Domain.Range range) {
            return megahertz >= range.from() * (1 - Coverage.FREQUENCY_TOLERANCE)
                    && megahertz <= range.to() * (1 + Coverage.FREQUENCY_TOLERANCE);
        }
        // A limit that states no frequency holds at every one.
        return true;
    }

    private Evaluation individual(List<Candidate> all, List<Step> rules, List<Obstacle> obstacles) {
        List<Candidate> candidates = decidable(all, obstacles);
        boolean decided = !candidates.isEmpty();
        if (!decided) {
            candidates = all;
        }
        Outcome severest = Outcome.PASS;
        Outcome[] outcomes = new Outcome[candidates.size()];
        double[] slack = new double[candidates.size()];
        List<TreeSet<Integer>> failingPairs = new ArrayList<>();
        for (int i = 0; i < slack.length; i++) {
            Candidate candidate = candidates.get(i);
            slack[i] = Comparison.unrounded(candidate.value(), requirement.limit(), candidate.limitAt)
                            .margin()
                    - candidate.guardBand;
            outcomes[i] = decided
                    ? compare(candidate.value(), candidate.limitAt).outcome(rule, candidate.guardBand)
                    : Outcome.PASS;
            if (outcomes[i].rejects()) {
                failingPairs.add(candidate.pairs());
            }
            severest = outcomes[i].compareTo(severest) > 0 ? outcomes[i] : severest;
        }
        int worst = worst(candidates, outcomes, slack, severest);
        Candidate there = candidates.get(worst);
        List<Step> steps = new ArrayList<>(there.series.steps(there.index));
        steps.addAll(rules);
        Figure figure = figure(
                there.series.subject(),
                there.megahertz(),
                there.limitAt,
                there.series.sent(there.index),
                there.series.sentUnit().text(),
                there.value(),
                there.series.derived(),
                budget(there),
                steps);
        return new Evaluation(figure, decided ? severest : null, candidates.size(), obstacles, failingPairs);
    }

    /** Of the values with the severest outcome the one with the least margin less guard band. */
    private int worst(List<Candidate> candidates, Outcome[] outcomes, double[] slack, Outcome severest) {
        int least = -1;
        for (int i = 0; i < slack.length; i++) {
            if (outcomes[i] == severest && (least < 0 || slack[i] < slack[least])) {
                least = i;
            }
        }
        Candidate leastThere = candidates.get(least);
        double limitThere = Comparison.unrounded(leastThere.value(), requirement.limit(), leastThere.limitAt)
                .limit();
        double asLow = slack[least] + EQUAL_MARGINS * Math.max(1, Math.abs(limitThere));
        int worst = least;
        for (int i = 0; i < slack.length; i++) {
            if (outcomes[i] == severest
                    && slack[i] <= asLow
                    && LOWEST_FIRST.compare(candidates.get(i), candidates.get(worst)) < 0) {
                worst = i;
            }
        }
        return worst;
    }

    /**
     * The values that the rule can decide on, with their guard bands: all, or those with an uncertainty; why the others are not goes
     * to the obstacles.
     */
    private List<Candidate> decidable(List<Candidate> candidates, List<Obstacle> obstacles) {
        if (!rule.needsUncertainty()) {
            return candidates;
        }
        List<Candidate> decidable = new ArrayList<>();
        for (Candidate candidate : candidates) {
            Budget budget = budget(candidate);
            if (budget.isKnown()) {
                decidable.add(candidate.guardedBy(guardBand(budget)));
            } else {
                addOnce(obstacles, noUncertainty(budget));
            }
        }
        return decidable;
    }

    private static void addOnce(List<Obstacle> obstacles, Obstacle obstacle) {
        if (!obstacles.contains(obstacle)) {
            obstacles.add(obstacle);
        }
    }

    private static Obstacle noUncertainty(Budget budget) {
        return new Obstacle(Obstacle.Kind.NO_UNCERTAINTY, Map.of("why", budget.missing()));
    }

    private Budget budget(Candidate candidate) {
        try {
            return propagation.budget(candidate.series.influence(candidate.index));
        } catch (OutsideLawException e) {
            return Budget.without(e.getMessage());
        }
    }

    private double guardBand(Budget budget) {
        return rule.multiple() * propagation.coverageFactor() * budget.standard();
    }

    private Evaluation statistic(List<Candidate> candidates, List<Step> rules, List<Obstacle> obstacles) {
        double value;
        Double measured;
        Budget budget;
        try {
            double[] values = candidates.stream().mapToDouble(Candidate::value).toArray();
            if (requirement.statistic() == Statistic.PERCENT_OF_PAIRS) {
                value = percentOfPairs(candidates);
                measured = value;
                budget = Budget.without("a percentage of pairs is counted, not measured");
            } else {
                value = figureOf(values);
                measured = asSent(candidates);
                budget = budget(gradientOf(values), candidates);
            }
        } catch (IllegalArgumentException e) {
            obstacles.add(new Obstacle(
                    Obstacle.Kind.NO_STATISTIC,
                    Map.of("statistic", requirement.statistic().word(), "why", e.getMessage())));
            return new Evaluation(null, null, 0, obstacles, List.of());
        }
        boolean inPercent = requirement.statistic() == Statistic.RMS_DEVIATION
                || requirement.statistic() == Statistic.PERCENT_OF_PAIRS;
        Candidate first = candidates.get(0);
        Candidate smallest = extreme(candidates, Comparator.naturalOrder());
        Candidate greatest = extreme(candidates, Comparator.reverseOrder());
        // The two ends stand for all: each value went the same way.
        List<Step> steps = new ArrayList<>(smallest.series.steps(smallest.index));
        if (greatest != smallest) {
            steps.addAll(greatest.series.steps(greatest.index));
        }
        steps.add(new Step(
                "statistic",
                requirement.statistic().word()
                        + requirement
                                .particulars()
                                .each()
                                .map(each -> " with each " + each.limit().sense() + " "
                                        + each.limit()
                                                .upper()
                                                .or(each.limit()::lower)
                                                .orElseThrow()
                                                .formula(Double.NaN)
                                        + " " + each.unit().text())
                                .orElse("")
                        + " of " + candidates.size() + " corrected values of "
                        + requirement.property()
                        + ", from " + smallest.words() + " to " + greatest.words(),
                value,
                requirement.unit().text(),
                SummaryStatistics.CITATION));
        steps.addAll(rules);
        Double megahertz = requirement.domain() instanceof Domain.Spot spot ? (Double) spot.megahertz() : null;
        double limitAt = megahertz == null ? 0 : megahertz;
        Figure figure = figure(
                Subject.ofReel(),
                megahertz,
                limitAt,
                measured,
                measured == null
                        ? null
                        : inPercent
                                ? requirement.unit().text()
                                : first.series.sentUnit().text(),
                value,
                true,
                budget,
                steps);
        Outcome outcome = null;
        if (!rule.needsUncertainty()) {
            outcome = compare(value, limitAt).outcome(rule, 0);
        } else if (budget.isKnown()) {
            outcome = compare(value, limitAt).outcome(rule, guardBand(budget));
        } else {
            obstacles.add(noUncertainty(budget));
        }
        return new Evaluation(figure, outcome, candidates.size(), obstacles, List.of());
    }

    /** The statistic before correction; null where values were sent in different units, which have no figure together. */
    private Double asSent(List<Candidate> candidates) {
        boolean oneUnit = candidates.stream()
                        .map(candidate -> candidate.series.sentUnit())
                        .distinct()
                        .count()
                == 1;
        return oneUnit
                ? (Double) figureOf(candidates.stream()
                        .mapToDouble(candidate -> candidate.series.sentMagnitude(candidate.index))
                        .toArray())
                : null;
    }

    private Budget budget(double[] gradient, List<Candidate> candidates) {
        try {
            return propagation.budget(
                    gradient,
                    candidates.stream()
                            .map(candidate -> candidate.series.influence(candidate.index))
                            .toList());
        } catch (OutsideLawException e) {
            return Budget.without(e.getMessage());
        }
    }

    private static Candidate extreme(List<Candidate> candidates, Comparator<Double> order) {
        return candidates.stream()
                .min(Comparator.comparing(Candidate::value, order).thenComparing(LOWEST_FIRST))
                .orElseThrow();
    }

    /** The pairs of which every value meets what each must, in percent of those that have a value. */
    private double percentOfPairs(List<Candidate> candidates) {
        Limit each = requirement.particulars().each().orElseThrow().limit();
        Set<Integer> pairs = new TreeSet<>();
        Set<Integer> failing = new TreeSet<>();
        for (Candidate candidate : candidates) {
            pairs.addAll(candidate.pairs());
            if (!Comparison.of(candidate.value(), each, candidate.limitAt, rounding())
                    .passes()) {
                failing.addAll(candidate.pairs());
            }
        }
        if (pairs.isEmpty()) {
            throw new IllegalArgumentException("there is no value of a pair");
        }
        return PERCENT * (pairs.size() - failing.size()) / pairs.size();
    }

    /** A count is a whole number of faults over a known length: nothing in it is rounded. */
    private RoundingRule rounding() {
        return requirement.unit().kind() == Kind.COUNT ? RoundingRule.ABSOLUTE : limitSet.rounding();
    }

    private double figureOf(double[] values) {
        boolean levels = requirement.unit().kind() == Kind.LEVEL;
        return switch (requirement.statistic()) {
            case MEAN -> SummaryStatistics.mean(values);
            case RMS -> levels ? SummaryStatistics.rmsOfLevels(values) : SummaryStatistics.rms(values);
            case RMS_DEVIATION -> SummaryStatistics.rmsDeviationPercent(values);
            case MEAN_MINUS_SIGMA -> SummaryStatistics.meanMinusSigma(values);
            case MAXIMUM -> SummaryStatistics.maximum(values);
            case INDIVIDUAL, PERCENT_OF_PAIRS -> throw new IllegalArgumentException(
                    requirement.statistic().word() + " is not a figure of values alone: " + Arrays.toString(values));
        };
    }

    private double[] gradientOf(double[] values) {
        boolean levels = requirement.unit().kind() == Kind.LEVEL;
        return switch (requirement.statistic()) {
            case MEAN -> SummaryStatistics.meanGradient(values);
            case RMS -> levels ? SummaryStatistics.rmsOfLevelsGradient(values) : SummaryStatistics.rmsGradient(values);
            case RMS_DEVIATION -> SummaryStatistics.rmsDeviationPercentGradient(values);
            case MEAN_MINUS_SIGMA -> SummaryStatistics.meanMinusSigmaGradient(values);
            case MAXIMUM -> SummaryStatistics.maximumGradient(values);
            case INDIVIDUAL, PERCENT_OF_PAIRS -> throw new IllegalArgumentException(
                    requirement.statistic().word() + " is not a figure of values alone: " + Arrays.toString(values));
        };
    }

    private Comparison compare(double value, double megahertz) {
        return Comparison.of(value, requirement.limit(), megahertz, rounding());
    }

    private Figure figure(
            Subject subject,
            Double megahertz,
            double limitAt,
            Double measured,
            String measuredUnit,
            double value,
            boolean derived,
            Budget budget,
            List<Step> steps) {
        Comparison comparison = compare(value, limitAt);
        Bound bound = comparison.bound();
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
                requirement.limit().sense() + " " + bound.formula(limitAt),
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
