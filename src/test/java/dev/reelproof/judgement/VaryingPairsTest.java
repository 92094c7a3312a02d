package dev.reelproof.judgement;

import static dev.reelproof.judgement.Bench.atLeast;
import static dev.reelproof.judgement.Bench.atMost;
import static dev.reelproof.judgement.Bench.requirement;
import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.reelproof.limit.Bound;
import dev.reelproof.limit.Domain;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.Statistic;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import dev.reelproof.quantity.FrequencyGrid;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Which pairs are left out under an allowance of pairs that may vary. */
class VaryingPairsTest {
    private static final Domain NONE = new Domain.NoFrequency();
    private static final Requirement CAPACITANCE =
            requirement(Property.MUTUAL_CAPACITANCE, Statistic.INDIVIDUAL, atMost(5.6, 1), NONE, "nF/100 m");
    private static final Requirement MEAN =
            requirement(Property.MUTUAL_CAPACITANCE, Statistic.MEAN, atMost(5.2, 1), NONE, "nF/100 m");
    private static final Map<Property, Bound.Constant> UP_TO_6 =
            Map.of(Property.MUTUAL_CAPACITANCE, new Bound.Constant(6, 0));

    private static Bench capacitances(double... nanofarads) {
        Bench bench = new Bench().pairs(nanofarads.length);
        for (int i = 0; i < nanofarads.length; i++) {
            bench.read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(i + 1), nanofarads[i], "nF");
        }
        return bench;
    }

    @Test
    void noMorePairsAreLeftOutThanNeeded() {
        Finding finding = capacitances(5, 5.7, 5, 5)
                .require(CAPACITANCE)
                .mayVary(3, UP_TO_6)
                .only();
        assertEquals(Outcome.PASS, finding.outcome());
        assertEquals(List.of(2), finding.varyingPairs());
        assertEquals(
                "allowed variation: pair 2 left out of the arithmetic; of 4 pairs 3 may vary; "
                        + "with it the worst value is 5.7 nF/100 m",
                finding.reason());
    }

    @Test
    void severalMayVaryUpToTheAllowance() {
        Bench bench = capacitances(5.8, 5, 5.7, 5.6).require(CAPACITANCE);
        assertEquals(List.of(1, 3), bench.mayVary(2, UP_TO_6).only().varyingPairs());
        assertEquals(Outcome.FAIL, bench.mayVary(1, UP_TO_6).only().outcome());
        assertEquals(List.of(), bench.mayVary(1, UP_TO_6).only().varyingPairs());
    }

    @Test
    void aVaryingPairOnTheCeilingIsAllowedAndOneBeyondIsNot() {
        assertEquals(
                Outcome.PASS,
                capacitances(5, 6, 5)
                        .require(CAPACITANCE)
                        .mayVary(1, UP_TO_6)
                        .only()
                        .outcome());
        assertEquals(
                Outcome.FAIL,
                capacitances(5, 6.01, 5)
                        .require(CAPACITANCE)
                        .mayVary(1, UP_TO_6)
                        .only()
                        .outcome());
    }

    @Test
    void aCeilingOfALowerLimitIsAFloor() {
        Requirement fext =
                requirement(Property.FEXT, Statistic.INDIVIDUAL, atLeast(58, 0), new Domain.Spot(0.15), "dB");
        for (double level : new double[] {55, 51}) {
            Bench bench =
                    new Bench().pairs(3).require(fext).mayVary(1, Map.of(Property.FEXT, new Bound.Constant(52, 0)));
            FrequencyGrid at = FrequencyGrid.ofMegahertz(0.15);
            bench.sweep(Property.FEXT, Subject.ofCombination(1, 2), at, f -> 70);
            bench.sweep(Property.FEXT, Subject.ofCombination(1, 3), at, f -> level);
            bench.sweep(Property.FEXT, Subject.ofCombination(2, 3), at, f -> level);
            assertEquals(level == 55 ? List.of(3) : List.of(), bench.only().varyingPairs());
        }
    }

    @Test
    void ofTwoPairsThatWouldHelpAlikeTheLowerIsLeftOut() {
        Requirement fext =
                requirement(Property.FEXT, Statistic.INDIVIDUAL, atLeast(58, 0), new Domain.Spot(0.15), "dB");
        Bench bench = new Bench().pairs(3).require(fext).mayVary(1, Map.of(Property.FEXT, new Bound.Constant(52, 0)));
        for (int[] pairs : new int[][] {{1, 2}, {1, 3}, {2, 3}}) {
            bench.sweep(
                    Property.FEXT,
                    Subject.ofCombination(pairs[0], pairs[1]),
                    FrequencyGrid.ofMegahertz(0.15),
                    f -> pairs[0] == 2 ? 55 : 70);
        }
        assertEquals(List.of(2), bench.only().varyingPairs());
    }

    // Ten pairs at 5.1 and one at 5.9: the mean is 5.173; two at 5.9 lift it to 5.233, and leaving out one brings 5.173
    // again.
    @Test
    void aMeanIsHelpedByThePairFurthestFromIt() {
        Bench bench = capacitances(5.1, 5.1, 5.1, 5.1, 5.1, 5.1, 5.1, 5.1, 5.1, 5.1, 5.9, 5.9)
                .require(MEAN)
                .mayVary(1, UP_TO_6);
        Finding finding = bench.only();
        assertEquals(Outcome.PASS, finding.outcome());
        assertEquals(List.of(11), finding.varyingPairs());
        assertEquals(11, finding.points());
    }

    @Test
    void aMeanThatFailsBecauseOfManyIsNotHelpedByOne() {
        Finding finding = capacitances(5.3, 5.3, 5.3, 5.3)
                .require(MEAN)
                .mayVary(1, UP_TO_6)
                .only();
        assertEquals(Outcome.FAIL, finding.outcome());
        assertEquals(List.of(), finding.varyingPairs());
        assertEquals(4, finding.points());
    }

    @Test
    void aReelThatPassesLeavesNothingOut() {
        Finding finding =
                capacitances(5, 5.5, 5).require(CAPACITANCE).mayVary(1, UP_TO_6).only();
        assertEquals(List.of(), finding.varyingPairs());
        assertEquals(3, finding.points());
    }

    @Test
    void oneChoiceOfPairsMustServeEveryRequirementOfTheSet() {
        Requirement unbalance =
                requirement(Property.RESISTANCE_UNBALANCE, Statistic.INDIVIDUAL, atMost(5.0, 1), NONE, "%");
        Bench bench = capacitances(5, 5.7, 5).require(CAPACITANCE).require(unbalance);
        for (int pair = 1; pair <= 3; pair++) {
            bench.read(Property.RESISTANCE_UNBALANCE, Subject.ofPair(pair), pair == 3 ? 6 : 1, "%");
        }
        Map<Property, Bound.Constant> ceilings = Map.of(
                Property.MUTUAL_CAPACITANCE, new Bound.Constant(6, 0),
                Property.RESISTANCE_UNBALANCE, new Bound.Constant(7, 0));
        assertEquals(Verdict.REJECTED, bench.mayVary(1, ceilings).judge().verdict());
        Judgement two = bench.mayVary(2, ceilings).judge();
        assertEquals(Verdict.ACCEPTED, two.verdict());
        assertEquals(List.of(2, 3), two.findings().get(0).varyingPairs());
        assertEquals(List.of(2, 3), two.findings().get(1).varyingPairs());
    }

    @Test
    void aFailureThatTheAllowanceDoesNotNameStaysAFailureBesideOneThatItHelps() {
        Requirement unbalance =
                requirement(Property.RESISTANCE_UNBALANCE, Statistic.INDIVIDUAL, atMost(5.0, 1), NONE, "%");
        Bench bench =
                capacitances(5, 5.7, 5).require(CAPACITANCE).require(unbalance).mayVary(1, UP_TO_6);
        for (int pair = 1; pair <= 3; pair++) {
            bench.read(Property.RESISTANCE_UNBALANCE, Subject.ofPair(pair), pair == 2 ? 6 : 1, "%");
        }
        Judgement judgement = bench.judge();
        assertEquals(Outcome.PASS, judgement.findings().get(0).outcome());
        assertEquals(Outcome.FAIL, judgement.findings().get(1).outcome());
    }

    /** Eleven pairs at 5.3 and one at 4.0 have a mean of 5.19; more high pairs than are tried lie beside the low one. */
    @Test
    void aMeanIsHelpedByALowPairToo() {
        Requirement atLeast =
                requirement(Property.MUTUAL_CAPACITANCE, Statistic.MEAN, atLeast(5.2, 2), NONE, "nF/100 m");
        Finding finding = capacitances(5.3, 5.3, 5.3, 5.3, 5.3, 5.3, 5.3, 5.3, 5.3, 5.3, 5.3, 4.0)
                .require(atLeast)
                .mayVary(1, Map.of(Property.MUTUAL_CAPACITANCE, new Bound.Constant(3, 0)))
                .only();
        assertEquals(Outcome.PASS, finding.outcome());
        assertEquals(List.of(12), finding.varyingPairs());
    }

    /** Without pair 2 the mean unbalance would be 1.4 %; it passes with all pairs, so it is judged with all. */
    @Test
    void whatPassesWithAllPairsIsJudgedWithAll() {
        Requirement mean = requirement(Property.RESISTANCE_UNBALANCE, Statistic.MEAN, atMost(1.0, 1), NONE, "%");
        Bench bench = capacitances(5, 5.7, 5)
                .require(CAPACITANCE)
                .require(mean)
                .mayVary(
                        1,
                        Map.of(
                                Property.MUTUAL_CAPACITANCE, new Bound.Constant(6, 0),
                                Property.RESISTANCE_UNBALANCE, new Bound.Constant(7, 0)));
        for (int pair = 1; pair <= 3; pair++) {
            bench.read(Property.RESISTANCE_UNBALANCE, Subject.ofPair(pair), pair == 2 ? 0 : 1.4, "%");
        }
        Judgement judgement = bench.judge();
        assertEquals(Verdict.ACCEPTED, judgement.verdict());
        assertEquals(List.of(2), judgement.findings().get(0).varyingPairs());
        assertEquals(List.of(), judgement.findings().get(1).varyingPairs());
        assertEquals(3, judgement.findings().get(1).points());
    }
}
