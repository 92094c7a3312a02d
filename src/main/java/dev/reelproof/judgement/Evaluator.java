package dev.reelproof.judgement;

import dev.reelproof.correction.PopulationFigures;
import dev.reelproof.limit.Bound;
import dev.reelproof.limit.Domain;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.Statistic;
import dev.reelproof.measurement.Subject;
import dev.reelproof.quantity.Kind;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/** Holds a population against the limit of one requirement and finds the worst place. */
final class Evaluator {
    /** Margins that differ by less than this share of the limit are equal: the lowest frequency, then the lowest pair counts. */
    private static final double EQUAL_MARGINS = 1e-9;

    private static final Comparator<Candidate> LOWEST_FIRST = Comparator.comparingDouble(Candidate::frequencyOrZero)
            .thenComparing(candidate -> candidate.series.subject());

    private final LimitSet limitSet;
    private final Requirement requirement;

    Evaluator(LimitSet limitSet, Requirement requirement) {
        this.limitSet = limitSet;
        this.requirement = requirement;
    }

    /** One value that is judged. */
    private record Candidate(Series series, int index, double limitAt) {

        Double megahertz() {
            return series.grid() == null ? null : (Double) series.grid().megahertz(index);
        }

        double frequencyOrZero() {
            return series.grid() == null ? 0 : series.grid().megahertz(index);
        }

        double value() {
            return series.corrected(index);
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
    Evaluation evaluate(Population population, Set<Integer> without) {
        List<String> obstacles = new ArrayList<>();
        List<Candidate> candidates = new ArrayList<>();
        for (Series series : population.series()) {
            for (int i = 0; i < series.size(); i++) {
                Candidate candidate = new Candidate(series, i, limitAt(series, i));
                if (!isJudged(series, i) || candidate.pairs().stream().anyMatch(without::contains)) {
                    continue;
                }
                if (series.obstacle(i).isPresent()) {
                    String obstacle =
                            "correction not possible: " + series.obstacle(i).get();
                    if (!obstacles.contains(obstacle)) {
                        obstacles.add(obstacle);
                    }
                    continue;
                }
                candidates.add(candidate);
            }
        }
        if (candidates.isEmpty()) {
            return new Evaluation(null, 0, obstacles, List.of());
        }
        return requirement.statistic() == Statistic.INDIVIDUAL
                ? individual(candidates, obstacles)
                : statistic(candidates, obstacles);
    }

    /** The frequency that the limit is taken at; a single value stated for a whole range meets the limit where it begins. */
    private double limitAt(Series series, int index) {
        if (series.grid() != null) {
            return series.grid().megahertz(index);
        }
        return requirement.domain() instanceof Domain.Range range ? range.from() : 0;
    }

    private boolean isJudged(Series series, int index) {
        if (series.grid() == null) {
            return true;
        }
        double megahertz = series.grid().megahertz(index);
        if (requirement.domain() instanceof Domain.Spot spot) {
            return Coverage.isAt(megahertz, spot.megahertz());
        }
        if (requirement.domain() instanceof Domain.Range range) {
            return megahertz >= range.from() * (1 - Coverage.FREQUENCY_TOLERANCE)
                    && megahertz <= range.to() * (1 + Coverage.FREQUENCY_TOLERANCE);
        }
        // A limit that states no frequency holds at every one.
        return true;
    }

    private Evaluation individual(List<Candidate> candidates, List<String> obstacles) {
        double least = Double.POSITIVE_INFINITY;
        double limitThere = 0;
        List<TreeSet<Integer>> failingPairs = new ArrayList<>();
        for (Candidate candidate : candidates) {
            Comparison comparison = Comparison.unrounded(candidate.value(), requirement.limit(), candidate.limitAt);
            if (comparison.margin() < least) {
                least = comparison.margin();
                limitThere = comparison.limit();
            }
            if (!compare(candidate.value(), candidate.limitAt).passes()) {
                failingPairs.add(candidate.pairs());
            }
        }
        double asLow = least + EQUAL_MARGINS * Math.max(1, Math.abs(limitThere));
        Candidate worst = candidates.stream()
                .filter(candidate -> Comparison.unrounded(candidate.value(), requirement.limit(), candidate.limitAt)
                                .margin()
                        <= asLow)
                .min(LOWEST_FIRST)
                .orElseThrow();
        List<Step> steps = new ArrayList<>(worst.series.steps(worst.index));
        Figure figure = figure(
                worst.series.subject(),
                worst.megahertz(),
                worst.limitAt,
                worst.series.sent(worst.index),
                worst.series.sentUnit().text(),
                worst.value(),
                worst.series.derived(),
                steps);
        return new Evaluation(figure, candidates.size(), obstacles, failingPairs);
    }

    private Evaluation statistic(List<Candidate> candidates, List<String> obstacles) {
        double value;
        double measured;
        try {
            value = figureOf(candidates.stream().mapToDouble(Candidate::value).toArray());
            measured = figureOf(candidates.stream()
                    .mapToDouble(candidate -> candidate.series.sent(candidate.index))
                    .toArray());
        } catch (IllegalArgumentException e) {
            obstacles.add("no " + requirement.statistic().word() + " of these values: " + e.getMessage());
            return new Evaluation(null, 0, obstacles, List.of());
        }
        boolean inPercent = requirement.statistic() == Statistic.RMS_DEVIATION;
        Candidate first = candidates.get(0);
        List<Step> steps = new ArrayList<>();
        steps.add(new Step(
                "statistic",
                requirement.statistic().word() + " of " + candidates.size() + " corrected values of "
                        + requirement.property()
                        + ", from " + extreme(candidates, Comparator.naturalOrder()) + " to "
                        + extreme(candidates, Comparator.reverseOrder()),
                value,
                requirement.unit().text(),
                PopulationFigures.CITATION));
        Double megahertz = requirement.domain() instanceof Domain.Spot spot ? (Double) spot.megahertz() : null;
        Figure figure = figure(
                Subject.ofReel(),
                megahertz,
                megahertz == null ? 0 : megahertz,
                measured,
                inPercent ? requirement.unit().text() : first.series.sentUnit().text(),
                value,
                true,
                steps);
        return new Evaluation(figure, candidates.size(), obstacles, List.of());
    }

    private static String extreme(List<Candidate> candidates, Comparator<Double> order) {
        Candidate found = candidates.stream()
                .min(Comparator.comparing(Candidate::value, order).thenComparing(LOWEST_FIRST))
                .orElseThrow();
        return found.value() + " (" + found.series.subject().words() + ")";
    }

    private double figureOf(double[] values) {
        boolean levels = requirement.unit().kind() == Kind.LEVEL;
        return switch (requirement.statistic()) {
            case MEAN -> PopulationFigures.mean(values);
            case RMS -> levels ? PopulationFigures.rmsOfLevels(values) : PopulationFigures.rms(values);
            case RMS_DEVIATION -> PopulationFigures.rmsDeviationPercent(values);
            case MEAN_MINUS_SIGMA -> PopulationFigures.meanMinusSigma(values);
            case INDIVIDUAL -> throw new IllegalArgumentException(
                    "individual values have no statistic: " + Arrays.toString(values));
        };
    }

    private Comparison compare(double value, double megahertz) {
        return Comparison.of(value, requirement.limit(), megahertz, limitSet.rounding());
    }

    private Figure figure(
            Subject subject,
            Double megahertz,
            double limitAt,
            double measured,
            String measuredUnit,
            double value,
            boolean derived,
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
                steps);
    }
}
