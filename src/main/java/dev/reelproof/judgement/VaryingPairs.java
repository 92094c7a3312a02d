package dev.reelproof.judgement;

import dev.reelproof.limit.Allowance;
import dev.reelproof.limit.Bound;
import dev.reelproof.limit.Limit;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.RoundingRule;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Chooses the pairs that may vary under a limit set's allowance: as few as will do, never more than it allows.
 *
 * <p>Helps a property only when all of its values meet the ceiling of the allowance. Adds pairs one at a time, each time the one
 * that removes most failures, on a tie the lowest number. It may miss a choice that would do: the reel is then rejected for a person
 * to look at, and never wrongly accepted.
 */
final class VaryingPairs {
    /** How many of the pairs with the most extreme values are tried for a failing statistic. */
    private static final int EXTREMES_TRIED = 8;

    private final Allowance allowance;
    private final int mayVary;
    private final RoundingRule rounding;

    VaryingPairs(Allowance allowance, int corePairs, RoundingRule rounding) {
        this.allowance = allowance;
        this.mayVary = allowance.pairsThatMayVary(corePairs);
        this.rounding = rounding;
    }

    /** How many pairs the allowance lets vary. */
    int allowed() {
        return mayVary;
    }

    /**
     * A requirement with its values and how to judge them.
     *
     * @param whole the evaluation with no pair left out
     */
    record Case(Requirement requirement, GatheredSeries gathered, Evaluator evaluator, Evaluation whole) {
        Case(Requirement requirement, GatheredSeries gathered, Evaluator evaluator) {
            this(requirement, gathered, evaluator, evaluator.evaluate(gathered, Set.of()));
        }
    }

    /** The pairs to leave out; empty when that is not needed, not allowed, or does not help. */
    Set<Integer> choose(List<Case> cases) {
        List<Case> failing = cases.stream()
                .filter(one ->
                        allowance.ceilings().containsKey(one.requirement().property()))
                .filter(one -> one.whole().fails())
                .filter(this::meetsCeiling)
                .toList();
        Set<Integer> chosen = new TreeSet<>();
        int failures = failures(failing, chosen);
        while (failures > 0 && chosen.size() < mayVary) {
            Integer best = null;
            for (int pair : candidates(failing, chosen)) {
                Set<Integer> with = new TreeSet<>(chosen);
                with.add(pair);
                int remaining = failures(failing, with);
                if (remaining < failures) {
                    failures = remaining;
                    best = pair;
                }
            }
            if (best == null) {
                break;
            }
            chosen.add(best);
        }
        return failures == 0 ? chosen : Set.of();
    }

    private boolean meetsCeiling(Case one) {
        Bound.Constant ceiling = Objects.requireNonNull(
                allowance.ceilings().get(one.requirement().property()), "only what has a ceiling is asked");
        Limit limit = one.requirement().limit().upper().isPresent() ? Limit.atMost(ceiling) : Limit.atLeast(ceiling);
        return one.gathered().series().stream().allMatch(series -> {
            for (int i = 0; i < series.size(); i++) {
                if (series.obstacle(i) == null
                        && !Comparison.of(series.corrected(i), limit, 0, rounding)
                                .passes()) {
                    return false;
                }
            }
            return true;
        });
    }

    private static int failures(List<Case> cases, Set<Integer> without) {
        int failures = 0;
        for (Case one : cases) {
            Evaluation evaluation = one.evaluator().evaluate(one.gathered(), without);
            failures += evaluation.fails() ? Math.max(1, evaluation.failing()) : 0;
        }
        return failures;
    }

    private static Set<Integer> candidates(List<Case> cases, Set<Integer> without) {
        Set<Integer> candidates = new TreeSet<>();
        for (Case one : cases) {
            candidates.addAll(one.evaluator().evaluate(one.gathered(), without).failingPairs());
            candidates.addAll(extremes(one.gathered(), without));
        }
        return candidates;
    }

    /** The pairs whose values lie furthest from the mean of all values. */
    private static List<Integer> extremes(GatheredSeries gathered, Set<Integer> without) {
        Map<Integer, List<Double>> byPair = new TreeMap<>();
        for (Series series : gathered.series()) {
            Integer pair = series.subject().pair();
            if (pair != null && !without.contains(pair)) {
                for (int i = 0; i < series.size(); i++) {
                    byPair.computeIfAbsent(pair, key -> new ArrayList<>()).add(series.corrected(i));
                }
            }
        }
        double mean = byPair.values().stream()
                .flatMap(List::stream)
                .mapToDouble(Double::doubleValue)
                .average()
                .orElse(0);
        Map<Integer, Double> distance = new LinkedHashMap<>();
        byPair.forEach((pair, values) -> distance.put(
                pair,
                values.stream()
                        .mapToDouble(value -> Math.abs(value - mean))
                        .max()
                        .orElse(0)));
        return distance.entrySet().stream()
                .sorted(Map.Entry.<Integer, Double>comparingByValue(Comparator.reverseOrder())
                        .thenComparing(Map.Entry.comparingByKey()))
                .limit(EXTREMES_TRIED)
                .map(Map.Entry::getKey)
                .toList();
    }
}
