package dev.reelproof.correction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.quantity.Length;
import dev.reelproof.quantity.Temperature;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import net.jqwik.api.constraints.Size;

/** What holds of every law, whatever the figures. */
class CorrectionPropertyTest {
    // A handful of roundings there and back, each of 1.1e-16.
    private static final double ROUNDINGS = 1e-14;
    // A difference of levels of up to 200 dB keeps 3e-14 dB; the near-end law adds what a small loss loses in its
    // quotient.
    private static final double DECIBEL_ROUNDINGS = 1e-11;

    @Provide
    Arbitrary<CorrectionLaw> laws() {
        return Arbitraries.of(
                new CopperTemperature(0.00393),
                new CopperTemperature(0.0040),
                new UnscreenedLossTemperature(0.004, 0.006),
                new ScreenedLossTemperature(0.002),
                new CableLossTemperature(0.0035, -40, 80),
                new ResistanceLossTemperature(0.00393),
                new InsulationResistanceTemperature(1.06, -40, 80),
                new LinearLength(),
                new SquareRootLength(),
                new NearEndCrosstalkLength(true),
                new FarEndCrosstalkLength(),
                new InsulationResistanceLength());
    }

    @Property
    void toTheReferenceAndBackIsTheSame(
            @ForAll("laws") CorrectionLaw law,
            @ForAll @DoubleRange(min = 1, max = 200) @Scale(9) double value,
            @ForAll @DoubleRange(min = -20, max = 60) @Scale(9) double celsius,
            @ForAll @DoubleRange(min = -20, max = 60) @Scale(9) double referenceCelsius,
            @ForAll @DoubleRange(min = 1, max = 10_000) @Scale(9) double metres,
            @ForAll @DoubleRange(min = 1, max = 10_000) @Scale(9) double referenceMetres,
            @ForAll @DoubleRange(min = 1e-4, max = 1) @Scale(9) double lossPerMetre) {
        MeasurementConditions there = conditions(celsius, metres, referenceCelsius, referenceMetres, lossPerMetre);
        MeasurementConditions back = conditions(referenceCelsius, referenceMetres, celsius, metres, lossPerMetre);
        double returned = law.correct(law.correct(value, there), back);
        assertEquals(value, returned, isInDecibels(law) ? DECIBEL_ROUNDINGS : value * ROUNDINGS);
    }

    @Property
    void atTheReferenceNothingIsCorrected(
            @ForAll("laws") CorrectionLaw law,
            @ForAll @DoubleRange(min = -200, max = 200) @Scale(9) double value,
            @ForAll @DoubleRange(min = -20, max = 60) @Scale(9) double celsius,
            @ForAll @DoubleRange(min = 1, max = 10_000) @Scale(9) double metres) {
        MeasurementConditions atReference = conditions(celsius, metres, celsius, metres, 0.02);
        assertEquals(value, law.correct(value, atReference), 0);
    }

    @Property
    void aGreaterReadingStaysGreater(
            @ForAll("laws") CorrectionLaw law,
            @ForAll @DoubleRange(min = 1, max = 200) @Scale(9) double value,
            @ForAll @DoubleRange(min = 0.001, max = 100) @Scale(9) double more,
            @ForAll @DoubleRange(min = -20, max = 60) @Scale(9) double celsius,
            @ForAll @DoubleRange(min = 1, max = 10_000) @Scale(9) double metres) {
        MeasurementConditions conditions = conditions(celsius, metres, 20, 100, 0.02);
        assertTrue(law.correct(value + more, conditions) > law.correct(value, conditions));
    }

    @Property
    void theWarmerTheCableWasTheLessIsLeftAtTheReference(
            @ForAll @DoubleRange(min = -20, max = 59) @Scale(9) double celsius,
            @ForAll @DoubleRange(min = 0.001, max = 1) @Scale(9) double warmer,
            @ForAll @DoubleRange(min = 1, max = 200) @Scale(9) double value) {
        for (CorrectionLaw law : List.of(
                new CopperTemperature(0.00393),
                new UnscreenedLossTemperature(0.004, 0.006),
                new ScreenedLossTemperature(0.002),
                new CableLossTemperature(0.0035, -40, 80),
                new ResistanceLossTemperature(0.00393))) {
            double cool = law.correct(value, conditions(celsius, 100, 20, 100, 0.02));
            double warm = law.correct(value, conditions(celsius + warmer, 100, 20, 100, 0.02));
            assertTrue(warm < cool, law.name());
        }
    }

    @Property
    void theWarmerTheCableWasTheMoreInsulationResistanceItHasAtTheReference(
            @ForAll @DoubleRange(min = -20, max = 59) @Scale(9) double celsius,
            @ForAll @DoubleRange(min = 0.001, max = 1) @Scale(9) double warmer,
            @ForAll @DoubleRange(min = 1, max = 200) @Scale(9) double value) {
        CorrectionLaw law = new InsulationResistanceTemperature(1.06, -40, 80);
        double cool = law.correct(value, conditions(celsius, 100, 20, 100, 0.02));
        double warm = law.correct(value, conditions(celsius + warmer, 100, 20, 100, 0.02));
        assertTrue(warm > cool);
    }

