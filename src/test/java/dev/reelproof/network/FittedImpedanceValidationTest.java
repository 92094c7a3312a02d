package dev.reelproof.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.measurement.End;
import dev.reelproof.measurement.NetworkTerms;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import dev.reelproof.measurement.Sweep;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Source of the figures: a line of known resistance, inductance, conductance and capacitance, and the same with a periodic
 * irregularity, by src/test/python/impedance_reference.py with numpy. There Z0 is √((R + jωL)/(G + jωC)), Zin comes from the chain matrix
 * and the fit from numpy's least squares by singular values: no step is taken as it is here.
 */
class FittedImpedanceValidationTest {
    /**
     * The files print S to 1e-12 of 1. Of the matched line S11 is 1e-3 and S21 as little as 1e-4 at 250 MHz; (1 − S11)(1 − S22) − S12 S21
     * stays near 1, so that √(Zoc Zsc) carries 1e-12 of 100 ohm over, and the fit less. The table prints 1e-9 of its figures.
     */
    private static final double OHM = 1e-6;

    private static final double RADIAN = 1e-8;

    /** Against the true Z0: what a third power of 1/√f leaves of the square root, 3e-3 ohm at 1 MHz where R is a tenth of ωL. */
    private static final double OHM_OF_TRUTH = 3e-3;

    /** 1e-11 of an error against a reflection of 3e-6, 111 dB, is 3e-5 dB; 1e-3 where the level is above 130 dB. */
    private static final double DECIBEL = 0.01;

    private static final Subject NEAR = Subject.ofPair(1).at(End.NEAR);

    private static InputStream resource(String name) {
        return FittedImpedanceValidationTest.class.getResourceAsStream("/network/" + name);
    }

    private static DerivedSweeps derive(String line) throws IOException {
        try (InputStream in = resource(line + ".s2p")) {
            NetworkData data = new TouchstoneReader().read(line + ".s2p", 2, in);
            PortMap map = PortMap.of(List.of(
                    Port.ofMode(1, End.NEAR, 1, PortMode.DIFFERENTIAL),
                    Port.ofMode(2, End.FAR, 1, PortMode.DIFFERENTIAL)));
            return NetworkSweeps.derive(
                    data, map, NetworkTerms.USUAL, new CableSpan(305, null), FittedImpedances.PROPERTIES);
        }
    }

    private static Sweep sweep(DerivedSweeps derived, Property property, Subject subject) {
        return derived.sweeps().stream()
                .filter(one -> one.property() == property && one.subject().equals(subject))
                .findFirst()
                .orElseThrow();
    }

    private static List<String[]> rows(String table, String line) throws IOException {
        try (BufferedReader lines =
                new BufferedReader(new InputStreamReader(resource(table), StandardCharsets.US_ASCII))) {
            return lines.lines()
                    .filter(text -> text.startsWith(line))
                    .map(text -> text.split(","))
                    .toList();
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"uniform-line", "periodic-line"})
    void fitAndStructuralReturnLossAreWhatNumpyGives(String line) throws IOException {
        DerivedSweeps derived = derive(line);
        Sweep impedance = sweep(derived, Property.CHARACTERISTIC_IMPEDANCE, NEAR);
        Sweep structural = sweep(derived, Property.STRUCTURAL_RETURN_LOSS, NEAR);
        int compared = 0;
        for (String[] cells : rows("impedance.csv", line)) {
            int i = (int) Math.round((Double.parseDouble(cells[1]) - 1) / 0.5);
            assertEquals(Double.parseDouble(cells[3]), impedance.value(i), OHM, cells[1] + " MHz");
            double expected = Double.parseDouble(cells[5]);
            // the reflection that is compared, and how far rounding may carry its level
            double reflection = Math.pow(10, -expected / 20);
            assertEquals(expected, structural.value(i), DECIBEL + 1e-9 / reflection, cells[1] + " MHz");
            compared++;
        }
        assertEquals(250, compared);
        assertEquals(List.of(), derived.warnings());
    }

    @Test
    void theFitOfAUniformLineIsItsCharacteristicImpedance() throws IOException {
        DerivedSweeps derived = derive("uniform-line");
        for (End end : End.values()) {
            Subject subject = Subject.ofPair(1).at(end);
            Sweep impedance = sweep(derived, Property.CHARACTERISTIC_IMPEDANCE, subject);
            Sweep structural = sweep(derived, Property.STRUCTURAL_RETURN_LOSS, subject);
            for (String[] cells : rows("impedance.csv", "uniform-line")) {
                int i = (int) Math.round((Double.parseDouble(cells[1]) - 1) / 0.5);
                assertEquals(Double.parseDouble(cells[2]), impedance.value(i), OHM_OF_TRUTH, cells[1] + " MHz");
                assertTrue(structural.value(i) > 90, "a uniform line has no structure, at " + cells[1] + " MHz");
            }
        }
    }

    /** A periodic irregularity reflects in step where its period is half a wavelength, as much as coupled waves say. */
    @Test
    void aPeriodicIrregularityHasItsPeakWhereAndAsHighAsCoupledWavesSay() throws IOException {
        String[] peak = rows("impedance-peak.csv", "1").get(0);
        Sweep structural = sweep(derive("periodic-line"), Property.STRUCTURAL_RETURN_LOSS, NEAR);
        int worst = 0;
        for (int i = 1; i < structural.size(); i++) {
            worst = structural.value(i) < structural.value(worst) ? i : worst;
        }
        assertEquals(Double.parseDouble(peak[0]), structural.grid().megahertz(worst), 1e-9);
        // coupled waves leave out the square of the modulation and the mean that the peak pulls: a hundredth of the
        // reflection
        assertEquals(Double.parseDouble(peak[1]), structural.value(worst), 20 * Math.log10(1.01));
    }

    @Test
    void theAngleIsFittedToo() throws IOException {
        double[] megahertz = new double[499];
        double[] re = new double[megahertz.length];
        double[] im = new double[megahertz.length];
        try (InputStream in = resource("uniform-line.s2p")) {
            NetworkData data = new TouchstoneReader().read("uniform-line.s2p", 2, in);
            for (int i = 0; i < megahertz.length; i++) {
                megahertz[i] = data.megahertz(i);
                double[] z = InputImpedance.openShort(data.matrix(i), 0, 1, 100);
                re[i] = z[0];
                im[i] = z[1];
            }
        }
        ImpedanceFit fit = ImpedanceFit.of(megahertz, re, im);
        for (String[] cells : rows("impedance.csv", "uniform-line")) {
            assertEquals(Double.parseDouble(cells[4]), fit.angle(Double.parseDouble(cells[1])), RADIAN);
        }
        // the coefficients of the powers of 1/√f are those of the polynomial that is evaluated
        double[] k = fit.coefficients();
        for (double f : new double[] {1, 4, 100, 250}) {
            double sum = k[0] + k[1] / Math.sqrt(f) + k[2] / f + k[3] / (f * Math.sqrt(f));
            assertEquals(fit.magnitude(f), sum, 1e-9);
        }
    }
}
