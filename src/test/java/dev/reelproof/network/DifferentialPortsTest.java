package dev.reelproof.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.measurement.Conductor;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.NetworkTerms;
import dev.reelproof.measurement.Origin;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import dev.reelproof.measurement.Sweep;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Files that hold modes already give the sweeps of the single-ended network behind them. */
class DifferentialPortsTest {
    /** The single-ended files print 10 digits; the smallest entries are 1e-6 of the largest. */
    private static final double SAME = 1e-3;

    /** A matched pair returns nothing but the rounding of the file: what is below this level is not compared. */
    private static final double ROUNDING = 120;

    private static final double[] GRID = SyntheticCable.grid(100);
    private static final SyntheticCable CABLE = new SyntheticCable(2, 100, 0.68);
    private static final CableSpan SPAN = new CableSpan(100, 0.68);
    private static final Set<Property> OF_DIFFERENTIAL_MODES = EnumSet.of(
            Property.INSERTION_LOSS,
            Property.NEXT,
            Property.ACR_F,
            Property.FEXT,
            Property.RETURN_LOSS,
            Property.INPUT_IMPEDANCE,
            Property.CHARACTERISTIC_IMPEDANCE,
            Property.STRUCTURAL_RETURN_LOSS,
            Property.PROPAGATION_DELAY,
            Property.GROUP_DELAY);

    private static DerivedSweeps derive(String file, String text, List<Port> ports, NetworkTerms terms) {
        return NetworkSweeps.derive(
                NetworkSweepsTest.read(file, text), PortMap.of(ports), terms, SPAN, NetworkSweeps.DERIVABLE);
    }

    private static DerivedSweeps singleEnded(NetworkTerms terms) {
        return derive("cable.s8p", CABLE.touchstone(GRID), CABLE.ports(), terms);
    }

    private static Sweep sweep(DerivedSweeps derived, Property property, Subject subject) {
        return derived.sweeps().stream()
                .filter(one -> one.property() == property && one.subject().equals(subject))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no " + property + " of " + subject.words()));
    }

    /** Every sweep of the modes is one of the conductors, and of some properties there are as many. */
    private static void assertSame(DerivedSweeps conductors, DerivedSweeps modes, Set<Property> all) {
        assertEquals(
                conductors.sweeps().stream()
                        .filter(sweep -> all.contains(sweep.property()))
                        .count(),
                modes.sweeps().size());
        for (Sweep sweep : modes.sweeps()) {
            Sweep other = sweep(conductors, sweep.property(), sweep.subject());
            for (int i = 0; i < sweep.size(); i++) {
                if (sweep.property().canonicalUnit().equals("ns")) {
                    assertEquals(
                            other.value(i),
                            sweep.value(i),
                            SAME * other.value(i),
                            sweep.property().id());
                    continue;
                }
                assertEquals(
                        Math.min(ROUNDING, other.value(i)),
                        Math.min(ROUNDING, sweep.value(i)),
                        Math.max(SAME, SAME * Math.abs(other.value(i))),
                        sweep.property() + " of " + sweep.subject().words() + " at " + i);
            }
        }
    }

    @Test
    void theRowsOfAMixedModeFileGiveTheSameSweepsHoweverTheyAreDeclared() {
        for (NetworkTerms terms : List.of(NetworkTerms.USUAL, new NetworkTerms(100, 50, true))) {
            DerivedSweeps conductors = singleEnded(terms);
            DerivedSweeps byConductor = derive("cable.ts", CABLE.mixedMode(GRID), CABLE.ports(), terms);
            assertSame(conductors, byConductor, NetworkSweeps.DERIVABLE);
            List<Port> rows = new ArrayList<>(CABLE.differentialPorts());
            for (Port port : CABLE.differentialPorts()) {
                rows.add(Port.ofMode(port.number() + 4, port.end(), port.pair(), PortMode.COMMON));
            }
            DerivedSweeps byRow = derive("cable.ts", CABLE.mixedMode(GRID), rows, terms);
            assertSame(conductors, byRow, NetworkSweeps.DERIVABLE);
            assertEquals(List.of(), byConductor.warnings());
            assertEquals(List.of(), byRow.warnings());
        }
    }

    @Test
    void conductorsExchangedAgainstTheFileTurnTheDelayBack() {
        // the file has b − a at the far end: without its order the phase would be half a turn off, and there would be
        // no delay
        List<Port> ports = new ArrayList<>();
        for (Port port : CABLE.ports()) {
            Conductor conductor = port.conductor();
            ports.add(
                    port.end() == End.NEAR
                            ? port
                            : new Port(
                                    port.number(),
                                    port.end(),
                                    port.pair(),
                                    conductor == Conductor.A ? Conductor.B : Conductor.A));
        }
        String text = CABLE.mixedMode(GRID);
        DerivedSweeps crossed = derive("cable.ts", text, ports, NetworkTerms.USUAL);
        assertEquals(2, crossed.warnings().size(), crossed.warnings()::toString);
        assertTrue(crossed.warnings().get(0).contains("exchanged at one end"), crossed.warnings()::toString);
    }

