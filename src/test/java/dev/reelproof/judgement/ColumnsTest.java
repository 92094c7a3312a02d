package dev.reelproof.judgement;

import static dev.reelproof.judgement.Bench.atMost;
import static dev.reelproof.judgement.Bench.everyMegahertzTo;
import static dev.reelproof.judgement.Bench.flat;
import static dev.reelproof.judgement.Bench.law;
import static dev.reelproof.judgement.Bench.model;
import static dev.reelproof.judgement.Bench.requirement;
import static dev.reelproof.judgement.Bench.with;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.limit.DecisionRule;
import dev.reelproof.limit.DecisionRule.Form;
import dev.reelproof.limit.Domain;
import dev.reelproof.limit.Limit;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.RoundingRule;
import dev.reelproof.limit.Statistic;
import dev.reelproof.measurement.Conductor;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Faults that an independent check found in 0.2.0: each of these decided wrongly. */
class ColumnsTest {
    private static final Domain NO_FREQUENCY = new Domain.NoFrequency();
    private static final DecisionRule FOUR_OUTCOMES = new DecisionRule(Form.GUARD_BAND_FOUR, 1);

    /** U = 0.487 ohm/km at the whole reel of 1 km. */
    private static final String HALF_AN_OHM =
            """
            temperature: { constant: 0 °C, source: own, read: true }
            length: { constant: 0 m, source: own, read: true }
            classes:
              - class: default
                properties:
                  - { property: conductor-resistance, unit: ohm, constant: 0.487, source: own, read: true }
            """;

