package dev.reelproof.judgement.advice;

import static dev.reelproof.judgement.Bench.atLeast;
import static dev.reelproof.judgement.Bench.atMost;
import static dev.reelproof.judgement.Bench.everyMegahertzTo;
import static dev.reelproof.judgement.Bench.flat;
import static dev.reelproof.judgement.Bench.law;
import static dev.reelproof.judgement.Bench.requirement;
import static dev.reelproof.judgement.Bench.with;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.judgement.Bench;
import dev.reelproof.judgement.Finding;
import dev.reelproof.judgement.Verdict;
import dev.reelproof.limit.Bound;
import dev.reelproof.limit.Domain;
import dev.reelproof.limit.LawSpec;
import dev.reelproof.limit.Limit;
import dev.reelproof.limit.PairCount;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.RequirementBuilder;
import dev.reelproof.limit.Statistic;
import dev.reelproof.measurement.Conductor;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import dev.reelproof.quantity.Length;
import dev.reelproof.wording.AlternativesWords;
import dev.reelproof.wording.Catalogue;
import dev.reelproof.wording.Wording;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What else a failed reel could be; the lengths expected are worked out by hand from the law beside them. */
class AlternativesTest {
    private static AlternativesWords words(Alternatives found) {
        return Wording.english().alternatives(found, 4);
    }

    private static String advice(Alternatives found) {
        return words(found).advice();
    }

    private static final Domain NONE = new Domain.NoFrequency();

    private static Requirement wholeReel(Property property, Limit limit) {
        return requirement(property, Statistic.INDIVIDUAL, limit, NONE, property.canonicalUnit());
    }

    private static Optional<Length> metres(double metres) {
        return Optional.of(Length.ofMetres(metres));
    }

