package dev.reelproof.judgement;

import static dev.reelproof.judgement.Bench.atLeast;
import static dev.reelproof.judgement.Bench.atMost;
import static dev.reelproof.judgement.Bench.everyMegahertzTo;
import static dev.reelproof.judgement.Bench.flat;
import static dev.reelproof.judgement.Bench.law;
import static dev.reelproof.judgement.Bench.requirement;
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
import dev.reelproof.limit.Statistic;
import dev.reelproof.measurement.Conductor;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import dev.reelproof.quantity.FrequencyGrid;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What must be there before a requirement can pass, and how its lack is told. */
class CoverageTest {
    private static final Domain NONE = new Domain.NoFrequency();
    private static final Requirement RETURN_LOSS = requirement(
            Property.RETURN_LOSS, Statistic.INDIVIDUAL, Limit.atLeast(flat(20, 1, 10)), new Domain.Range(1, 10), "dB");
    private static final Requirement FEXT_AT_150_KHZ =
            requirement(Property.FEXT, Statistic.INDIVIDUAL, atLeast(58, 0), new Domain.Spot(0.15), "dB");

    private static Finding returnLoss(FrequencyGrid grid) {
        return new Bench()
                .pairs(1)
                .require(RETURN_LOSS)
                .sweep(Property.RETURN_LOSS, Subject.ofPair(1).at(End.NEAR), grid, f -> 25)
                .only();
    }

