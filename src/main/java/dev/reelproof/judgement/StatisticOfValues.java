package dev.reelproof.judgement;

import dev.reelproof.correction.OutsideLawException;
import dev.reelproof.correction.SummaryStatistics;
import dev.reelproof.limit.Domain;
import dev.reelproof.limit.Limit;
import dev.reelproof.limit.Particulars;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.Statistic;
import dev.reelproof.measurement.Subject;
import dev.reelproof.quantity.Kind;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/** Judges one figure of all values: their mean, root mean square, deviation, maximum, or the share of pairs that meet a limit. */
final class StatisticOfValues {
    private static final double PERCENT_OF_WHOLE = 100;

    private final LimitCheck check;
    private final Requirement requirement;

    StatisticOfValues(LimitCheck check) {
        this.check = check;
        this.requirement = check.requirement();
    }

    /**
     * The statistic with its uncertainty.
     *
     * @param value at the reference
     * @param measured before correction; absent where values were sent in different units
     * @param budget what its uncertainty is made of
     */
    private record Result(double value, @Nullable Double measured, Budget budget) {}

    /**
     * Judges the statistic of values.
     *
     * @param candidates the values, at least one
     * @param rules what had to be there and what was left out, for the chain of the figure
     * @param obstacles what could not be judged; added to
     */
    Evaluation evaluate(List<Candidate> candidates, List<Step> rules, List<Obstacle> obstacles) {
        Result result;
        try {
            result = result(candidates);
        } catch (IllegalArgumentException e) {
            obstacles.add(new Obstacle(
                    Obstacle.Kind.NO_STATISTIC,
                    Map.of("statistic", requirement.statistic().word(), "why", e.getMessage())));
            return new Evaluation(null, null, 0, obstacles, List.of());
        }
        Double megahertz = requirement.domain() instanceof Domain.Spot spot ? (Double) spot.megahertz() : null;
        double limitAt = megahertz == null ? 0 : megahertz;
        List<Step> steps = new ArrayList<>(steps(candidates, result.value));
        steps.addAll(rules);
        Figure figure = check.figure(
                Subject.ofReel(),
                megahertz,
                limitAt,
                result.measured,
                result.measured == null ? null : measuredUnit(candidates),
                result.value,
                true,
                result.budget,
                steps);
        Outcome outcome = null;
        if (!check.needsUncertainty()) {
            outcome = check.outcome(result.value, limitAt, 0);
        } else if (result.budget.isKnown()) {
            outcome = check.outcome(result.value, limitAt, check.guardBand(result.budget));
        } else {
            obstacles.add(LimitCheck.noUncertainty(result.budget));
        }
        return new Evaluation(figure, outcome, candidates.size(), obstacles, List.of());
    }

    private Result result(List<Candidate> candidates) {
        if (requirement.statistic() == Statistic.PERCENT_OF_PAIRS) {
            double percent = percentOfPairs(candidates);
            return new Result(percent, percent, Budget.without("a percentage of pairs is counted, not measured"));
        }
        double[] values = candidates.stream().mapToDouble(Candidate::value).toArray();
        return new Result(figureOf(values), asSent(candidates), budget(gradientOf(values), candidates));
    }

    /** The chain of the smallest and the greatest value, which stand for all: each value went the same way; then the statistic. */
    private List<Step> steps(List<Candidate> candidates, double value) {
        Candidate smallest = extreme(candidates, Comparator.naturalOrder());
        Candidate greatest = extreme(candidates, Comparator.reverseOrder());
        List<Step> steps = new ArrayList<>(smallest.series().steps(smallest.index()));
        if (!greatest.equals(smallest)) {
            steps.addAll(greatest.series().steps(greatest.index()));
        }
        steps.add(new Step(
                "statistic",
                requirement.statistic().word()
                        + requirement
                                .particulars()
                                .each()
                                .map(StatisticOfValues::words)
                                .orElse("")
                        + " of " + candidates.size() + " corrected values of " + requirement.property()
                        + ", from " + smallest.words() + " to " + greatest.words(),
                value,
                requirement.unit().text(),
                SummaryStatistics.CITATION));
        return steps;
    }

