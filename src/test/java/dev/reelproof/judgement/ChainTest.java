package dev.reelproof.judgement;

import static dev.reelproof.judgement.Bench.atMost;
import static dev.reelproof.judgement.Bench.everyMegahertzTo;
import static dev.reelproof.judgement.Bench.flat;
import static dev.reelproof.judgement.Bench.law;
import static dev.reelproof.judgement.Bench.requirement;
import static dev.reelproof.judgement.Bench.with;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.limit.Bound;
import dev.reelproof.limit.Domain;
import dev.reelproof.limit.LawSpec;
import dev.reelproof.limit.Limit;
import dev.reelproof.limit.PairCount;
import dev.reelproof.limit.Particulars;
import dev.reelproof.limit.Per;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.RequirementBuilder;
import dev.reelproof.limit.Scope;
import dev.reelproof.limit.Statistic;
import dev.reelproof.limit.TemperatureWindow;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Origin;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import dev.reelproof.measurement.Sweep;
import dev.reelproof.quantity.FrequencyGrid;
import dev.reelproof.quantity.ReadingUnit;
import dev.reelproof.quantity.Temperature;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** What is kept and told of the way from what was measured to what was judged. */
class ChainTest {
    private static final Domain NONE = new Domain.NoFrequency();
    private static final Domain UP_TO_10_MHZ = new Domain.Range(1, 10);
    private static final FrequencyGrid GRID = everyMegahertzTo(10);
    private static final Requirement NEXT =
            requirement(Property.NEXT, Statistic.INDIVIDUAL, Limit.atLeast(flat(40, 1, 10)), UP_TO_10_MHZ, "dB");
    private static final Requirement PS_NEXT =
            requirement(Property.PS_NEXT, Statistic.INDIVIDUAL, Limit.atLeast(flat(37, 1, 10)), UP_TO_10_MHZ, "dB");
    private static final Requirement RETURN_LOSS =
            requirement(Property.RETURN_LOSS, Statistic.INDIVIDUAL, Limit.atLeast(flat(20, 1, 10)), UP_TO_10_MHZ, "dB");

    private static Bench nextOfThreePairs(Bench bench, FrequencyGrid lastGrid) {
        return bench.pairs(3)
                .sweep(Property.NEXT, Subject.ofCombination(1, 2).at(End.NEAR), GRID, f -> 60)
                .sweep(Property.NEXT, Subject.ofCombination(1, 3).at(End.NEAR), GRID, f -> 60)
                .sweep(Property.NEXT, Subject.ofCombination(2, 3).at(End.NEAR), lastGrid, f -> 60);
    }

    @Test
    void theChainOfASweepNamesItsPlaceAndTheMeasuredLoss() {
        Finding finding = new Bench()
                .pairs(2)
                .reel(30, 20)
                .require(with(NEXT, law("near-end-crosstalk-length")))
                .sweep(Property.NEXT, Subject.ofCombination(1, 2).at(End.NEAR), GRID, f -> 60)
                .sweep(Property.INSERTION_LOSS, Subject.ofPair(1), GRID, f -> 0.6)
                .sweep(Property.INSERTION_LOSS, Subject.ofPair(2), GRID, f -> 0.7)
                .only();
        List<Step> steps = finding.figure().steps();
        assertEquals(
                List.of("measured", "corrected", "covered", "limit", "margin"),
                steps.stream().map(Step::title).toList());
        assertEquals(
                "/sweeps/0/values/0: next of pair 1 and pair 2, near end at 1.0 MHz",
                steps.get(0).detail());
        String correction = steps.get(1).detail();
        assertTrue(
                correction.endsWith(
                        "t = 20.0 °C, reference 20.0 °C; L = 30.0 m, reference 100.0 m; a = 0.02 dB/m measured of pair 1"),
                correction);
    }

    @Test
    void onlyTheLastLawBringsAValueToTheUnitOfTheLimit() {
        LawSpec copper = new LawSpec("copper-temperature", Map.of("coefficient", 0.00393));
        Requirement resistance = with(
                requirement(
                        Property.INSERTION_LOSS,
                        Statistic.INDIVIDUAL,
                        Limit.atMost(flat(30, 1, 10)),
                        UP_TO_10_MHZ,
                        "dB/100 m"),
                copper,
                law("linear-length"));
        Finding finding = new Bench()
                .pairs(1)
                .reel(305, 31)
                .require(resistance)
                .sweep(Property.INSERTION_LOSS, Subject.ofPair(1), GRID, f -> 20)
                .only();
        List<Step> corrected = finding.figure().steps().stream()
                .filter(step -> step.title().equals("corrected"))
                .toList();
        assertEquals(
                List.of("dB", "dB/100 m"), corrected.stream().map(Step::unit).toList());
    }