    @Test
    void whatIsMissingIsNamed() {
        Requirement resistance =
                requirement(Property.CONDUCTOR_RESISTANCE, Statistic.INDIVIDUAL, atMost(9.38, 2), NONE, "ohm/100 m");
        Bench bench = new Bench()
                .pairs(2)
                .require(resistance)
                .read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(1, Conductor.A), 9, "ohm");
        assertEquals(
                "pair missing: conductor-resistance of pair 2 and conductor b of pair 1 was not measured",
                bench.only().reason());
        bench.read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(1, Conductor.B), 9, "ohm");
        bench.read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(2, Conductor.A), 9, "ohm");
        assertEquals(
                "pair missing: conductor-resistance of conductor b of pair 2 was not measured",
                bench.only().reason());
        bench.read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(2, Conductor.B), 9, "ohm");
        assertEquals(Outcome.PASS, bench.only().outcome());
    }

    @Test
    void oneConductorOfAPairDoesNotStandForThePair() {
        Requirement insulation =
                requirement(Property.INSULATION_RESISTANCE, Statistic.INDIVIDUAL, atLeast(1600, 0), NONE, "megohm·km");
        for (Conductor conductor : Conductor.values()) {
            assertEquals(
                    "pair missing: insulation-resistance of pair 1 was not measured",
                    new Bench()
                            .pairs(1)
                            .require(insulation)
                            .read(Property.INSULATION_RESISTANCE, Subject.ofConductor(1, conductor), 5000, "megohm·km")
                            .only()
                            .reason());
        }
    }

    @Test
    void anOrderedCombinationIsNeededBothWays() {
        Requirement acrF = requirement(
                Property.ACR_F, Statistic.INDIVIDUAL, Limit.atLeast(flat(20, 1, 10)), new Domain.Range(1, 10), "dB");
        Bench bench = new Bench()
                .pairs(2)
                .require(acrF)
                .sweep(Property.ACR_F, Subject.ofCombination(1, 2).at(End.NEAR), everyMegahertzTo(10), f -> 60);
        assertEquals(
                "pair missing: acr-f of pair 2 and pair 1 at the near end was not measured",
                bench.only().reason());
        bench.sweep(Property.ACR_F, Subject.ofCombination(2, 1).at(End.NEAR), everyMegahertzTo(10), f -> 60);
        assertEquals(Outcome.PASS, bench.only().outcome());
    }

    @Test
    void samplesNeedNoPairInParticular() {
        Requirement elongation =
                requirement(Property.INSULATION_ELONGATION, Statistic.INDIVIDUAL, atLeast(300, 0), NONE, "%");
        assertEquals(
                Outcome.PASS,
                new Bench()
                        .require(elongation)
                        .read(Property.INSULATION_ELONGATION, Subject.ofPair(3).withSample(2), 350, "%")
                        .only()
                        .outcome());
    }

    @Test
    void aRangeMustBeSpannedAtBothEnds() {
        assertEquals(Outcome.PASS, returnLoss(everyMegahertzTo(10)).outcome());
        assertEquals(
                "range not spanned: return-loss of pair 1, near end was measured from 2.0 to 10.0 MHz; "
                        + "the limit runs from 1.0 to 10.0 MHz",
                returnLoss(FrequencyGrid.ofMegahertz(2, 4, 6, 8, 10)).reason());
        assertEquals(
                "range not spanned: return-loss of pair 1, near end was measured from 1.0 to 9.0 MHz; "
                        + "the limit runs from 1.0 to 10.0 MHz",
                returnLoss(FrequencyGrid.ofMegahertz(1, 3, 5, 7, 9)).reason());
    }

    // A frequency that went through a conversion of units is the same within 1e-9 of itself, and no further.
    @ParameterizedTest
    @CsvSource({"1, 10, true", "1.0000000005, 9.999999996, true", "1.000000002, 10, false", "1, 9.99999997, false"})
    void theEndsOfARangeMayBeOffByRounding(double first, double last, boolean spanned) {
        Finding finding = returnLoss(FrequencyGrid.ofMegahertz(first, 2.5, 4, 6, 8, last));
        assertEquals(spanned ? Outcome.PASS : Outcome.NOT_TESTED, finding.outcome());
    }

    @ParameterizedTest
    @CsvSource({"0.9999999995, 10.000000005, 6", "0.99999999, 10.0000001, 4"})
    void pointsOffTheEndsByRoundingAreJudged(double first, double last, int points) {
        assertEquals(
                points,
                returnLoss(FrequencyGrid.ofMegahertz(first, 2.5, 4, 6, 8, last)).points());
    }

    // The widest step is 2 MHz or 0.025 decades; a tenth of a percent more is let pass, since bays print few decimals.
    @ParameterizedTest
    @CsvSource({"5.0, true", "5.0019, true", "5.0021, false"})
    void aStepMayBeWiderByATenthOfAPercent(double megahertz, boolean fine) {
        Finding finding = returnLoss(FrequencyGrid.ofMegahertz(1, 3, megahertz, 7, 8, 10));
        assertEquals(
                fine
                        ? null
                        : "grid too coarse: return-loss of pair 1, near end has a step from 3.0 to " + megahertz
                                + " MHz; at most 2.0 MHz or 0.025 decades, whichever is wider",
                finding.reason());
    }

    @Test
    void stepsBesideTheRangeMayBeCoarse() {
        assertNull(returnLoss(FrequencyGrid.ofMegahertz(0.1, 0.2, 1, 3, 5, 7, 9, 10, 20, 40))
                .reason());
        assertNull(returnLoss(FrequencyGrid.ofMegahertz(0.01, 1, 3, 5, 7, 9, 10, 100))
                .reason());
    }

    @ParameterizedTest
    @CsvSource({"0.15, PASS", "0.1500000001, PASS", "0.1499999999, PASS", "0.151, NOT_TESTED", "0.149, NOT_TESTED"})
    void aSpotFrequencyMustBeAmongThePoints(double megahertz, Outcome outcome) {
        Finding finding = new Bench()
                .pairs(2)
                .require(FEXT_AT_150_KHZ)
                .sweep(
                        Property.FEXT,
                        Subject.ofCombination(1, 2),
                        FrequencyGrid.ofMegahertz(0.1, megahertz, 1),
                        f -> f == megahertz ? 60 : 10)
                .only();
        assertEquals(outcome, finding.outcome());
        assertEquals(outcome == Outcome.PASS ? 1 : 0, finding.points());
        assertEquals(
                outcome == Outcome.PASS
                        ? null
                        : "range not spanned: fext of pair 1 and pair 2 has no point at 0.15 MHz",
                finding.reason());
    }

    @Test
    void ofManyObstaclesThreeAreTold() {
        Bench bench = new Bench().pairs(5).require(RETURN_LOSS);
        for (int pair = 1; pair <= 4; pair++) {
            bench.sweep(Property.RETURN_LOSS, Subject.ofPair(pair).at(End.NEAR), everyMegahertzTo(9), f -> 25);
        }
        String reason = bench.only().reason();
        String[] told = reason.split("; (?=range|and)");
        assertEquals(4, told.length, reason);
        assertEquals("pair missing: return-loss of pair 5 at the near end was not measured", told[0].split("; ")[0]);
        assertEquals("and 2 more", told[3]);

        String three = new Bench()
                .pairs(3)
                .require(RETURN_LOSS)
                .sweep(Property.RETURN_LOSS, Subject.ofPair(1).at(End.NEAR), everyMegahertzTo(9), f -> 25)
                .sweep(Property.RETURN_LOSS, Subject.ofPair(2).at(End.NEAR), everyMegahertzTo(9), f -> 25)
                .only()
                .reason();
        assertEquals(3, three.split("(pair missing|range not spanned): ").length - 1, three);
        assertEquals(-1, three.indexOf("more"), three);
    }

    @Test
    void whatAnUnbalanceIsFormedFromIsNamedWhereItIsMissing() {
        Requirement unbalance =
                requirement(Property.RESISTANCE_UNBALANCE, Statistic.INDIVIDUAL, atMost(5, 0), NONE, "%");
        Bench bench = new Bench().pairs(1).require(unbalance);
        assertEquals(
                "no data: no resistance-unbalance was measured, nor any conductor-resistance that it is formed from",
                bench.only().reason());
        bench.read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(1, Conductor.A), 9, "ohm");
        assertEquals(
                "no data: no resistance-unbalance was measured, and it is not formed:"
                        + " conductor-resistance is missing of conductor b of pair 1",
                bench.only().reason());
    }

    @Test
    void aWideStepThatEndsWhereTheRangeBeginsLiesBesideIt() {
        Requirement fromFive = requirement(
                Property.RETURN_LOSS,
                Statistic.INDIVIDUAL,
                Limit.atLeast(flat(20, 5, 10)),
                new Domain.Range(5, 10),
                "dB");
        Finding finding = new Bench()
                .pairs(1)
                .require(fromFive)
                .sweep(
                        Property.RETURN_LOSS,
                        Subject.ofPair(1).at(End.NEAR),
                        FrequencyGrid.ofMegahertz(1, 5, 7, 9, 10, 15),
                        f -> 25)
                .only();
        assertEquals(Outcome.PASS, finding.outcome());
    }

    /** Delays of the whole reel and per length have no difference, and levels for different lengths no sum. */
    @Test
    void partsSentPerDifferentLengthsFormNothing() {
        Requirement skew = requirement(
                Property.DELAY_SKEW,
                Statistic.INDIVIDUAL,
                Limit.atMost(flat(45, 1, 10)),
                new Domain.Range(1, 10),
                "ns");
        Finding finding = new Bench()
                .pairs(2)
                .reel(1000, 20)
                .require(skew)
                .sweep(Property.PROPAGATION_DELAY, Subject.ofPair(1), everyMegahertzTo(10), f -> 500, "ns/100 m")
                .sweep(Property.PROPAGATION_DELAY, Subject.ofPair(2), everyMegahertzTo(10), f -> 510)
                .only();
        assertEquals(Outcome.NOT_TESTED, finding.outcome());
        assertTrue(finding.reason().contains("its parts were sent per different lengths"), finding.reason());

        Requirement sum = requirement(
                Property.PS_NEXT, Statistic.INDIVIDUAL, Limit.atLeast(flat(30, 1, 10)), new Domain.Range(1, 10), "dB");
        Bench three = new Bench().pairs(3).require(sum);
        for (int[] pair : new int[][] {{1, 2}, {1, 3}, {2, 3}}) {
            three.sweep(
                    Property.NEXT,
                    Subject.ofCombination(pair[0], pair[1]).at(End.NEAR),
                    everyMegahertzTo(10),
                    f -> 60,
                    pair[0] == 1 ? "dB" : "dB/100 m");
        }
        assertEquals(Outcome.NOT_TESTED, three.only().outcome());
        assertEquals(10, three.only().points(), "pair 1 has both parts alike");
    }

    /** A law that needs a loss gives no value of a capacitance, so no average either. */
    @Test
    void valuesThatCannotBeCorrectedAreNoSample() {
        Particulars sampling = new Particulars(
                true,
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.of(new Particulars.Sampling(2, new Bound.Constant(5, 0), new Bound.Constant(6, 0))),
                Optional.empty(),
                Per.REEL);
        Requirement mean = RequirementBuilder.of(Property.MUTUAL_CAPACITANCE, atMost(5.6, 1), NONE, "nF")
                .statistic(Statistic.MEAN)
                .laws(law("near-end-crosstalk-length"))
                .particulars(sampling)
                .build();
        Finding finding = new Bench()
                .pairs(3)
                .reel(30, 20)
                .require(mean)
                .read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(1), 5.2, "nF")
                .read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(2), 5.2, "nF")
                .only();
        assertEquals(Outcome.NOT_TESTED, finding.outcome());
        assertTrue(finding.reason().startsWith("pair missing: mutual-capacitance of pair 3"), finding.reason());
        assertTrue(finding.reason().contains("correction not possible"), finding.reason());
    }
}