    /** One pair of 305 m at 20 °C with 30 ohm in each conductor. */
    private static Bench thirtyOhm() {
        return new Bench()
                .pairs(1)
                .reel(305, 20)
                .read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(1, Conductor.A), 30, "ohm")
                .read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(1, Conductor.B), 29, "ohm");
    }

    @Test
    void aResistanceOfTheWholeReelGoesWithItsLength() {
        // 305 m · 28/30 = 284.666… m, told in whole centimetres, down.
        Alternatives found = thirtyOhm()
                .require(wholeReel(Property.CONDUCTOR_RESISTANCE, atMost(28, 0)))
                .alternatives();
        assertEquals(metres(284.66), found.cutTo());
        assertEquals(List.of(Property.CONDUCTOR_RESISTANCE), found.blockedBy());
        assertTrue(advice(found).contains("Cut to 284.66 m or less"), advice(found));
        assertTrue(advice(found).contains("advice for whoever has the authority"), advice(found));
    }

    @Test
    void theLengthToldPassesAndTheNextDoesNot() {
        for (double metres : new double[] {284.66, 284.67}) {
            Bench piece = new Bench()
                    .pairs(1)
                    .reel(metres, 20)
                    .read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(1, Conductor.A), 30 * metres / 305, "ohm")
                    .read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(1, Conductor.B), 29 * metres / 305, "ohm")
                    .require(wholeReel(Property.CONDUCTOR_RESISTANCE, atMost(28, 0)));
            assertEquals(metres == 284.66, piece.judge().verdict() == Verdict.ACCEPTED);
        }
    }

    @Test
    void theCorrectionForTemperatureStaysWithThePiece() {
        // At 45 °C: 30 ohm is 30/1.09825 at 20 °C, so 305 m · 27 · 1.09825/30 = 301.469… m.
        Requirement corrected = with(
                wholeReel(Property.CONDUCTOR_RESISTANCE, atMost(27, 0)),
                new LawSpec("copper-temperature", Map.of("coefficient", 0.00393)));
        assertEquals(
                metres(301.46),
                thirtyOhm().reel(305, 45).require(corrected).alternatives().cutTo());
    }

    @Test
    void whatIsReferredToALengthIsNotMendedByCutting() {
        Requirement perLength = with(
                requirement(Property.CONDUCTOR_RESISTANCE, Statistic.INDIVIDUAL, atMost(9.38, 2), NONE, "ohm/100 m"),
                law("linear-length"));
        Requirement toTheReference =
                with(wholeReel(Property.CONDUCTOR_RESISTANCE, atMost(9.38, 2)), law("linear-length"));
        for (Requirement one : List.of(perLength, toTheReference)) {
            Alternatives found = thirtyOhm().require(one).alternatives();
            assertEquals(Optional.empty(), found.cutTo());
            assertFalse(found.unmet().get(0).cuttingChangesIt());
            assertTrue(advice(found).contains("stays the same however long the reel is"), advice(found));
        }
    }

    @Test
    void aValueSentPerLengthDoesNotShrinkWithThePiece() {
        Alternatives found = new Bench()
                .pairs(1)
                .reel(305, 20)
                .read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(1, Conductor.A), 9.5, "ohm/100 m")
                .read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(1, Conductor.B), 9.5, "ohm/100 m")
                .require(wholeReel(Property.CONDUCTOR_RESISTANCE, atMost(9.4, 1)))
                .alternatives();
        assertEquals(Optional.empty(), found.cutTo());
        assertTrue(advice(found).contains("No length was found"), advice(found));
    }

    @Test
    void everyPropertyGoesByItsOwnLaw() {
        Subject reel = Subject.ofReel();
        // Insulation resistance grows as the reel gets shorter: 400 m · 90/100.
        assertEquals(
                metres(360),
                new Bench()
                        .reel(400, 20)
                        .read(Property.INSULATION_RESISTANCE, reel, 90, "megohm")
                        .require(wholeReel(Property.INSULATION_RESISTANCE, atLeast(100, 0)))
                        .alternatives()
                        .cutTo());
        // Capacitance unbalance pair to pair by the square root: 400 m · (90/100)².
        assertEquals(
                metres(324),
                new Bench()
                        .pairs(2)
                        .reel(400, 20)
                        .read(Property.CAPACITANCE_UNBALANCE_PAIR_TO_PAIR, Subject.ofCombination(1, 2), 100, "pF")
                        .require(wholeReel(Property.CAPACITANCE_UNBALANCE_PAIR_TO_PAIR, atMost(90, 0)))
                        .alternatives()
                        .cutTo());
        // Far-end crosstalk by 10 log: 3 dB to gain, 400 m / 10^0.3 = 200.47… m.
        assertEquals(
                metres(200.47),
                new Bench()
                        .pairs(2)
                        .reel(400, 20)
                        .sweep(Property.FEXT, Subject.ofCombination(1, 2), everyMegahertzTo(10), f -> 60)
                        .require(requirement(
                                Property.FEXT, Statistic.INDIVIDUAL, atLeast(63, 0), new Domain.Spot(5), "dB"))
                        .alternatives()
                        .cutTo());
    }

    @Test
    void aFigureFormedFromPartsGoesByThem() {
        // Skew of 60 ns in 400 m, at most 45 ns: 300 m.
        Bench bench = new Bench()
                .pairs(2)
                .reel(400, 20)
                .sweep(Property.PROPAGATION_DELAY, Subject.ofPair(1), everyMegahertzTo(10), f -> 2000)
                .sweep(Property.PROPAGATION_DELAY, Subject.ofPair(2), everyMegahertzTo(10), f -> 2060)
                .require(requirement(
                        Property.DELAY_SKEW,
                        Statistic.INDIVIDUAL,
                        Limit.atMost(flat(45, 1, 10)),
                        new Domain.Range(1, 10),
                        "ns"));
        assertEquals(metres(300), bench.alternatives().cutTo());
        // A mean of 30 ohm and 29 ohm, at most 28: 305 m · 28/29.5.
        assertEquals(
                metres(289.49),
                thirtyOhm()
                        .require(requirement(Property.CONDUCTOR_RESISTANCE, Statistic.MEAN, atMost(28, 0), NONE, "ohm"))
                        .alternatives()
                        .cutTo());
    }

    @Test
    void theShortestLengthCountsAndAPieceMayBeTooShort() {
        Requirement loss =
                requirement(Property.INSERTION_LOSS, Statistic.INDIVIDUAL, atMost(20, 0), new Domain.Spot(5), "dB");
        Bench bench = thirtyOhm()
                .sweep(Property.INSERTION_LOSS, Subject.ofPair(1), everyMegahertzTo(10), f -> 25)
                .require(wholeReel(Property.CONDUCTOR_RESISTANCE, atMost(28, 0)))
                .require(loss);
        // 305 m · 20/25, below the 284.66 m that the resistance asks for.
        assertEquals(metres(244), bench.alternatives().cutTo());
        // A capacitance that must lie between bounds and would fall below the lower one.
        bench.read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(1), 16, "nF")
                .require(wholeReel(
                        Property.MUTUAL_CAPACITANCE,
                        Limit.between(new Bound.Constant(14, 0), new Bound.Constant(17, 0))));
        assertEquals(Optional.empty(), bench.alternatives().cutTo());
    }

    @Test
    void aBoundThatCuttingMakesWorseGivesNoLength() {
        assertEquals(
                Optional.empty(),
                thirtyOhm()
                        .require(wholeReel(Property.CONDUCTOR_RESISTANCE, atLeast(35, 0)))
                        .alternatives()
                        .cutTo());
    }

    @Test
    void oneFailureThatCuttingDoesNotMendMakesCuttingUseless() {
        Requirement returnLoss = requirement(
                Property.RETURN_LOSS,
                Statistic.INDIVIDUAL,
                Limit.atLeast(flat(20, 1, 10)),
                new Domain.Range(1, 10),
                "dB");
        Alternatives found = thirtyOhm()
                .read(Property.SPARK_FAULTS, Subject.ofReel(), 1, "count")
                .sweep(Property.RETURN_LOSS, Subject.ofPair(1).at(End.NEAR), everyMegahertzTo(10), f -> 18)
                .require(wholeReel(Property.CONDUCTOR_RESISTANCE, atMost(28, 0)))
                .require(wholeReel(Property.SPARK_FAULTS, atMost(0, 0)))
                .require(returnLoss)
                .alternatives();
        assertEquals(Optional.empty(), found.cutTo());
        assertEquals(
                List.of(Property.CONDUCTOR_RESISTANCE, Property.SPARK_FAULTS, Property.RETURN_LOSS), found.blockedBy());
        assertTrue(advice(found).contains("spark-faults counts faults"), advice(found));
        assertTrue(advice(found).contains("return-loss is measured into an end"), advice(found));
    }

    @Test
    void theOtherSetsAreJudgedAsMeasured() {
        Requirement tight = wholeReel(Property.CONDUCTOR_RESISTANCE, atMost(28, 0));
        Requirement loose = wholeReel(Property.CONDUCTOR_RESISTANCE, atMost(31, 0));
        Bench passes = new Bench().require(loose);
        Bench nearly = new Bench().require(loose).require(wholeReel(Property.SPARK_FAULTS, atMost(0, 0)));
        Bench fails = new Bench().require(tight).require(wholeReel(Property.SPARK_FAULTS, atMost(0, 0)));
        Alternatives found = thirtyOhm().require(tight).alternatives(passes, nearly, fails);
        assertEquals(List.of("set"), found.passes());
        assertEquals(
                List.of(Optional.empty(), Optional.of("spark-faults"), Optional.empty()),
                found.grades().stream()
                        .map(grade -> grade.onlyObstacle().map(Finding::requirement))
                        .toList());
        assertEquals(Verdict.REJECTED, found.grades().get(2).verdict());
    }

    @Test
    void anAcceptedReelIsCutToNothing() {
        Alternatives found = thirtyOhm()
                .require(wholeReel(Property.CONDUCTOR_RESISTANCE, atMost(31, 0)))
                .alternatives();
        assertEquals(Optional.empty(), found.cutTo());
        assertEquals(List.of(), found.blockedBy());
        assertEquals(List.of(), found.unmet());
        assertTrue(advice(found).startsWith("The reel is accepted"), advice(found));
    }

    @Test
    void whatWasNotTestedStandsByItself() {
        Alternatives found = thirtyOhm()
                .require(wholeReel(Property.CONDUCTOR_RESISTANCE, atMost(28, 0)))
                .require(wholeReel(Property.SPARK_FAULTS, atMost(0, 0)))
                .alternatives();
        assertEquals(metres(284.66), found.cutTo());
        assertEquals(List.of(Property.CONDUCTOR_RESISTANCE), found.blockedBy());
        assertEquals(List.of(Property.SPARK_FAULTS), found.notTested());
        assertTrue(advice(found).contains("Not tested, whatever is done: spark-faults"), advice(found));
    }

    @Test
    void aSetThatCannotBeJudgedSaysWhy() {
        Bench hot = new Bench()
                .require(with(
                        wholeReel(Property.CONDUCTOR_RESISTANCE, atMost(31, 0)),
                        new LawSpec("unscreened-loss-temperature", Map.of("to-40", 0.004, "above-40", 0.006))));
        Alternatives found = thirtyOhm()
                .reel(305, 80)
                .require(wholeReel(Property.CONDUCTOR_RESISTANCE, atMost(28, 0)))
                .alternatives(hot);
        assertEquals(List.of(), found.passes());
        assertTrue(
                words(found).why(found.grades().get(0)).contains("80 °C lies outside"),
                found.grades().toString());
    }

    @Test
    void theUnitThatTheBaySendsChangesNoLength() {
        Alternatives found = new Bench()
                .pairs(1)
                .reel(305, 20)
                .read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(1, Conductor.A), 0.030, "kohm")
                .read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(1, Conductor.B), 0.029, "kohm")
                .require(wholeReel(Property.CONDUCTOR_RESISTANCE, atMost(28, 0)))
                .alternatives();
        assertEquals(metres(284.66), found.cutTo());
        // 1,600 ns in 400 m, at most 1,200 ns: 300 m.
        assertEquals(
                metres(300),
                new Bench()
                        .pairs(1)
                        .reel(400, 20)
                        .sweep(Property.PROPAGATION_DELAY, Subject.ofPair(1), everyMegahertzTo(10), f -> 1.6, "µs")
                        .require(requirement(
                                Property.PROPAGATION_DELAY,
                                Statistic.INDIVIDUAL,
                                atMost(1200, 0),
                                new Domain.Spot(5),
                                "ns"))
                        .alternatives()
                        .cutTo());
    }

    /** The loop of 30 and 29 ohm is 59 ohm, at most 50: 305 m · 50/59, whether it was read or is formed. */
    @Test
    void aLoopGoesWithTheLengthAsItsConductorsDo() {
        Requirement loop = wholeReel(Property.LOOP_RESISTANCE, atMost(50, 0));
        assertEquals(metres(258.47), thirtyOhm().require(loop).alternatives().cutTo());
        assertEquals(
                metres(258.47),
                new Bench()
                        .pairs(1)
                        .reel(305, 20)
                        .read(Property.LOOP_RESISTANCE, Subject.ofPair(1), 59, "ohm")
                        .require(loop)
                        .alternatives()
                        .cutTo());
    }

    /** 20 nF in 305 m, between 14 and 17 nF: 305 m · 17/20. A very short piece falls below 14 nF, which is no reason to stop. */
    @Test
    void ofTwoBoundsOnlyTheOneThatALongerPieceMissesMakesItTooLong() {
        Requirement between = wholeReel(
                Property.MUTUAL_CAPACITANCE, Limit.between(new Bound.Constant(14, 0), new Bound.Constant(17, 0)));
        assertEquals(
                metres(259.25),
                thirtyOhm()
                        .read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(1), 20, "nF")
                        .require(wholeReel(Property.CONDUCTOR_RESISTANCE, atMost(28, 0)))
                        .require(between)
                        .alternatives()
                        .cutTo());
    }

    @Test
    void whatCuttingDoesNotChangeAndPassesStaysAsItIs() {
        Requirement returnLoss = requirement(
                Property.RETURN_LOSS,
                Statistic.INDIVIDUAL,
                Limit.atLeast(flat(20, 1, 10)),
                new Domain.Range(1, 10),
                "dB");
        assertEquals(
                metres(284.66),
                thirtyOhm()
                        .read(Property.SPARK_FAULTS, Subject.ofReel(), 0, "count")
                        .sweep(Property.RETURN_LOSS, Subject.ofPair(1).at(End.NEAR), everyMegahertzTo(10), f -> 25)
                        .require(wholeReel(Property.CONDUCTOR_RESISTANCE, atMost(28, 0)))
                        .require(wholeReel(Property.SPARK_FAULTS, atMost(0, 0)))
                        .require(returnLoss)
                        .alternatives()
                        .cutTo());
    }

    /** Pair 2 is left out of the capacitances; were it counted, 20 nF against 17 would ask for 259.25 m. */
    @Test
    void aPairThatMayVaryIsLeftOutOfThePieceToo() {
        Bench bench = new Bench()
                .pairs(2)
                .reel(305, 20)
                .require(wholeReel(Property.CONDUCTOR_RESISTANCE, atMost(28, 0)))
                .require(wholeReel(Property.MUTUAL_CAPACITANCE, atMost(17, 0)))
                .mayVary(1, Map.of(Property.MUTUAL_CAPACITANCE, new Bound.Constant(21, 0)))
                .read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(1), 16, "nF")
                .read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(2), 20, "nF");
        for (int pair = 1; pair <= 2; pair++) {
            for (Conductor conductor : Conductor.values()) {
                bench.read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(pair, conductor), 30, "ohm");
            }
        }
        assertEquals(
                List.of(Property.CONDUCTOR_RESISTANCE), bench.alternatives().blockedBy());
        assertEquals(metres(284.66), bench.alternatives().cutTo());
    }

    /** Two requirements of one name, as sets have them for different pair counts; for this product the second holds. */
    @Test
    void ofRequirementsOfOneNameTheOneForThePairCountCounts() {
        Requirement here = RequirementBuilder.like(wholeReel(Property.CONDUCTOR_RESISTANCE, atMost(28, 0)))
                .pairs(new PairCount(1, 1))
                .build();
        Requirement perLength = RequirementBuilder.of(Property.CONDUCTOR_RESISTANCE, atMost(9.38, 2), NONE, "ohm/100 m")
                .pairs(new PairCount(2, 4))
                .build();
        Requirement atLeast = RequirementBuilder.like(wholeReel(Property.CONDUCTOR_RESISTANCE, atLeast(5, 0)))
                .pairs(new PairCount(2, 4))
                .build();
        for (Requirement other : List.of(perLength, atLeast)) {
            assertEquals(
                    metres(284.66),
                    thirtyOhm().require(other).require(here).alternatives().cutTo());
        }
    }

    @ParameterizedTest
    @CsvSource({
        "RESISTANCE_UNBALANCE, %, is a ratio of values that change alike with the length",
        "INSULATION_ELONGATION, %, 'is of the material and the make, which are the same in every piece'",
        "INPUT_IMPEDANCE, ohm, has no known law of how it changes with the length",
        "CONDUCTOR_RESISTANCE, ohm, 'is judged on the value of the whole reel, which changes with the length'",
    })
    void whyCuttingMendsItOrNot(Property property, String unit, String why) {
        assertEquals(
                why,
                Catalogue.of(Locale.ENGLISH)
                        .text("cutting."
                                + CutBack.effect(RequirementBuilder.of(property, atMost(1, 0), NONE, unit)
                                                .build())
                                        .id()));
    }

    private static final String AUTHORITY =
            "This is advice for whoever has the authority: nothing has been decided, cut or changed by it.";

    @Test
    void theAdviceNamesWhatPassesAndWhatAloneStandsInTheWay() {
        Requirement tight = wholeReel(Property.CONDUCTOR_RESISTANCE, atMost(28, 0));
        Requirement loose = wholeReel(Property.CONDUCTOR_RESISTANCE, atMost(31, 0));
        Requirement sparks = wholeReel(Property.SPARK_FAULTS, atMost(0, 0));
        Alternatives found = thirtyOhm()
                .named("own")
                .require(tight)
                .alternatives(
                        new Bench().named("passes").require(loose),
                        new Bench().named("nearly").require(loose).require(sparks),
                        new Bench().named("fails").require(tight).require(sparks),
                        new Bench().named("of-larger-cores").cores(2, 4).require(loose),
                        new Bench()
                                .named("of-nothing-here")
                                .require(RequirementBuilder.like(loose)
                                        .pairs(new PairCount(2, 4))
                                        .build()));
        assertEquals(List.of("passes"), found.passes());
        assertEquals(
                "Cut to 284.66 m or less, a piece would be expected to pass conductor-resistance, were the cable uniform; the"
                        + " piece is a new reel and must be tested. As measured it passes passes. Of nearly a single requirement"
                        + " stands in the way: spark-faults. "
                        + AUTHORITY,
                advice(found));
        assertEquals(
                List.of(
                        "Every requirement passes as measured.",
                        "A single requirement stands in the way: spark-faults (not tested).",
                        "In the way stand: conductor-resistance (fails), spark-faults (not tested).",
                        "No requirement of the set holds for this product."),
                found.grades().stream().map(words(found)::why).toList());
    }

    @Test
    void theAdviceSaysThatNoOtherSetPassesUnlessTheReelIsAccepted() {
        Requirement tight = wholeReel(Property.CONDUCTOR_RESISTANCE, atMost(28, 0));
        Bench fails = new Bench().named("fails").require(tight);
        assertTrue(
                advice(thirtyOhm().require(tight).alternatives(fails))
                        .contains("As measured it passes no other limit set of its construction. Of fails a single"),
                () -> advice(thirtyOhm().require(tight).alternatives(fails)));
        assertEquals(
                "The reel is accepted by own. " + AUTHORITY,
                advice(thirtyOhm()
                        .named("own")
                        .require(wholeReel(Property.CONDUCTOR_RESISTANCE, atMost(31, 0)))
                        .alternatives()));
    }
}
