package dev.reelproof.judgement;

import dev.reelproof.limit.Domain;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.Per;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.Scope;
import dev.reelproof.limit.Statistic;
import dev.reelproof.measurement.Subject;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Chooses the values that one requirement judges, and holds them, or a statistic of them, against its limit. */
final class Evaluator {
    private final LimitSet limitSet;
    private final Requirement requirement;
    private final LimitCheck check;
    private final CoreLayout core;
    private final LimitColumns limits;

    Evaluator(LimitSet limitSet, Requirement requirement, CoreLayout core, Propagation propagation) {
        this.limitSet = limitSet;
        this.requirement = requirement;
        this.core = core;
        this.check = new LimitCheck(limitSet, requirement, propagation);
        this.limits = new LimitColumns(requirement);
    }

    /**
     * Evaluates what is there.
     *
     * @param gathered the values
     * @param without pairs that are left out of the arithmetic
     */
    Evaluation evaluate(GatheredSeries gathered, Set<Integer> without) {
        Set<Obstacle> obstacles = new LinkedHashSet<>();
        List<Series> judged = new ArrayList<>();
        int points = 0;
        for (Series series : gathered.series()) {
            if (!without.isEmpty() && belongsTo(series.subject(), without)) {
                continue;
            }
            LimitColumn limit = limits.over(series.grid());
            int ofSeries = 0;
            for (int i = limit.from(); i < limit.to(); i++) {
                Obstacle obstacle = series.obstacle(i);
                if (obstacle == null) {
                    ofSeries++;
                } else {
                    obstacles.add(obstacle);
                }
            }
            points += ofSeries;
            if (ofSeries > 0) {
                judged.add(series);
            }
        }
        if (judged.isEmpty()) {
            return Evaluation.ofNothing(List.copyOf(obstacles));
        }
        List<Step> rules = rules(points, without);
        return requirement.statistic() == Statistic.INDIVIDUAL
                ? new WorstValue(check, limits).evaluate(judged, points, rules, obstacles)
                : new StatisticOfValues(check, limits, core).evaluate(judged, points, rules, obstacles);
    }

    private static boolean belongsTo(Subject subject, Set<Integer> pairs) {
        return (subject.pair() != null && pairs.contains(subject.pair()))
                || (subject.partner() != null && pairs.contains(subject.partner()));
    }

    /** What had to be there, and what was left out, as steps of the chain. */
    private List<Step> rules(int points, Set<Integer> without) {
        List<Step> steps = new ArrayList<>();
        String scope = requirement.scope() == Scope.CORE
                ? ""
                : ", of " + requirement.scope().word();
        String each = requirement.particulars().per() == Per.UNIT ? ", each unit or pair of units by itself" : "";
        steps.add(new Step(
                "covered",
                "values judged" + scope + each + where(),
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
