package dev.reelproof.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.measurement.Conductor;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.NetworkTerms;
import dev.reelproof.measurement.Property;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.DoubleFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is no conductor is told from a conductor, and a pair of conductors from nothing else. */
class SingleEndedChecksTest {
    private static final double LIGHT = 299.792458;
    private static final Set<Property> RETURNED = EnumSet.of(Property.RETURN_LOSS);

    private static DerivedSweeps derive(String file, String text, List<Port> ports, CableSpan span) {
        return NetworkSweeps.derive(
                NetworkSweepsTest.read(file, text), PortMap.of(ports), NetworkTerms.USUAL, span, RETURNED);
    }

    private static List<Port> conductors(int firstNumber, End end, int pair) {
        return List.of(
                new Port(firstNumber, end, pair, Conductor.A), new Port(firstNumber + 1, end, pair, Conductor.B));
    }

    private static List<Port> onePair() {
        return IntStream.range(0, 2)
                .mapToObj(end -> conductors(2 * end + 1, End.values()[end], 1))
                .flatMap(List::stream)
                .toList();
    }

    private static double[] linear(double from, double step, double to) {
        return IntStream.rangeClosed(0, (int) Math.round((to - from) / step))
                .mapToDouble(i -> from + i * step)
                .toArray();
    }

    @ParameterizedTest
    @CsvSource({
        "30, 0.68, 1, 0.5, 250",
        "100, 0.68, 1, 0.25, 100",
        "100, , 1, 0.5, 500",
        "305, 0.68, 1, 0.5, 500",
        "305, , 1, 0.5, 500",
        "305, 0.71, 1, 1, 500",
        "1000, 0.66, 0.1, 0.1, 30"
    })
    void theTwoEndsOfAPairAreNotTheConductorsOfOne(double metres, Double nominal, double from, double step, double to) {
        SyntheticCable cable = new SyntheticCable(1, metres, nominal == null ? 0.68 : nominal);
        String text = cable.differential("R 100", linear(from, step, to));
        NetworkException refused = assertThrows(
                NetworkException.class,
                () -> derive("x.s2p", text, conductors(1, End.NEAR, 1), new CableSpan(metres, nominal)));
        assertEquals("x.s2p:2", refused.where());
        assertTrue(refused.getMessage().contains("ports 1 and 2 are said to be the conductors of pair 1"));
        assertTrue(refused.getMessage().contains("\"mode\": \"differential\""), refused::getMessage);
    }

    @Test
    void declaredAsItIsTheSameFileHasAReturnLossThatWasWrongBefore() {
        SyntheticCable cable = new SyntheticCable(1, 100, 0.68);
        double[] grid = linear(1, 0.25, 100);
        DerivedSweeps right =
                derive("x.s2p", cable.differential("R 100", grid), cable.differentialPorts(), new CableSpan(100, 0.68));
        // 100 ohm in 100 ohm returns nothing; a − b of the two ends returns what goes through, 1.7 dB at 1 MHz
        assertTrue(right.sweeps().get(0).value(0) > 38 + cable.loss(1), "no more than what was shown");
        assertEquals(List.of(), right.warnings());
    }

    @ParameterizedTest
    @CsvSource({"100, 0.68, 100", "100, , 500", "305, 0.68, 100"})
    void twoPairsAreNotTheConductorsOfOne(double metres, Double nominal, double to) {
        SyntheticCable cable = new SyntheticCable(2, metres, 0.68);
        String text = cable.differential("R 100", linear(1, 0.5, to));
        DerivedSweeps derived = derive("x.s4p", text, onePair(), new CableSpan(metres, nominal));
        assertEquals(1, derived.warnings().size(), derived.warnings()::toString);
        assertTrue(
                derived.warnings()
                        .get(0)
                        .startsWith(
                                "Of pair 1 in x.s4p (ports 1, 2 and 3, 4) the conductors carry a signal and exchange"
                                        + " less than a hundredth of it"),
                derived.warnings()::toString);
    }

