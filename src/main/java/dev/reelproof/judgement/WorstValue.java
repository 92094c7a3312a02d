package dev.reelproof.judgement;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;

/** Judges each value by itself and finds the worst: of those with the severest outcome the one with the least margin. */
final class WorstValue {
    /** Margins that differ by less than this share of the limit are equal: the lowest frequency, then the lowest pair counts. */
    private static final double EQUAL_MARGINS = 1e-9;

    private final LimitCheck check;
    private final LimitColumns limits;

    WorstValue(LimitCheck check, LimitColumns limits) {
        this.check = check;
        this.limits = limits;
    }

    /**
     * Judges values.
     *
     * @param judged the series with a value to judge, at least one
     * @param points how many values they have
     * @param rules what had to be there and what was left out, for the chain of the figure
     * @param obstacles what could not be judged; added to
     */
    Evaluation evaluate(List<Series> judged, int points, List<Step> rules, Set<Obstacle> obstacles) {
        List<SeriesScan> scans = new ArrayList<>(judged.size());
        DoubtTally doubt = new DoubtTally();
        SortedSet<Integer> failingPairs = new TreeSet<>();
        Outcome severest = Outcome.PASS;
        int decided = 0;
        int failing = 0;
        for (Series series : judged) {
            SeriesScan scan = new SeriesScan(check, series, limits.over(series.grid()), doubt);
            scans.add(scan);
            decided += scan.decided();
            failing += scan.failing();
            severest = scan.severest().compareTo(severest) > 0 ? scan.severest() : severest;
            scan.addFailingPairsTo(failingPairs);
            if (check.needsUncertainty()) {
                scan.undecided().ifPresent(obstacles::add);
            }
        }
        Figure figure = figure(scans, severest, decided > 0, rules);
        return new Evaluation(
                figure,
                decided > 0 ? severest : null,
                decided > 0 ? decided : points,
                List.copyOf(obstacles),
                failing,
                failingPairs,
                doubt.of(limits));
    }

    /** The worst value; where none could be decided on, the one with the least margin. */
    private Figure figure(List<SeriesScan> scans, Outcome severest, boolean decided, List<Step> rules) {
        SeriesScan least = scans.get(0);
        for (SeriesScan scan : scans) {
            least = scan.least(severest, decided) < least.least(severest, decided) ? scan : least;
        }
        double limitThere = least.limitAtLeast(severest, decided);
        double asLow = least.least(severest, decided) + EQUAL_MARGINS * Math.max(1, Math.abs(limitThere));
        SeriesScan worst = least;
        int index = least.first(severest, decided, asLow);
        for (SeriesScan scan : scans) {
            if (scan.least(severest, decided) <= asLow) {
                int first = scan.first(severest, decided, asLow);
                if (scan.isBefore(first, worst, index)) {
                    worst = scan;
                    index = first;
                }
            }
        }
        return figure(worst, index, rules);
    }

    private Figure figure(SeriesScan worst, int index, List<Step> rules) {
        Series series = worst.series();
        List<Step> steps = new ArrayList<>(series.steps(index));
        steps.addAll(rules);
        return check.figure(
                new LimitCheck.Place(
                        series.subject(),
                        null,
                        series.megahertz(index),
                        limits.over(series.grid()).limitAt(index)),
                series.sent(index),
                series.sentUnit().text(),
                series.corrected(index),
                series.derived(),
                worst.budget(index),
                steps);
    }
}