    @Property
    void theSquareRootOfResistanceLawTakesLessThanTheResistancesOwn(
            @ForAll @DoubleRange(min = -20, max = 60) @Scale(9) double celsius,
            @ForAll @DoubleRange(min = 1, max = 200) @Scale(9) double value) {
        MeasurementConditions there = conditions(celsius, 100, 20, 100, 0.02);
        double root = new ResistanceLossTemperature(0.00393).correct(value, there);
        double whole = new CopperTemperature(0.00393).correct(value, there);
        assertEquals(whole, root * root / value, value * ROUNDINGS);
        assertTrue(Math.abs(root - value) <= Math.abs(whole - value));
    }

    @Property
    void theHalfLinearLawLiesBetweenTheTwoThatItIsMadeOf(
            @ForAll @DoubleRange(min = 1, max = 10_000) @Scale(9) double metres,
            @ForAll @DoubleRange(min = 1, max = 10_000) @Scale(9) double referenceMetres,
            @ForAll @DoubleRange(min = 1, max = 200) @Scale(9) double value) {
        MeasurementConditions there = conditions(20, metres, 20, referenceMetres, 0.02);
        double linear = new LinearLength().correct(value, there);
        double root = new SquareRootLength().correct(value, there);
        double half = new HalfLinearLength().correct(value, there);
        double slack = value * ROUNDINGS * Math.max(1, referenceMetres / metres);
        assertTrue(half >= Math.min(linear, root) - slack);
        assertTrue(half <= Math.max(linear, root) + slack);
        MeasurementConditions atReference = conditions(20, metres, 20, metres, 0.02);
        assertEquals(value, new HalfLinearLength().correct(value, atReference), 0);
    }

    @Property
    void theUnscreenedLossLawIsContinuousEverywhere(
            @ForAll @DoubleRange(min = -20, max = 59.999) @Scale(9) double celsius,
            @ForAll @DoubleRange(min = 1, max = 100) @Scale(9) double value) {
        double step = 1e-6;
        UnscreenedLossTemperature law = new UnscreenedLossTemperature(0.004, 0.006);
        double change = law.correct(value, conditions(celsius + step, 100, 20, 100, 0.02))
                - law.correct(value, conditions(celsius, 100, 20, 100, 0.02));
        // The steepest relative slope is 0.006/1.08 above the step; below it 0.004/0.84.
        assertTrue(Math.abs(change) <= value * step * 0.006 / 0.84 / 0.84 + value * ROUNDINGS);
    }

    @Property
    void theLongerTheReelWasTheMoreItsLengthLawTakesOff(
            @ForAll @DoubleRange(min = 1, max = 5_000) @Scale(9) double metres,
            @ForAll @DoubleRange(min = 1.01, max = 2) @Scale(9) double longer,
            @ForAll @DoubleRange(min = 1, max = 200) @Scale(9) double value) {
        MeasurementConditions shortReel = conditions(20, metres, 20, 100, 0.002);
        MeasurementConditions longReel = conditions(20, metres * longer, 20, 100, 0.002);
        for (CorrectionLaw adding : List.of(new LinearLength(), new SquareRootLength(), new HalfLinearLength())) {
            assertTrue(adding.correct(value, longReel) < adding.correct(value, shortReel), adding.name());
        }
        for (CorrectionLaw thinning : List.of(new FarEndCrosstalkLength(), new InsulationResistanceLength())) {
            assertTrue(thinning.correct(value, longReel) > thinning.correct(value, shortReel), thinning.name());
        }
        CorrectionLaw nearEnd = new NearEndCrosstalkLength(true);
        assertTrue(nearEnd.correct(value, longReel) >= nearEnd.correct(value, shortReel), nearEnd.name());
    }

    @Property
    void aShortReelsNearEndCrosstalkIsNeverCreditedAndNeverTakenPastTheTenLogLaw(
            @ForAll @DoubleRange(min = 1, max = 99) @Scale(9) double metres,
            @ForAll @DoubleRange(min = 1e-6, max = 1) @Scale(9) double lossPerMetre,
            @ForAll @DoubleRange(min = 20, max = 100) @Scale(9) double value) {
        double referred =
                new NearEndCrosstalkLength(false).correct(value, conditions(20, metres, 20, 100, lossPerMetre));
        assertTrue(referred <= value);
        assertTrue(referred >= value - 10 * Math.log10(100 / metres) - DECIBEL_ROUNDINGS);
    }

