package dev.reelproof.judgement;

import static dev.reelproof.judgement.Bench.atLeast;
import static dev.reelproof.judgement.Bench.atMost;
import static dev.reelproof.judgement.Bench.everyMegahertzTo;
import static dev.reelproof.judgement.Bench.flat;
import static dev.reelproof.judgement.Bench.law;
import static dev.reelproof.judgement.Bench.requirement;
import static dev.reelproof.judgement.Bench.with;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.correction.OutsideLawException;
import dev.reelproof.limit.Bound;
import dev.reelproof.limit.Domain;
import dev.reelproof.limit.LawSpec;
import dev.reelproof.limit.Limit;
import dev.reelproof.limit.PairCount;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.RequirementBuilder;
import dev.reelproof.limit.RoundingRule;
import dev.reelproof.limit.Scope;
import dev.reelproof.limit.Statistic;
import dev.reelproof.limit.TemperatureWindow;
import dev.reelproof.measurement.Conductor;
import dev.reelproof.measurement.CoreUnit;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Equipment;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import dev.reelproof.quantity.FrequencyGrid;
import dev.reelproof.quantity.Temperature;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class JudgeTest {
    private static final Domain NONE = new Domain.NoFrequency();
    private static final Domain UP_TO_10_MHZ = new Domain.Range(1, 10);
    private static final Requirement CAPACITANCE =
            requirement(Property.MUTUAL_CAPACITANCE, Statistic.INDIVIDUAL, atMost(5.6, 1), NONE, "nF/100 m");
    private static final Requirement RETURN_LOSS =
            requirement(Property.RETURN_LOSS, Statistic.INDIVIDUAL, Limit.atLeast(flat(20, 1, 10)), UP_TO_10_MHZ, "dB");
    private static final Requirement NEXT =
            requirement(Property.NEXT, Statistic.INDIVIDUAL, Limit.atLeast(flat(40, 1, 10)), UP_TO_10_MHZ, "dB");

    private static final Requirement RMS_WITHIN_UNITS = RequirementBuilder.like(requirement(
                    Property.CAPACITANCE_UNBALANCE_PAIR_TO_PAIR, Statistic.RMS, atMost(45.3, 1), NONE, "pF/100 m"))
            .scope(Scope.WITHIN_UNIT)
            .build();

    private static Bench capacitances(double... nanofarads) {
        Bench bench = new Bench().pairs(nanofarads.length);
        for (int i = 0; i < nanofarads.length; i++) {
            bench.read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(i + 1), nanofarads[i], "nF");
        }
        return bench;
    }

    private static Bench returnLosses(FrequencyGrid grid) {
        Bench bench = new Bench().require(RETURN_LOSS);
        for (int pair = 1; pair <= 4; pair++) {
            bench.sweep(Property.RETURN_LOSS, Subject.ofPair(pair).at(End.NEAR), grid, f -> 25);
        }
        return bench;
    }

    @Test
    void aReelIsAcceptedOnlyWhenEveryRequirementPasses() {
        Bench bench = capacitances(5.0, 5.1, 5.2, 5.3).require(CAPACITANCE);
        assertEquals(Verdict.ACCEPTED, bench.judge().verdict());
        bench.require(RETURN_LOSS);
        assertEquals(Verdict.INCOMPLETE, bench.judge().verdict());
    }

    @Test
    void rejectedBeatsIncomplete() {
        Judgement judgement = capacitances(5.0, 5.7, 5.2, 5.3)
                .require(CAPACITANCE)
                .require(RETURN_LOSS)
                .judge();
        assertEquals(Verdict.REJECTED, judgement.verdict());
        assertEquals(Outcome.NOT_TESTED, judgement.findings().get(1).outcome());
    }

    @Test
    void aSetWithoutRequirementsAcceptsNothing() {
        assertEquals(Verdict.INCOMPLETE, capacitances(5.0).judge().verdict());
    }

    @Test
    void theWorstPairIsNamedWithItsMargin() {
        Finding finding = capacitances(5.0, 5.5, 5.2, 5.3).require(CAPACITANCE).only();
        assertEquals(Outcome.PASS, finding.outcome());
        assertEquals(2, finding.figure().subject().pair());
        assertEquals(0.1, finding.figure().margin(), 1e-12);
        assertEquals(4, finding.points());
    }

    @ParameterizedTest
    @CsvSource({
        // on the limit passes, whatever unit it came in; the smallest real miss fails
        "5.6, nF, 100, PASS",
        "5600, pF, 100, PASS",
        "56, nF/km, 305, PASS",
        "17.06880, nF/kft, 305, PASS",
        "0.0056, µF, 100, PASS",
        "5.600001, nF, 100, FAIL",
        "17.06881, nF/kft, 305, FAIL",
    })
    void aValueOnTheLimitPassesInEveryUnit(double value, String unit, double metres, Outcome outcome) {
        Finding finding = new Bench()
                .pairs(1)
                .reel(metres, 20)
                .require(with(CAPACITANCE, law("linear-length")))
                .read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(1), value, unit)
                .only();
        assertEquals(outcome, finding.outcome());
        assertEquals(
                outcome == Outcome.PASS ? 0 : finding.figure().margin(),
                finding.figure().margin());
    }

    @Test
    void ofEqualMarginsTheLowestFrequencyThenTheLowestPairCounts() {
        Finding finding = returnLosses(everyMegahertzTo(10)).only();
        assertEquals(1.0, finding.figure().megahertz());
        assertEquals(1, finding.figure().subject().pair());
        assertEquals(40, finding.points());
    }

    @Test
    void marginsThatDifferByArithmeticNoiseAreEqual() {
        Bench bench = new Bench().pairs(2).require(RETURN_LOSS);
        bench.sweep(Property.RETURN_LOSS, Subject.ofPair(1).at(End.NEAR), everyMegahertzTo(10), f -> 25 - f * 1e-12);
        bench.sweep(Property.RETURN_LOSS, Subject.ofPair(2).at(End.NEAR), everyMegahertzTo(10), f -> 25 - f * 2e-12);
        assertEquals(1.0, bench.only().figure().megahertz());
        assertEquals(1, bench.only().figure().subject().pair());
    }

    @Test
    void theFarEndIsJudgedTooWhenGivenButNotAskedFor() {
        Bench bench = returnLosses(everyMegahertzTo(10));
        assertEquals(Outcome.PASS, bench.only().outcome());
        bench.sweep(Property.RETURN_LOSS, Subject.ofPair(3).at(End.FAR), everyMegahertzTo(10), f -> f == 7 ? 19.5 : 25);
        Finding finding = bench.only();
        assertEquals(Outcome.FAIL, finding.outcome());
        assertEquals(End.FAR, finding.figure().subject().end());
        assertEquals(7.0, finding.figure().megahertz());
        assertEquals(-0.5, finding.figure().margin(), 1e-12);
    }

    @Test
    void theFarEndAloneIsNotEnough() {
        Bench bench = new Bench().pairs(1).require(RETURN_LOSS);
        bench.sweep(Property.RETURN_LOSS, Subject.ofPair(1).at(End.FAR), everyMegahertzTo(10), f -> 25);
        assertEquals(Outcome.NOT_TESTED, bench.only().outcome());
        assertTrue(
                bench.only().reason().startsWith("pair missing"), bench.only().reason());
    }

    @Test
    void missingIsNotPassing() {
        Finding nothing = new Bench().require(RETURN_LOSS).only();
        assertEquals(Outcome.NOT_TESTED, nothing.outcome());
        assertTrue(nothing.reason().startsWith("no data"), nothing.reason());
        assertNull(nothing.figure());

        Finding pair = capacitances(5.0, 5.1, 5.2).pairs(4).require(CAPACITANCE).only();
        assertEquals(Outcome.NOT_TESTED, pair.outcome());
        assertTrue(pair.reason().contains("pair 4"), pair.reason());
    }

    @Test
    void aFailureCountsEvenWhenAPairIsMissing() {
        assertEquals(
                Outcome.FAIL,
                capacitances(5.0, 5.7, 5.2).pairs(4).require(CAPACITANCE).only().outcome());
    }

    @Test
    void aSweepThatStopsShortIsNotTested() {
        Finding finding = returnLosses(everyMegahertzTo(9)).only();
        assertEquals(Outcome.NOT_TESTED, finding.outcome());
        assertTrue(finding.reason().startsWith("range not spanned"), finding.reason());
    }

    @Test
    void aCoarseGridIsNotTested() {
        Finding finding =
                returnLosses(FrequencyGrid.ofMegahertz(1, 3, 5, 8, 10)).only();
        assertEquals(Outcome.NOT_TESTED, finding.outcome());
        assertTrue(finding.reason().startsWith("grid too coarse"), finding.reason());
        assertEquals(
                Outcome.PASS,
                returnLosses(FrequencyGrid.ofMegahertz(0.5, 2.5, 4.5, 6.5, 8.5, 10.5))
                        .only()
                        .outcome());
    }

    @Test
    void theWiderOfTheTwoStepsIsAllowed() {
        double decade = Math.pow(10, 1.0 / 40);
        double[] megahertz = new double[41];
        for (int i = 0; i < megahertz.length; i++) {
            megahertz[i] = Math.round(100 * Math.pow(decade, i) * 100) / 100.0;
        }
        Requirement wide = requirement(
                Property.RETURN_LOSS,
                Statistic.INDIVIDUAL,
                Limit.atLeast(flat(20, 100, 1000)),
                new Domain.Range(100, 1000),
                "dB");
        Bench bench = new Bench().pairs(1).require(wide);
        bench.sweep(
                Property.RETURN_LOSS, Subject.ofPair(1).at(End.NEAR), FrequencyGrid.ofMegahertz(megahertz), f -> 25);
        assertEquals(Outcome.PASS, bench.only().outcome());
    }

    @Test
    void pointsOutsideTheRangeAreKeptNotJudged() {
        Bench bench = new Bench().pairs(1).require(RETURN_LOSS);
        bench.sweep(Property.RETURN_LOSS, Subject.ofPair(1).at(End.NEAR), everyMegahertzTo(20), f -> f > 10 ? 5 : 25);
        Judgement judgement = bench.judge();
        assertEquals(Outcome.PASS, judgement.findings().get(0).outcome());
        assertEquals(10, judgement.findings().get(0).points());
        assertEquals(20, judgement.sweeps().get(0).grid().size());
    }

    @Test
    void equipmentOutOfCalibrationTestsNothing() {
        Bench bench = capacitances(5.0).require(CAPACITANCE);
        assertEquals(
                Outcome.PASS,
                bench.calibrationDue(LocalDate.of(2026, 3, 2)).only().outcome());
        Finding finding = bench.calibrationDue(LocalDate.of(2026, 3, 1)).only();
        assertEquals(Outcome.NOT_TESTED, finding.outcome());
        assertTrue(finding.reason().startsWith("equipment out of calibration: na-07"), finding.reason());
    }

    private static Bench nextWithALossMeterOutOfCalibration(double metres, DoubleUnaryOperator loss) {
        return new Bench()
                .pairs(2)
                .reel(metres, 20)
                .require(with(NEXT, law("near-end-crosstalk-length")))
                .sweep(Property.NEXT, Subject.ofCombination(1, 2).at(End.NEAR), everyMegahertzTo(10), f -> 60)
                .sweep(Property.INSERTION_LOSS, Subject.ofPair(1), everyMegahertzTo(10), loss)
                .equipment(
                        new Equipment("na-07", null, Set.of(Property.NEXT)),
                        new Equipment("na-08", LocalDate.of(2026, 3, 1), Set.of(Property.INSERTION_LOSS)));
    }

    /** The near-end law takes the measured loss where the reel is short; at the reference length and beyond it takes none. */
    @Test
    void aLossMeasuredOutOfCalibrationCorrectsNothing() {
        Finding corrected = nextWithALossMeterOutOfCalibration(30, f -> 0.6).only();

        assertEquals(Outcome.NOT_TESTED, corrected.outcome());
        assertTrue(corrected.reason().startsWith("equipment out of calibration: na-08"), corrected.reason());
        assertEquals(
                Outcome.PASS,
                nextWithALossMeterOutOfCalibration(100, f -> 2).only().outcome());

        Finding inPart =
                nextWithALossMeterOutOfCalibration(30, f -> f < 5 ? 0 : 0.6).only();
        assertTrue(inPart.reason().startsWith("equipment out of calibration: na-08"), inPart.reason());
    }

    @Test
    void unbalanceIsDerivedFromTheResistances() {
        Requirement unbalance =
                requirement(Property.RESISTANCE_UNBALANCE, Statistic.INDIVIDUAL, atMost(5, 0), NONE, "%");
        Bench bench = new Bench()
                .pairs(1)
                .require(unbalance)
                .read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(1, Conductor.A), 9.40, "ohm")
                .read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(1, Conductor.B), 9.00, "ohm");
        Finding finding = bench.only();
        assertTrue(finding.figure().derived());
        // facts: 9.40 and 9.00 ohm give 4.444 % with the smaller as denominator (arithmetic)
        assertEquals(4.444, finding.figure().value(), 5e-4);

        bench.read(Property.RESISTANCE_UNBALANCE, Subject.ofPair(1), 6, "%");
        assertEquals(Outcome.FAIL, bench.only().outcome(), "a stated unbalance does not hide behind the derived one");
        assertFalse(bench.only().figure().derived());
    }

    @Test
    void resistancesPerDifferentLengthsGiveNoUnbalance() {
        Requirement unbalance =
                requirement(Property.RESISTANCE_UNBALANCE, Statistic.INDIVIDUAL, atMost(5, 0), NONE, "%");
        Finding finding = new Bench()
                .pairs(1)
                .require(unbalance)
                .read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(1, Conductor.A), 9.4, "ohm")
                .read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(1, Conductor.B), 90, "ohm/km")
                .only();
        assertEquals(Outcome.NOT_TESTED, finding.outcome());
    }

    @Test
    void powerSumsComeFromOneSweepACombination() {
        Requirement sum =
                requirement(Property.PS_NEXT, Statistic.INDIVIDUAL, Limit.atLeast(flat(37, 1, 10)), UP_TO_10_MHZ, "dB");
        Bench bench = new Bench().require(NEXT).require(sum);
        for (int pair = 1; pair <= 4; pair++) {
            for (int partner = pair + 1; partner <= 4; partner++) {
                bench.sweep(
                        Property.NEXT,
                        Subject.ofCombination(partner, pair).at(End.NEAR),
                        everyMegahertzTo(10),
                        f -> 44.3);
            }
        }
        Judgement judgement = bench.judge();
        assertEquals(Outcome.PASS, judgement.findings().get(0).outcome());
        Finding finding = judgement.findings().get(1);
        assertTrue(finding.figure().derived());
        // facts: three equal 44.3 dB give 39.529 dB
        assertEquals(39.529, finding.figure().value(), 5e-4);
        assertEquals(40, finding.points());
        assertTrue(
                finding.figure().steps().stream().anyMatch(step -> step.title().equals("derived")));
    }

    @Test
    void anIncompletePowerSumIsNotTested() {
        Requirement sum = requirement(
                Property.PS_ACR_F, Statistic.INDIVIDUAL, Limit.atLeast(flat(20, 1, 10)), UP_TO_10_MHZ, "dB");
        Bench bench = new Bench().pairs(3).require(sum);
        for (int pair = 1; pair <= 3; pair++) {
            for (int partner = 1; partner <= 3; partner++) {
                if (pair != partner && !(pair == 3 && partner == 1)) {
                    bench.sweep(
                            Property.ACR_F,
                            Subject.ofCombination(pair, partner).at(End.NEAR),
                            everyMegahertzTo(10),
                            f -> 60);
                }
            }
        }
        Finding finding = bench.only();
        assertEquals(Outcome.NOT_TESTED, finding.outcome());
        assertEquals(
                "pair missing: ps-acr-f of pair 3 at the near end was not measured, and it is not formed:"
                        + " acr-f is missing of pair 3 and pair 1 at the near end",
                finding.reason());
    }

    @Test
    void skewIsTheLargestDifferenceAtAnyOneFrequency() {
        Requirement skew = requirement(
                Property.DELAY_SKEW, Statistic.INDIVIDUAL, Limit.atMost(flat(45, 1, 10)), UP_TO_10_MHZ, "ns/100 m");
        Bench bench = new Bench().pairs(2).reel(200, 20).require(with(skew, law("linear-length")));
        bench.sweep(Property.PROPAGATION_DELAY, Subject.ofPair(1), everyMegahertzTo(10), f -> 1000 + f);
        bench.sweep(Property.PROPAGATION_DELAY, Subject.ofPair(2), everyMegahertzTo(10), f -> 1080 - f);
        Finding finding = bench.only();
        assertEquals(39.0, finding.figure().value(), 1e-9, "78 ns at 1 MHz over 200 m");
        assertEquals(78.0, finding.figure().measured(), 1e-9);
        assertEquals(1.0, finding.figure().megahertz());
        bench.read(Property.DELAY_SKEW, Subject.ofReel(), 100, "ns");
        assertEquals(Outcome.FAIL, bench.only().outcome(), "a stated skew is judged beside the derived one");
    }

    @Test
    void theNearEndLawNeedsTheLossOfBothPairs() {
        Requirement corrected = with(NEXT, law("near-end-crosstalk-length"));
        Bench bench = new Bench().pairs(2).reel(30, 20).require(corrected);
        bench.sweep(Property.NEXT, Subject.ofCombination(1, 2).at(End.NEAR), everyMegahertzTo(10), f -> 60);
        Finding without = bench.only();
        assertEquals(Outcome.NOT_TESTED, without.outcome());
        assertTrue(without.reason().startsWith("correction not possible"), without.reason());
        bench.sweep(Property.INSERTION_LOSS, Subject.ofPair(1), everyMegahertzTo(10), f -> 2.025 * 0.3);
        assertEquals(Outcome.NOT_TESTED, bench.only().outcome(), "the loss of pair 2 may give a worse value");
        bench.sweep(Property.INSERTION_LOSS, Subject.ofPair(2), everyMegahertzTo(10), f -> 2.025 * 0.3);
        // facts: 100 m from 30 m at 2.025 dB/100 m subtracts 3.95 dB
        assertEquals(60 - 3.95, bench.only().figure().value(), 0.005);
        assertEquals(60, bench.reel(100, 20).only().figure().value(), 0);
        assertEquals(60, bench.reel(305, 20).only().figure().value(), 0);
    }

    @Test
    void aTemperatureThatALawDoesNotCoverIsRefused() {
        LawSpec copper = new LawSpec("copper-temperature", Map.of("coefficient", 0.00393));
        Bench bench = capacitances(5.0).require(with(CAPACITANCE, copper)).reel(100, 400);
        assertThrows(OutsideLawException.class, bench::judge);
    }

    @Test
    void outsideItsTemperatureWindowARequirementIsNotTested() {
        Requirement windowed = RequirementBuilder.like(CAPACITANCE)
                .temperatureWindow(new TemperatureWindow(Temperature.ofCelsius(20), 1))
                .build();
        assertEquals(
                Outcome.PASS,
                capacitances(5.0).require(windowed).reel(100, 21).only().outcome());
        assertEquals(
                Outcome.NOT_TESTED,
                capacitances(5.0).require(windowed).reel(100, 21.5).only().outcome());
    }

    @Test
    void statisticsOverThePairs() {
        Requirement mean = requirement(
                Property.MUTUAL_CAPACITANCE,
                Statistic.MEAN,
                Limit.between(new Bound.Constant(5.0, 1), new Bound.Constant(5.4, 1)),
                NONE,
                "nF/100 m");
        Finding finding = capacitances(5.0, 5.7, 5.2, 5.3).require(mean).only();
        assertEquals(Outcome.PASS, finding.outcome());
        assertEquals(5.3, finding.figure().value(), 1e-12);
        assertEquals(5.4, finding.figure().limit());
        assertEquals(0.1, finding.figure().margin(), 1e-12);
        assertNull(finding.figure().subject().pair());

        Requirement deviation =
                requirement(Property.MUTUAL_CAPACITANCE, Statistic.RMS_DEVIATION, atMost(3.0, 1), NONE, "%");
        // mean 5, deviations ±0.1: 2 %
        Finding rms = capacitances(4.9, 5.1).require(deviation).only();
        assertEquals(2.0, rms.figure().value(), 1e-9);
        assertEquals("%", rms.figure().measuredUnit());
    }

    @Test
    void aStatisticThatItsValuesDoNotGiveIsNotTested() {
        Requirement next =
                requirement(Property.NEXT, Statistic.MEAN_MINUS_SIGMA, atLeast(56, 0), new Domain.Spot(0.772), "dB");
        Bench bench = new Bench().pairs(2).require(next);
        bench.sweep(Property.NEXT, Subject.ofCombination(1, 2).at(End.NEAR), FrequencyGrid.ofMegahertz(0.772), f -> 70);
        Finding finding = bench.only();
        assertEquals(Outcome.NOT_TESTED, finding.outcome(), "one value has no standard deviation");
        assertNull(finding.figure());
        assertTrue(finding.reason().startsWith("no mean-minus-sigma"), finding.reason());
    }

    @ParameterizedTest
    @CsvSource({
        // facts, ASTM E29 rounding: limit 93.8, rounding and absolute method
        "93.84, TO_THE_PLACES_OF_THE_LIMIT, PASS",
        "93.85, TO_THE_PLACES_OF_THE_LIMIT, PASS",
        "93.851, TO_THE_PLACES_OF_THE_LIMIT, FAIL",
        "93.84, ABSOLUTE, FAIL",
        "93.8, ABSOLUTE, PASS",
    })
    void roundingIsTheSetsChoice(double value, RoundingRule rule, Outcome outcome) {
        Finding finding = new Bench()
                .pairs(1)
                .rounding(rule)
                .require(requirement(
                        Property.MUTUAL_CAPACITANCE, Statistic.INDIVIDUAL, atMost(93.8, 1), NONE, "nF/100 m"))
                .read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(1), value, "nF")
                .only();
        assertEquals(outcome, finding.outcome());
        assertEquals(value, finding.figure().value(), 1e-9, "the value itself is not rounded");
        assertEquals(outcome == Outcome.PASS, finding.figure().margin() >= 0);
    }

    @Test
    void oneOfTwelvePairsMayVaryWithinItsCeiling() {
        Requirement unbalance =
                requirement(Property.RESISTANCE_UNBALANCE, Statistic.INDIVIDUAL, atMost(5.0, 1), NONE, "%");
        Requirement mean = requirement(Property.RESISTANCE_UNBALANCE, Statistic.MEAN, atMost(1.5, 1), NONE, "%");
        Map<Property, Bound.Constant> ceilings = Map.of(Property.RESISTANCE_UNBALANCE, new Bound.Constant(7, 0));
        Bench bench = new Bench().pairs(12).require(unbalance).require(mean).mayVary(1, ceilings);
        for (int pair = 1; pair <= 11; pair++) {
            bench.read(Property.RESISTANCE_UNBALANCE, Subject.ofPair(pair), 1.3, "%");
        }
        bench.read(Property.RESISTANCE_UNBALANCE, Subject.ofPair(12), 6.5, "%");
        Judgement judgement = bench.judge();
        assertEquals(Verdict.ACCEPTED, judgement.verdict());
        assertEquals(List.of(12), judgement.findings().get(0).varyingPairs());
        assertEquals(List.of(12), judgement.findings().get(1).varyingPairs());
        assertTrue(judgement.findings().get(0).reason().contains("6.5"));
        assertEquals(11, judgement.findings().get(0).points());

        assertEquals(Verdict.REJECTED, bench.mayVary(0, ceilings).judge().verdict());
        Map<Property, Bound.Constant> lower = Map.of(Property.RESISTANCE_UNBALANCE, new Bound.Constant(6, 0));
        assertEquals(
                Verdict.REJECTED, bench.mayVary(1, lower).judge().verdict(), "beyond the ceiling nothing may vary");
        assertEquals(Verdict.REJECTED, bench.mayVary(1, Map.of()).judge().verdict(), "only named properties may vary");
    }

    @Test
    void twoVaryingPairsAreOneTooMany() {
        Requirement unbalance =
                requirement(Property.RESISTANCE_UNBALANCE, Statistic.INDIVIDUAL, atMost(5.0, 1), NONE, "%");
        Bench bench = new Bench()
                .pairs(12)
                .require(unbalance)
                .mayVary(1, Map.of(Property.RESISTANCE_UNBALANCE, new Bound.Constant(7, 0)));
        for (int pair = 1; pair <= 12; pair++) {
            bench.read(Property.RESISTANCE_UNBALANCE, Subject.ofPair(pair), pair > 10 ? 6 : 1, "%");
        }
        assertEquals(Verdict.REJECTED, bench.judge().verdict());
        assertEquals(List.of(), bench.only().varyingPairs());
    }

    @Test
    void aVaryingPairThatIsTheSecondOfACombinationIsFound() {
        Requirement fext =
                requirement(Property.FEXT, Statistic.INDIVIDUAL, atLeast(58, 0), new Domain.Spot(0.150), "dB");
        Bench bench = new Bench().pairs(4).require(fext).mayVary(1, Map.of(Property.FEXT, new Bound.Constant(52, 0)));
        for (int pair = 1; pair <= 4; pair++) {
            for (int partner = pair + 1; partner <= 4; partner++) {
                double level = partner == 4 ? 55 : 70;
                bench.sweep(
                        Property.FEXT,
                        Subject.ofCombination(pair, partner),
                        FrequencyGrid.ofMegahertz(0.15),
                        f -> level);
            }
        }
        assertEquals(List.of(4), bench.only().varyingPairs());
        assertEquals(Outcome.PASS, bench.only().outcome());
    }

    @Test
    void combinationsAreCountedByUnits() {
        Requirement within = RequirementBuilder.like(RMS_WITHIN_UNITS)
                .unitPairs(new PairCount(2, 2))
                .build();
        Bench bench = new Bench()
                .pairs(4)
                .units(new CoreUnit(1, 1, 2, Set.of(2)), new CoreUnit(2, 3, 4, Set.of(1)))
                .require(within)
                .read(Property.CAPACITANCE_UNBALANCE_PAIR_TO_PAIR, Subject.ofCombination(1, 2), 30, "pF")
                .read(Property.CAPACITANCE_UNBALANCE_PAIR_TO_PAIR, Subject.ofCombination(2, 3), 4000, "pF");
        Finding missing = bench.only();
        assertEquals(Outcome.NOT_TESTED, missing.outcome());
        assertTrue(missing.reason().contains("pair 3 and pair 4"), missing.reason());
        bench.read(Property.CAPACITANCE_UNBALANCE_PAIR_TO_PAIR, Subject.ofCombination(4, 3), 40, "pF");
        assertEquals(Math.sqrt((900 + 1600) / 2.0), bench.only().figure().value(), 1e-9);
        assertEquals(2, bench.only().points());
    }

    @Test
    void aLargeCoreThatStatesNoUnitsIsNotJudgedByThem() {
        Bench bench = new Bench()
                .pairs(100)
                .require(RMS_WITHIN_UNITS)
                .read(Property.CAPACITANCE_UNBALANCE_PAIR_TO_PAIR, Subject.ofCombination(1, 2), 30, "pF");
        assertEquals(Outcome.NOT_TESTED, bench.only().outcome());
        assertTrue(
                bench.only().reason().startsWith("units unknown"), bench.only().reason());
    }

    @Test
    void insulationResistanceCountsByPairByConductorOrByReel() {
        Requirement insulation =
                requirement(Property.INSULATION_RESISTANCE, Statistic.INDIVIDUAL, atLeast(1600, 0), NONE, "megohm·km");
        Requirement corrected = with(insulation, law("insulation-resistance-length"));
        Bench bench = new Bench()
                .pairs(2)
                .reel(500, 20)
                .require(corrected)
                .read(Property.INSULATION_RESISTANCE, Subject.ofPair(1), 4, "gigohm")
                .read(Property.INSULATION_RESISTANCE, Subject.ofConductor(2, Conductor.A), 5000, "megohm");
        assertEquals(Outcome.NOT_TESTED, bench.only().outcome());
        bench.read(Property.INSULATION_RESISTANCE, Subject.ofConductor(2, Conductor.B), 1900, "megohm-km");
        assertEquals(Outcome.PASS, bench.only().outcome());
        assertEquals(1900, bench.only().figure().value(), 1e-9);
        assertEquals(
                Outcome.PASS,
                new Bench()
                        .pairs(25)
                        .reel(500, 20)
                        .require(corrected)
                        .read(Property.INSULATION_RESISTANCE, Subject.ofReel(), 3200, "megohm")
                        .only()
                        .outcome());
    }

    @Test
    void theChainLeadsFromTheUploadToTheMargin() {
        LawSpec copper = new LawSpec("copper-temperature", Map.of("coefficient", 0.00393));
        Requirement resistance = with(
                requirement(Property.CONDUCTOR_RESISTANCE, Statistic.INDIVIDUAL, atMost(9.38, 2), NONE, "ohm/100 m"),
                copper,
                law("linear-length"));
        Finding finding = new Bench()
                .pairs(1)
                .reel(305, 31)
                .require(resistance)
                .read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(1, Conductor.A), 0.0295, "kohm")
                .read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(1, Conductor.B), 29.0, "ohm")
                .only();
        List<String> titles = finding.figure().steps().stream().map(Step::title).toList();
        assertEquals(List.of("measured", "converted", "corrected", "corrected", "covered", "limit", "margin"), titles);
        assertTrue(finding.figure().steps().get(0).detail().startsWith("/readings/0/value"));
        assertEquals(29.5 / (1 + 0.00393 * 11) * 100 / 305, finding.figure().value(), 1e-12);
        assertEquals(0.0295, finding.figure().measured());
        assertEquals("kohm", finding.figure().measuredUnit());
    }

    @Test
    void theOrderOfTheUploadNeverMatters() {
        Bench forward = new Bench().require(CAPACITANCE);
        Bench backward = new Bench().require(CAPACITANCE);
        for (int pair = 1; pair <= 4; pair++) {
            forward.read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(pair), 5.5, "nF");
            backward.read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(5 - pair), 5.5, "nF");
        }
        assertEquals(1, forward.only().figure().subject().pair());
        assertEquals(1, backward.only().figure().subject().pair());
    }
}
