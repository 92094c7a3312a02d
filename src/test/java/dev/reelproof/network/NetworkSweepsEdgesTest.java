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
import java.util.EnumSet;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What is left out, what is refused, and the words that go with a derived sweep. */
class NetworkSweepsEdgesTest {
    private static final CableSpan REFERENCE_SPAN = new CableSpan(100, 0.68);
    private static final String ZERO = " 0 0".repeat(16) + "\n";

    private static DerivedSweeps derive(String file, String text, List<Port> ports, NetworkTerms terms) {
        return NetworkSweeps.derive(
                NetworkSweepsTest.read(file, text), PortMap.of(ports), terms, REFERENCE_SPAN, NetworkSweeps.DERIVABLE);
    }

    private static Sweep sweep(DerivedSweeps derived, Property property, Subject subject) {
        return derived.sweeps().stream()
                .filter(sweep -> sweep.property() == property && sweep.subject().equals(subject))
                .findFirst()
                .orElseThrow();
    }

    private static List<Origin.Network.Link> chain(DerivedSweeps derived, Property property, Subject subject) {
        return ((Origin.Network) sweep(derived, property, subject).origin()).chain();
    }

    private static List<Port> pair(int firstNumber, End end, int pair) {
        return List.of(
                new Port(firstNumber, end, pair, Conductor.A), new Port(firstNumber + 1, end, pair, Conductor.B));
    }

    @Test
    void aThousandHertzCountAndWhatIsBelowIsDirectCurrent() {
        SyntheticCable cable = new SyntheticCable(1, 100, 0.68);
        String text = cable.touchstone(new double[] {0.001, 0.01, 0.1}).replace("R 50\n", "R 50\n0.00099" + ZERO);
        DerivedSweeps derived = derive("x.s4p", text, cable.ports(), NetworkTerms.USUAL);
        Sweep loss = sweep(derived, Property.INSERTION_LOSS, Subject.ofPair(1));
        assertEquals(0.001, loss.grid().first());
        assertEquals(cable.loss(0.001), loss.value(0), 1e-7);
        assertEquals(
                "1 point of x.s4p below 1 kHz, from line 3, counts as direct current and was left out.",
                derived.warnings().get(0));
    }

    @Test
    void aFileOfDirectCurrentAloneIsRefused() {
        NetworkException refused = assertThrows(
                NetworkException.class,
                () -> derive(
                        "x.s4p",
                        "# MHz S RI R 50\n0" + ZERO + "0.0009" + ZERO,
                        new SyntheticCable(1, 100, 0.68).ports(),
                        NetworkTerms.USUAL));
        assertEquals("x.s4p:2", refused.where());
        assertTrue(refused.getMessage().startsWith("no frequency is 1 kHz or more"), refused::getMessage);
    }

    @Test
    void aMatrixThatHasNoOtherReferenceIsRefusedAtItsLine() {
        // 50 to 100 ohm: r = 1/3, and an entry of 3, a gain of 9.5 dB in reflection, leaves nothing to divide by
        String text = "# MHz S RI R 50\n1 .1 0 0 0 0 0 .1 0\n2 3 0 0 0 0 0 3 0\n";
        NetworkException refused = assertThrows(
                NetworkException.class,
                () -> derive("x.s2p", text, pair(1, End.NEAR, 1), new NetworkTerms(200, 50, false)));
        assertEquals("x.s2p:3", refused.where());
        assertTrue(refused.getMessage().contains("cannot be renormalised"), refused::getMessage);
    }

