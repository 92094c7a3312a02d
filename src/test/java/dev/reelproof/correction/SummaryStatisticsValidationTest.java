package dev.reelproof.correction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Figures of sets of values against certified and hand-worked values. */
class SummaryStatisticsValidationTest {
    // Source: NIST/SEMATECH e-Handbook 6.3.2.2, flow rate, 10 batches (read in public test suites that quote it).
    private static final double[] FLOW_RATE = {49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1};

    // Source: as above: mean 50.81 as printed, exact in decimals; sigma 2.0338524 with divisor n - 1, computed
    // independently to eight digits.
    @Test
    void nistFlowRate() {
        assertEquals(50.81, SummaryStatistics.mean(FLOW_RATE), 1e-13);
        assertEquals(50.81 - 2.0338524, SummaryStatistics.meanMinusSigma(FLOW_RATE), 5e-8);
        double divisorN = 2.0338524 * Math.sqrt(9.0 / 10);
        assertEquals(100 * divisorN / 50.81, SummaryStatistics.rmsDeviationPercent(FLOW_RATE), 2e-7);
    }

    // Source: NIST Statistical Reference Datasets, univariate, NumAcc1 to NumAcc4 (certified values read in public
    // suites): built by their
    // definition. Tolerances: mean to 14 digits; sigma is reached as a difference of the mean, whose last place at 1e7
    // is 2e-9, plus the
    // rounding of the inputs to binary, which leaves 14, 9 and 8 digits of sigma.
    @ParameterizedTest(name = "centre {0}: mean {0}, sigma 0.1")
    @CsvSource({"1.2, 1e-15", "1000000.2, 1e-10", "10000000.2, 4e-9"})
    void nistNumericalAccuracy(double centre, double sigmaTolerance) {
        double[] values = new double[1001];
        values[0] = centre;
        for (int i = 1; i < values.length; i += 2) {
            values[i] = centre - 0.1;
            values[i + 1] = centre + 0.1;
        }
        double mean = SummaryStatistics.mean(values);
        assertEquals(centre, mean, centre * 1e-14);
        assertEquals(0.1, mean - SummaryStatistics.meanMinusSigma(values), sigmaTolerance);
    }

    // Source: NIST StRD NumAcc1 (certified, exact): mean 10000002, sigma 1.
    @Test
    void nistNumAcc1() {
        assertEquals(10000002, SummaryStatistics.mean(10000001, 10000003, 10000002), 0);
        assertEquals(10000001, SummaryStatistics.meanMinusSigma(10000001, 10000003, 10000002), 0);
    }

    // Source: the Pythagorean triple 3, 4, 5: the rms of 3 and 4 is 5/sqrt 2; and of 1, 7: 5.
    @Test
    void rms() {
        assertEquals(5, SummaryStatistics.rms(1, 7), 0);
        assertEquals(5, SummaryStatistics.rms(-1, 7), 0);
        assertEquals(5 / Math.sqrt(2), SummaryStatistics.rms(3, 4), 1e-15);
    }

    // Source: worked by hand: ratios of 40 and 20 dB are 0.01 and 0.1; rms = sqrt((0.0001 + 0.01)/2) = 0.0710634, which
    // is 22.967 dB. The
    // plain mean of the levels, 30 dB, would flatter the reel by 7 dB. Tolerance: half the last place.
    @Test
    void rmsOfLevelsIsThatOfTheRatios() {
        assertEquals(22.967, SummaryStatistics.rmsOfLevels(40, 20), 0.0005);
        assertEquals(68, SummaryStatistics.rmsOfLevels(68, 68, 68), 1e-13);
    }

    // Source: worked by hand: 51 and 53 nF/km deviate by 1 from 52, 100/52 = 1.92308 % with divisor n; with n - 1 it
    // would be 2.71964 %.
    @Test
    void theRmsDeviationTakesTheDivisorN() {
        assertEquals(100.0 / 52, SummaryStatistics.rmsDeviationPercent(51, 53), 1e-14);
    }

    // Source: worked by hand: 58 and 62 dB, mean 60, sigma sqrt(8/1) = 2.82843.
    @Test
    void theSigmaTakesTheDivisorOneLess() {
        assertEquals(60 - Math.sqrt(8), SummaryStatistics.meanMinusSigma(58, 62), 1e-14);
    }

    @Test
    void equalValuesGiveExactlyThemselves() {
        double[] equal = {51.7, 51.7, 51.7, 51.7, 51.7, 51.7, 51.7};
        assertEquals(51.7, SummaryStatistics.mean(equal), 0);
        assertEquals(0, SummaryStatistics.rmsDeviationPercent(equal), 0);
        assertEquals(51.7, SummaryStatistics.meanMinusSigma(equal), 0);
    }

    @Test
    void refusesTooFewOrNotFinite() {
        assertThrows(IllegalArgumentException.class, SummaryStatistics::mean);
        assertThrows(IllegalArgumentException.class, SummaryStatistics::rms);
        assertThrows(IllegalArgumentException.class, SummaryStatistics::rmsOfLevels);
        assertThrows(IllegalArgumentException.class, SummaryStatistics::rmsDeviationPercent);
        assertThrows(IllegalArgumentException.class, () -> SummaryStatistics.meanMinusSigma(60));
        assertThrows(IllegalArgumentException.class, () -> SummaryStatistics.mean(1, Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> SummaryStatistics.rmsDeviationPercent(-1, 1));
        assertThrows(IllegalArgumentException.class, () -> SummaryStatistics.rmsDeviationPercent(-5, -6));
    }
}