    /** Rounded to the places of "95", 95.49 would be 95 and pass within the band, and 94.51 would be 95 and not pass outright. */
    @ParameterizedTest
    @CsvSource({"95.49, FAIL", "94.51, PASS", "95.2, CONDITIONAL_FAIL", "94.9, CONDITIONAL_PASS"})
    void aGuardBandIsHeldAgainstTheUnroundedValue(double value, Outcome outcome) {
        Requirement resistance =
                requirement(Property.CONDUCTOR_RESISTANCE, Statistic.INDIVIDUAL, atMost(95, 0), NO_FREQUENCY, "ohm/km");
        Finding finding = new Bench()
                .pairs(1)
                .reel(1000, 20)
                .rounding(RoundingRule.TO_THE_PLACES_OF_THE_LIMIT)
                .rule(FOUR_OUTCOMES)
                .model(model(HALF_AN_OHM))
                .require(with(resistance, law("linear-length")))
                .read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(1, Conductor.A), value, "ohm")
                .read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(1, Conductor.B), 90, "ohm")
                .only();
        assertEquals(outcome, finding.outcome());
        assertEquals(value, finding.worst().judged());
    }

    private static final Requirement MEAN_CAPACITANCE =
            requirement(Property.MUTUAL_CAPACITANCE, Statistic.MEAN, atMost(56, 0), NO_FREQUENCY, "nF/km");

    /** One pair of 12 at 57 nF/km is no average of the reel. */
    @ParameterizedTest
    @CsvSource({"MEAN", "RMS"})
    void aFigureOfAPartOfThePairsDoesNotRejectTheReel(Statistic statistic) {
        Requirement capacitance =
                requirement(Property.MUTUAL_CAPACITANCE, statistic, atMost(56, 0), NO_FREQUENCY, "nF/km");
        Bench bench = new Bench().pairs(12).reel(1000, 20).require(capacitance);
        bench.read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(3), 57, "nF/km");
        Finding part = bench.only();
        assertEquals(Outcome.NOT_TESTED, part.outcome());
        assertEquals(Obstacle.Kind.PAIR_MISSING, part.obstacles().named().get(0).kind());
        for (int pair = 1; pair <= 12; pair++) {
            if (pair != 3) {
                bench.read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(pair), 57, "nF/km");
            }
        }
        assertEquals(Outcome.FAIL, bench.only().outcome());
    }

    /** The greatest of all pairs is no smaller than the greatest of some. */
    @Test
    void aMaximumOfAPartOfThePairsRejects() {
        Requirement greatest =
                requirement(Property.MUTUAL_CAPACITANCE, Statistic.MAXIMUM, atMost(56, 0), NO_FREQUENCY, "nF/km");
        assertEquals(
                Outcome.FAIL,
                new Bench()
                        .pairs(12)
                        .reel(1000, 20)
                        .require(greatest)
                        .read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(3), 57, "nF/km")
                        .only()
                        .outcome());
    }

    private static Bench shortReel(Subject combination) {
        Requirement next = with(
                requirement(
                        Property.NEXT,
                        Statistic.INDIVIDUAL,
                        Limit.atLeast(flat(30, 1, 10)),
                        new Domain.Range(1, 10),
                        "dB"),
                law("near-end-crosstalk-length"));
        return new Bench()
                .pairs(2)
                .reel(30, 20)
                .require(next)
                .sweep(Property.INSERTION_LOSS, Subject.ofPair(1), everyMegahertzTo(10), f -> 0.5)
                .sweep(Property.INSERTION_LOSS, Subject.ofPair(2), everyMegahertzTo(10), f -> 0.9)
                .sweep(Property.NEXT, combination.at(End.NEAR), everyMegahertzTo(10), f -> 50);
    }

    /** 10 log10 {[1 − 10^(−A/0.3/5)] / [1 − 10^(−A/5)]} with A = 0.5 and 0.9 dB over 30 m: 4.34 and 3.90 dB. */
    @Test
    void nearEndCrosstalkOfAShortReelIsOneFigureWhicheverPairIsNamedFirst() {
        double oneAndTwo = shortReel(Subject.ofCombination(1, 2)).only().worst().value();
        double twoAndOne = shortReel(Subject.ofCombination(2, 1)).only().worst().value();
        assertEquals(oneAndTwo, twoAndOne);
        double worse = Stream.of(0.5, 0.9)
                .mapToDouble(loss ->
                        50 - 10 * Math.log10((1 - Math.pow(10, -loss / 0.3 / 5)) / (1 - Math.pow(10, -loss / 5))))
                .min()
                .orElseThrow();
        assertEquals(worse, oneAndTwo, 1e-9);
    }

    /** The margin is least at 1 MHz, but the uncertainty grows with frequency: the reading at 10 MHz is the less sure one. */
    @Test
    void theLeastProbablePlaceIsToldBesideTheLeastMargin() {
        Bench bench = new Bench()
                .pairs(1)
                .model(
                        model(
                                """
                        temperature: { constant: 0 °C, source: own, read: true }
                        length: { constant: 0 m, source: own, read: true }
                        classes:
                          - class: default
                            properties:
                              - property: return-loss
                                unit: dB
                                segments: [{ from: 1 MHz, to: 10 MHz, linear: 0.3 }]
                                source: own
                                read: true
                        """))
                .require(requirement(
                        Property.RETURN_LOSS,
                        Statistic.INDIVIDUAL,
                        Limit.atLeast(flat(20, 1, 10)),
                        new Domain.Range(1, 10),
                        "dB"))
                .sweep(
                        Property.RETURN_LOSS,
                        Subject.ofPair(1).at(End.NEAR),
                        everyMegahertzTo(10),
                        f -> f == 1 ? 21.5 : 22);
        Finding finding = bench.only();
        assertEquals(1.0, finding.worst().megahertz());
        Doubt doubt = finding.doubt();
        assertEquals(10.0, doubt.megahertz());
        assertEquals(2, doubt.margin(), 1e-12);
        assertTrue(doubt.probability() < finding.worst().uncertainty().probabilityOfConformity());
        List<Double> doubts =
                Stream.iterate(2.0, f -> f + 1).limit(9).map(f -> doubtAt(f, 2)).toList();
        double sum = doubtAt(1, 1.5) + doubts.stream().mapToDouble(one -> one).sum();
        assertEquals(sum, doubt.sum(), 1e-9);
        assertEquals(Math.max(0, 1 - sum), doubt.atLeast(), 1e-9);
    }

    /** 300 m at 0.66 of the velocity of light ripple with a period of 0.33 MHz; steps of 1 MHz cannot follow. */
    @Test
    void aReturnLossThatVariesFasterThanItsGridIsSaidTo() {
        Requirement returnLoss = requirement(
                Property.RETURN_LOSS,
                Statistic.INDIVIDUAL,
                Limit.atLeast(flat(20, 1, 60)),
                new Domain.Range(1, 60),
                "dB");
        Bench bench = new Bench()
                .pairs(1)
                .velocity(0.66)
                .reel(300, 20)
                .require(returnLoss)
                .sweep(
                        Property.RETURN_LOSS,
                        Subject.ofPair(1).at(End.NEAR),
                        everyMegahertzTo(60),
                        f -> f % 2 == 0 ? 25 : 22);
        Finding finding = bench.only();
        assertEquals(Outcome.PASS, finding.outcome());
        assertEquals(
                "between two points: it varies by up to 3.0 dB from point to point around 1.0 MHz, faster than steps of "
                        + "1.0 MHz follow; echoes of this reel need steps below 0.165 MHz, so that the worst value may lie "
                        + "between two points",
                finding.reason());
        assertEquals(null, bench.reel(10, 20).only().reason(), "10 m ripple with 9.9 MHz");
    }

    /** 1 − p of a value so far above its limit, by the model's U = 20 lg(1 + 10^(0.3 f/20) − 1) with k = 2. */
    private static double doubtAt(double megahertz, double margin) {
        double standard = 0.3 * megahertz / 2;
        return org.apache.commons.statistics.distribution.NormalDistribution.of(0, standard)
                .survivalProbability(margin);
    }
}