    @Test
    void aPowerSumShowsItsPartsFirst() {
        Finding finding = nextOfThreePairs(new Bench().require(PS_NEXT), GRID).only();
        List<Step> steps = finding.figure().steps();
        assertEquals(
                List.of("measured", "measured", "derived", "covered", "limit", "margin"),
                steps.stream().map(Step::title).toList());
        assertEquals(
                "ps-next of pair 1, near end: −10 log10 Σ 10^(−x/10) of next of pair 1 and pair 2, near end; "
                        + "next of pair 1 and pair 3, near end",
                steps.get(2).detail());
    }

    @Test
    void partsOnDifferentFrequenciesGiveNoPowerSum() {
        FrequencyGrid other = FrequencyGrid.ofMegahertz(1, 2, 3, 4, 5, 6, 7, 8, 9, 10.5);
        Finding finding = nextOfThreePairs(new Bench().require(PS_NEXT), other).only();
        assertEquals(Outcome.NOT_TESTED, finding.outcome());
        assertTrue(
                finding.reason()
                        .contains("ps-next of pair 2, near end cannot be derived: "
                                + "its parts were measured on different frequencies"),
                finding.reason());
        assertEquals(10, finding.points(), "pair 1 has both of its parts");
    }

    @Test
    void aPowerSumOfAPartThatCannotBeCorrectedIsNotTested() {
        Bench bench = nextOfThreePairs(new Bench().require(with(PS_NEXT, law("near-end-crosstalk-length"))), GRID)
                .reel(30, 20)
                .sweep(Property.INSERTION_LOSS, Subject.ofPair(1), GRID, f -> 0.6)
                .sweep(Property.INSERTION_LOSS, Subject.ofPair(2), GRID, f -> f < 5 ? 0.6 : 0);
        Finding finding = bench.only();
        assertEquals(Outcome.NOT_TESTED, finding.outcome());
        assertTrue(finding.reason().startsWith("correction not possible"), finding.reason());
    }

    @Test
    void theSweepsAreKeptAsMeasuredAndAsCorrected() {
        Requirement loss = requirement(
                Property.INSERTION_LOSS, Statistic.INDIVIDUAL, Limit.atMost(flat(30, 1, 10)), UP_TO_10_MHZ, "dB/100 m");
        Judgement judgement = nextOfThreePairs(new Bench().require(with(loss, law("linear-length"))), GRID)
                .require(PS_NEXT)
                .reel(200, 20)
                .sweep(Property.INSERTION_LOSS, Subject.ofPair(2), GRID, f -> 20 + f)
                .judge();
        CorrectedSweep measured = judgement.sweeps().get(0);
        assertEquals(Property.INSERTION_LOSS, measured.property());
        assertEquals(Subject.ofPair(2), measured.subject());
        assertEquals("dB/100 m", measured.unit());
        assertFalse(measured.derived());
        assertEquals(24, measured.measured(3));
        assertEquals(12, measured.corrected(3));
        CorrectedSweep sum = judgement.sweeps().stream()
                .filter(sweep -> sweep.property() == Property.PS_NEXT)
                .findFirst()
                .orElseThrow();
        assertEquals(Subject.ofPair(1).at(End.NEAR), sum.subject());
        assertTrue(sum.derived());
    }

    @Test
    void ofEqualMarginsTheLowestFrequencyCountsBeforeTheLowestPair() {
        Bench bench = new Bench()
                .pairs(2)
                .require(RETURN_LOSS)
                .sweep(Property.RETURN_LOSS, Subject.ofPair(1).at(End.NEAR), GRID, f -> f == 7 ? 22 : 25)
                .sweep(Property.RETURN_LOSS, Subject.ofPair(2).at(End.NEAR), GRID, f -> f == 3 ? 22 : 25);
        assertEquals(2, bench.only().figure().subject().pair());
        assertEquals(3.0, bench.only().figure().megahertz());
    }

    // The margins differ by 1e-8 dB, which is less than 1e-9 of the limit of 20 dB; by 1e-7 dB they are not equal.
    @Test
    void marginsAreEqualWithinABillionthOfTheLimit() {
        for (double less : new double[] {1e-8, 1e-7}) {
            Finding finding = new Bench()
                    .pairs(1)
                    .require(RETURN_LOSS)
                    .sweep(
                            Property.RETURN_LOSS,
                            Subject.ofPair(1).at(End.NEAR),
                            GRID,
                            f -> f == 1 ? 22 : f == 8 ? 22 - less : 25)
                    .only();
            assertEquals(less == 1e-8 ? 1.0 : 8.0, finding.figure().megahertz());
        }
    }