    @Test
    void theChainSaysFromWhichReferencesThePortsAreBrought() {
        String text = "[Version] 2.0\n# MHz S RI R 50\n[Number of Ports] 2\n[Two-Port Data Order] 12_21\n"
                + "[Reference] 45 55\n[Network Data]\n1 0 0 0 0 0 0 0 0\n[End]\n";
        Subject near = Subject.ofPair(1).at(End.NEAR);
        DerivedSweeps uneven = derive("x.ts", text, pair(1, End.NEAR, 1), NetworkTerms.USUAL);
        assertEquals(
                "all ports from the file's 45.0 to 55.0 ohm, port by port to 50.0 ohm",
                chain(uneven, Property.RETURN_LOSS, near).get(1).detail());
        assertEquals(
                "x.ts (Touchstone 2.0, S in RI, MHz), 2 ports; here ports 1, 2 (near end, pair 1, conductors a, b)",
                chain(uneven, Property.RETURN_LOSS, near).get(0).detail());
        // 45 and 55 ohm to ground reflect −1/19 and 1/21 of what comes from 50 ohm; the differential mode sees half of
        // each
        double reflected = (-1.0 / 19 + 1.0 / 21) / 2;
        assertEquals(
                100 * (1 + reflected) / (1 - reflected),
                sweep(uneven, Property.INPUT_IMPEDANCE, near).value(0),
                1e-12);
        DerivedSweeps even =
                derive("x.ts", text.replace("[Reference] 45 55\n", ""), pair(1, End.NEAR, 1), NetworkTerms.USUAL);
        assertEquals(
                "all ports from the file's 50.0 ohm to 50.0 ohm: nothing to do",
                chain(even, Property.RETURN_LOSS, near).get(1).detail());
        DerivedSweeps other = derive("x.ts", text.replace("45 55", "60 60"), pair(1, End.NEAR, 1), NetworkTerms.USUAL);
        assertEquals(
                "all ports from the file's 60.0 ohm to 50.0 ohm",
                chain(other, Property.RETURN_LOSS, near).get(1).detail());
        assertEquals(120, sweep(other, Property.INPUT_IMPEDANCE, near).value(0), 1e-12);
    }

    @Test
    void anOpenAndAShortEndHaveAFiniteImpedance() {
        Subject near = Subject.ofPair(1).at(End.NEAR);
        // the differential mode reflects Saa − Sab
        DerivedSweeps open =
                derive("x.s2p", "# MHz S RI R 50\n1 1 0 0 0 0 0 1 0\n", pair(1, End.NEAR, 1), NetworkTerms.USUAL);
        assertEquals(
                100 * 2 / 1e-15, sweep(open, Property.INPUT_IMPEDANCE, near).value(0), 1e6);
        assertEquals(0, sweep(open, Property.RETURN_LOSS, near).value(0), 1e-12);
        DerivedSweeps closed =
                derive("x.s2p", "# MHz S RI R 50\n1 -1 0 0 0 0 0 -1 0\n", pair(1, End.NEAR, 1), NetworkTerms.USUAL);
        assertEquals(
                100 * 1e-15 / 2, sweep(closed, Property.INPUT_IMPEDANCE, near).value(0), 1e-25);
    }

    @ParameterizedTest
    @EnumSource(
            value = Property.class,
            names = {"PROPAGATION_DELAY", "GROUP_DELAY"})
    void oneKindOfDelayIsGivenAloneWhereItAloneIsWanted(Property delay) {
        SyntheticCable cable = new SyntheticCable(1, 100, 0.68);
        NetworkData data = NetworkSweepsTest.read("x.s4p", cable.touchstone(new double[] {1, 1.5, 2}));
        DerivedSweeps derived = NetworkSweeps.derive(
                data, PortMap.of(cable.ports()), NetworkTerms.USUAL, REFERENCE_SPAN, EnumSet.of(delay));
        assertEquals(
                List.of(delay), derived.sweeps().stream().map(Sweep::property).toList());
        // what the ports reach is told whatever is wanted of it
        assertEquals(
                EnumSet.of(
                        Property.INSERTION_LOSS,
                        Property.RETURN_LOSS,
                        Property.INPUT_IMPEDANCE,
                        Property.TCL,
                        Property.TCTL,
                        Property.EL_TCTL,
                        Property.PROPAGATION_DELAY,
                        Property.GROUP_DELAY),
                derived.reachable());
        Origin.Network.Link definition =
                chain(derived, delay, Subject.ofPair(1)).get(3);
        assertEquals(
                (delay == Property.GROUP_DELAY ? "group delay = −dφ/(2π df)" : "propagation delay = −φ/(2πf)")
                        + ", φ the phase of SDD(far end of pair 1 ← near end of pair 1) unwrapped for a delay from none"
                        + " to that of 0.4 of the velocity of light at the lowest frequencies, and extrapolated to 0 at"
                        + " 0 Hz",
                definition.detail());
        assertEquals(PhaseDelay.CITATION, definition.source());
    }

