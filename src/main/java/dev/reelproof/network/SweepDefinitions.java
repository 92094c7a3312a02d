package dev.reelproof.network;

import dev.reelproof.measurement.End;
import dev.reelproof.measurement.NetworkTerms;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.ToDoubleFunction;

/**
 * Which sweeps follow from the ports that are connected, and how each is formed; {@link NetworkSweeps} has the definitions. A sweep
 * is there when the modes that it takes are.
 */
final class SweepDefinitions {
    private static final String DEFINITIONS =
            "ISO/IEC 11801 and the TIA-568 family, definitions of the transmission parameters (from memory)";

    private final PortMap map;
    private final NetworkTerms terms;
    private final MixedMode mixedMode;
    private final List<Level> levels = new ArrayList<>();
    private final List<Transmission> transmissions = new ArrayList<>();

    /**
     * A sweep that is a figure of the matrix at each frequency.
     *
     * @param property what it is
     * @param subject whose
     * @param figure the figure of the matrix of the modes
     * @param modePorts the pairs at their ends that it takes, as indices of {@link PortMap#modePorts()}
     * @param definition its equation, for people
     * @param source where the definition comes from
     */
    record Level(
            Property property,
            Subject subject,
            ToDoubleFunction<ComplexMatrix> figure,
            List<Integer> modePorts,
            String definition,
            String source) {}

    /**
     * The transmission of a pair, whose phase gives the delays.
     *
     * @param pair the pair
     * @param from where the wave enters, as an index of {@link PortMap#modePorts()}
     * @param to where it leaves
     * @param enters the mode in which it enters, as an index of the matrix
     * @param leaves the mode in which it leaves
     */
    record Transmission(int pair, int from, int to, int enters, int leaves) {}

    SweepDefinitions(PortMap map, NetworkTerms terms, MixedMode mixedMode) {
        this.map = map;
        this.terms = terms;
        this.mixedMode = mixedMode;
        List<ModePort> ports = map.modePorts();
        for (int here = 0; here < ports.size(); here++) {
            ofPort(here, ports);
        }
    }

    private void ofPort(int here, List<ModePort> ports) {
        ModePort port = ports.get(here);
        if (!port.hasDifferential()) {
            return;
        }
        Subject subject = Subject.ofPair(port.pair()).at(port.end());
        atOneEnd(subject, here);
        Optional<Integer> there = map.indexOf(other(port.end()), port.pair());
        if (there.isPresent()) {
            throughThePair(subject, here, there.get());
        }
        for (int disturbing = 0; disturbing < ports.size(); disturbing++) {
            ModePort from = ports.get(disturbing);
            if (!from.hasDifferential()) {
                continue;
            }
            if (from.pair() != port.pair() && from.end() == port.end()) {
                crosstalk(port, here, disturbing);
            } else if (from.pair() != port.pair()) {
                farCrosstalk(port, here, from, disturbing);
            }
        }
    }

    /** The sweeps that are levels, of some properties. */
    List<Level> levels(Set<Property> wanted) {
        return levels.stream().filter(level -> wanted.contains(level.property)).toList();
    }

    /** The transmissions whose phase is needed for the delays that are wanted. */
    List<Transmission> transmissions(Set<Property> wanted) {
        return wanted.contains(Property.PROPAGATION_DELAY) || wanted.contains(Property.GROUP_DELAY)
                ? List.copyOf(transmissions)
                : List.of();
    }

    /** The properties that the ports can give, wanted or not. */
    Set<Property> reachable() {
        Set<Property> reachable = EnumSet.noneOf(Property.class);
        levels.forEach(level -> reachable.add(level.property));
        if (!transmissions.isEmpty()) {
            reachable.add(Property.PROPAGATION_DELAY);
            reachable.add(Property.GROUP_DELAY);
        }
        return reachable;
    }

    private static End other(End end) {
        return end == End.NEAR ? End.FAR : End.NEAR;
    }

    /** The differential mode of a pair at an end that has one. */
    private int differential(int modePort) {
        return mixedMode.differential(modePort).orElseThrow();
    }

    /** A pair at an end, where it is connected in differential mode. */
    private Optional<Integer> differentialAt(End end, int pair) {
        return map.indexOf(end, pair).filter(index -> map.modePorts().get(index).hasDifferential());
    }

    private void atOneEnd(Subject subject, int here) {
        int d = differential(here);
        String place = map.words(here);
        levels.add(new Level(
                Property.RETURN_LOSS,
                subject,
                modes -> Levels.loss(modes, d, d),
                List.of(here),
                "return loss = −20 log10 |SDD(" + place + ")|",
                DEFINITIONS));
        levels.add(new Level(
                Property.INPUT_IMPEDANCE,
                subject,
                modes -> Levels.impedance(modes, d, terms.differentialOhm()),
                List.of(here),
                "input impedance = Z |1 + SDD| / |1 − SDD| at the " + place
                        + ", the other end in the reference impedance Z",
                Levels.IMPEDANCE_CITATION));
        mixedMode
                .common(here)
                .ifPresent(c -> levels.add(new Level(
                        Property.TCL,
                        subject,
                        modes -> Levels.loss(modes, c, d),
                        List.of(here),
                        "TCL = −20 log10 |SCD(" + place + ")|",
                        DEFINITIONS)));
    }

