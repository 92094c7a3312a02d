package dev.reelproof.judgement;

import dev.reelproof.correction.OutsideLawException;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/** Judges each value by itself and finds the worst: of those with the severest outcome the one with the least margin. */
final class WorstValue {
    /** Margins that differ by less than this share of the limit are equal: the lowest frequency, then the lowest pair counts. */
    private static final double EQUAL_MARGINS = 1e-9;

    private final LimitCheck check;

    WorstValue(LimitCheck check) {
        this.check = check;
    }

    /**
     * Judges values.
     *
     * @param all the values, at least one
     * @param rules what had to be there and what was left out, for the chain of the figure
     * @param obstacles what could not be judged; added to
     */
    Evaluation evaluate(List<Candidate> all, List<Step> rules, List<Obstacle> obstacles) {
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
            slack[i] = unrounded(candidate).margin() - candidate.guardBand();
            outcomes[i] = decided
                    ? check.outcome(candidate.value(), candidate.limitAt(), candidate.guardBand())
                    : Outcome.PASS;
            if (outcomes[i].rejects()) {
                failingPairs.add(candidate.pairs());
            }
            severest = outcomes[i].compareTo(severest) > 0 ? outcomes[i] : severest;
        }
        Candidate worst = candidates.get(worst(candidates, outcomes, slack, severest));
        Figure figure = figure(worst, rules);
        return new Evaluation(figure, decided ? severest : null, candidates.size(), obstacles, failingPairs);
    }

    private Comparison unrounded(Candidate candidate) {
        return Comparison.unrounded(candidate.value(), check.requirement().limit(), candidate.limitAt());
    }

    /** Of the values with the severest outcome the one with the least margin less guard band. */
    private int worst(List<Candidate> candidates, Outcome[] outcomes, double[] slack, Outcome severest) {
        int least = -1;
        for (int i = 0; i < slack.length; i++) {
            if (outcomes[i] == severest && (least < 0 || slack[i] < slack[least])) {
                least = i;
            }
        }
        double limitThere = unrounded(candidates.get(least)).limit();
        double asLow = slack[least] + EQUAL_MARGINS * Math.max(1, Math.abs(limitThere));
        int worst = least;
        for (int i = 0; i < slack.length; i++) {
            if (outcomes[i] == severest
                    && slack[i] <= asLow
                    && Candidate.LOWEST_FIRST.compare(candidates.get(i), candidates.get(worst)) < 0) {
                worst = i;
            }
        }
        return worst;
    }

    private Figure figure(Candidate worst, List<Step> rules) {
        Series series = worst.series();
        List<Step> steps = new ArrayList<>(series.steps(worst.index()));
        steps.addAll(rules);
        return check.figure(
                series.subject(),
                worst.megahertz(),
                worst.limitAt(),
                series.sent(worst.index()),
                series.sentUnit().text(),
                worst.value(),
                series.derived(),
                budget(worst),
                steps);
    }

    /**
     * The values that the rule can decide on, with their guard bands: all, or those with an uncertainty. Why it cannot decide on the
     * others is added to the obstacles.
     */
    private List<Candidate> decidable(List<Candidate> candidates, List<Obstacle> obstacles) {
        if (!check.needsUncertainty()) {
            return candidates;
        }
        List<Candidate> decidable = new ArrayList<>();
        for (Candidate candidate : candidates) {
            Budget budget = budget(candidate);
            if (budget.isKnown()) {
                decidable.add(candidate.guardedBy(check.guardBand(budget)));
            } else {
                Obstacle obstacle = LimitCheck.noUncertainty(budget);
                if (!obstacles.contains(obstacle)) {
                    obstacles.add(obstacle);
                }
            }
        }
        return decidable;
    }

    private Budget budget(Candidate candidate) {
        try {
            return check.propagation().budget(candidate.influence());
        } catch (OutsideLawException e) {
            return Budget.without(String.valueOf(e.getMessage()));
        }
    }
}
