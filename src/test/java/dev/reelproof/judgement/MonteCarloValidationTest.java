package dev.reelproof.judgement;

import static dev.reelproof.judgement.Bench.atLeast;
import static dev.reelproof.judgement.Bench.atMost;
import static dev.reelproof.judgement.Bench.law;
import static dev.reelproof.judgement.Bench.requirement;
import static dev.reelproof.judgement.Bench.with;
import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.reelproof.limit.Domain;
import dev.reelproof.limit.LawSpec;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.Statistic;
import dev.reelproof.limit.UncertaintyModel;
import dev.reelproof.measurement.Conductor;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import dev.reelproof.quantity.FrequencyGrid;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.util.Arrays;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The uncertainty that a judgement states for every kind of figure, against a Monte Carlo method (JCGM 101:2008) with its own
 * arithmetic: none of the laws, derivations or gradients of the program enters.
 *
 * <p>The tolerance of 2 % is that of the project; the draws scatter by 0.22 %. Uncertainties are small against the curvature of the
 * figures, so that the first order must hold. Where it need not, nothing is compared: a maximum, a skew or an unbalance of values that
 * lie nearer together than their uncertainty, a deviation or a sigma of equal values. There the program takes a side, which
 * {@code GradientTest} holds.
 */
class MonteCarloValidationTest {
    private static final double TOLERANCE = 0.02;
    private static final double REFERENCE_METRES = 100;
    private static final double MEGAHERTZ = 10;
    private static final FrequencyGrid SPOT = FrequencyGrid.ofMegahertz(MEGAHERTZ);
    private static final Domain AT_THE_SPOT = new Domain.Spot(MEGAHERTZ);
    private static final Domain NONE = new Domain.NoFrequency();
    private static final LawSpec COPPER = new LawSpec("copper-temperature", Map.of("coefficient", 0.00393));
    private static final LawSpec UNSCREENED =
            new LawSpec("unscreened-loss-temperature", Map.of("to-40", 0.004, "above-40", 0.006));
    private static final LawSpec LINEAR = law("linear-length");

    @Retention(RetentionPolicy.RUNTIME)
    @ParameterizedTest(name = "correlation {0}")
    @ValueSource(doubles = {0, 0.5, 1})
    private @interface AtEachCorrelation {}

    /** All parts are chosen so that none of them is lost beside the others. */
    private static UncertaintyModel model(double correlation) {
        return Bench.model(
                """
                temperature: { constant: 0.4 °C, source: own, read: true }
                length: { constant: 0.5 m, source: own, read: true }
                length-marks: { proportional: 0.15 %, source: own, read: true }
                temperature-coefficients: { proportional: 4 %, source: own, read: true }
                classes:
                  - class: default
                    properties:
                      - { property: conductor-resistance, unit: ohm, constant: 0.04, correlation: R, source: own, read: true }
                      - { property: mutual-capacitance, unit: nF, constant: 0.02, proportional: 0.2 %, correlation: R, source: own, read: true }
                      - { property: capacitance-unbalance-pair-to-pair, unit: pF, constant: 0.5, correlation: R, source: own, read: true }
                      - { property: propagation-delay, unit: ns, constant: 1, correlation: R, source: own, read: true }
                      - { property: insulation-resistance, unit: megohm, proportional: 1 %, correlation: R, source: own, read: true }
                      - { property: insertion-loss, unit: dB, constant: 0.05, noise-floor: 110, correlation: R, source: own, read: true }
                      - { property: next, unit: dB, constant: 0.03, noise-floor: 100, correlation: R, source: own, read: true }
                      - { property: acr-f, unit: dB, constant: 0.1, noise-floor: 95, correlation: R, source: own, read: true }
                      - { property: fext, unit: dB, constant: 0.1, noise-floor: 95, correlation: R, source: own, read: true }
                      - { property: return-loss, unit: dB, constant: 0.1, noise-floor: 60, correlation: R, source: own, read: true }
                """
                        .replace("R, source", correlation + ", source"));
    }

    /** A reel on the bench, read with errors by the model. */
    private static final class Reel {
        private final Bench bench = new Bench();
        private final MonteCarlo draws;

