package dev.reelproof.judgement;

import dev.reelproof.limit.Domain;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.Scope;
import dev.reelproof.limit.Statistic;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Chooses the values that one requirement judges, and holds them, or a statistic of them, against its limit. */
final class Evaluator {
    private final LimitSet limitSet;
    private final Requirement requirement;
    private final LimitCheck check;

    Evaluator(LimitSet limitSet, Requirement requirement, Propagation propagation) {
        this.limitSet = limitSet;
        this.requirement = requirement;
        this.check = new LimitCheck(limitSet, requirement, propagation);
    }

    /**
     * Evaluates what is there.
     *
     * @param gathered the values
     * @param without pairs that are left out of the arithmetic
     */
    Evaluation evaluate(GatheredSeries gathered, Set<Integer> without) {
        List<Obstacle> obstacles = new ArrayList<>();
        List<Candidate> candidates = new ArrayList<>();
        for (Series series : gathered.series()) {
            for (int i = 0; i < series.size(); i++) {
                Candidate candidate = new Candidate(series, i, limitAt(series, i), 0);
                if (!isJudged(series, i) || candidate.pairs().stream().anyMatch(without::contains)) {
                    continue;
                }
                Optional<Obstacle> obstacle = series.obstacle(i);
                if (obstacle.isEmpty()) {
                    candidates.add(candidate);
                } else if (!obstacles.contains(obstacle.get())) {
                    obstacles.add(obstacle.get());
                }
            }
        }
        if (candidates.isEmpty()) {
            return new Evaluation(null, null, 0, obstacles, List.of());
        }
        List<Step> rules = rules(candidates.size(), without);
        return requirement.statistic() == Statistic.INDIVIDUAL
                ? new WorstValue(check).evaluate(candidates, rules, obstacles)
                : new StatisticOfValues(check).evaluate(candidates, rules, obstacles);
    }

    /** The frequency that the limit is taken at; a single value stated for a whole range meets the limit where it begins. */
    private double limitAt(Series series, int index) {
        if (series.grid() != null) {
            return series.grid().megahertz(index);
        }
        return requirement.domain() instanceof Domain.Range range ? range.from() : 0;
    }

    private boolean isJudged(Series series, int index) {
        return series.grid() == null || requirement.domain().holds(series.grid().megahertz(index));
    }

    /** What had to be there, and what was left out, as steps of the chain. */
    private List<Step> rules(int points, Set<Integer> without) {
        List<Step> steps = new ArrayList<>();
        String scope = requirement.scope() == Scope.CORE
                ? ""
                : ", of " + requirement.scope().word();
        steps.add(new Step(
                "covered",
                "values judged" + scope + where(),
                points,
                "count",
                "limit set " + limitSet.id() + " revision " + limitSet.revision()));
        if (!without.isEmpty()) {
            allowedToVary(without).ifPresent(steps::add);
        }
        return steps;
    }

    private String where() {
        if (requirement.domain() instanceof Domain.Spot spot) {
            return " at " + spot.megahertz() + " MHz";
        }
        if (requirement.domain() instanceof Domain.Range range) {
            return " from " + range.from() + " to " + range.to()
                    + " MHz, over which a sweep may have no step wider than "
                    + limitSet.grid().megahertz() + " MHz or " + limitSet.grid().decades()
                    + " decades, whichever is wider";
        }
        return "";
    }

    private Optional<Step> allowedToVary(Set<Integer> without) {
        return limitSet.allowance()
                .flatMap(allowance -> Optional.ofNullable(allowance.ceilings().get(requirement.property()))
                        .map(ceiling -> new Step(
                                "allowed to vary",
                                "pair " + without.stream().map(String::valueOf).collect(Collectors.joining(", "))
                                        + " left out; its values must still be "
                                        + requirement.limit().sense() + " the ceiling",
                                ceiling.value(),
                                requirement.unit().text(),
                                allowance.source().words())));
    }
}
