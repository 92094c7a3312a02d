package dev.reelproof.network;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Where a network begins to count as active or one-way. */
class NetworkChecksTest {
    private static final int PORTS = 4;

    /** Entry (row, column) of the discrete Fourier transform over √n, a unitary matrix. */
    private static Complex fourier(int row, int column) {
        return Complex.polar(1 / Math.sqrt(PORTS), -2 * Math.PI * row * column / PORTS);
    }

    /** U diag(gains) V with unitary U and V: its greatest gain of amplitude, over all inputs, is the greatest of the gains. */
    private static ComplexMatrix ofGains(double[] gains) {
        ComplexMatrix s = new ComplexMatrix(PORTS);
        for (int row = 0; row < PORTS; row++) {
            for (int column = 0; column < PORTS; column++) {
                Complex sum = Complex.real(0);
                for (int k = 0; k < PORTS; k++) {
                    // the phases differ from port to port, so that nothing cancels by symmetry
                    Complex v = fourier(k, column).times(Complex.polar(1, 0.7 * column * column));
                    sum = sum.plus(fourier(row, k).times(gains[k]).times(v));
                }
                s.set(row, column, sum.re(), sum.im());
            }
        }
        return s;
    }

    @Test
    void aNetworkIsPassiveUpToAHundredthOfAmplitudeWhicheverTheInputThatItGainsFor() {
        for (int k = 0; k < PORTS; k++) {
            double[] gains = {0.9, 0.7, 0.5, 0.3};
            gains[k] = 1.0099;
            assertEquals(true, NetworkChecks.isPassive(ofGains(gains)), "input " + k);
            gains[k] = 1.0101;
            assertEquals(false, NetworkChecks.isPassive(ofGains(gains)), "input " + k);
        }
    }

    @ParameterizedTest
    @CsvSource({
        // 0.0003 and a twentieth of the larger
        "0.00031, 0, 0, 0, ''",
        "0.00032, 0, 0, 0, 'S1,2 and S2,1'",
        "0, 0, 0, 0.00031, ''",
        "0, 0, 0, 0.00032, 'S1,2 and S2,1'",
        "0.5, 0, 0.4748, 0, ''",
        "0.5, 0, 0.4746, 0, 'S1,2 and S2,1'",
        "0, 0.4748, 0, 0.5, ''",
        "0, 0.4746, 0, 0.5, 'S1,2 and S2,1'",
        "0.4, 0, 0, 0.4, 'S1,2 and S2,1'",
        "0.4, 0, -0.4, 0, 'S1,2 and S2,1'"
    })
    void entriesMayDifferByWhatNoiseAndCalibrationLeave(
            double re12, double im12, double re21, double im21, String words) {
        ComplexMatrix s = new ComplexMatrix(2);
        s.set(0, 1, re12, im12);
        s.set(1, 0, re21, im21);
        assertEquals(words, NetworkChecks.oneWayEntries(s));
    }

    @Test
    void theFirstOfTheDoubtfulFrequenciesIsNamedWithItsLineAndItsEntries() {
        double[][] matrices = {
            {0, 0, .5, 0, .5, 0, 0, 0},
            {0, 0, .5, 0, .4, 0, 0, 0},
            {1.1, 0, .1, 0, .1, 0, 0, 0},
            {1.1, 0, .1, 0, .2, 0, 0, 0},
            {0, 0, .5, 0, .5, 0, 0, 0}
        };
        NetworkData data = new NetworkData(
                "x.s2p",
                "made",
                2,
                new double[] {1, 2, 3, 4, 5},
                new int[] {11, 12, 13, 14, 15},
                matrices,
                new double[] {50, 50},
                Optional.empty(),
                List.of());
        assertEquals(
                List.of(
                        "The network of x.s2p is not passive at 2 of 5 frequencies, first at x.s2p:13 (3.0 MHz): more"
                                + " comes out than goes in, by more than 0.01 of the amplitude. Check the calibration"
                                + " of the analyser; the data were used as they are.",
                        "The network of x.s2p is not reciprocal at 2 of 5 frequencies, first at x.s2p:12 (2.0 MHz):"
                                + " S1,2 and S2,1 differ by more than 3.0E-4 and 0.05 of the larger. Check the"
                                + " calibration and the order of the ports; the data were used as they are."),
                NetworkChecks.warnings(data));
    }
}