    @Test
    void differentialPortsAloneGiveWhatDifferentialModesGive() {
        DerivedSweeps modes =
                derive("baluns.s4p", CABLE.differential("R 100", GRID), CABLE.differentialPorts(), NetworkTerms.USUAL);
        assertSame(singleEnded(NetworkTerms.USUAL), modes, OF_DIFFERENTIAL_MODES);
        assertEquals(List.of(), modes.warnings());
        assertEquals(OF_DIFFERENTIAL_MODES, modes.reachable());
        List<Origin.Network.Link> chain = ((Origin.Network)
                        sweep(modes, Property.INSERTION_LOSS, Subject.ofPair(1)).origin())
                .chain();
        assertEquals(
                List.of("network file", "renormalised", "mixed mode", "definition"),
                chain.stream().map(Origin.Network.Link::title).toList());
        assertTrue(chain.get(0).detail().contains("port 1 (near end, pair 1, differential mode); port 3 (far end"));
        assertEquals(
                "all ports from the file's 100.0 ohm to those of their modes, 100.0 ohm differential and 25.0 ohm common:"
                        + " nothing to do",
                chain.get(1).detail());
        assertTrue(chain.get(2).detail().startsWith("measured as modes"), chain.get(2)::detail);
    }

    @Test
    void aFileThatStatesTheReferenceOfItsOwnPortsIsToldToHaveTwiceThatBetweenConductors() {
        DerivedSweeps right =
                derive("b.s4p", CABLE.differential("R 100", GRID), CABLE.differentialPorts(), NetworkTerms.USUAL);
        DerivedSweeps taken =
                derive("b.s4p", CABLE.differential("R 50", GRID), CABLE.differentialPorts(), NetworkTerms.USUAL);
        assertSame(right, taken, OF_DIFFERENTIAL_MODES);
        assertEquals(
                List.of(
                        "The 50.0 ohm that b.s4p states were taken as the reference of a conductor, so that a differential"
                                + " port has 100.0 ohm and a common port 25.0 ohm. Where that is not so, give 'reference' of the"
                                + " port."),
                taken.warnings());
        Origin.Network origin = (Origin.Network)
                sweep(taken, Property.INSERTION_LOSS, Subject.ofPair(1)).origin();
        assertEquals(
                "all ports from 100.0 ohm, which the file states otherwise, to those of their modes, 100.0 ohm differential"
                        + " and 25.0 ohm common: nothing to do",
                origin.chain().get(1).detail());
        // what the port states counts above what the file does
        List<Port> stated = CABLE.differentialPorts().stream()
                .map(port -> new Port(port.number(), port.end(), port.pair(), port.mode(), null, 100.0))
                .toList();
        DerivedSweeps told = derive("b.s4p", CABLE.differential("R 75", GRID), stated, NetworkTerms.USUAL);
        assertSame(right, told, OF_DIFFERENTIAL_MODES);
        assertEquals(List.of(), told.warnings());
        // and any other reference is what it says: 120 ohm against the 100 of the pair reflect 1/11, 20.8 dB
        DerivedSweeps other =
                derive("b.s2p", "# MHz S RI R 120\n1 0 0 0 0 0 0 0 0\n", nearAndFar(), NetworkTerms.USUAL);
        assertEquals(
                20 * Math.log10(11),
                sweep(other, Property.RETURN_LOSS, Subject.ofPair(1).at(End.NEAR))
                        .value(0),
                1e-9);
    }

    private static List<Port> nearAndFar() {
        return List.of(
                Port.ofMode(1, End.NEAR, 1, PortMode.DIFFERENTIAL), Port.ofMode(2, End.FAR, 1, PortMode.DIFFERENTIAL));
    }

    @Test
    void aCommonPortNeedsADifferentialOneSomewhere() {
        String text = "# MHz S RI R 50\n1 .1 0 .01 0 .01 0 .2 0\n";
        Port differential = Port.ofMode(1, End.NEAR, 1, PortMode.DIFFERENTIAL);
        DerivedSweeps tcl = derive(
                "x.s2p", text, List.of(differential, Port.ofMode(2, End.NEAR, 1, PortMode.COMMON)), NetworkTerms.USUAL);
        assertEquals(
                40, sweep(tcl, Property.TCL, Subject.ofPair(1).at(End.NEAR)).value(0), 1e-9);
        DerivedSweeps tctl = derive(
                "x.s2p", text, List.of(differential, Port.ofMode(2, End.FAR, 1, PortMode.COMMON)), NetworkTerms.USUAL);
        assertEquals(
                40, sweep(tctl, Property.TCTL, Subject.ofPair(1).at(End.NEAR)).value(0), 1e-9);
        // without the loss there is no EL TCTL, and nothing is said of the common port as if it were differential
        assertEquals(
                Set.of(Property.RETURN_LOSS, Property.INPUT_IMPEDANCE, Property.TCTL),
                tctl.sweeps().stream().map(Sweep::property).collect(Collectors.toSet()));
        PortMapException refused = assertThrows(
                PortMapException.class,
                () -> derive(
                        "x.s2p",
                        text,
                        List.of(
                                Port.ofMode(1, End.NEAR, 1, PortMode.COMMON),
                                Port.ofMode(2, End.FAR, 1, PortMode.COMMON)),
                        NetworkTerms.USUAL));
        assertTrue(refused.getMessage().contains("every port is of a common mode"), refused::getMessage);
    }