    @Property
    void aPowerSumIsNeverAboveItsSmallestPartNorFarBelow(
            @ForAll @Size(min = 1, max = 60) List<@DoubleRange(min = -20, max = 120) @Scale(9) Double> levels) {
        double[] parts = primitive(levels);
        double smallest = Collections.min(levels);
        double sum = PowerSum.of(parts);
        assertTrue(sum <= smallest);
        assertTrue(sum >= smallest - 10 * Math.log10(parts.length) - DECIBEL_ROUNDINGS);
    }

    @Property
    void oneMorePartNeverRaisesAPowerSum(
            @ForAll @Size(min = 1, max = 60) List<@DoubleRange(min = -20, max = 120) @Scale(9) Double> levels,
            @ForAll @DoubleRange(min = -20, max = 120) @Scale(9) double more) {
        double[] parts = primitive(levels);
        double[] withMore = Arrays.copyOf(parts, parts.length + 1);
        withMore[parts.length] = more;
        assertTrue(PowerSum.of(withMore) <= PowerSum.of(parts) + ROUNDINGS * 120);
    }

    @Property
    void theOrderOfTheValuesNeverMatters(
            @ForAll @Size(min = 2, max = 60) List<@DoubleRange(min = 0.5, max = 120) @Scale(9) Double> values,
            @ForAll long shuffle) {
        double[] inOrder = primitive(values);
        Collections.shuffle(values, new Random(shuffle));
        double[] shuffled = primitive(values);
        assertEquals(PowerSum.of(inOrder), PowerSum.of(shuffled), 0);
        assertEquals(DelaySkew.of(inOrder), DelaySkew.of(shuffled), 0);
        assertEquals(SummaryStatistics.mean(inOrder), SummaryStatistics.mean(shuffled), 0);
        assertEquals(SummaryStatistics.rms(inOrder), SummaryStatistics.rms(shuffled), 0);
        assertEquals(SummaryStatistics.rmsOfLevels(inOrder), SummaryStatistics.rmsOfLevels(shuffled), 0);
        assertEquals(
                SummaryStatistics.rmsDeviationPercent(inOrder), SummaryStatistics.rmsDeviationPercent(shuffled), 0);
        assertEquals(SummaryStatistics.meanMinusSigma(inOrder), SummaryStatistics.meanMinusSigma(shuffled), 0);
    }

    @Property
    void figuresLieWhereTheyMust(
            @ForAll @Size(min = 2, max = 60) List<@DoubleRange(min = 0.5, max = 120) @Scale(9) Double> values) {
        double[] numbers = primitive(values);
        double smallest = Collections.min(values);
        double greatest = Collections.max(values);
        double slack = greatest * ROUNDINGS;
        double mean = SummaryStatistics.mean(numbers);
        assertTrue(mean >= smallest && mean <= greatest + slack);
        assertTrue(SummaryStatistics.rms(numbers) >= mean - slack);
        assertTrue(SummaryStatistics.rms(numbers) <= greatest + slack);
        assertTrue(SummaryStatistics.rmsOfLevels(numbers) <= mean + DECIBEL_ROUNDINGS);
        assertTrue(SummaryStatistics.rmsOfLevels(numbers) >= smallest - DECIBEL_ROUNDINGS);
        assertTrue(SummaryStatistics.meanMinusSigma(numbers) <= mean);
    }

    @Property
    void theThreeUnbalancesKeepTheirRatios(
            @ForAll @DoubleRange(min = 0.1, max = 1000) @Scale(9) double r1,
            @ForAll @DoubleRange(min = 0.1, max = 1000) @Scale(9) double r2) {
        double minimum = UnbalanceDenominator.MINIMUM.percent(r1, r2);
        double sum = UnbalanceDenominator.SUM.percent(r1, r2);
        double mean = UnbalanceDenominator.MEAN.percent(r1, r2);
        assertEquals(2 * sum, mean, mean * ROUNDINGS);
        assertTrue(mean <= minimum * (1 + ROUNDINGS));
        assertEquals(minimum, UnbalanceDenominator.MINIMUM.percent(r2, r1), 0);
        double inParallel = PairResistance.parallel(r1, r2);
        assertTrue(inParallel < Math.min(r1, r2) && inParallel >= Math.min(r1, r2) / 2 * (1 - ROUNDINGS));
    }

    private static boolean isInDecibels(CorrectionLaw law) {
        return law instanceof NearEndCrosstalkLength || law instanceof FarEndCrosstalkLength;
    }

    private static double[] primitive(List<Double> values) {
        return values.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private static MeasurementConditions conditions(
            double celsius, double metres, double referenceCelsius, double referenceMetres, double lossPerMetre) {
        return new MeasurementConditions(
                Temperature.ofCelsius(celsius),
                Length.ofMetres(metres),
                Temperature.ofCelsius(referenceCelsius),
                Length.ofMetres(referenceMetres),
                OptionalDouble.of(lossPerMetre));
    }
}