        Reel(double correlation, int pairs, double metres, double celsius) {
            UncertaintyModel model = model(correlation);
            bench.pairs(pairs).reel(metres, celsius).model(model);
            draws = new MonteCarlo(model, celsius, metres);
        }

        Reel read(Property property, Subject subject, double reading) {
            bench.read(property, subject, reading, property.canonicalUnit());
            draws.add(property, reading);
            return this;
        }

        /** A reading at the spot. */
        Reel sweep(Property property, Subject subject, double reading) {
            beside(property, subject, reading);
            draws.add(property, reading, MEGAHERTZ);
            return this;
        }

        /** A reading at the spot that misses its limit. */
        Reel failing(Property property, Subject subject, double reading) {
            beside(property, subject, reading);
            draws.addFailing(property, reading, MEGAHERTZ);
            return this;
        }

        /** A reading at the spot that the figure does not depend on. */
        Reel beside(Property property, Subject subject, double reading) {
            bench.sweep(property, subject, SPOT, f -> reading);
            return this;
        }

        Reel conductors(double... ohms) {
            for (int i = 0; i < ohms.length; i++) {
                read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(1 + i / 2, Conductor.values()[i % 2]), ohms[i]);
            }
            return this;
        }

        Reel ofPairs(Property property, double... readings) {
            for (int i = 0; i < readings.length; i++) {
                read(property, Subject.ofPair(i + 1), readings[i]);
            }
            return this;
        }

        /** A level between pair 1 and each other; the combinations of the others lie far from any limit. */
        Reel nextWithPair1(int pairs, double... levels) {
            for (int pair = 1; pair <= pairs; pair++) {
                for (int partner = pair + 1; partner <= pairs; partner++) {
                    Subject combination = Subject.ofCombination(pair, partner).at(End.NEAR);
                    if (pair == 1) {
                        sweep(Property.NEXT, combination, levels[partner - 2]);
                    } else {
                        beside(Property.NEXT, combination, 75);
                    }
                }
            }
            return this;
        }

