package dev.reelproof.network;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.measurement.End;
import dev.reelproof.measurement.NetworkTerms;
import dev.reelproof.measurement.Origin;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Sweep;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import net.jqwik.api.ForAll;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

/** What a fit takes, refuses and leaves out. */
class ImpedanceFitTest {
    private static double[] grid(int points, double top) {
        double[] grid = new double[points];
        Arrays.setAll(grid, i -> 1 + (top - 1) * i / (points - 1));
        return grid;
    }

    @net.jqwik.api.Property
    void whatFollowsTheEquationIsFoundAgain(
            @ForAll @DoubleRange(min = 80, max = 150) double k0,
            @ForAll @DoubleRange(min = -20, max = 40) double k1,
            @ForAll @DoubleRange(min = -10, max = 10) double k2,
            @ForAll @DoubleRange(min = -5, max = 5) double k3,
            @ForAll @DoubleRange(min = -0.2, max = 0.2) double l1) {
        double[] f = grid(60, 300);
        double[] re = new double[f.length];
        double[] im = new double[f.length];
        for (int i = 0; i < f.length; i++) {
            double size = k0 + k1 / Math.sqrt(f[i]) + k2 / f[i] + k3 / (f[i] * Math.sqrt(f[i]));
            re[i] = size * Math.cos(l1 / Math.sqrt(f[i]));
            im[i] = size * Math.sin(l1 / Math.sqrt(f[i]));
        }
        ImpedanceFit fit = ImpedanceFit.of(f, re, im);
        assertArrayEquals(new double[] {k0, k1, k2, k3}, fit.coefficients(), 1e-6);
        for (int i = 0; i < f.length; i++) {
            assertEquals(Math.hypot(re[i], im[i]), fit.magnitude(f[i]), 1e-9);
            assertEquals(l1 / Math.sqrt(f[i]), fit.angle(f[i]), 1e-12);
            assertTrue(fit.structuralReturnLoss(f[i], re[i], im[i]) > 200);
        }
    }

    @Test
    void aFitNeedsEnoughFrequenciesOverADecade() {
        double[] ohm = new double[40];
        double[] none = new double[40];
        Arrays.fill(ohm, 100);
        assertEquals(100, fitOf(grid(20, 10), ohm, none).magnitude(5), 1e-9);
        assertThrows(IllegalArgumentException.class, () -> fitOf(grid(19, 10), ohm, none));
        assertThrows(IllegalArgumentException.class, () -> fitOf(grid(20, 9.99), ohm, none));
    }

    private static ImpedanceFit fitOf(double[] grid, double[] re, double[] im) {
        return ImpedanceFit.of(grid, Arrays.copyOf(re, grid.length), Arrays.copyOf(im, grid.length));
    }

    @Test
    void whatIsTheImpedanceOfNoCableIsRefused() {
        double[] im = new double[20];
        for (double wrong : new double[] {0, -1, Double.NaN, Double.POSITIVE_INFINITY}) {
            double[] re = new double[20];
            Arrays.fill(re, 100);
            re[7] = wrong;
            IllegalArgumentException refused =
                    assertThrows(IllegalArgumentException.class, () -> ImpedanceFit.of(grid(20, 20), re, im));
            assertTrue(refused.getMessage().startsWith("at 8.0 MHz"), refused::getMessage);
        }
        double[] re = new double[20];
        Arrays.fill(re, 100);
        im[3] = Double.NaN;
        assertThrows(IllegalArgumentException.class, () -> ImpedanceFit.of(grid(20, 20), re, im));
    }

    @Test
    void structuralReturnLossIsThatOfTheTwoImpedances() {
        assertEquals(20 * Math.log10(21), StructuralReturnLoss.of(110, 0, 100, 0), 1e-12);
        assertEquals(20 * Math.log10(21), StructuralReturnLoss.of(100, 0, 110, 0), 1e-12);
        assertEquals(300, StructuralReturnLoss.of(100, 0, 100, 0), 1e-9);
        // a reactance of a tenth: |j10/(200 + j10)|
        assertEquals(20 * Math.log10(Math.hypot(200, 10) / 10), StructuralReturnLoss.of(100, 10, 100, 0), 1e-12);
    }

    /** One end alone, open at the other: nothing comes back that is no echo, and an open line of no loss has no resistance. */
    @Test
    void aPairOfWhichNoImpedanceCanBeFittedIsNamed() {
        StringBuilder text = new StringBuilder("# MHz S RI R 100\n");
        for (double f : grid(40, 40)) {
            text.append(String.format(Locale.ROOT, "%s %.9e %.9e%n", f, Math.cos(f), Math.sin(f)));
        }
        DerivedSweeps derived = NetworkSweeps.derive(
                NetworkSweepsTest.read("x.s1p", text.toString()),
                PortMap.of(List.of(Port.ofMode(1, End.NEAR, 1, PortMode.DIFFERENTIAL))),
                NetworkTerms.USUAL,
                new CableSpan(100, null),
                EnumSet.of(Property.STRUCTURAL_RETURN_LOSS));
        assertEquals(List.of(), derived.sweeps());
        assertEquals(1, derived.warnings().size());
        assertTrue(
                derived.warnings()
                        .get(0)
                        .startsWith("No characteristic impedance was fitted for the near end of pair 1 from x.s1p: at"),
                derived.warnings()::toString);
    }

    @Test
    void theFitBeginsAtOneMegahertzAndItsChainSaysHow() {
        SyntheticCable cable = new SyntheticCable(1, 305, 0.68);
        double[] grid = new double[60];
        Arrays.setAll(grid, i -> 0.25 + 0.25 * i);
        DerivedSweeps derived = NetworkSweeps.derive(
                NetworkSweepsTest.read("x.s2p", cable.differential("R 100", grid)),
                PortMap.of(cable.differentialPorts()),
                NetworkTerms.USUAL,
                new CableSpan(305, null),
                EnumSet.of(Property.CHARACTERISTIC_IMPEDANCE));
        Sweep near = derived.sweeps().get(0);
        assertEquals(2, derived.sweeps().size());
        assertEquals(1, near.grid().first());
        assertEquals(57, near.size());
        assertEquals("x.s2p:8", near.origin().of(0));
        assertEquals(100, near.value(30), 1e-3);
        List<Origin.Network.Link> chain = ((Origin.Network) near.origin()).chain();
        assertEquals(
                List.of("network file", "renormalised", "mixed mode", "impedance", "function fit", "definition"),
                chain.stream().map(Origin.Network.Link::title).toList());
        assertTrue(chain.get(3).detail().startsWith("Zin = √(Zoc Zsc) at the near end of pair 1"));
        assertTrue(
                chain.get(4).detail().contains("least squares over 57 frequencies from 1.0 to 15.0 MHz"),
                chain.get(4)::detail);
        assertEquals(ImpedanceFit.CITATION, chain.get(5).source());
    }
}
