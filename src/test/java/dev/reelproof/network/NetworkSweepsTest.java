package dev.reelproof.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.measurement.Conductor;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.NetworkTerms;
import dev.reelproof.measurement.Origin;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import dev.reelproof.measurement.Sweep;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.DoubleFunction;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The sweeps of networks whose figures are known in closed form. */
class NetworkSweepsTest {
    /** Files print 10 digits of values that may be 1e-4 of the largest: 1e-6 of the smallest, 1e-5 dB. */
    private static final double DECIBEL = 2e-5;

    private static final double LIGHT = 0.299792458;
    private static final CableSpan REFERENCE_SPAN = new CableSpan(100, 0.68);

    static NetworkData read(String file, String text) {
        try {
            return new TouchstoneReader()
                    .read(file, 4, new ByteArrayInputStream(text.getBytes(StandardCharsets.US_ASCII)));
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private static DerivedSweeps derive(NetworkData data, List<Port> ports, NetworkTerms terms, CableSpan span) {
        return NetworkSweeps.derive(data, PortMap.of(ports), terms, span, NetworkSweeps.DERIVABLE);
    }

    private static Sweep sweep(DerivedSweeps derived, Property property, Subject subject) {
        return derived.sweeps().stream()
                .filter(sweep -> sweep.property() == property && sweep.subject().equals(subject))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no " + property + " of " + subject.words()));
    }

    /** Two conductors: port 1 near a, 2 near b, 3 far a, 4 far b. */
    private static List<Port> onePair() {
        return List.of(
                new Port(1, End.NEAR, 1, Conductor.A),
                new Port(2, End.NEAR, 1, Conductor.B),
                new Port(3, End.FAR, 1, Conductor.A),
                new Port(4, End.FAR, 1, Conductor.B));
    }

    /**
     * A symmetric pair of coupled conductors from its even and odd modes: S(a, a) = (even + odd)/2, S(a, b) = (even − odd)/2. Each mode is
     * a line to 50 ohm; the differential mode is the odd one at twice its impedance, the common mode the even one at half.
     */
    private static String coupledPair(double[] grid, DoubleFunction<Complex[]> even, DoubleFunction<Complex[]> odd) {
        StringBuilder text = new StringBuilder("# MHz S RI R 50\n");
        for (double f : grid) {
            Complex[] e = even.apply(f);
            Complex[] o = odd.apply(f);
            Complex aa = e[0].plus(o[0]).times(0.5);
            Complex ab = e[0].minus(o[0]).times(0.5);
            Complex through = e[1].plus(o[1]).times(0.5);
            Complex across = e[1].minus(o[1]).times(0.5);
            Complex[][] s = {
                {aa, ab, through, across},
                {ab, aa, across, through},
                {through, across, aa, ab},
                {across, through, ab, aa}
            };
            text.append(f);
            for (Complex[] row : s) {
                for (Complex value : row) {
                    text.append(String.format(Locale.ROOT, " %.15e %.15e", value.re(), value.im()));
                }
                text.append('\n');
            }
        }
        return text.toString();
    }

    private static DoubleFunction<Complex[]> line(double zc, double nanoseconds, double neper) {
        return f -> Complex.line(zc, new Complex(neper, 2 * Math.PI * f * nanoseconds / 1000), 50);
    }

    private static double[] linear(double from, double to, double step) {
        double[] grid = new double[(int) Math.round((to - from) / step) + 1];
        for (int i = 0; i < grid.length; i++) {
            grid[i] = from + i * step;
        }
        return grid;
    }

    @Test
    void anIdealCoupledLineGivesItsTwoModes() {
        double delay = 100 / (0.68 * LIGHT);
        double[] grid = linear(1, 100, 0.5);
        NetworkData data = read("line.s4p", coupledPair(grid, line(80, 1.1 * delay, 0), line(50, delay, 0.3)));
        DerivedSweeps derived = derive(data, onePair(), NetworkTerms.USUAL, REFERENCE_SPAN);
        Subject pair = Subject.ofPair(1);
        Sweep loss = sweep(derived, Property.INSERTION_LOSS, pair);
        Sweep returned = sweep(derived, Property.RETURN_LOSS, pair.at(End.NEAR));
        Sweep impedance = sweep(derived, Property.INPUT_IMPEDANCE, pair.at(End.FAR));
        Sweep propagation = sweep(derived, Property.PROPAGATION_DELAY, pair);
        Sweep group = sweep(derived, Property.GROUP_DELAY, pair);
        Sweep tcl = sweep(derived, Property.TCL, pair.at(End.NEAR));
        for (int i = 0; i < grid.length; i++) {
            assertEquals(20 * Math.log10(Math.exp(0.3)), loss.value(i), 1e-9);
            assertTrue(returned.value(i) > 250, "matched: nothing returns");
            assertEquals(100, impedance.value(i), 1e-9);
            // 1e-9 of a radian over at least 6: the rounding of phases up to 300 rad is 1e-13 of theirs
            assertEquals(delay, propagation.value(i), 1e-8);
            assertEquals(delay, group.value(i), 1e-6);
            assertTrue(tcl.value(i) > 250, "symmetric: nothing is converted");
        }
        assertEquals(List.of(), derived.warnings());
    }

    @Test
    void anIdealMismatchedLineGivesItsReturnLossAndInputImpedance() {
        double delay = 100 / (0.68 * LIGHT);
        double[] grid = linear(1, 60, 0.25);
        // the odd mode at 60 ohm is a differential line of 120 ohm, here without loss
        NetworkData data = read("line.s4p", coupledPair(grid, line(50, delay, 0), line(60, delay, 0)));
        DerivedSweeps derived = derive(data, onePair(), NetworkTerms.USUAL, REFERENCE_SPAN);
        Sweep impedance =
                sweep(derived, Property.INPUT_IMPEDANCE, Subject.ofPair(1).at(End.NEAR));
        Sweep returned = sweep(derived, Property.RETURN_LOSS, Subject.ofPair(1).at(End.NEAR));
        Sweep loss = sweep(derived, Property.INSERTION_LOSS, Subject.ofPair(1));
        for (int i = 0; i < grid.length; i++) {
            // textbook: Zin = Zc (ZL + j Zc tan βl)/(Zc + j ZL tan βl), ZL = 100, Zc = 120
            double tan = Math.tan(2 * Math.PI * grid[i] * delay / 1000);
            Complex zin = new Complex(100, 120 * tan).times(120).over(new Complex(120, 100 * tan));
            Complex reflected = zin.minus(Complex.real(100)).over(zin.plus(Complex.real(100)));
            assertEquals(zin.abs(), impedance.value(i), 1e-8 * zin.abs());
            assertEquals(-20 * Math.log10(reflected.abs()), returned.value(i), 1e-6);
            // no loss: what is not returned goes through
            assertEquals(-10 * Math.log10(1 - Math.pow(reflected.abs(), 2)), loss.value(i), 1e-9);
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.25, 1})
    void aMatchedAttenuatorHasLossAndNoDelay(double step) {
        DoubleFunction<Complex[]> attenuator = f -> new Complex[] {Complex.real(0), Complex.real(0.1)};
        NetworkData data = read("pad.s4p", coupledPair(linear(1, 50, step), attenuator, attenuator));
        DerivedSweeps derived = derive(data, onePair(), NetworkTerms.USUAL, REFERENCE_SPAN);
        assertEquals(
                20, sweep(derived, Property.INSERTION_LOSS, Subject.ofPair(1)).value(7), 1e-12);
        assertEquals(
                300,
                sweep(derived, Property.RETURN_LOSS, Subject.ofPair(1).at(End.FAR))
                        .value(7),
                1e-9);
        assertTrue(derived.sweeps().stream().noneMatch(sweep -> sweep.property() == Property.PROPAGATION_DELAY));
        assertEquals(1, derived.warnings().size());
        assertTrue(derived.warnings().get(0).contains("No delay of pair 1"), derived.warnings()::toString);
        assertTrue(derived.warnings().get(0).contains("cable"), derived.warnings()::toString);
    }

    @Test
    void everyParameterOfACableComesOutAsItWentIn() {
        SyntheticCable cable = new SyntheticCable(4, 100, 0.68);
        double[] grid = SyntheticCable.grid(500);
        NetworkData data = read("cable.s16p", cable.touchstone(grid));
        DerivedSweeps derived = derive(data, cable.ports(), NetworkTerms.USUAL, REFERENCE_SPAN);
        assertEquals(List.of(), derived.warnings());
        Map<Property, Long> counts =
                derived.sweeps().stream().collect(Collectors.groupingBy(Sweep::property, Collectors.counting()));
        assertEquals(
                Map.ofEntries(
                        Map.entry(Property.INSERTION_LOSS, 4L),
                        Map.entry(Property.PROPAGATION_DELAY, 4L),
                        Map.entry(Property.GROUP_DELAY, 4L),
                        Map.entry(Property.RETURN_LOSS, 8L),
                        Map.entry(Property.INPUT_IMPEDANCE, 8L),
                        Map.entry(Property.CHARACTERISTIC_IMPEDANCE, 8L),
                        Map.entry(Property.STRUCTURAL_RETURN_LOSS, 8L),
                        Map.entry(Property.TCL, 8L),
                        Map.entry(Property.TCTL, 8L),
                        Map.entry(Property.EL_TCTL, 8L),
                        Map.entry(Property.NEXT, 12L),
                        Map.entry(Property.ACR_F, 24L),
                        Map.entry(Property.FEXT, 24L)),
                counts);
        Sweep loss = sweep(derived, Property.INSERTION_LOSS, Subject.ofPair(1));
        Sweep next = sweep(derived, Property.NEXT, Subject.ofCombination(2, 4).at(End.FAR));
        Sweep acrF = sweep(derived, Property.ACR_F, Subject.ofCombination(1, 3).at(End.NEAR));
        Sweep tcl = sweep(derived, Property.TCL, Subject.ofPair(3).at(End.FAR));
        Sweep tctl = sweep(derived, Property.TCTL, Subject.ofPair(1).at(End.NEAR));
        Sweep elTctl = sweep(derived, Property.EL_TCTL, Subject.ofPair(1).at(End.NEAR));
        for (int i = 0; i < grid.length; i++) {
            double f = grid[i];
            assertEquals(cable.loss(f), loss.value(i), 1e-3 * DECIBEL + 1e-7);
            assertEquals(cable.next(2, 4, End.FAR, f), next.value(i), DECIBEL);
            assertEquals(cable.acrF(1, 3, f), acrF.value(i), 10 * DECIBEL);
            assertEquals(cable.tcl(3), tcl.value(i), DECIBEL);
            assertEquals(cable.tcl(1) + cable.loss(f) + 5, tctl.value(i), 10 * DECIBEL);
            assertEquals(cable.tcl(1) + 5, elTctl.value(i), 10 * DECIBEL);
            for (int pair = 1; pair <= 4; pair++) {
                // pairs 2 to 4 do not match 100 ohm; their echoes turn the phase by 0.03² at most, which is 0.1 ns at 1
                // MHz
                assertEquals(
                        cable.delay(pair, f),
                        sweep(derived, Property.PROPAGATION_DELAY, Subject.ofPair(pair))
                                .value(i),
                        pair == 1 ? 1e-4 : 0.2 / f + 1e-4,
                        "pair " + pair + " at " + f + " MHz");
            }
        }
    }

    @Test
    void theOrderOfThePortsMakesNoDifference() {
        SyntheticCable cable = new SyntheticCable(2, 100, 0.68);
        double[] grid = linear(1, 20, 0.5);
        int[] order = {5, 0, 7, 2, 1, 4, 3, 6};
        DerivedSweeps straight =
                derive(read("a.s8p", cable.touchstone(grid)), cable.ports(), NetworkTerms.USUAL, REFERENCE_SPAN);
        DerivedSweeps turned = derive(
                read("b.s8p", cable.touchstone(grid, order)), cable.ports(order), NetworkTerms.USUAL, REFERENCE_SPAN);
        assertEquals(straight.sweeps().size(), turned.sweeps().size());
        for (Sweep sweep : straight.sweeps()) {
            Sweep other = sweep(turned, sweep.property(), sweep.subject());
            for (int i = 0; i < grid.length; i++) {
                assertEquals(sweep.value(i), other.value(i), 1e-9 * Math.abs(sweep.value(i)));
            }
        }
    }

    @Test
    void acrFTakesTheLossThatTheLimitSetNames() {
        // two pairs of 10 and 30 dB, 40 dB from one to the other's far end
        StringBuilder text = new StringBuilder("# MHz S RI R 50\n");
        double[][] modes = new double[4][4];
        modes[0][2] = modes[2][0] = Math.pow(10, -0.5);
        modes[1][3] = modes[3][1] = Math.pow(10, -1.5);
        modes[0][3] = modes[3][0] = 0.01;
        modes[1][2] = modes[2][1] = 0.01;
        text.append("1");
        for (int i = 0; i < 8; i++) {
            for (int j = 0; j < 8; j++) {
                double sign = (i + j) % 2 == 0 ? 1 : -1;
                text.append(' ').append(sign * modes[i / 2][j / 2] / 2).append(" 0");
            }
            text.append('\n');
        }
        NetworkData data = read("two.s8p", text.toString());
        List<Port> ports = new SyntheticCable(2, 100, 0.68).ports();
        DerivedSweeps disturbed = derive(data, ports, NetworkTerms.USUAL, REFERENCE_SPAN);
        DerivedSweeps disturbing = derive(data, ports, new NetworkTerms(100, 25, true), REFERENCE_SPAN);
        Subject one = Subject.ofCombination(1, 2).at(End.NEAR);
        Subject two = Subject.ofCombination(2, 1).at(End.NEAR);
        assertEquals(30, sweep(disturbed, Property.ACR_F, one).value(0), 1e-9);
        assertEquals(10, sweep(disturbed, Property.ACR_F, two).value(0), 1e-9);
        assertEquals(10, sweep(disturbing, Property.ACR_F, one).value(0), 1e-9);
        assertEquals(30, sweep(disturbing, Property.ACR_F, two).value(0), 1e-9);
        // output to output: always the loss of the disturbing pair
        assertEquals(10, sweep(disturbed, Property.FEXT, one).value(0), 1e-9);
    }

    @Test
    void pointsOfDirectCurrentAreLeftOutAndSaid() {
        SyntheticCable cable = new SyntheticCable(1, 100, 0.68);
        double[] grid = {0, 1e-4, 1, 1.5, 2, 2.5, 3};
        // the model has no sense at 0 Hz; take its text from 1 MHz and put two points before it
        String text = cable.touchstone(new double[] {1, 1.5, 2, 2.5, 3});
        String zero = " 0 0".repeat(16) + "\n";
        DerivedSweeps derived = derive(
                read("dc.s4p", text.replace("R 50\n", "R 50\n0" + zero + "0.0001" + zero)),
                cable.ports(),
                NetworkTerms.USUAL,
                REFERENCE_SPAN);
        assertEquals(
                grid.length - 2,
                sweep(derived, Property.INSERTION_LOSS, Subject.ofPair(1)).size());
        assertEquals(
                List.of("2 points of dc.s4p below 1 kHz, from line 3, count as direct current and were left out."),
                derived.warnings());
        assertEquals(
                "dc.s4p:5",
                sweep(derived, Property.INSERTION_LOSS, Subject.ofPair(1))
                        .origin()
                        .of(0));
        NetworkData none = read("dc.s4p", "# MHz S RI R 50\n0" + zero);
        assertThrows(NetworkException.class, () -> derive(none, cable.ports(), NetworkTerms.USUAL, REFERENCE_SPAN));
    }

    @Test
    void warnsOfGainAndOfOneWayNetworksAndKeepsTheirData() {
        SyntheticCable active = new SyntheticCable(1, 1, 0.68).gain(1.03);
        DerivedSweeps gaining = derive(
                read("x.s4p", active.touchstone(linear(1, 10, 1))),
                active.ports(),
                NetworkTerms.USUAL,
                new CableSpan(1, null));
        assertEquals(1, gaining.warnings().size(), gaining.warnings()::toString);
        assertTrue(gaining.warnings().get(0).contains("not passive at 10 of 10 frequencies, first at x.s4p:3"));
        DerivedSweeps within = derive(
                read("x.s4p", new SyntheticCable(1, 1, 0.68).gain(1.001).touchstone(linear(1, 10, 1))),
                active.ports(),
                NetworkTerms.USUAL,
                new CableSpan(1, null));
        assertEquals(List.of(), within.warnings());
        DerivedSweeps oneWay = derive(
                read("x.s4p", new SyntheticCable(1, 100, 0.68).oneWay(0.9).touchstone(linear(1, 10, 1))),
                active.ports(),
                NetworkTerms.USUAL,
                REFERENCE_SPAN);
        assertEquals(1, oneWay.warnings().size(), oneWay.warnings()::toString);
        assertTrue(oneWay.warnings().get(0).contains("not reciprocal at 10 of 10"), oneWay.warnings()::toString);
        assertTrue(oneWay.warnings().get(0).contains("S1,2 and S2,1"), oneWay.warnings()::toString);
    }

    @Test
    void theExplanationNamesFilePortsAndTheWholeChain() {
        SyntheticCable cable = new SyntheticCable(2, 100, 0.68);
        DerivedSweeps derived = derive(
                read("c.s8p", cable.touchstone(linear(1, 5, 0.5))),
                cable.ports(),
                new NetworkTerms(120, 40, false),
                REFERENCE_SPAN);
        Origin.Network origin = (Origin.Network)
                sweep(derived, Property.NEXT, Subject.ofCombination(1, 2).at(End.FAR))
                        .origin();
        List<Origin.Network.Link> chain = origin.chain();
        assertEquals(
                List.of("network file", "renormalised", "mixed mode", "definition"),
                chain.stream().map(Origin.Network.Link::title).toList());
        assertTrue(chain.get(0).detail().contains("ports 5, 6 (far end, pair 1, conductors a, b); ports 7, 8"));
        assertTrue(chain.get(1).detail().contains("from the file's 50.0 ohm to 60.0 ohm"));
        assertTrue(chain.get(2).detail().contains("reference 40.0 ohm"));
        assertTrue(chain.get(3).detail().contains("NEXT = −20 log10 |SDD(far end of pair 1 ← far end of pair 2)|"));
        assertEquals("c.s8p", origin.file());
    }

    @ParameterizedTest
    @ValueSource(doubles = {100, 305, 1000})
    void delaysSurviveAGridThatWidensAsTheSetAllows(double metres) {
        SyntheticCable cable = new SyntheticCable(1, metres, 0.71);
        // a hundredth of a decade a step: 23 MHz at the top would be 34 turns of a kilometre
        double[] grid = new double[150];
        for (int i = 0; i < grid.length; i++) {
            grid[i] = Math.pow(10, i / 100.0);
        }
        for (Double nominal : new Double[] {0.68, null}) {
            DerivedSweeps derived = derive(
                    read("w.s4p", cable.touchstone(grid)),
                    cable.ports(),
                    NetworkTerms.USUAL,
                    new CableSpan(metres, nominal));
            assertEquals(List.of(), derived.warnings());
            Sweep delay = sweep(derived, Property.PROPAGATION_DELAY, Subject.ofPair(1));
            for (int i = 0; i < grid.length; i++) {
                assertEquals(cable.delay(1, grid[i]), delay.value(i), 1e-3, "at " + grid[i] + " MHz");
            }
        }
    }

    @Test
    void aGridTooCoarseIsRefusedWithTheStepThatWouldDo() {
        SyntheticCable cable = new SyntheticCable(1, 305, 0.68);
        NetworkData coarse = read("x.s4p", cable.touchstone(linear(1, 41, 2)));
        NetworkException refused = assertThrows(
                NetworkException.class,
                () -> derive(coarse, cable.ports(), NetworkTerms.USUAL, new CableSpan(305, null)));
        assertTrue(refused.getMessage().contains("too coarse to unwrap the phase of pair 1"), refused::getMessage);
        assertTrue(refused.getMessage().contains("nominalVelocity"), refused::getMessage);
        assertEquals("x.s4p:7", refused.where());
        // the nominal velocity narrows the range enough for the same grid
        DerivedSweeps derived = derive(coarse, cable.ports(), NetworkTerms.USUAL, new CableSpan(305, 0.69));
        Sweep delay = sweep(derived, Property.PROPAGATION_DELAY, Subject.ofPair(1));
        assertEquals(cable.delay(1, 41), delay.value(20), 1e-3);
        // and nothing is refused when no delay is wanted
        Set<Property> noDelay = EnumSet.of(Property.INSERTION_LOSS);
        assertEquals(
                1,
                NetworkSweeps.derive(
                                coarse,
                                PortMap.of(cable.ports()),
                                NetworkTerms.USUAL,
                                new CableSpan(305, null),
                                noDelay)
                        .sweeps()
                        .size());
        NetworkData wide =
                read("x.s4p", cable.touchstone(new double[] {1, 1.1, 1.2, 1.3, 1.4, 1.5, 1.6, 1.7, 1.8, 100}));
        NetworkException gap = assertThrows(
                NetworkException.class,
                () -> derive(wide, cable.ports(), NetworkTerms.USUAL, new CableSpan(305, 0.68)));
        assertTrue(gap.getMessage().contains("from 1.8 to 100.0 MHz"), gap::getMessage);
    }

    @Test
    void exchangedConductorsAreToldFromADelay() {
        SyntheticCable cable = new SyntheticCable(1, 100, 0.68);
        List<Port> crossed = List.of(
                new Port(1, End.NEAR, 1, Conductor.A),
                new Port(2, End.NEAR, 1, Conductor.B),
                new Port(3, End.FAR, 1, Conductor.B),
                new Port(4, End.FAR, 1, Conductor.A));
        DerivedSweeps derived = derive(
                read("x.s4p", cable.touchstone(linear(1, 20, 0.5))), crossed, NetworkTerms.USUAL, REFERENCE_SPAN);
        assertEquals(1, derived.warnings().size());
        assertTrue(derived.warnings().get(0).contains("exchanged at one end"), derived.warnings()::toString);
        assertTrue(derived.sweeps().stream().noneMatch(sweep -> sweep.property() == Property.GROUP_DELAY));
    }

    @Test
    void phasesLostInNoiseGiveNoDelay() {
        double[] grid = linear(1, 40, 0.5);
        DoubleFunction<Complex[]> odd = f -> f < 30
                ? Complex.line(50, new Complex(0.5, 2 * Math.PI * f * 0.49), 50)
                : new Complex[] {Complex.real(0), Complex.polar(1e-6, f * f * 40)};
        // the common mode of a pair is slower or faster than the differential one
        DoubleFunction<Complex[]> even = f -> f < 30
                ? Complex.line(50, new Complex(0.4, 2 * Math.PI * f * 0.44), 50)
                : new Complex[] {Complex.real(0), Complex.polar(1e-6, f * f * 30)};
        DerivedSweeps derived =
                derive(read("x.s4p", coupledPair(grid, even, odd)), onePair(), NetworkTerms.USUAL, REFERENCE_SPAN);
        assertEquals(1, derived.warnings().size());
        assertTrue(derived.warnings().get(0).contains("lost in noise"), derived.warnings()::toString);
        assertTrue(derived.sweeps().stream().noneMatch(sweep -> sweep.property() == Property.PROPAGATION_DELAY));
    }

    @Test
    void oneEndAloneGivesWhatOneEndCan() {
        SyntheticCable cable = new SyntheticCable(1, 100, 0.68);
        NetworkData data = read("x.s4p", cable.touchstone(linear(1, 3, 0.5)));
        // the same four ports as two pairs at the near end
        List<Port> near = List.of(
                new Port(1, End.NEAR, 1, Conductor.A),
                new Port(2, End.NEAR, 1, Conductor.B),
                new Port(3, End.NEAR, 2, Conductor.A),
                new Port(4, End.NEAR, 2, Conductor.B));
        DerivedSweeps derived = derive(data, near, NetworkTerms.USUAL, REFERENCE_SPAN);
        assertEquals(
                EnumSet.of(Property.RETURN_LOSS, Property.INPUT_IMPEDANCE, Property.TCL, Property.NEXT),
                derived.sweeps().stream().map(Sweep::property).collect(Collectors.toSet()));
        assertEquals(
                1,
                derived.sweeps().stream()
                        .filter(sweep -> sweep.property() == Property.NEXT)
                        .count());
    }
}