    @Test
    void aStatisticNamesItsExtremes() {
        Requirement mean = requirement(Property.MUTUAL_CAPACITANCE, Statistic.MEAN, atMost(5.6, 1), NONE, "nF/100 m");
        Finding finding = new Bench()
                .pairs(3)
                .require(mean)
                .read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(1), 5.2, "nF")
                .read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(2), 5.1, "nF")
                .read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(3), 5.3, "nF")
                .only();
        assertEquals(
                "mean of 3 corrected values of mutual-capacitance, from 5.1 (pair 2) to 5.3 (pair 3)",
                finding.figure().steps().stream()
                        .filter(step -> step.title().equals("statistic"))
                        .findFirst()
                        .orElseThrow()
                        .detail());
    }

    @Test
    void outsideItsWindowARequirementSaysWhereItHolds() {
        Requirement windowed = RequirementBuilder.of(Property.MUTUAL_CAPACITANCE, atMost(5.6, 1), NONE, "nF/100 m")
                .temperatureWindow(new TemperatureWindow(Temperature.ofCelsius(20), 1))
                .build();
        assertEquals(
                "temperature outside the window: measured at 25.0 °C; the limit holds at 20.0 ± 1.0 °C "
                        + "and no law of correction is stated",
                new Bench()
                        .pairs(1)
                        .reel(100, 25)
                        .require(windowed)
                        .read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(1), 5, "nF")
                        .only()
                        .reason());
    }

    @Test
    void aRequirementOnUnitsOfOneSizeNeedsTheUnits() {
        Requirement anywhere = RequirementBuilder.of(
                        Property.CAPACITANCE_UNBALANCE_PAIR_TO_PAIR, atMost(145, 0), NONE, "pF/km")
                .unitPairs(new PairCount(12, 25))
                .build();
        Finding finding = new Bench()
                .pairs(50)
                .require(anywhere)
                .read(Property.CAPACITANCE_UNBALANCE_PAIR_TO_PAIR, Subject.ofCombination(1, 2), 30, "pF")
                .only();
        assertEquals("units unknown: the product does not say which pairs form its units", finding.reason());
    }

    @Test
    void theWordsAreThoseOfTheContract() {
        assertEquals("accepted", Verdict.ACCEPTED.word());
        assertEquals("rejected", Verdict.REJECTED.word());
        assertEquals("incomplete", Verdict.INCOMPLETE.word());
        assertEquals("pass", Outcome.PASS.word());
        assertEquals("fail", Outcome.FAIL.word());
        assertEquals("not-tested", Outcome.NOT_TESTED.word());
    }

    private static List<Step> steps(Finding finding, String title) {
        return finding.figure().steps().stream()
                .filter(step -> step.title().equals(title))
                .toList();
    }

    @Test
    void theChainSaysWhichPairWasAllowedToVaryAndHowFar() {
        Bench bench = new Bench()
                .pairs(3)
                .require(requirement(Property.MUTUAL_CAPACITANCE, Statistic.INDIVIDUAL, atMost(5.6, 1), NONE, "nF"))
                .mayVary(1, Map.of(Property.MUTUAL_CAPACITANCE, new Bound.Constant(6, 0)))
                .read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(1), 5, "nF")
                .read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(3), 5, "nF");
        Finding all = bench.read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(2), 5.7, "nF")
                .only();
        Step allowed = steps(all, "allowed to vary").get(0);
        assertEquals("pair 2 left out; its values must still be at-most the ceiling", allowed.detail());
        assertEquals(6, allowed.value());

        Finding none = bench.require(
                        requirement(Property.MUTUAL_CAPACITANCE, Statistic.MEAN, atMost(5.6, 1), NONE, "nF"))
                .judge()
                .findings()
                .get(1);
        assertEquals(List.of(), steps(none, "allowed to vary"), "the mean passes with all pairs");
    }

    @Test
    void theChainSaysWhichCombinationsCount() {
        Requirement within = RequirementBuilder.of(
                        Property.CAPACITANCE_UNBALANCE_PAIR_TO_PAIR, atMost(145, 0), NONE, "pF")
                .scope(Scope.WITHIN_UNIT)
                .build();
        Bench bench = new Bench()
                .pairs(2)
                .read(Property.CAPACITANCE_UNBALANCE_PAIR_TO_PAIR, Subject.ofCombination(1, 2), 30, "pF");
        assertEquals(
                "values judged, of within-unit",
                steps(bench.require(within).only(), "covered").get(0).detail());
        Finding anywhere = bench.require(RequirementBuilder.like(within)
                        .id("anywhere")
                        .scope(Scope.CORE)
                        .build())
                .judge()
                .findings()
                .get(1);
        assertEquals("values judged", steps(anywhere, "covered").get(0).detail());
    }

    @Test
    void aStatisticShowsTheWayOfItsTwoExtremesAndOfASingleValueOnce() {
        Bench bench = new Bench()
                .pairs(1)
                .require(requirement(Property.MUTUAL_CAPACITANCE, Statistic.MEAN, atMost(5.6, 1), NONE, "nF"))
                .read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(1), 5.2, "nF");
        assertEquals(1, steps(bench.only(), "measured").size());
        bench.pairs(3)
                .read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(2), 5.1, "nF")
                .read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(3), 5.3, "nF");
        assertEquals(
                List.of(5.1, 5.3),
                steps(bench.only(), "measured").stream().map(Step::value).toList());
    }

    @Test
    void aSweepThatNoRequirementJudgesIsKeptAsMeasured() {
        Judgement judgement =
                nextOfThreePairs(new Bench().require(PS_NEXT), GRID).judge();
        List<CorrectedSweep> next = judgement.sweeps().stream()
                .filter(sweep -> sweep.property() == Property.NEXT)
                .toList();
        assertEquals(3, next.size());
        assertEquals(60, next.get(0).measured(4));
        assertEquals(60, next.get(0).corrected(4));
        assertEquals("dB", next.get(0).unit());
    }

    /** The first frequency judged of pair 1, 2 MHz, has the least margin; pair 2 begins lower. */
    @Test
    void theLeastMarginIsNamedWhereverTheSweepsBegin() {
        Finding finding = new Bench()
                .pairs(2)
                .require(RETURN_LOSS)
                .sweep(
                        Property.RETURN_LOSS,
                        Subject.ofPair(1).at(End.NEAR),
                        FrequencyGrid.ofMegahertz(0.5, 2, 4, 6, 8, 10),
                        f -> f == 2 ? 21 : 30)
                .sweep(Property.RETURN_LOSS, Subject.ofPair(2).at(End.NEAR), GRID, f -> 25)
                .only();
        assertEquals(2.0, finding.figure().megahertz());
        assertEquals(1, finding.figure().margin(), 1e-12);
    }

    @Test
    void aPassAboveTheWindowAndASampleAreBothSaid() {
        Particulars sampling = new Particulars(
                true,
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.of(new Particulars.Sampling(2, new Bound.Constant(5, 0), new Bound.Constant(6, 0))),
                Optional.empty(),
                Per.REEL);
        Finding finding = new Bench()
                .pairs(3)
                .reel(100, 25)
                .require(RequirementBuilder.of(Property.MUTUAL_CAPACITANCE, atMost(5.6, 1), NONE, "nF")
                        .statistic(Statistic.MEAN)
                        .temperatureWindow(new TemperatureWindow(Temperature.ofCelsius(20), 1, true))
                        .particulars(sampling)
                        .build())
                .read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(1), 5.2, "nF")
                .read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(2), 5.2, "nF")
                .only();
        assertTrue(finding.reason().contains("so that a pass stands; sample: 2 of 3 pairs"), finding.reason());
    }

    /** What was done between the network-analyser file and the value stands before it, the value's own step last. */
    @Test
    void theChainBeginsAtTheNetworkAnalyserFile() {
        Origin origin = new Origin.Network(
                "reel.s4p",
                new int[] {7, 9},
                List.of(
                        new Origin.Network.Link("renormalised", "to the set's differential mode", 100.0, "ohm", null),
                        new Origin.Network.Link("definition", "RL = -20 log10 |S|", null, "dB", "a document (read)")));
        Finding finding = new Bench()
                .pairs(1)
                .require(requirement(
                        Property.RETURN_LOSS,
                        Statistic.INDIVIDUAL,
                        Limit.atLeast(flat(20, 1, 2)),
                        new Domain.Range(1, 2),
                        "dB"))
                .sweep(Sweep.of(
                        Property.RETURN_LOSS,
                        Subject.ofPair(1).at(End.NEAR),
                        FrequencyGrid.ofMegahertz(1, 2),
                        new double[] {30, 25},
                        ReadingUnit.parse("dB"),
                        origin))
                .only();
        List<Step> steps = finding.figure().steps();
        assertEquals(
                List.of("renormalised", "definition", "measured", "covered", "limit", "margin"),
                steps.stream().map(Step::title).toList());
        assertEquals(100, steps.get(0).value());
        assertEquals(25, steps.get(1).value());
        assertEquals(
                "reel.s4p:9: return-loss of pair 1, near end at 2.0 MHz",
                steps.get(2).detail());
    }
}
