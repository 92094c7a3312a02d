package dev.reelproof.judgement;

import static dev.reelproof.judgement.Bench.atLeast;
import static dev.reelproof.judgement.Bench.atMost;
import static dev.reelproof.judgement.Bench.everyMegahertzTo;
import static dev.reelproof.judgement.Bench.flat;
import static dev.reelproof.judgement.Bench.law;
import static dev.reelproof.judgement.Bench.requirement;
import static dev.reelproof.judgement.Bench.saying;
import static dev.reelproof.judgement.Bench.with;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.limit.Bound;
import dev.reelproof.limit.Domain;
import dev.reelproof.limit.Limit;
import dev.reelproof.limit.Particulars;
import dev.reelproof.limit.Per;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.RequirementBuilder;
import dev.reelproof.limit.RoundingRule;
import dev.reelproof.limit.Statistic;
import dev.reelproof.limit.TemperatureWindow;
import dev.reelproof.measurement.Conductor;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Equipment;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import dev.reelproof.quantity.Length;
import dev.reelproof.quantity.ReadingUnit;
import dev.reelproof.quantity.Temperature;
import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** What a requirement may say beyond its limit, and the figures that come with the regulation. */
class RequirementKindsTest {
    private static final Domain NO_FREQUENCY = new Domain.NoFrequency();

    // ---- required only where measured

    private static final Particulars WHERE_MEASURED = new Particulars(
            false, OptionalDouble.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Per.REEL);

    private static Bench breakingStrength() {
        Requirement spark =
                requirement(Property.SPARK_FAULTS, Statistic.INDIVIDUAL, atMost(0, 0), NO_FREQUENCY, "count");
        Requirement strength =
                requirement(Property.BREAKING_STRENGTH, Statistic.INDIVIDUAL, atLeast(890, 0), NO_FREQUENCY, "N");
        return new Bench()
                .require(spark)
                .require(saying(strength, WHERE_MEASURED))
                .read(Property.SPARK_FAULTS, Subject.ofReel(), 0, "count");
    }

    @Test
    void aTestOfSamplesIsNoGapInAReelThatIsNoSample() {
        Judgement judgement = breakingStrength().judge();

        assertEquals(1, judgement.findings().size());
        assertEquals(Verdict.ACCEPTED, judgement.verdict());
    }

    @Test
    void aTestOfSamplesCountsWhereItWasMade() {
        Subject sample = Subject.ofReel().withSample(1);
        assertEquals(
                Verdict.ACCEPTED,
                breakingStrength()
                        .read(Property.BREAKING_STRENGTH, sample, 900, "N")
                        .judge()
                        .verdict());
        assertEquals(
                Verdict.REJECTED,
                breakingStrength()
                        .read(Property.BREAKING_STRENGTH, sample, 880, "N")
                        .judge()
                        .verdict());
    }

    @Test
    void aSetOfWhichNothingWasMeasuredAcceptsNothing() {
        Requirement strength =
                requirement(Property.BREAKING_STRENGTH, Statistic.INDIVIDUAL, atLeast(890, 0), NO_FREQUENCY, "N");

        assertEquals(
                Verdict.INCOMPLETE,
                new Bench().require(saying(strength, WHERE_MEASURED)).judge().verdict());
    }

    /** A law that does not cover the day's temperature refuses nothing that was not measured. */
    @Test
    void aLawOfATestThatWasNotMadeRefusesNothing() {
        Requirement resistance = with(
                requirement(
                        Property.INSULATION_RESISTANCE, Statistic.INDIVIDUAL, atLeast(1, 0), NO_FREQUENCY, "megohm·km"),
                new dev.reelproof.limit.LawSpec(
                        "insulation-resistance-temperature",
                        java.util.Map.of("factor", 1.05, "lowest", 10.0, "highest", 30.0)));

        assertEquals(
                Verdict.ACCEPTED,
                breakingStrength()
                        .reel(100, 35)
                        .require(saying(resistance, WHERE_MEASURED))
                        .judge()
                        .verdict());
    }