    @Test
    void conductorsOfTwoPairsExchangedAreSeenByTheCommonModeThatTheyMake() {
        SyntheticCable cable = new SyntheticCable(2, 100, 0.68);
        // near: 1a 2a | 1b 2b, far as it should be
        int[] order = {0, 2, 1, 3, 4, 5, 6, 7};
        String text = cable.touchstone(linear(1, 0.5, 100), order);
        DerivedSweeps derived = derive("x.s8p", text, cable.ports(), new CableSpan(100, 0.68));
        assertEquals(2, derived.warnings().size(), derived.warnings()::toString);
        assertTrue(
                derived.warnings().get(0).contains("more than a quarter of the energy"), derived.warnings()::toString);
    }

    /** A pair from its two modes at both ends; loads at the far end are the references, or it is open and not in the file. */
    private static String pair(
            double[] grid, DoubleFunction<Complex[]> even, DoubleFunction<Complex[]> odd, boolean open) {
        StringBuilder text = new StringBuilder("# MHz S RI R 50\n");
        for (double f : grid) {
            Complex[] e = even.apply(f);
            Complex[] o = odd.apply(f);
            if (open) {
                e = opened(e);
                o = opened(o);
            }
            Complex[][] block = {
                {e[0].plus(o[0]).times(0.5), e[0].minus(o[0]).times(0.5)},
                {e[1].plus(o[1]).times(0.5), e[1].minus(o[1]).times(0.5)}
            };
            int ports = open ? 2 : 4;
            text.append(f);
            for (int row = 0; row < ports; row++) {
                for (int column = 0; column < ports; column++) {
                    Complex value = block[row / 2 == column / 2 ? 0 : 1][row % 2 == column % 2 ? 0 : 1];
                    text.append(String.format(Locale.ROOT, " %.9e %.9e", value.re(), value.im()));
                }
                text.append('\n');
            }
        }
        return text.toString();
    }

    /** S11 with port 2 open: S11 + S21²/(1 − S11). */
    private static Complex[] opened(Complex[] line) {
        return new Complex[] {line[0].plus(line[1].times(line[1]).over(Complex.ONE.minus(line[0]))), Complex.real(0)};
    }

    private static DoubleFunction<Complex[]> line(double ohm, double metres, double velocity, double decibel) {
        return f -> {
            double neper = decibel * Math.sqrt(f) * metres / 100 * Math.log(10) / 20;
            double radian = 2 * Math.PI * f * metres / (velocity * LIGHT) + neper;
            return Complex.line(ohm, new Complex(neper, radian), 50);
        };
    }

    /**
     * Pairs with and without a screen: the common mode from nearly matched to far off, from as fast as light to slower than the
     * differential one, with more and with less loss; terminated at both ends, or seen from one with the other open.
     */
    @ParameterizedTest
    @CsvSource({"1, 500, 0.5", "1, 100, 0.25", "1, 250, 1", "0.1, 20, 0.02"})
    void noPairOfConductorsIsTakenForAnythingElse(double from, double to, double step) {
        double[] grid = linear(from, step, to);
        for (double metres : new double[] {20, 100, 305}) {
            for (double ohm : new double[] {55, 75, 120, 200}) {
                for (double velocity : new double[] {0.63, 0.69, 0.74, 0.95}) {
                    for (Double nominal : new Double[] {0.68, null}) {
                        for (boolean open : new boolean[] {false, true}) {
                            String words = metres + " m, " + ohm + " ohm, " + velocity + ", " + nominal + ", " + open;
                            String text =
                                    pair(grid, line(ohm, metres, velocity, 2.5), line(51, metres, 0.68, 1.9), open);
                            DerivedSweeps derived = derive(
                                    open ? "x.s2p" : "x.s4p",
                                    text,
                                    open ? conductors(1, End.NEAR, 1) : onePair(),
                                    new CableSpan(metres, nominal));
                            assertEquals(List.of(), derived.warnings(), words);
                        }
                    }
                }
            }
        }
    }

    @Test
    void aSweepThatIsTooShortTellsNothing() {
        SyntheticCable cable = new SyntheticCable(1, 100, 0.68);
        for (double[] grid : List.of(linear(1, 0.05, 10), linear(1, 10, 91), new double[] {1})) {
            DerivedSweeps derived = derive(
                    "x.s2p", cable.differential("R 100", grid), conductors(1, End.NEAR, 1), new CableSpan(100, 0.68));
            assertEquals(List.of(), derived.warnings());
        }
    }
}