    private static String words(Particulars.Each each) {
        Limit limit = each.limit();
        return " with each " + limit.sense() + " "
                + limit.upper().or(limit::lower).orElseThrow().formula(Double.NaN) + " "
                + each.unit().text();
    }

    private static Candidate extreme(List<Candidate> candidates, Comparator<Double> order) {
        return candidates.stream()
                .min(Comparator.comparing(Candidate::value, order).thenComparing(Candidate.LOWEST_FIRST))
                .orElseThrow();
    }

    private String measuredUnit(List<Candidate> candidates) {
        return requirement.statistic().isInPercent()
                ? requirement.unit().text()
                : candidates.get(0).series().sentUnit().text();
    }

    /** The statistic before correction; absent where values were sent in different units, which have no figure together. */
    private @Nullable Double asSent(List<Candidate> candidates) {
        boolean oneUnit = candidates.stream()
                        .map(candidate -> candidate.series().sentUnit())
                        .distinct()
                        .count()
                == 1;
        return oneUnit
                ? (Double) figureOf(candidates.stream()
                        .mapToDouble(candidate -> candidate.series().sentMagnitude(candidate.index()))
                        .toArray())
                : null;
    }

    private Budget budget(double[] gradient, List<Candidate> candidates) {
        try {
            return check.propagation()
                    .budget(
                            gradient,
                            candidates.stream().map(Candidate::influence).toList());
        } catch (OutsideLawException e) {
            return Budget.without(String.valueOf(e.getMessage()));
        }
    }

    /** The pairs of which every value meets what each must, in percent of those that have a value. */
    private double percentOfPairs(List<Candidate> candidates) {
        Limit each = requirement.particulars().each().orElseThrow().limit();
        Set<Integer> pairs = new TreeSet<>();
        Set<Integer> failing = new TreeSet<>();
        for (Candidate candidate : candidates) {
            pairs.addAll(candidate.pairs());
            if (!check.compare(candidate.value(), each, candidate.limitAt()).passes()) {
                failing.addAll(candidate.pairs());
            }
        }
        if (pairs.isEmpty()) {
            throw new IllegalArgumentException("there is no value of a pair");
        }
        return PERCENT_OF_WHOLE * (pairs.size() - failing.size()) / pairs.size();
    }

    private boolean ofLevels() {
        return requirement.unit().kind() == Kind.LEVEL;
    }

    private double figureOf(double[] values) {
        return switch (requirement.statistic()) {
            case MEAN -> SummaryStatistics.mean(values);
            case RMS -> ofLevels() ? SummaryStatistics.rmsOfLevels(values) : SummaryStatistics.rms(values);
            case RMS_DEVIATION -> SummaryStatistics.rmsDeviationPercent(values);
            case MEAN_MINUS_SIGMA -> SummaryStatistics.meanMinusSigma(values);
            case MAXIMUM -> SummaryStatistics.maximum(values);
            case INDIVIDUAL, PERCENT_OF_PAIRS -> throw notOfValuesAlone(values);
        };
    }

    private double[] gradientOf(double[] values) {
        return switch (requirement.statistic()) {
            case MEAN -> SummaryStatistics.meanGradient(values);
            case RMS -> ofLevels()
                    ? SummaryStatistics.rmsOfLevelsGradient(values)
                    : SummaryStatistics.rmsGradient(values);
            case RMS_DEVIATION -> SummaryStatistics.rmsDeviationPercentGradient(values);
            case MEAN_MINUS_SIGMA -> SummaryStatistics.meanMinusSigmaGradient(values);
            case MAXIMUM -> SummaryStatistics.maximumGradient(values);
            case INDIVIDUAL, PERCENT_OF_PAIRS -> throw notOfValuesAlone(values);
        };
    }

    private IllegalArgumentException notOfValuesAlone(double[] values) {
        return new IllegalArgumentException(
                requirement.statistic().word() + " is not a figure of values alone: " + Arrays.toString(values));
    }
}
