package dev.reelproof.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DecibelsTest {
    /** Rounding of a power and a logarithm in double precision, at levels of some 100 dB. */
    private static final double ROUNDINGS = 1e-12;

    @ParameterizedTest
    @CsvSource({"1, 0, 0", "10, 10, 20", "100, 20, 40", "0.1, -10, -20"})
    void aDecadeOfPowerIsTenDecibelsAndOneOfAmplitudeTwenty(double ratio, double ofPower, double ofAmplitude) {
        assertEquals(ofPower, Decibels.ofPowerRatio(ratio), ROUNDINGS);
        assertEquals(ofAmplitude, Decibels.ofAmplitudeRatio(ratio), ROUNDINGS);
        assertEquals(ratio, Decibels.powerRatio(ofPower), ratio * ROUNDINGS);
        assertEquals(ratio, Decibels.amplitudeRatio(ofAmplitude), ratio * ROUNDINGS);
    }

    /** A power goes with the square of its amplitude, so that both ratios give one level. */
    @ParameterizedTest
    @CsvSource({"0.001", "0.7", "3.3", "250"})
    void theLevelOfAnAmplitudeIsThatOfItsPower(double amplitude) {
        assertEquals(
                Decibels.ofPowerRatio(amplitude * amplitude), Decibels.ofAmplitudeRatio(amplitude), 100 * ROUNDINGS);
    }
}
