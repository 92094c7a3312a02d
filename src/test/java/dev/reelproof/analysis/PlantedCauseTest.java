package dev.reelproof.analysis;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Whether a cause planted in a simulated plant is found, and how often one is named where there is none. */
class PlantedCauseTest {
    private static final int SEEDS = 100;
    private static final int MUST_BE_FIRST = 95;
    private static final int PLANTS_WITHOUT_A_CAUSE = 200;
    private static final int REELS = 2_000;

    /** A cause touches this many reels at least, and at most half of all. */
    private static final int LEAST_TOUCHED = 60;

    private static final double USUALLY_FAILING = 0.02;
    private static final double FAILING_BY_THE_CAUSE = 0.3;

    /** In standard deviations of the margin. */
    private static final double SHIFT_BY_THE_CAUSE = 1;

    /** The chance that the false alarms of a sound method exceed what the test allows. */
    private static final double UNLUCKY = 0.001;

    @ParameterizedTest(name = "{0} by a {1}")
    @CsvSource({"FAILURES, LOT", "FAILURES, MACHINE", "FAILURES, DIE", "FAILURES, OPERATOR", "MARGINS, LOT"})
    void theTrueCauseComesFirst(Evidence evidence, Factor factor) {
        List<String> missed = new ArrayList<>();
        for (long seed = 1; seed <= SEEDS; seed++) {
            List<Set<Exposure>> met = SimulatedPlant.reels(seed, REELS);
            Map<Exposure, BitSet> exposed = SimulatedPlant.exposed(met);
            Random random = new Random(~seed);
            Exposure cause = cause(exposed, factor, random);
            SuspectRanking ranking = SuspectRanking.of(
                    Population.of(tested(met, cause, random), exposed), SuspectQuestion.of(evidence), 1);
            Suspect first = ranking.suspects().get(0);
            if (!first.group().contains(cause) || first.q() > ranking.question().level()) {
                missed.add("seed " + seed + ": " + cause + " planted, " + first.group() + " found, q " + first.q());
            }
        }
        assertTrue(SEEDS - missed.size() >= MUST_BE_FIRST, missed.toString());
    }

    private static Exposure cause(Map<Exposure, BitSet> exposed, Factor factor, Random random) {
        List<Exposure> possible = exposed.entrySet().stream()
                .filter(entry -> entry.getKey().factor() == factor)
                .filter(entry -> entry.getValue().cardinality() >= LEAST_TOUCHED
                        && entry.getValue().cardinality() <= REELS / 2)
                .map(Map.Entry::getKey)
                .toList();
        return possible.get(random.nextInt(possible.size()));
    }

    /** Reels as tested; without a cause where it is null. */
    private static List<TestedReel> tested(List<Set<Exposure>> met, Exposure cause, Random random) {
        List<TestedReel> tested = new ArrayList<>();
        for (int i = 0; i < met.size(); i++) {
            boolean isTouched = cause != null && met.get(i).contains(cause);
            tested.add(new TestedReel(
                    "R-" + i,
                    random.nextDouble() < (isTouched ? FAILING_BY_THE_CAUSE : USUALLY_FAILING),
                    random.nextGaussian() - (isTouched ? SHIFT_BY_THE_CAUSE : 0)));
        }
        return tested;
    }

    /**
     * Without a cause every name is a false alarm; at level 0.05 at most 5 of 100 populations may bring one on average. Their number is
     * binomial: the test allows what a method with exactly that rate exceeds once in a thousand.
     */
    @ParameterizedTest
    @EnumSource(Evidence.class)
    void withoutACauseFalseAlarmsAreAtMostAsStated(Evidence evidence) {
        List<String> alarms = new ArrayList<>();
        for (long seed = 1; seed <= PLANTS_WITHOUT_A_CAUSE; seed++) {
            List<Set<Exposure>> met = SimulatedPlant.reels(seed, REELS);
            SuspectRanking ranking = SuspectRanking.of(
                    Population.of(tested(met, null, new Random(~seed)), SimulatedPlant.exposed(met)),
                    SuspectQuestion.of(evidence),
                    1);
            Suspect first = ranking.suspects().get(0);
            if (first.q() <= ranking.question().level()) {
                alarms.add("seed " + seed + ": " + first.group() + ", q " + first.q());
            }
        }
        int allowed = BinomialDistribution.of(PLANTS_WITHOUT_A_CAUSE, SuspectQuestion.USUAL_LEVEL)
                .inverseSurvivalProbability(UNLUCKY);
        assertTrue(alarms.size() <= allowed, alarms.size() + " false alarms, " + allowed + " allowed: " + alarms);
        System.getLogger(PlantedCauseTest.class.getName())
                .log(
                        System.Logger.Level.INFO,
                        evidence + ": " + alarms.size() + " false alarms of " + PLANTS_WITHOUT_A_CAUSE);
    }
}