        void agrees(Requirement requirement, MonteCarlo.Figure figure) {
            dev.reelproof.judgement.Figure found =
                    bench.require(requirement).only().figure();
            assertEquals(draws.nominal(figure), found.value(), 1e-9 * Math.abs(found.value()), "the figure itself");
            double drawn = draws.standardDeviation(figure);
            assertEquals(1, draws.firstOrder(figure) / drawn, TOLERANCE, "the first order holds for the case");
            double stated = found.uncertainty().expanded() / found.uncertainty().coverageFactor();
            assertEquals(1, stated / drawn, TOLERANCE, "stated " + stated + ", drawn " + drawn);
        }
    }

    private static Requirement of(Property property, Statistic statistic, double limit, String unit, LawSpec... laws) {
        return with(
                requirement(
                        property,
                        statistic,
                        property.isSweep() && property != Property.INSERTION_LOSS && !unit.startsWith("ns")
                                ? atLeast(limit, 0)
                                : atMost(limit, 0),
                        property.isSweep() ? AT_THE_SPOT : NONE,
                        unit),
                laws);
    }

    private static Requirement of(Property property, double limit, String unit, LawSpec... laws) {
        return of(property, Statistic.INDIVIDUAL, limit, unit, laws);
    }

    // ---- single values

    @AtEachCorrelation
    void aResistanceCorrectedForTemperatureAndLength(double correlation) {
        new Reel(correlation, 1, 305, 31)
                .conductors(28.6, 27)
                .agrees(
                        of(Property.CONDUCTOR_RESISTANCE, 10, "ohm/100 m", COPPER, LINEAR),
                        (x, t, metres, s) -> x[0] / (1 + 0.00393 * s * (t - 20)) * REFERENCE_METRES / metres);
    }

    /** On both sides of the step at 40 °C: each slope for its own degrees. */
    @ParameterizedTest
    @ValueSource(doubles = {5, 31, 52})
    void anInsertionLoss(double celsius) {
        new Reel(1, 1, 305, celsius)
                .sweep(Property.INSERTION_LOSS, Subject.ofPair(1), 60)
                .agrees(of(Property.INSERTION_LOSS, 25, "dB/100 m", UNSCREENED, LINEAR), (x, t, metres, s) -> {
                    double grown = 0.004 * s * (Math.min(t, 40) - 20) + 0.006 * s * Math.max(t - 40, 0);
                    return x[0] / (1 + grown) * REFERENCE_METRES / metres;
                });
    }

    @AtEachCorrelation
    void anInsulationResistance(double correlation) {
        LawSpec warmer = new LawSpec(
                "insulation-resistance-temperature", Map.of("factor", 1.06, "lowest", 0.0, "highest", 40.0));
        Requirement requirement = with(
                requirement(Property.INSULATION_RESISTANCE, Statistic.INDIVIDUAL, atLeast(500, 0), NONE, "megohm"),
                warmer);
        new Reel(correlation, 1, 100, 31)
                .read(Property.INSULATION_RESISTANCE, Subject.ofReel(), 20_000)
                .agrees(requirement, (x, t, metres, s) -> x[0] * Math.exp(Math.log(1.06) * s * (t - 20)));
    }

    @AtEachCorrelation
    void aReturnLoss(double correlation) {
        new Reel(correlation, 1, 305, 31)
                .sweep(Property.RETURN_LOSS, Subject.ofPair(1).at(End.NEAR), 30)
                .agrees(of(Property.RETURN_LOSS, 20, "dB"), (x, t, metres, s) -> x[0]);
    }

    /** 12 dB above the noise U is 1.95 dB downwards and 2.52 dB upwards, where a level too low may still meet its limit. */
    @AtEachCorrelation
    void aReturnLossThatFails(double correlation) {
        new Reel(correlation, 1, 305, 31)
                .failing(Property.RETURN_LOSS, Subject.ofPair(1).at(End.NEAR), 48)
                .agrees(of(Property.RETURN_LOSS, 50, "dB"), (x, t, metres, s) -> x[0]);
    }

    @AtEachCorrelation
    void anInsertionLossThatFails(double correlation) {
        new Reel(correlation, 1, 100, 20)
                .failing(Property.INSERTION_LOSS, Subject.ofPair(1), 98)
                .agrees(of(Property.INSERTION_LOSS, 95, "dB"), (x, t, metres, s) -> x[0]);
    }

    /** 10 log10 of the ratio of what is gathered over the reference and over the reel, by the loss A of the reel itself. */
    private static double shortened(double level, double loss, double metres) {
        double atReference = 1 - Math.pow(10, -loss * REFERENCE_METRES / metres / 5);
        double atLength = 1 - Math.pow(10, -loss / 5);
        return level - 10 * Math.log10(atReference / atLength);
    }

    /** Pair 1 has the lower loss, by which the law takes most from the level, whichever pair is taken as the disturbed one. */
    @AtEachCorrelation
    void aNearEndCrosstalkOfAShortReelWithItsLoss(double correlation) {
        new Reel(correlation, 2, 50, 20)
                .sweep(Property.INSERTION_LOSS, Subject.ofPair(1), 2)
                .beside(Property.INSERTION_LOSS, Subject.ofPair(2), 2.6)
                .sweep(Property.NEXT, Subject.ofCombination(1, 2).at(End.NEAR), 50)
                .agrees(
                        of(Property.NEXT, 40, "dB", law("near-end-crosstalk-length")),
                        (x, t, metres, s) -> shortened(x[1], x[0], metres));
    }

    @AtEachCorrelation
    void anEqualLevelFarEndCrosstalk(double correlation) {
        new Reel(correlation, 2, 20, 31)
                .sweep(Property.ACR_F, Subject.ofCombination(1, 2).at(End.NEAR), 50)
                .beside(Property.ACR_F, Subject.ofCombination(2, 1).at(End.NEAR), 60)
                .agrees(
                        of(Property.ACR_F, 30, "dB", law("far-end-crosstalk-length")),
                        (x, t, metres, s) -> x[0] + 10 * Math.log10(metres / REFERENCE_METRES));
    }

    // ---- figures of several readings

    private static double powerSum(double... levels) {
        return -10
                * Math.log10(Arrays.stream(levels)
                        .map(level -> Math.pow(10, -level / 10))
                        .sum());
    }

    @AtEachCorrelation
    void aPowerSumOfThreeDisturbersOnAShortReel(double correlation) {
        Reel reel = new Reel(correlation, 4, 50, 20).sweep(Property.INSERTION_LOSS, Subject.ofPair(1), 2);
        for (int pair = 2; pair <= 4; pair++) {
            reel.beside(Property.INSERTION_LOSS, Subject.ofPair(pair), 2.6);
        }
        reel.nextWithPair1(4, 50, 51, 53)
                .agrees(
                        of(Property.PS_NEXT, 40, "dB", law("near-end-crosstalk-length")),
                        (x, t, metres, s) -> powerSum(
                                shortened(x[1], x[0], metres),
                                shortened(x[2], x[0], metres),
                                shortened(x[3], x[0], metres)));
    }

    @AtEachCorrelation
    void aPowerSumOf24Disturbers(double correlation) {
        double[] levels =
                IntStream.range(0, 24).mapToDouble(i -> 50 + 0.4 * (i % 7)).toArray();
        new Reel(correlation, 25, 100, 20)
                .nextWithPair1(25, levels)
                .agrees(of(Property.PS_NEXT, 30, "dB"), (x, t, metres, s) -> powerSum(x));
    }

    @AtEachCorrelation
    void anUnbalanceWithinAPair(double correlation) {
        new Reel(correlation, 1, 305, 31)
                .conductors(28.6, 27.9)
                .agrees(of(Property.RESISTANCE_UNBALANCE, 5, "%"), (x, t, metres, s) -> 100 * (x[0] - x[1]) / x[1]);
    }

    @AtEachCorrelation
    void anUnbalanceBetweenPairs(double correlation) {
        new Reel(correlation, 2, 305, 31)
                .conductors(28.6, 28.2, 27.4, 27.1)
                .agrees(of(Property.RESISTANCE_UNBALANCE_BETWEEN_PAIRS, 5, "%"), (x, t, metres, s) -> {
                    double one = 1 / (1 / x[0] + 1 / x[1]);
                    double other = 1 / (1 / x[2] + 1 / x[3]);
                    return 100 * (one - other) / other;
                });
    }

    @AtEachCorrelation
    void aLoop(double correlation) {
        new Reel(correlation, 1, 305, 31)
                .conductors(28.6, 27.9)
                .agrees(
                        of(Property.LOOP_RESISTANCE, 20, "ohm/100 m", COPPER, LINEAR),
                        (x, t, metres, s) -> (x[0] + x[1]) / (1 + 0.00393 * s * (t - 20)) * REFERENCE_METRES / metres);
    }

    @AtEachCorrelation
    void aDelaySkew(double correlation) {
        Reel reel = new Reel(correlation, 4, 305, 31);
        double[] delays = {1500, 1560, 1480, 1530};
        for (int pair = 1; pair <= 4; pair++) {
            reel.sweep(Property.PROPAGATION_DELAY, Subject.ofPair(pair), delays[pair - 1]);
        }
        reel.agrees(
                of(Property.DELAY_SKEW, 45, "ns/100 m", LINEAR),
                (x, t, metres, s) -> (x[1] - x[2]) * REFERENCE_METRES / metres);
    }

    // ---- statistics over pairs

    private static final double[] NANOFARADS = {15.1, 15.6, 16.4, 14.9, 15.3, 16.0, 15.8, 15.2, 16.6, 15.0, 15.5, 16.1};

    private static double mean(double... x) {
        return Arrays.stream(x).sum() / x.length;
    }

    private static double squaredDeviations(double... x) {
        double mean = mean(x);
        return Arrays.stream(x).map(one -> (one - mean) * (one - mean)).sum();
    }

    private static Reel capacitances(double correlation) {
        return new Reel(correlation, NANOFARADS.length, 305, 31).ofPairs(Property.MUTUAL_CAPACITANCE, NANOFARADS);
    }

    @AtEachCorrelation
    void aMean(double correlation) {
        capacitances(correlation)
                .agrees(
                        of(Property.MUTUAL_CAPACITANCE, Statistic.MEAN, 6, "nF/100 m", LINEAR),
                        (x, t, metres, s) -> mean(x) * REFERENCE_METRES / metres);
    }

    /** Temperature and coefficient are one error for all. */
    @AtEachCorrelation
    void aMeanOfResistances(double correlation) {
        new Reel(correlation, 2, 305, 31)
                .conductors(28.6, 28.2, 27.4, 27.1)
                .agrees(
                        of(Property.CONDUCTOR_RESISTANCE, Statistic.MEAN, 10, "ohm/100 m", COPPER, LINEAR),
                        (x, t, metres, s) -> mean(x) / (1 + 0.00393 * s * (t - 20)) * REFERENCE_METRES / metres);
    }

    @AtEachCorrelation
    void aRootMeanSquareDeviation(double correlation) {
        capacitances(correlation)
                .agrees(
                        of(Property.MUTUAL_CAPACITANCE, Statistic.RMS_DEVIATION, 5, "%", LINEAR),
                        (x, t, metres, s) -> 100 * Math.sqrt(squaredDeviations(x) / x.length) / mean(x));
    }

    @AtEachCorrelation
    void aRootMeanSquare(double correlation) {
        unbalances(correlation)
                .agrees(
                        of(
                                Property.CAPACITANCE_UNBALANCE_PAIR_TO_PAIR,
                                Statistic.RMS,
                                100,
                                "pF",
                                law("square-root-length")),
                        (x, t, metres, s) -> Math.sqrt(
                                Arrays.stream(x).map(one -> one * one).sum() / x.length * REFERENCE_METRES / metres));
    }

    @AtEachCorrelation
    void aMaximumOverPairs(double correlation) {
        unbalances(correlation)
                .agrees(
                        of(
                                Property.CAPACITANCE_UNBALANCE_PAIR_TO_PAIR,
                                Statistic.MAXIMUM,
                                200,
                                "pF",
                                law("square-root-length")),
                        (x, t, metres, s) ->
                                Arrays.stream(x).max().orElseThrow() * Math.sqrt(REFERENCE_METRES / metres));
    }

    private static Reel unbalances(double correlation) {
        Reel reel = new Reel(correlation, 4, 305, 31);
        double[] picofarads = {31, 47, 12, 55, 8, 23};
        int at = 0;
        for (int pair = 1; pair <= 4; pair++) {
            for (int partner = pair + 1; partner <= 4; partner++) {
                reel.read(
                        Property.CAPACITANCE_UNBALANCE_PAIR_TO_PAIR,
                        Subject.ofCombination(pair, partner),
                        picofarads[at++]);
            }
        }
        return reel;
    }

    /** Far-end levels of every ordered combination of four pairs. */
    private static Reel farEnd(double correlation) {
        Reel reel = new Reel(correlation, 4, 20, 31);
        int at = 0;
        for (int pair = 1; pair <= 4; pair++) {
            for (int partner = 1; partner <= 4; partner++) {
                if (partner != pair) {
                    reel.sweep(
                            Property.FEXT,
                            Subject.ofCombination(pair, partner).at(End.NEAR),
                            58 + 1.3 * (at++ * 5 % 12));
                }
            }
        }
        return reel;
    }

    private static double longer(double metres) {
        return 10 * Math.log10(metres / REFERENCE_METRES);
    }

    @AtEachCorrelation
    void aRootMeanSquareOfLevels(double correlation) {
        farEnd(correlation)
                .agrees(
                        of(Property.FEXT, Statistic.RMS, 40, "dB", law("far-end-crosstalk-length")),
                        (x, t, metres, s) -> powerSum(x) + 10 * Math.log10(x.length) + longer(metres));
    }

    @AtEachCorrelation
    void aMeanLessSigma(double correlation) {
        farEnd(correlation)
                .agrees(
                        of(Property.FEXT, Statistic.MEAN_MINUS_SIGMA, 40, "dB", law("far-end-crosstalk-length")),
                        (x, t, metres, s) ->
                                mean(x) - Math.sqrt(squaredDeviations(x) / (x.length - 1)) + longer(metres));
    }
}
