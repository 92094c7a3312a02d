package dev.reelproof.judgement;

import dev.reelproof.correction.OutsideLawException;
import dev.reelproof.correction.SummaryStatistics;
import dev.reelproof.limit.Domain;
import dev.reelproof.limit.Limit;
import dev.reelproof.limit.Particulars;
import dev.reelproof.limit.Per;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.Statistic;
import dev.reelproof.measurement.Subject;
import dev.reelproof.quantity.FrequencyGrid;
import dev.reelproof.quantity.Kind;
import dev.reelproof.quantity.ReadingUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Judges a figure of many values: their mean, root mean square, deviation, maximum, or the share of pairs that meet a limit. One figure of
 * the whole reel, or one of each unit (or pair of units) of the core, of which the worst counts.
 */
final class StatisticOfValues {
    private static final double PERCENT_OF_WHOLE = 100;

    private final LimitCheck check;
    private final LimitColumns limits;
    private final CoreLayout core;
    private final Requirement requirement;

    /** The one frequency of the figure; absent where it has none. */
    private final @Nullable FrequencyGrid spot;

    StatisticOfValues(LimitCheck check, LimitColumns limits, CoreLayout core) {
        this.check = check;
        this.limits = limits;
        this.core = core;
        this.requirement = check.requirement();
        this.spot = requirement.domain() instanceof Domain.Spot at ? FrequencyGrid.ofMegahertz(at.megahertz()) : null;
    }

    /**
     * The statistic of some values, with its uncertainty.
     *
     * @param units those that the values belong to; absent for the whole reel
     * @param values what it was formed of
     * @param value at the reference
     * @param margin how far it lies, unrounded, on the good side of the limit
     * @param budget what its uncertainty is made of
     * @param outcome absent where it cannot be decided
     */
    private record Result(
            @Nullable Units units,
            Values values,
            double value,
            double margin,
            Budget budget,
            @Nullable Outcome outcome) {}

    /**
     * Judges the statistic of values.
     *
     * @param judged the series with a value to judge, at least one
     * @param points how many values they have
     * @param rules what had to be there and what was left out, for the chain of the figure
     * @param obstacles what could not be judged; added to
     */
    Evaluation evaluate(List<Series> judged, int points, List<Step> rules, Set<Obstacle> obstacles) {
        List<Result> results = new ArrayList<>();
        for (Values values : groups(judged)) {
            try {
                Result result = result(values);
                results.add(result);
                if (result.outcome == null) {
                    obstacles.add(LimitCheck.noUncertainty(result.budget));
                }
            } catch (IllegalArgumentException e) {
                obstacles.add(new Obstacle(
                        Obstacle.Kind.NO_STATISTIC,
                        Map.of("statistic", requirement.statistic().word(), "why", String.valueOf(e.getMessage()))));
            }
        }
        if (results.isEmpty()) {
            return Evaluation.ofNothing(List.copyOf(obstacles));
        }
        Result worst = Collections.min(results, worstFirst());
        return new Evaluation(
                figure(worst, rules),
                worst.outcome,
                points,
                List.copyOf(obstacles),
                0,
                new TreeSet<>(),
                doubt(results));
    }

    /** The values of the whole reel, or those of each unit or pair of units, in their order. */
    private List<Values> groups(List<Series> judged) {
        if (requirement.particulars().per() == Per.REEL) {
            return List.of(new Values(null, judged, limits));
        }
        Map<Units, List<Series>> byUnits = new TreeMap<>();
        for (Series series : judged) {
            core.unitsOf(series.subject()).ifPresent(units -> byUnits.computeIfAbsent(units, key -> new ArrayList<>())
                    .add(series));
        }
        return byUnits.entrySet().stream()
                .map(group -> new Values(group.getKey(), group.getValue(), limits))
                .toList();
    }

    /** What cannot be decided comes last; else the severest outcome first, of equal ones the least margin less guard band. */
    private Comparator<Result> worstFirst() {
        return Comparator.<Result>comparingInt(result -> result.outcome == null ? 1 : -result.outcome.ordinal())
                .thenComparingDouble(result -> result.margin - guardBand(result.budget));
    }

    private double guardBand(Budget budget) {
        return check.needsUncertainty() && budget.isKnown() ? check.guardBand(budget.standard()) : 0;
    }

    private Result result(Values values) {
        double value = requirement.statistic() == Statistic.PERCENT_OF_PAIRS
                ? percentOfPairs(values)
                : figureOf(values.corrected());
        double margin = limit().margin(value, 0);
        Budget budget = budget(values, ErrorSide.at(margin));
        Outcome outcome = check.needsUncertainty() && !budget.isKnown()
                ? null
                : check.outcome(value, limit().limitAt(0), guardBand(budget));
        return new Result(values.units(), values, value, margin, budget, outcome);
    }