    // ---- count per length

    private static Bench faults(int pairs, double metres) {
        Requirement perLength = with(
                requirement(
                        Property.INSULATION_FAULTS, Statistic.INDIVIDUAL, atMost(1, 0), NO_FREQUENCY, "count/3000 m"),
                law("linear-length"));
        Particulars tested = new Particulars(
                true,
                OptionalDouble.empty(),
                Optional.of(new Particulars.TestedLength(Length.ofMetres(300), Length.ofMetres(6000))),
                Optional.empty(),
                Optional.empty(),
                Per.REEL);
        return new Bench()
                .pairs(pairs)
                .reel(metres, 20)
                .rounding(RoundingRule.TO_THE_PLACES_OF_THE_LIMIT)
                .require(saying(perLength, tested));
    }

    /**
     * 7 CFR 1755.870(b)(8)(v), worked by hand: 25 pairs of 300 m are 15 000 conductor metres, so that 5 faults pass and 6 reject; a rate of
     * 1.2 is not rounded to 1.
     */
    @ParameterizedTest
    @CsvSource({"0, PASS, 0", "5, PASS, 1", "6, FAIL, 1.2"})
    void faultsOfTheWholeReelCountOverAllItsConductors(double count, Outcome outcome, double rate) {
        Finding finding = faults(25, 300)
                .read(Property.INSULATION_FAULTS, Subject.ofReel(), count, "count")
                .only();

        assertEquals(outcome, finding.outcome());
        assertEquals(rate, finding.figure().value(), 1e-12);
        assertEquals("count/3000 m", finding.figure().unit());
    }

    /** 6000 m are needed to develop a noncompliance, and a sample of 300 m to judge at all. */
    @ParameterizedTest
    @CsvSource({
        "0, count/300 m, PASS",
        "0, count/299 m, NOT_TESTED",
        "1, count/3000 m, PASS",
        "2, count/5999 m, NOT_TESTED",
        "2, count/6000 m, PASS",
        "3, count/6000 m, FAIL",
        "7, count/20000 ft, FAIL"
    })
    void aSampleIsJudgedByTheConductorThatWasTested(double count, String unit, Outcome outcome) {
        Finding finding = faults(25, 300)
                .read(Property.INSULATION_FAULTS, Subject.ofReel(), count, unit)
                .only();

        assertEquals(outcome, finding.outcome());
        if (outcome == Outcome.NOT_TESTED) {
            assertTrue(finding.reason().startsWith("too little tested: "), finding.reason());
        }
    }

    // ---- a sample of pairs

