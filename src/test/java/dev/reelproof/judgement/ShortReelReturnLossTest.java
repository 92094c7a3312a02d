package dev.reelproof.judgement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.limit.LimitSamples;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import dev.reelproof.quantity.FrequencyGrid;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Return loss of short reels in both families: what the heads of the sets say of it, against a line of lumped sections, and the verdicts that
 * follow. The line is uniform, its impedance real, its loss that of the category 6A curve.
 */
class ShortReelReturnLossTest {
    private static final double NOMINAL_OHM = 100;
    private static final double METRES_PER_SECOND = 0.68 * 299_792_458;
    private static final double DECIBELS_PER_NEPER = 20 / Math.log(10);

    /** Short against the 7 m of a wave at the highest frequency of the comparison, 30 MHz. */
    private static final double SECTION_METRES = 0.01;

    private static final double OPEN_OHM = 1e9;

    /** A complex number, for this test alone. */
    private record Phasor(double re, double im) {
        static final Phasor ONE = new Phasor(1, 0);

        static Phasor real(double value) {
            return new Phasor(value, 0);
        }

        Phasor plus(Phasor other) {
            return new Phasor(re + other.re, im + other.im);
        }

        Phasor minus(Phasor other) {
            return new Phasor(re - other.re, im - other.im);
        }

        Phasor times(Phasor other) {
            return new Phasor(re * other.re - im * other.im, re * other.im + im * other.re);
        }

        Phasor over(Phasor other) {
            double square = other.re * other.re + other.im * other.im;
            return new Phasor((re * other.re + im * other.im) / square, (im * other.re - re * other.im) / square);
        }

        double size() {
            return Math.hypot(re, im);
        }
    }

    /** Loss of the line, dB/m: the category 6A curve, 1.82 √f + 0.0091 f + 0.25/√f for 100 m. */
    private static double lossPerMetre(double megahertz) {
        double root = Math.sqrt(megahertz);
        return (1.82 * root + 0.0091 * megahertz + 0.25 / root) / 100;
    }

    /** Propagation constant, 1/m. */
    private static Phasor propagation(double megahertz) {
        return new Phasor(
                lossPerMetre(megahertz) / DECIBELS_PER_NEPER, 2 * Math.PI * megahertz * 1e6 / METRES_PER_SECOND);
    }

    /** The echo of the far end at the near one: e to the power of minus twice the propagation constant times the length. */
    private static Phasor echo(double metres, double megahertz) {
        Phasor gamma = propagation(megahertz);
        double size = Math.exp(-2 * gamma.re() * metres);
        return new Phasor(size * Math.cos(2 * gamma.im() * metres), -size * Math.sin(2 * gamma.im() * metres));
    }

    /** Reflection as the heads of the sets state it for a terminated line, and with the far end's own reflection for another. */
    private static Phasor reflection(double ohm, double metres, double megahertz, double farEndOhm) {
        Phasor near = Phasor.real((ohm - NOMINAL_OHM) / (ohm + NOMINAL_OHM));
        Phasor farEnd = Phasor.real((farEndOhm - ohm) / (farEndOhm + ohm));
        Phasor returned = farEnd.times(echo(metres, megahertz));
        return near.plus(returned).over(Phasor.ONE.plus(near.times(returned)));
    }

    /** The same by another route: lumped sections, one after the other from the far end. */
    private static Phasor reflectionOfSections(double ohm, double metres, double megahertz, double farEndOhm) {
        int sections = (int) Math.ceil(metres / SECTION_METRES);
        Phasor angle = propagation(megahertz).times(Phasor.real(metres / sections));
        Phasor halfSeries = angle.times(Phasor.real(ohm / 2));
        Phasor shunt = angle.times(Phasor.real(1 / ohm));
        Phasor impedance = Phasor.real(farEndOhm);
        for (int i = 0; i < sections; i++) {
            Phasor admittance = Phasor.ONE.over(impedance.plus(halfSeries)).plus(shunt);
            impedance = Phasor.ONE.over(admittance).plus(halfSeries);
        }
        Phasor nominal = Phasor.real(NOMINAL_OHM);
        return impedance.minus(nominal).over(impedance.plus(nominal));
    }

    /** Sections of 1 cm turn the echo's phase by up to 0.0002 too much or too little at 62 m and 30 MHz: (βd)²/24 · 2βl. */
    @ParameterizedTest
    @CsvSource({
        "108, 10, 1, 100",
        "108, 30, 5, 100",
        "92, 62, 30, 100",
        "115, 75, 10, 100",
        "100, 62, 4, 1e9",
        "108, 30, 20, 1e9"
    })
    void theFormulaOfTheHeadsIsThatOfALine(double ohm, double metres, double megahertz, double farEndOhm) {
        Phasor stated = reflection(ohm, metres, megahertz, farEndOhm);
        Phasor line = reflectionOfSections(ohm, metres, megahertz, farEndOhm);

        assertEquals(0, stated.minus(line).size(), 0.0005);
    }