    /** Pair 1 at both ends, pair 2 at the far end alone. */
    private static List<Port> threePlaces() {
        return Stream.of(pair(1, End.NEAR, 1), pair(3, End.FAR, 1), pair(5, End.FAR, 2))
                .flatMap(List::stream)
                .toList();
    }

    @Test
    void farCrosstalkNeedsTheLossThatIsTakenOff() {
        StringBuilder text = new StringBuilder("# MHz S RI R 50\n1");
        // losses: 6 dB through pair 1, some 40 dB from its near end to pair 2
        double[][] modes = {{0, 0.5, 0.01}, {0.5, 0, 0.02}, {0.01, 0.02, 0}};
        for (int i = 0; i < 6; i++) {
            for (int j = 0; j < 6; j++) {
                text.append(' ')
                        .append(((i + j) % 2 == 0 ? 1 : -1) * modes[i / 2][j / 2] / 2)
                        .append(" 0");
            }
            text.append('\n');
        }
        Subject intoTwo = Subject.ofCombination(2, 1).at(End.NEAR);
        Subject intoOne = Subject.ofCombination(1, 2).at(End.FAR);
        double across = -20 * Math.log10(0.01);
        double through = -20 * Math.log10(0.5);
        DerivedSweeps disturbed = derive("x.s6p", text.toString(), threePlaces(), NetworkTerms.USUAL);
        DerivedSweeps disturbing = derive("x.s6p", text.toString(), threePlaces(), new NetworkTerms(100, 25, true));
        // the loss of pair 1 alone is known: it is disturbing in the one case and disturbed in the other
        assertEquals(List.of(intoOne), subjects(disturbed, Property.ACR_F));
        assertEquals(List.of(intoTwo), subjects(disturbing, Property.ACR_F));
        assertEquals(List.of(intoTwo), subjects(disturbed, Property.FEXT));
        assertEquals(across - through, sweep(disturbed, Property.ACR_F, intoOne).value(0), 1e-9);
        assertEquals(
                across - through, sweep(disturbing, Property.ACR_F, intoTwo).value(0), 1e-9);
        assertEquals(across - through, sweep(disturbed, Property.FEXT, intoTwo).value(0), 1e-9);
        assertEquals(
                "FEXT, output to output = far-end crosstalk less the insertion loss of the disturbing pair = −20 log10"
                        + " |SDD(far end of pair 2 ← near end of pair 1)| + 20 log10 |SDD(far end of pair 1 ← near end"
                        + " of pair 1)|",
                chain(disturbed, Property.FEXT, intoTwo).get(3).detail());
        assertEquals(
                "ACR-F = far-end crosstalk less the insertion loss of the disturbed pair = −20 log10 |SDD(near end of"
                        + " pair 1 ← far end of pair 2)| + 20 log10 |SDD(near end of pair 1 ← far end of pair 1)|",
                chain(disturbed, Property.ACR_F, intoOne).get(3).detail());
        assertEquals(
                "x.s6p (Touchstone 1, S in RI, MHz), 6 ports; here ports 1, 2 (near end, pair 1, conductors a, b);"
                        + " ports 3, 4 (far end, pair 1, conductors a, b); ports 5, 6 (far end, pair 2, conductors"
                        + " a, b)",
                chain(disturbed, Property.ACR_F, intoOne).get(0).detail());
    }

    private static List<Subject> subjects(DerivedSweeps derived, Property property) {
        return derived.sweeps().stream()
                .filter(sweep -> sweep.property() == property)
                .map(Sweep::subject)
                .toList();
    }

    @Test
    void aMapThatDoesNotFitTheFileIsRefused() {
        assertThrows(
                PortMapException.class,
                () -> derive("x.s4p", "# MHz S RI R 50\n1" + ZERO, pair(1, End.NEAR, 1), NetworkTerms.USUAL));
    }
}