    /** The limit of a statistic, which has one point: at its spot where it has one. */
    private LimitColumn limit() {
        return limits.over(spot);
    }

    private Figure figure(Result worst, List<Step> rules) {
        List<Step> steps = new ArrayList<>(steps(worst));
        steps.addAll(rules);
        Double measured = asSent(worst);
        return check.figure(
                new LimitCheck.Place(Subject.ofReel(), worst.units, megahertz(), limit().limitAt(0)),
                measured,
                measured == null ? null : measuredUnit(worst.values),
                worst.value,
                true,
                worst.budget,
                steps);
    }

    /** How sure it is that each statistic meets the limit; absent where none is known. */
    private @Nullable Doubt doubt(List<Result> results) {
        double sum = 0;
        Result least = null;
        double leastProbable = 2;
        for (Result result : results) {
            if (result.budget.isKnown()) {
                double probability = Conformity.probability(
                        result.value, requirement.limit(), limit().limitAt(0), result.budget.standard());
                sum += 1 - probability;
                if (probability < leastProbable) {
                    leastProbable = probability;
                    least = result;
                }
            }
        }
        return least == null
                ? null
                : new Doubt(Subject.ofReel(), least.units, megahertz(), least.value, least.margin, leastProbable, sum);
    }

    private @Nullable Double megahertz() {
        return spot == null ? null : (Double) spot.megahertz(0);
    }

    /** The chain of the smallest and the greatest value, which stand for all: each value went the same way; then the statistic. */
    private List<Step> steps(Result result) {
        Values values = result.values;
        Values.Point smallest = values.smallest();
        Values.Point greatest = values.greatest();
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
                        + " of " + values.count() + " corrected values of " + requirement.property()
                        + (result.units == null ? "" : " of " + result.units.words())
                        + ", from " + smallest.words() + " to " + greatest.words(),
                result.value,
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

    private String measuredUnit(Values values) {
        return requirement.statistic().isInPercent()
                ? requirement.unit().text()
                : values.series().get(0).sentUnit().text();
    }

    /** The statistic before correction; absent where values were sent in different units, which have no figure together. */
    private @Nullable Double asSent(Result result) {
        if (requirement.statistic() == Statistic.PERCENT_OF_PAIRS) {
            return result.value;
        }
        List<Series> series = result.values.series();
        ReadingUnit unit = series.get(0).sentUnit();
        boolean oneUnit = series.stream().allMatch(one -> unit.equals(one.sentUnit()));
        if (!oneUnit) {
            return null;
        }
        double[] sent = result.values.sent();
        return Arrays.equals(sent, result.values.corrected()) ? (Double) result.value : (Double) figureOf(sent);
    }

    private Budget budget(Values values, ErrorSide side) {
        if (requirement.statistic() == Statistic.PERCENT_OF_PAIRS) {
            return Budget.without("a percentage of pairs is counted, not measured");
        }
        if (!check.propagation().isKnown()) {
            return check.propagation().budget(Influence.NONE, side);
        }
        try {
            return check.propagation()
                    .budget(Influence.combined(gradientOf(values.corrected()), values.influences()), side);
        } catch (OutsideLawException e) {
            return Budget.without(String.valueOf(e.getMessage()));
        }
    }

    /** The pairs of which every value meets what each must, in percent of those that have a value. */
    private double percentOfPairs(Values values) {
        Limit each = requirement.particulars().each().orElseThrow().limit();
        Set<Integer> pairs = new TreeSet<>();
        Set<Integer> failing = new TreeSet<>();
        values.forEach((series, index) -> {
            Set<Integer> ofValue = pairsOf(series.subject());
            pairs.addAll(ofValue);
            double limitAt = limits.over(series.grid()).limitAt(index);
            if (!check.compare(series.corrected(index), each, limitAt).passes()) {
                failing.addAll(ofValue);
            }
        });
        if (pairs.isEmpty()) {
            throw new IllegalArgumentException("there is no value of a pair");
        }
        return PERCENT_OF_WHOLE * (pairs.size() - failing.size()) / pairs.size();
    }

    private static Set<Integer> pairsOf(Subject subject) {
        return Stream.of(Optional.ofNullable(subject.pair()), Optional.ofNullable(subject.partner()))
                .flatMap(Optional::stream)
                .collect(Collectors.toSet());
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
