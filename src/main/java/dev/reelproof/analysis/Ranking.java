package dev.reelproof.analysis;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Ranks the suspects of one population; see {@link SuspectRanking}. */
final class Ranking {
    private static final double Q_UNTESTED = 1;

    private final Population population;
    private final SuspectQuestion question;
    private final int reels;
    private final Strata strata;
    private final BitSet failing;
    private final FailureWeighing failures;
    private final Weighing weighing;
    private final DoseTrend doses;

    /** The q of each candidate that was tested. */
    private final IdentityHashMap<Candidate, Double> q = new IdentityHashMap<>();

    /** Those that would be named among all reels, but are not within their strata. */
    private final Set<Candidate> onlyInTime = new HashSet<>();

    Ranking(Population population, SuspectQuestion question) {
        this.population = population;
        this.question = question;
        this.reels = population.reels().size();
        this.strata = population.strata(question.strataBy());
        this.failing = population.failing();
        this.failures = new FailureWeighing(failing, strata);
        this.weighing = question.evidence() == Evidence.MARGINS
                ? new MarginWeighing(margins(population), failures, strata)
                : failures;
        this.doses = new DoseTrend(population.doses(), failing, strata);
    }

    private static double[] margins(Population population) {
        return population.reels().stream()
                .mapToDouble(reel -> {
                    if (reel.margin() == null) {
                        throw new IllegalArgumentException("reel " + reel.reel()
                                + " has no margin; ask about reels with margins alone, or about failures");
                    }
                    return reel.margin();
                })
                .toArray();
    }

    SuspectRanking rank(int most) {
        Map<BitSet, List<Exposure>> groups = new LinkedHashMap<>();
        int metByEveryReel = 0;
        int metByTooFew = 0;
        for (Map.Entry<Exposure, BitSet> entry : population.exposed().entrySet()) {
            int exposed = entry.getValue().cardinality();
            if (exposed == reels) {
                metByEveryReel++;
            } else if (exposed < question.minimumExposed()) {
                metByTooFew++;
            } else {
                groups.computeIfAbsent(entry.getValue(), reelsMet -> new ArrayList<>())
                        .add(entry.getKey());
            }
        }
        List<Candidate> candidates = new ArrayList<>();
        groups.forEach((exposed, group) -> candidates.add(candidate(group, exposed)));
        correct(candidates);
        candidates.sort(Comparator.comparing((Candidate candidate) -> !isNamed(candidate))
                .thenComparing((one, other) -> isNamed(one)
                        ? Candidate.BY_DECISIVE.compare(one, other)
                        : Candidate.BY_OVERALL.compare(one, other)));
        Comparisons comparisons = new Comparisons(candidates, weighing, question.level(), q.size());
        return new SuspectRanking(
                question,
                reels,
                failing.cardinality(),
                strata.count(),
                population.exposed().size(),
                metByEveryReel,
                metByTooFew,
                candidates.size(),
                q.size(),
                testCause(candidates, comparisons).orElse(null),
                candidates.stream()
                        .limit(most)
                        .map(candidate -> suspect(candidate, comparisons))
                        .toList());
    }

    private void correct(List<Candidate> candidates) {
        List<Candidate> tested = candidates.stream().filter(Candidate::isTested).toList();
        double[] adjusted = FalseDiscovery.adjusted(
                tested.stream().mapToDouble(Candidate::decisive).toArray());
        for (int i = 0; i < adjusted.length; i++) {
            q.put(tested.get(i), adjusted[i]);
        }
        double[] overall = FalseDiscovery.adjusted(
                candidates.stream().mapToDouble(Candidate::p).toArray());
        for (int i = 0; i < overall.length; i++) {
            if (overall[i] <= question.level() && !isNamed(candidates.get(i))) {
                onlyInTime.add(candidates.get(i));
            }
        }
    }

    private Candidate candidate(List<Exposure> group, BitSet exposed) {
        Weighing.Chance within = weighing.withinStrata(exposed);
        return new Candidate(
                group,
                exposed,
                failures.counts(exposed),
                strata.count() == 1 ? within.p() : weighing.overall(exposed),
                within.p(),
                within.least() <= question.level(),
                weighing.effect(exposed));
    }

    private Suspect suspect(Candidate candidate, Comparisons comparisons) {
        return new Suspect(
                candidate.group(),
                candidate.counts(),
                candidate.p(),
                candidate.decisive(),
                orNull(weighing.oddsRatioWithinStrata(candidate.exposed())),
                q.getOrDefault(candidate, Q_UNTESTED),
                candidate.isTested(),
                onlyInTime.contains(candidate),
                RiskDifference.of(candidate.counts()),
                weighing.margins(candidate.exposed()),
                doses.of(candidate.group(), candidate.exposed()).orElse(null),
                Comparisons.names(comparisons.explaining(candidate)),
                Comparisons.names(comparisons.alike(candidate)));
    }

    private static @Nullable Double orNull(OptionalDouble value) {
        return value.isPresent() ? value.getAsDouble() : null;
    }

    private boolean isNamed(Candidate candidate) {
        return q.getOrDefault(candidate, Q_UNTESTED) <= question.level();
    }

    /**
     * The test as the cause: the first named candidate of the test, unless something upstream explains it, or comes before it and is
     * neither explained by it nor like it.
     */
    private Optional<TestCause> testCause(List<Candidate> candidates, Comparisons comparisons) {
        List<Candidate> named = candidates.stream().filter(this::isNamed).toList();
        Optional<Candidate> ofTest = named.stream().filter(Candidate::isOfTest).findFirst();
        if (ofTest.isEmpty()) {
            return Optional.empty();
        }
        Candidate test = ofTest.get();
        List<Candidate> explained = upstream(comparisons.explainedBy(test));
        List<Candidate> alike = upstream(comparisons.alike(test));
        boolean comesFirst = named.subList(0, named.indexOf(test)).stream()
                .filter(Candidate::isUpstreamAlone)
                .allMatch(before -> explained.contains(before) || alike.contains(before));
        if (!comesFirst || !upstream(comparisons.explaining(test)).isEmpty()) {
            return Optional.empty();
        }
        List<Exposure> notToldFrom = Stream.concat(
                        test.group().stream().filter(one -> !one.factor().isOfTest()),
                        Comparisons.names(alike).stream())
                .toList();
        return Optional.of(new TestCause(suspect(test, comparisons), Comparisons.names(explained), notToldFrom));
    }

    private static List<Candidate> upstream(List<Candidate> candidates) {
        return candidates.stream().filter(Candidate::isUpstreamAlone).toList();
    }
}