    private static Finding sampled(int pairs, int measured, IntToDoubleFunction nanofarads) {
        Requirement mean = with(
                requirement(
                        Property.MUTUAL_CAPACITANCE,
                        Statistic.MEAN,
                        Limit.between(new Bound.Constant(50, 0), new Bound.Constant(54, 0)),
                        NO_FREQUENCY,
                        "nF/km"),
                law("linear-length"));
        Particulars sampling = new Particulars(
                true,
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.of(new Particulars.Sampling(100, new Bound.Constant(50, 0), new Bound.Constant(53, 0))),
                Optional.empty(),
                Per.REEL);
        Bench bench = new Bench()
                .pairs(pairs)
                .reel(500, 23)
                .rounding(RoundingRule.TO_THE_PLACES_OF_THE_LIMIT)
                .require(saying(mean, sampling));
        for (int pair = 1; pair <= measured; pair++) {
            bench.read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(pair), nanofarads.applyAsDouble(pair), "nF");
        }
        return bench.only();
    }

    /** 7 CFR 1755.870(m)(5)(vii), over 500 m: 52 nF/km are 26 nF, 53.6 nF/km round to 54, above 53. */
    @Test
    void ahundredPairsStandForAllWhereTheirAverageLiesWithin() {
        Finding enough = sampled(200, 100, pair -> 26);
        Finding tooFew = sampled(200, 99, pair -> 26);
        Finding outside = sampled(200, 100, pair -> 26.8);
        Finding all = sampled(200, 200, pair -> 26);

        assertEquals(Outcome.PASS, enough.outcome());
        assertTrue(enough.reason().startsWith("sample: 100 of 200 pairs measured"), enough.reason());
        assertEquals(Outcome.NOT_TESTED, tooFew.outcome());
        assertTrue(tooFew.reason().startsWith("pair missing: "), tooFew.reason());
        assertEquals(Outcome.NOT_TESTED, outside.outcome());
        assertEquals(Outcome.PASS, all.outcome());
        assertNull(all.reason());
    }

    /** 53.3 nF/km would round to 53, but it is no average of 50 to 53. */
    @Test
    void theSamplesAverageIsTakenAsItIs() {
        assertEquals(Outcome.PASS, sampled(200, 100, pair -> 26.5).outcome());
        Finding beyond = sampled(200, 100, pair -> 26.65);
        assertEquals(Outcome.NOT_TESTED, beyond.outcome());
        assertEquals(
                "sample outside the band: the average of the 100 pairs measured is 53.3 nF/km, outside 50 to 53 nF/km; "
                        + "only within it may they stand for all 200, so the rest must be measured",
                beyond.reason());
    }

    /** 56 nF/km is more than the 54 that the average may be, but the rest may bring it down. */
    @Test
    void aSampleThatFailsIsJoinedByTheRestBeforeItRejects() {
        Finding failing = sampled(200, 100, pair -> 28);
        assertEquals(Outcome.NOT_TESTED, failing.outcome());
        assertEquals(
                Obstacle.Kind.SAMPLE_OUTSIDE_BAND,
                failing.obstacles().named().get(0).kind());
        assertEquals(Outcome.FAIL, sampled(200, 200, pair -> 28).outcome());
    }

    // ---- statistics

    private static Finding shareOfPairs(double... ohms) {
        Requirement share = RequirementBuilder.of(Property.CONDUCTOR_RESISTANCE, atLeast(75, 0), NO_FREQUENCY, "%")
                .id("conductor-resistance-percent-of-pairs")
                .statistic(Statistic.PERCENT_OF_PAIRS)
                .laws(law("linear-length"))
                .particulars(new Particulars(
                        true,
                        OptionalDouble.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.of(new Particulars.Each(atMost(9.0, 1), ReadingUnit.parse("ohm/100 m"))),
                        Per.REEL))
                .build();
        Bench bench = new Bench().pairs(ohms.length / 2).reel(200, 20).require(share);
        for (int i = 0; i < ohms.length; i++) {
            bench.read(
                    Property.CONDUCTOR_RESISTANCE,
                    Subject.ofConductor(i / 2 + 1, Conductor.values()[i % 2]),
                    ohms[i],
                    "ohm");
        }
        return bench.only();
    }

    /** Over 200 m, so that 18 ohm is on the limit of 9.0 ohm/100 m; a pair needs both conductors to meet it. */
    @Test
    void thePairsThatMeetALimitAreCounted() {
        Finding threeOfFour = shareOfPairs(17, 17, 17, 18, 18, 17, 17, 18.2);
        Finding twoOfFour = shareOfPairs(17, 17, 17, 18.2, 18, 17, 17, 18.2);

        assertEquals(Outcome.PASS, threeOfFour.outcome());
        assertEquals(75, threeOfFour.figure().value());
        assertEquals(Outcome.FAIL, twoOfFour.outcome());
        assertEquals(50, twoOfFour.figure().value());
        assertEquals("%", twoOfFour.figure().unit());
        assertTrue(twoOfFour.figure().steps().stream()
                .anyMatch(step ->
                        step.title().equals("statistic") && step.detail().contains("each at-most 9.0 ohm/100 m")));
    }

    @Test
    void theGreatestValueIsAFigureOfTheReel() {
        Requirement greatest =
                requirement(Property.MUTUAL_CAPACITANCE, Statistic.MAXIMUM, atMost(5.6, 1), NO_FREQUENCY, "nF");
        Bench bench = new Bench().require(greatest);
        for (int pair = 1; pair <= 4; pair++) {
            bench.read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(pair), 5.2 + pair / 10.0, "nF");
        }

        assertEquals(5.6, bench.only().figure().value(), 1e-12);
        assertEquals(Outcome.PASS, bench.only().outcome());
        assertEquals(Subject.ofReel(), bench.only().figure().subject());
    }

    // ---- return loss of short reels

    private static final Subject PAIR_1 = Subject.ofPair(1);
    private static final Subject NEAR_1 = PAIR_1.at(End.NEAR);

    private static Bench returnLoss(double decibels) {
        Requirement returnLoss = requirement(
                Property.RETURN_LOSS,
                Statistic.INDIVIDUAL,
                Limit.atLeast(flat(20, 1, 20)),
                new Domain.Range(1, 20),
                "dB");
        return new Bench()
                .pairs(1)
                .require(saying(
                        returnLoss,
                        new Particulars(
                                true,
                                OptionalDouble.of(3),
                                Optional.empty(),
                                Optional.empty(),
                                Optional.empty(),
                                Per.REEL)))
                .sweep(Property.RETURN_LOSS, NEAR_1, everyMegahertzTo(20), f -> decibels);
    }

    /** A pair that loses 1.5 dB at 1 MHz loses 3 dB there and back: long enough from there on, and not below. */
    @ParameterizedTest
    @CsvSource({"1.5, PASS", "1.49, NOT_TESTED"})
    void returnLossIsJudgedWhereTheReelLosesEnough(double atOneMegahertz, Outcome outcome) {
        Finding finding = returnLoss(25)
                .sweep(Property.INSERTION_LOSS, PAIR_1, everyMegahertzTo(20), f -> atOneMegahertz * Math.sqrt(f))
                .only();

        assertEquals(outcome, finding.outcome());
        if (outcome == Outcome.NOT_TESTED) {
            assertTrue(finding.reason().startsWith("length too short: return-loss of pair 1"), finding.reason());
            assertTrue(finding.reason().contains("2.98 dB from 1.0 to 1.0 MHz"), finding.reason());
            assertEquals(19, finding.points(), "the other frequencies are judged");
        } else {
            assertTrue(
                    finding.figure().steps().stream()
                            .anyMatch(step -> step.title().equals("representative") && step.value() == 3.0),
                    finding.figure().steps()::toString);
        }
    }

    @Test
    void aFailureWhereTheReelLosesEnoughCountsAndOneWhereItDoesNotDoesNot() {
        Bench shortReel = returnLoss(15).sweep(Property.INSERTION_LOSS, PAIR_1, everyMegahertzTo(20), f -> 0.5);
        Bench longReel = returnLoss(15).sweep(Property.INSERTION_LOSS, PAIR_1, everyMegahertzTo(20), f -> 5);

        assertEquals(Outcome.NOT_TESTED, shortReel.only().outcome());
        assertEquals(Outcome.FAIL, longReel.only().outcome());
    }

    @Test
    void aLossMeasuredOutOfCalibrationDoesNotTellThatTheReelIsLongEnough() {
        Finding finding = returnLoss(25)
                .sweep(Property.INSERTION_LOSS, PAIR_1, everyMegahertzTo(20), f -> 5)
                .equipment(
                        new Equipment("na-07", null, Set.of(Property.RETURN_LOSS)),
                        new Equipment("na-08", LocalDate.of(2026, 3, 1), Set.of(Property.INSERTION_LOSS)))
                .only();

        assertEquals(Outcome.NOT_TESTED, finding.outcome());
        assertTrue(finding.reason().startsWith("equipment out of calibration: na-08"), finding.reason());
    }

    @Test
    void withoutMeasuredLossItIsNotKnownWhetherTheReelIsLongEnough() {
        Finding finding = returnLoss(25).only();

        assertEquals(Outcome.NOT_TESTED, finding.outcome());
        assertTrue(finding.reason().contains("insertion loss of the pair"), finding.reason());
        assertTrue(finding.reason().contains("was not measured from 1.0 to 20.0 MHz"), finding.reason());
    }

    // ---- insulation resistance above its temperature

    private static Finding insulationResistance(double celsius, double megohms, boolean warmerPassStands) {
        Requirement resistance = RequirementBuilder.of(
                        Property.INSULATION_RESISTANCE, atLeast(1600, 0), NO_FREQUENCY, "megohm")
                .temperatureWindow(new TemperatureWindow(Temperature.ofCelsius(20), 1, warmerPassStands))
                .build();
        return new Bench()
                .reel(100, celsius)
                .require(resistance)
                .read(Property.INSULATION_RESISTANCE, Subject.ofReel(), megohms, "megohm")
                .only();
    }

    /** It falls as it gets warmer: warm and good is good, warm and bad says nothing, cold and good says nothing. */
    @ParameterizedTest
    @CsvSource({
        "31, 1700, PASS",
        "31, 1600, PASS",
        "31, 1599, NOT_TESTED",
        "10, 1700, NOT_TESTED",
        "21, 1700, PASS",
        "21, 1500, FAIL"
    })
    void aPassAboveTheWindowStands(double celsius, double megohms, Outcome outcome) {
        assertEquals(outcome, insulationResistance(celsius, megohms, true).outcome());
    }

    @Test
    void aPassAboveTheWindowSaysWhyItStandsAndOnlyWhereTheSetSaysSo() {
        assertTrue(insulationResistance(31, 1700, true).reason().contains("so that a pass stands"));
        assertNull(insulationResistance(20, 1700, true).reason());
        assertEquals(Outcome.NOT_TESTED, insulationResistance(31, 1700, false).outcome());
    }

    // ---- figures formed from conductor resistances

    private static Bench twelvePairs(int aHigher) {
        Requirement direction = requirement(
                Property.RESISTANCE_UNBALANCE_DIRECTION,
                Statistic.INDIVIDUAL,
                Limit.between(new Bound.Constant(0.1, 1), new Bound.Constant(99.9, 1)),
                NO_FREQUENCY,
                "%");
        Bench bench = new Bench().pairs(12).require(direction);
        for (int pair = 1; pair <= 12; pair++) {
            bench.read(
                    Property.CONDUCTOR_RESISTANCE,
                    Subject.ofConductor(pair, Conductor.A),
                    pair <= aHigher ? 9.1 : 9.0,
                    "ohm");
            bench.read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(pair, Conductor.B), 9.05, "ohm");
        }
        return bench;
    }

    @ParameterizedTest
    @CsvSource({"0, FAIL", "1, PASS", "6, PASS", "11, PASS", "12, FAIL"})
    void oneConductorMustNotBeTheHigherInEveryPair(int aHigher, Outcome outcome) {
        assertEquals(outcome, twelvePairs(aHigher).only().outcome());
    }

    @Test
    void theDirectionNeedsEveryPair() {
        Requirement direction = requirement(
                Property.RESISTANCE_UNBALANCE_DIRECTION, Statistic.INDIVIDUAL, atMost(99, 0), NO_FREQUENCY, "%");
        Finding finding = new Bench()
                .require(direction)
                .read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(1, Conductor.A), 9, "ohm")
                .read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(1, Conductor.B), 9.1, "ohm")
                .only();

        assertEquals(Outcome.NOT_TESTED, finding.outcome());
    }

    @Test
    void theLoopIsFormedFromBothConductors() {
        Requirement loop = with(
                requirement(Property.LOOP_RESISTANCE, Statistic.INDIVIDUAL, atMost(19.0, 1), NO_FREQUENCY, "ohm/100 m"),
                law("linear-length"));
        Finding finding = new Bench()
                .pairs(1)
                .reel(200, 20)
                .require(loop)
                .read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(1, Conductor.A), 18.8, "ohm")
                .read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(1, Conductor.B), 19.4, "ohm")
                .only();

        assertEquals(Outcome.FAIL, finding.outcome());
        assertEquals(19.1, finding.figure().value(), 1e-12);
        assertTrue(finding.figure().derived());
    }

    // ---- the sign of an unbalance

    private static Finding unbalance(Statistic statistic, double... picofarads) {
        Bench bench = new Bench()
                .pairs(picofarads.length)
                .require(requirement(
                        Property.CAPACITANCE_UNBALANCE_TO_GROUND, statistic, atMost(330, 0), NO_FREQUENCY, "pF"));
        for (int i = 0; i < picofarads.length; i++) {
            bench.read(Property.CAPACITANCE_UNBALANCE_TO_GROUND, Subject.ofPair(i + 1), picofarads[i], "pF");
        }
        return bench.only();
    }

    /** The sign says which side is the greater. A limit is on the size, and opposite signs must not cancel in an average. */
    @Test
    void anUnbalanceIsJudgedByItsSize() {
        assertEquals(Outcome.FAIL, unbalance(Statistic.INDIVIDUAL, 100, -331).outcome());
        assertEquals(Outcome.PASS, unbalance(Statistic.INDIVIDUAL, 100, -330).outcome());
        assertEquals(-331, unbalance(Statistic.INDIVIDUAL, 100, -331).figure().measured(), "as it was sent");
        Finding average = unbalance(Statistic.MEAN, 400, -400);
        assertEquals(Outcome.FAIL, average.outcome());
        assertEquals(400, average.figure().value());
    }

    // ---- the statistic of what was sent

    private static Bench meanResistance(String unitOfTheOther, double other) {
        return new Bench()
                .pairs(1)
                .reel(500, 20)
                .require(with(
                        requirement(
                                Property.CONDUCTOR_RESISTANCE,
                                Statistic.MEAN,
                                atMost(9.4, 1),
                                NO_FREQUENCY,
                                "ohm/100 m"),
                        law("linear-length")))
                .read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(1, Conductor.A), 45, "ohm")
                .read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(1, Conductor.B), other, unitOfTheOther);
    }

    @Test
    void aStatisticOfValuesInOneUnitSaysWhatWasMeasured() {
        Figure figure = meanResistance("ohm", 46).only().figure();

        assertEquals(9.1, figure.value(), 1e-12);
        assertEquals(45.5, figure.measured(), 1e-12);
        assertEquals("ohm", figure.measuredUnit());
    }

    /** 46 ohm of 500 m sent as 92 ohm/km: the figure is the same, but 45 and 92 have no mean. */
    @Test
    void valuesSentInDifferentUnitsHaveNoFigureBeforeCorrection() {
        Figure figure = meanResistance("ohm/km", 92).only().figure();

        assertEquals(9.1, figure.value(), 1e-12);
        assertNull(figure.measured());
        assertNull(figure.measuredUnit());
    }

    // ---- resistances of one pair per different lengths

    /** 94 ohm/km and 9.2 ohm of 100 m are alike, but neither their sum nor their order is that of the numbers. */
    @ParameterizedTest
    @EnumSource(
            value = Property.class,
            names = {"LOOP_RESISTANCE", "RESISTANCE_UNBALANCE_DIRECTION", "RESISTANCE_UNBALANCE"})
    void whatIsFormedFromTwoConductorsNeedsThemPerOneLength(Property property) {
        Finding finding = new Bench()
                .pairs(1)
                .require(requirement(
                        property, Statistic.INDIVIDUAL, atMost(1000, 0), NO_FREQUENCY, property.canonicalUnit()))
                .read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(1, Conductor.A), 94, "ohm/km")
                .read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(1, Conductor.B), 9.2, "ohm")
                .only();

        assertEquals(Outcome.NOT_TESTED, finding.outcome());
        assertTrue(finding.reason().contains("its parts were sent per different lengths"), finding.reason());
        assertEquals(0, finding.points(), "nothing was formed of them");
    }
}
