package dev.reelproof.analysis;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The suspects of a population, best evidence first.
 *
 * <p>Exposures that exactly the same reels met are one suspect, because nothing in these reels tells them apart. They are joined before
 * the correction for many tests, so that one cause is not counted several times. What every reel met is no suspect, nor is what too few
 * met. What could not be significant whatever was found (Tarone) is listed and not tested.
 *
 * <p>Two suspects whose reels overlap are each tested again with the other held fixed: within the reels that met the other, and within
 * those that did not. Where nothing significant is left of either, they cannot be told apart. Where something is left of only one, it
 * explains the other.
 *
 * @param question what was asked
 * @param reels how many reels
 * @param failing how many of them fail
 * @param exposures how many different things they met
 * @param metByEveryReel how many of these every reel met, so that there is nothing to compare with
 * @param metByTooFew how many of these fewer reels met than the question's minimum
 * @param suspectGroups how many suspects are left when those that the same reels met are joined
 * @param tested how many of these were tested, the m of the correction
 * @param suspects the suspects
 */
public record SuspectRanking(
        SuspectQuestion question,
        int reels,
        int failing,
        int exposures,
        int metByEveryReel,
        int metByTooFew,
        int suspectGroups,
        int tested,
        List<Suspect> suspects) {
    /** How many of the first suspects are compared with each other. */
    static final int COMPARED = 20;

    private static final double Q_UNTESTED = 1;

    /** Strongest evidence first; then the tested, the stronger effect, the more reels, the name. */
    private static final Comparator<Candidate> BEST_FIRST = Comparator.comparingDouble((Candidate c) -> c.p)
            .thenComparing(c -> !c.isTested)
            .thenComparing(Comparator.comparingDouble((Candidate c) -> c.effect).reversed())
            .thenComparing(Comparator.comparingInt((Candidate c) -> c.exposed.cardinality())
                    .reversed())
            .thenComparing(c -> c.group.get(0));

    private record Candidate(
            List<Exposure> group, BitSet exposed, CountTable counts, double p, boolean isTested, double effect) {}

    public SuspectRanking {
        suspects = List.copyOf(suspects);
    }

    /**
     * Ranks the suspects of traced reels.
     *
     * @param most how many of them to give, at least 0
     * @throws IncomparableMarginsException when margins are the evidence, and they are of several products or in several units
     */
    public static SuspectRanking of(TracedPopulation traced, SuspectQuestion question, int most) {
        traced.requireComparable(question.evidence());
        return of(traced.population(), question, most);
    }

    /**
     * Ranks the suspects of a population.
     *
     * @param most how many of them to give, at least 0
     * @throws IllegalArgumentException when margins are the evidence and a reel has none
     */
    public static SuspectRanking of(Population population, SuspectQuestion question, int most) {
        return new Ranking(population, question).rank(most);
    }

    private static final class Ranking {
        private final Population population;
        private final SuspectQuestion question;
        private final int reels;
        private final BitSet failing;
        private final double[] margins;
        private final MannWhitneyTest mannWhitney;

        Ranking(Population population, SuspectQuestion question) {
            this.population = population;
            this.question = question;
            this.reels = population.reels().size();
            this.failing = population.failing();
            this.margins = question.evidence() == Evidence.MARGINS ? margins(population) : new double[0];
            this.mannWhitney = MannWhitneyTest.of(margins);
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
            candidates.sort(BEST_FIRST);
            List<Candidate> tested =
                    candidates.stream().filter(Candidate::isTested).toList();
            IdentityHashMap<Candidate, Double> q = adjusted(tested);
            Comparisons comparisons = new Comparisons(candidates);
            List<Suspect> suspects = candidates.stream()
                    .limit(most)
                    .map(candidate -> suspect(candidate, q.getOrDefault(candidate, Q_UNTESTED), comparisons))
                    .toList();
            return new SuspectRanking(
                    question,
                    reels,
                    failing.cardinality(),
                    population.exposed().size(),
                    metByEveryReel,
                    metByTooFew,
                    candidates.size(),
                    tested.size(),
                    suspects);
        }

        /** The q of each candidate that was tested. */
        private static IdentityHashMap<Candidate, Double> adjusted(List<Candidate> tested) {
            double[] adjusted = FalseDiscovery.adjusted(
                    tested.stream().mapToDouble(Candidate::p).toArray());
            IdentityHashMap<Candidate, Double> q = new IdentityHashMap<>();
            for (int i = 0; i < adjusted.length; i++) {
                q.put(tested.get(i), adjusted[i]);
            }
            return q;
        }

        private Candidate candidate(List<Exposure> group, BitSet exposed) {
            CountTable counts = counts(exposed, null);
            double p;
            double least;
            double effect;
            if (question.evidence() == Evidence.MARGINS) {
                p = mannWhitney.lower(exposed);
                least = mannWhitney.leastAttainable(counts.exposed());
                effect = mannWhitney.shareLower(exposed);
            } else {
                p = FisherOneSided.greater(counts);
                least = FisherOneSided.leastAttainable(counts);
                effect = RiskDifference.of(counts).estimate();
            }
            return new Candidate(group, exposed, counts, p, least <= question.level(), effect);
        }

        private Suspect suspect(Candidate candidate, double q, Comparisons comparisons) {
            return new Suspect(
                    candidate.group,
                    candidate.counts,
                    candidate.p,
                    q,
                    candidate.isTested,
                    RiskDifference.of(candidate.counts),
                    question.evidence() == Evidence.MARGINS ? marginEvidence(candidate.exposed) : null,
                    comparisons.explaining(candidate),
                    comparisons.likeAs(candidate));
        }

        private Suspect.Margins marginEvidence(BitSet exposed) {
            return new Suspect.Margins(
                    mannWhitney.shareLower(exposed),
                    HodgesLehmannShift.of(marginsOf(exposed), marginsOf(others(exposed))));
        }

        private double[] marginsOf(BitSet some) {
            return some.stream().mapToDouble(i -> margins[i]).toArray();
        }

        private BitSet others(BitSet some) {
            BitSet others = (BitSet) some.clone();
            others.flip(0, reels);
            return others;
        }

        /** Counts reels in and out of an exposure, within a stratum where one is given. */
        private CountTable counts(BitSet exposed, @Nullable BitSet stratum) {
            int all = stratum == null ? reels : stratum.cardinality();
            int allFailing = both(failing, stratum).cardinality();
            BitSet in = both(exposed, stratum);
            int inFailing = both(in, failing).cardinality();
            return new CountTable(in.cardinality(), inFailing, all - in.cardinality(), allFailing - inFailing);
        }

        private static BitSet both(BitSet one, @Nullable BitSet other) {
            BitSet both = (BitSet) one.clone();
            if (other != null) {
                both.and(other);
            }
            return both;
        }

        /** Whether something is left of a suspect with another held fixed. */
        private boolean isLeft(Candidate suspect, Candidate fixed) {
            List<BitSet> strata = List.of(fixed.exposed, others(fixed.exposed));
            double p = question.evidence() == Evidence.MARGINS
                    ? mannWhitney.lower(suspect.exposed, strata)
                    : FisherOneSided.greater(strata.stream()
                            .map(stratum -> counts(suspect.exposed, stratum))
                            .toList());
            return p <= question.level();
        }

        /** The first suspects, each with each. */
        private final class Comparisons {
            private final List<Candidate> first;
            private final Map<Candidate, List<Candidate>> explaining = new HashMap<>();
            private final Map<Candidate, List<Candidate>> alike = new HashMap<>();

            Comparisons(List<Candidate> candidates) {
                this.first = candidates.stream()
                        .limit(COMPARED)
                        .filter(candidate -> candidate.isTested && candidate.p <= question.level())
                        .toList();
                for (int i = 0; i < first.size(); i++) {
                    for (int j = i + 1; j < first.size(); j++) {
                        compare(first.get(i), first.get(j));
                    }
                }
            }

            private void compare(Candidate one, Candidate other) {
                if (!one.exposed.intersects(other.exposed)) {
                    return;
                }
                boolean oneIsLeft = isLeft(one, other);
                boolean otherIsLeft = isLeft(other, one);
                if (!oneIsLeft && !otherIsLeft) {
                    note(alike, one, other);
                    note(alike, other, one);
                } else if (!oneIsLeft) {
                    note(explaining, one, other);
                } else if (!otherIsLeft) {
                    note(explaining, other, one);
                }
            }

            private static void note(Map<Candidate, List<Candidate>> notes, Candidate of, Candidate noted) {
                notes.computeIfAbsent(of, candidate -> new ArrayList<>()).add(noted);
            }

            List<Exposure> explaining(Candidate candidate) {
                return names(explaining, candidate);
            }

            List<Exposure> likeAs(Candidate candidate) {
                return names(alike, candidate);
            }

            private List<Exposure> names(Map<Candidate, List<Candidate>> notes, Candidate candidate) {
                return notes.getOrDefault(candidate, List.of()).stream()
                        .sorted(Comparator.comparingInt(first::indexOf))
                        .map(noted -> noted.group.get(0))
                        .toList();
            }
        }
    }
}