    /** With the far end terminated, near + returned becomes r (1 − e) / (1 − r² e): at most r (1 + |e|) / (1 − r² |e|). */
    @net.jqwik.api.Property(tries = 300)
    void aTerminatedReelReadsAtMostSixDecibelsWorse(
            @ForAll @DoubleRange(min = 80, max = 125) double ohm,
            @ForAll @DoubleRange(min = 0.5, max = 1000) double metres,
            @ForAll @DoubleRange(min = 1, max = 500) double megahertz) {
        double r = Math.abs(ohm - NOMINAL_OHM) / (ohm + NOMINAL_OHM);
        double e = echo(metres, megahertz).size();

        double read = reflection(ohm, metres, megahertz, NOMINAL_OHM).size();

        assertTrue(read <= r * (1 + e) / (1 - r * r * e) + 1e-12, read + " of " + r);
        assertTrue(20 * Math.log10(1 + e) <= 6.03);
    }

    private static Finding returnLoss(LimitSet set, double ohm, double metres, double farEndOhm) {
        double top = set.requirements().stream()
                .filter(one -> one.property() == Property.RETURN_LOSS)
                .map(one -> (dev.reelproof.limit.Domain.Range) one.domain())
                .findFirst()
                .orElseThrow()
                .to();
        FrequencyGrid grid = FrequencyGrid.ofMegahertz(IntStream.rangeClosed(20, (int) (20 * top))
                .filter(step -> step <= 400 || step % 10 == 0)
                .mapToDouble(step -> step / 20.0)
                .toArray());
        Bench bench = new Bench().pairs(set.pairs().from()).reel(metres, 20);
        for (int pair = 1; pair <= set.pairs().from(); pair++) {
            bench.sweep(Property.INSERTION_LOSS, Subject.ofPair(pair), grid, f -> lossPerMetre(f) * metres)
                    .sweep(
                            Property.RETURN_LOSS,
                            Subject.ofPair(pair).at(End.NEAR),
                            grid,
                            f -> -20
                                    * Math.log10(reflection(ohm, metres, f, farEndOhm)
                                            .size()));
        }
        return Judge.judge(bench.result(), bench.product(), set, Optional.empty(), "test").findings().stream()
                .filter(finding -> finding.property() == Property.RETURN_LOSS)
                .findFirst()
                .orElseThrow();
    }

    private static final List<String> FAMILIES = List.of("category-6a-cable", "iec-category-6a-cable");

    /** 102 ohm shows 34 dB on crests of a short reel, well above 25 dB. */
    @ParameterizedTest
    @ValueSource(doubles = {5, 10, 30, 62, 75, 305})
    void aGoodReelOfAnyLengthPassesInBothFamilies(double metres) {
        for (String id : FAMILIES) {
            assertEquals(
                    Outcome.PASS,
                    returnLoss(LimitSamples.shipped(id, 2), 102, metres, NOMINAL_OHM)
                            .outcome(),
                    id);
        }
    }

    /** So the families differed before: the one judged a reel of 62 m, the other refused it. */
    @ParameterizedTest
    @CsvSource({"category-6a-cable, PASS", "iec-category-6a-cable, NOT_TESTED"})
    void theFirstRevisionsDiffered(String id, Outcome outcome) {
        assertEquals(
                outcome,
                returnLoss(LimitSamples.shipped(id), 102, 62, NOMINAL_OHM).outcome());
    }

    /** 120 ohm, 20.8 dB on a long reel, fails 25 dB at 10 to 20 MHz at every length: a short reel does not make it good. */
    @ParameterizedTest
    @ValueSource(doubles = {5, 10, 30, 62, 305})
    void aWrongImpedanceFailsAtEveryLength(double metres) {
        for (String id : FAMILIES) {
            assertEquals(
                    Outcome.FAIL,
                    returnLoss(LimitSamples.shipped(id, 2), 120, metres, NOMINAL_OHM)
                            .outcome(),
                    id);
        }
    }

    /** The false reject that the heads own to: 110 ohm, 26.4 dB on a long reel, is 21 dB on the crests of a short one. */
    @ParameterizedTest
    @CsvSource({"305, PASS", "10, FAIL"})
    void aReelThatIsJustGoodMayFailWhenItIsShort(double metres, Outcome outcome) {
        for (String id : FAMILIES) {
            assertEquals(
                    outcome,
                    returnLoss(LimitSamples.shipped(id, 2), 110, metres, NOMINAL_OHM)
                            .outcome(),
                    id);
        }
    }

    /** A far end that nobody terminated comes back at 2.6 dB on 62 m at 1 MHz, under a limit of 20 dB. */
    @ParameterizedTest
    @ValueSource(doubles = {5, 30, 62, 100})
    void aForgottenTerminationFails(double metres) {
        for (String id : FAMILIES) {
            assertEquals(
                    Outcome.FAIL,
                    returnLoss(LimitSamples.shipped(id, 2), 100, metres, OPEN_OHM)
                            .outcome(),
                    id);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"iec-category-5e-cable", "iec-category-6-cable", "category-5e-25-pair-cable"})
    void theOtherSetsThatAskedForALossJudgeAShortReelToo(String id) {
        assertEquals(
                Outcome.NOT_TESTED,
                returnLoss(LimitSamples.shipped(id), 102, 30, NOMINAL_OHM).outcome());
        assertEquals(
                Outcome.PASS,
                returnLoss(LimitSamples.shipped(id, 2), 102, 30, NOMINAL_OHM).outcome());
    }
}