    private void throughThePair(Subject subject, int here, int there) {
        int d = differential(here);
        String path = map.words(there) + " ← " + map.words(here);
        List<Integer> both = List.of(here, there);
        OptionalInt dThere = mixedMode.differential(there);
        OptionalInt cThere = mixedMode.common(there);
        if (subject.end() == End.NEAR && dThere.isPresent()) {
            int to = dThere.getAsInt();
            levels.add(new Level(
                    Property.INSERTION_LOSS,
                    Subject.ofPair(subject.pairNumber()),
                    modes -> Levels.loss(modes, to, d),
                    both,
                    "insertion loss = −20 log10 |SDD(" + path + ")|",
                    DEFINITIONS));
            transmissions.add(new Transmission(subject.pairNumber(), here, there, d, to));
        }
        cThere.ifPresent(c -> levels.add(new Level(
                Property.TCTL,
                subject,
                modes -> Levels.loss(modes, c, d),
                both,
                "TCTL = −20 log10 |SCD(" + path + ")|",
                DEFINITIONS)));
        if (dThere.isPresent() && cThere.isPresent()) {
            int to = dThere.getAsInt();
            int c = cThere.getAsInt();
            levels.add(new Level(
                    Property.EL_TCTL,
                    subject,
                    modes -> Levels.loss(modes, c, d) - Levels.loss(modes, to, d),
                    both,
                    "EL TCTL = TCTL less the insertion loss = −20 log10 |SCD(" + path + ")| + 20 log10 |SDD(" + path
                            + ")|",
                    DEFINITIONS));
        }
    }

    /** One sweep serves both pairs: the lower one counts as disturbed. */
    private void crosstalk(ModePort disturbed, int here, int disturbing) {
        ModePort from = map.modePorts().get(disturbing);
        if (disturbed.pair() > from.pair()) {
            return;
        }
        int d = differential(here);
        int dFrom = differential(disturbing);
        levels.add(new Level(
                Property.NEXT,
                Subject.ofCombination(disturbed.pair(), from.pair()).at(disturbed.end()),
                modes -> Levels.loss(modes, d, dFrom),
                List.of(here, disturbing),
                "NEXT = −20 log10 |SDD(" + map.words(here) + " ← " + map.words(disturbing) + ")|",
                DEFINITIONS));
    }

    /** Crosstalk into a pair at one end from another pair that is driven at the other. */
    private void farCrosstalk(ModePort disturbed, int here, ModePort from, int disturbing) {
        int d = differential(here);
        int dFrom = differential(disturbing);
        Subject subject = Subject.ofCombination(disturbed.pair(), from.pair()).at(from.end());
        String path = map.words(here) + " ← " + map.words(disturbing);
        Optional<Integer> disturbedDriven = differentialAt(from.end(), disturbed.pair());
        Optional<Integer> disturbingArrives = differentialAt(disturbed.end(), from.pair());
        if (!terms.lossOfDisturbing() && disturbedDriven.isPresent()) {
            lessLoss(Property.ACR_F, subject, d, dFrom, here, disturbedDriven.get(), path, "disturbed", disturbing);
        }
        if (terms.lossOfDisturbing() && disturbingArrives.isPresent()) {
            lessLoss(Property.ACR_F, subject, d, dFrom, disturbingArrives.get(), disturbing, path, "disturbing", here);
        }
        disturbingArrives.ifPresent(
                arrives -> lessLoss(Property.FEXT, subject, d, dFrom, arrives, disturbing, path, "disturbing", here));
    }

    private void lessLoss(
            Property property,
            Subject subject,
            int d,
            int dFrom,
            int lossTo,
            int lossFrom,
            String path,
            String whose,
            int third) {
        int dLossTo = differential(lossTo);
        int dLossFrom = differential(lossFrom);
        levels.add(new Level(
                property,
                subject,
                modes -> Levels.loss(modes, d, dFrom) - Levels.loss(modes, dLossTo, dLossFrom),
                List.of(third, lossTo, lossFrom),
                (property == Property.FEXT ? "FEXT, output to output" : "ACR-F")
                        + " = far-end crosstalk less the insertion loss of the " + whose + " pair = −20 log10 |SDD("
                        + path
                        + ")| + 20 log10 |SDD(" + map.words(lossTo) + " ← " + map.words(lossFrom) + ")|",
                DEFINITIONS));
    }
}