    @Test
    void conductorsAtOneEndAndABalunAtTheOther() {
        // an attenuator of 20 dB between the conductors at the near end, to 50 ohm, and the pair at the far end, to 100
        // ohm
        double through = 0.1 * Math.sqrt(0.5);
        String text =
                "[Version] 2.0\n# MHz S RI R 50\n[Number of Ports] 3\n[Reference] 50 50 100\n[Matrix Format] Lower\n"
                        + "[Network Data]\n1 0 0\n0 0 0 0\n" + through + " 0 " + -through + " 0 0 0\n[End]\n";
        DerivedSweeps derived = derive(
                "x.ts",
                text,
                List.of(
                        new Port(1, End.NEAR, 1, Conductor.A),
                        new Port(2, End.NEAR, 1, Conductor.B),
                        Port.ofMode(3, End.FAR, 1, PortMode.DIFFERENTIAL)),
                NetworkTerms.USUAL);
        assertEquals(
                20, sweep(derived, Property.INSERTION_LOSS, Subject.ofPair(1)).value(0), 1e-9);
        assertTrue(sweep(derived, Property.TCTL, Subject.ofPair(1).at(End.FAR)).value(0) > 250);
        assertFalse(derived.sweeps().stream()
                .anyMatch(sweep -> sweep.property() == Property.TCTL
                        && sweep.subject().equals(Subject.ofPair(1).at(End.NEAR))));
    }

    private static void assertRefused(String words, List<Port> ports) {
        PortMapException refused = assertThrows(PortMapException.class, () -> PortMap.of(ports));
        assertTrue(refused.getMessage().contains(words), refused::getMessage);
    }

    @Test
    void modesAndConductorsAtOnePlaceAreRefused() {
        Port differential = Port.ofMode(1, End.NEAR, 1, PortMode.DIFFERENTIAL);
        assertRefused(
                "connected by its conductors or by its modes",
                List.of(differential, new Port(2, End.NEAR, 1, Conductor.A), new Port(3, End.NEAR, 1, Conductor.B)));
        assertRefused("and so is port 1", List.of(differential, Port.ofMode(2, End.NEAR, 1, PortMode.DIFFERENTIAL)));
        IllegalArgumentException conductor = assertThrows(
                IllegalArgumentException.class,
                () -> new Port(1, End.NEAR, 1, PortMode.DIFFERENTIAL, Conductor.A, null));
        assertTrue(conductor.getMessage().contains("a differential port with a conductor"), conductor::getMessage);
        assertThrows(
                IllegalArgumentException.class, () -> new Port(1, End.NEAR, 1, PortMode.SINGLE, Conductor.A, 50.0));
        for (double ohm : new double[] {0, -100, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThrows(IllegalArgumentException.class, () -> new Port(1, End.NEAR, 1, PortMode.COMMON, null, ohm));
        }
    }

    @Test
    void aMapThatSaysOtherwiseThanTheOrderOfTheFileIsRefused() {
        String text = new SyntheticCable(1, 100, 0.68).mixedMode(new double[] {1, 2});
        // rows: D near, D far, C near, C far, of ports 1, 2 and 3, 4
        List<Port> rows = List.of(
                Port.ofMode(1, End.NEAR, 1, PortMode.DIFFERENTIAL),
                Port.ofMode(2, End.NEAR, 1, PortMode.COMMON),
                Port.ofMode(3, End.FAR, 1, PortMode.DIFFERENTIAL),
                Port.ofMode(4, End.FAR, 1, PortMode.COMMON));
        assertSays(
                "port 2 is said to be common, but [Mixed-Mode Order] of the file says that this row is D3,4",
                text,
                rows);
        assertSays(
                "are said to be at different places",
                text,
                List.of(
                        Port.ofMode(1, End.NEAR, 1, PortMode.DIFFERENTIAL),
                        Port.ofMode(2, End.FAR, 1, PortMode.DIFFERENTIAL),
                        Port.ofMode(3, End.FAR, 1, PortMode.COMMON),
                        Port.ofMode(4, End.NEAR, 1, PortMode.COMMON)));
        assertSays(
                "the file has D1,2, so that ports 1 and 2 are one pair at one end",
                text,
                List.of(
                        new Port(1, End.NEAR, 1, Conductor.A),
                        new Port(2, End.FAR, 1, Conductor.A),
                        new Port(3, End.NEAR, 1, Conductor.B),
                        new Port(4, End.FAR, 1, Conductor.B)));
    }

    private static void assertSays(String words, String text, List<Port> ports) {
        PortMapException refused =
                assertThrows(PortMapException.class, () -> derive("x.ts", text, ports, NetworkTerms.USUAL));
        assertTrue(refused.getMessage().contains(words), refused::getMessage);
    }
}
