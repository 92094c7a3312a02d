package dev.reelproof.network;

import dev.reelproof.measurement.End;
import dev.reelproof.measurement.NetworkTerms;
import dev.reelproof.measurement.Origin;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import dev.reelproof.measurement.Sweep;
import dev.reelproof.network.PortMap.ModePort;
import dev.reelproof.quantity.FrequencyGrid;
import dev.reelproof.quantity.ReadingUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToDoubleFunction;

/**
 * Source: ISO/IEC 11801 and the TIA-568 family, definitions of the transmission parameters (from memory). The sweeps of the
 * cable that follow from the matrix of its modes.
 *
 * <ul>
 *   <li>Equation: with A(x, y) = −20 log10 |S(x, y)|, x where the wave leaves and y where it enters, D and C the differential
 *       and common mode of a pair at an end: insertion loss A(D far, D near); return loss A(D, D); NEXT A(D of one pair, D of
 *       the other) at one end; TCL A(C, D) at one end; TCTL A(C other end, D this end); EL TCTL = TCTL − A(D other end, D this
 *       end); crosstalk to the far end X = A(D of the disturbed pair at the other end, D of the disturbing pair at this end);
 *       ACR-F = X − the loss of the disturbed pair (or of the disturbing pair, where the limit set says so); FEXT, output to
 *       output, = X − the loss of the disturbing pair
 *   <li>Symbols: all in dB; the end of a sweep is the one at which the disturbing or measured pair is driven
 *   <li>Range: frequencies of 1 kHz and more: a point below, such as the extrapolated one at 0 Hz, has no place on a
 *       logarithmic axis and no delay, and is left out
 *   <li>Edge cases: see {@link Levels} and {@link PhaseDelay}
 *   <li>Known error: that of the data
 * </ul>
 */
public final class NetworkSweeps {
    /** What can be derived. */
    public static final Set<Property> DERIVABLE = Collections.unmodifiableSet(EnumSet.of(
            Property.INSERTION_LOSS,
            Property.NEXT,
            Property.ACR_F,
            Property.FEXT,
            Property.RETURN_LOSS,
            Property.INPUT_IMPEDANCE,
            Property.TCL,
            Property.TCTL,
            Property.EL_TCTL,
            Property.PROPAGATION_DELAY,
            Property.GROUP_DELAY));

    private static final String DEFINITIONS =
            "ISO/IEC 11801 and the TIA-568 family, definitions of the transmission parameters (from memory)";
    private static final String FORMAT = "Touchstone File Format Specification (secondary texts and memory)";

    /** Points below 1 kHz count as direct current. Common practice, no source. */
    private static final double LEAST_MEGAHERTZ = 1e-3;

    private final NetworkData data;
    private final PortMap map;
    private final NetworkTerms terms;
    private final Set<Property> wanted;
    private final MixedMode mixedMode;
    private final List<Level> levels = new ArrayList<>();
    private final List<Transmission> transmissions = new ArrayList<>();
    private final Set<Property> reachable = EnumSet.noneOf(Property.class);

    /** A sweep that is a figure of the matrix at each frequency. */
    private record Level(
            Property property,
            Subject subject,
            ToDoubleFunction<ComplexMatrix> figure,
            List<Integer> modePorts,
            String definition,
            String source) {}

    /** The transmission of a pair, whose phase gives the delays. */
    private record Transmission(int pair, int from, int to) {}

    private NetworkSweeps(NetworkData data, PortMap map, NetworkTerms terms, Set<Property> wanted) {
        this.data = data;
        this.map = map;
        this.terms = terms;
        this.wanted = wanted;
        this.mixedMode = new MixedMode(map, terms);
    }

    /**
     * The sweeps of a file.
     *
     * @param data the file's data
     * @param map where its ports are connected
     * @param terms the references of the modes and the definition of ACR-F
     * @param span length and nominal velocity of the cable, for the delays
     * @param wanted the properties to derive, of those that can be
     * @throws NetworkException when the grid is too coarse to unwrap a phase that is wanted, or there is no frequency left
     * @throws PortMapException when the map does not fit the file
     */
    public static DerivedSweeps derive(
            NetworkData data, PortMap map, NetworkTerms terms, CableSpan span, Set<Property> wanted) {
        map.requireFits(data.ports());
        NetworkSweeps sweeps = new NetworkSweeps(data, map, terms, wanted);
        sweeps.define();
        return sweeps.derive(span);
    }

    private void define() {
        List<ModePort> ports = map.modePorts();
        for (int here = 0; here < ports.size(); here++) {
            ModePort port = ports.get(here);
            End other = port.end() == End.NEAR ? End.FAR : End.NEAR;
            Optional<Integer> there = map.indexOf(other, port.pair());
            Subject subject = Subject.ofPair(port.pair()).at(port.end());
            atOneEnd(subject, here);
            if (there.isPresent()) {
                throughThePair(subject, here, there.get());
            }
            for (int disturbing = 0; disturbing < ports.size(); disturbing++) {
                ModePort from = ports.get(disturbing);
                if (from.pair() != port.pair() && from.end() == port.end()) {
                    crosstalk(port, here, disturbing);
                } else if (from.pair() != port.pair()) {
                    farCrosstalk(port, here, from, disturbing);
                }
            }
        }
        levels.forEach(level -> reachable.add(level.property));
        if (!transmissions.isEmpty()) {
            reachable.add(Property.PROPAGATION_DELAY);
            reachable.add(Property.GROUP_DELAY);
        }
        levels.removeIf(level -> !wanted.contains(level.property));
        if (!wanted.contains(Property.PROPAGATION_DELAY) && !wanted.contains(Property.GROUP_DELAY)) {
            transmissions.clear();
        }
    }

    private void atOneEnd(Subject subject, int here) {
        int d = mixedMode.differential(here);
        int c = mixedMode.common(here);
        String place = words(here);
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
        levels.add(new Level(
                Property.TCL,
                subject,
                modes -> Levels.loss(modes, c, d),
                List.of(here),
                "TCL = −20 log10 |SCD(" + place + ")|",
                DEFINITIONS));
    }

    private void throughThePair(Subject subject, int here, int there) {
        int d = mixedMode.differential(here);
        int dThere = mixedMode.differential(there);
        int cThere = mixedMode.common(there);
        String path = words(there) + " ← " + words(here);
        List<Integer> both = List.of(here, there);
        if (subject.end() == End.NEAR) {
            levels.add(new Level(
                    Property.INSERTION_LOSS,
                    Subject.ofPair(subject.pair()),
                    modes -> Levels.loss(modes, dThere, d),
                    both,
                    "insertion loss = −20 log10 |SDD(" + path + ")|",
                    DEFINITIONS));
            transmissions.add(new Transmission(subject.pair(), here, there));
        }
        levels.add(new Level(
                Property.TCTL,
                subject,
                modes -> Levels.loss(modes, cThere, d),
                both,
                "TCTL = −20 log10 |SCD(" + path + ")|",
                DEFINITIONS));
        levels.add(new Level(
                Property.EL_TCTL,
                subject,
                modes -> Levels.loss(modes, cThere, d) - Levels.loss(modes, dThere, d),
                both,
                "EL TCTL = TCTL less the insertion loss = −20 log10 |SCD(" + path + ")| + 20 log10 |SDD(" + path + ")|",
                DEFINITIONS));
    }

    /** One sweep serves both pairs: the lower one counts as disturbed. */
    private void crosstalk(ModePort disturbed, int here, int disturbing) {
        ModePort from = map.modePorts().get(disturbing);
        if (disturbed.pair() > from.pair()) {
            return;
        }
        int d = mixedMode.differential(here);
        int dFrom = mixedMode.differential(disturbing);
        levels.add(new Level(
                Property.NEXT,
                Subject.ofCombination(disturbed.pair(), from.pair()).at(disturbed.end()),
                modes -> Levels.loss(modes, d, dFrom),
                List.of(here, disturbing),
                "NEXT = −20 log10 |SDD(" + words(here) + " ← " + words(disturbing) + ")|",
                DEFINITIONS));
    }

    /** Crosstalk into a pair at one end from another pair that is driven at the other. */
    private void farCrosstalk(ModePort disturbed, int here, ModePort from, int disturbing) {
        int d = mixedMode.differential(here);
        int dFrom = mixedMode.differential(disturbing);
        Subject subject = Subject.ofCombination(disturbed.pair(), from.pair()).at(from.end());
        String path = words(here) + " ← " + words(disturbing);
        Optional<Integer> disturbedDriven = map.indexOf(from.end(), disturbed.pair());
        Optional<Integer> disturbingArrives = map.indexOf(disturbed.end(), from.pair());
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
        int dLossTo = mixedMode.differential(lossTo);
        int dLossFrom = mixedMode.differential(lossFrom);
        levels.add(new Level(
                property,
                subject,
                modes -> Levels.loss(modes, d, dFrom) - Levels.loss(modes, dLossTo, dLossFrom),
                List.of(third, lossTo, lossFrom),
                (property == Property.FEXT ? "FEXT, output to output" : "ACR-F")
                        + " = far-end crosstalk less the insertion loss of the " + whose + " pair = −20 log10 |SDD("
                        + path
                        + ")| + 20 log10 |SDD(" + words(lossTo) + " ← " + words(lossFrom) + ")|",
                DEFINITIONS));
    }

    private String words(int modePort) {
        ModePort port = map.modePorts().get(modePort);
        return port.end().word() + " end of pair " + port.pair();
    }

    private DerivedSweeps derive(CableSpan span) {
        List<String> warnings = new ArrayList<>(data.warnings());
        int first = 0;
        while (first < data.size() && !(data.megahertz(first) >= LEAST_MEGAHERTZ)) {
            first++;
        }
        int size = data.size() - first;
        if (size == 0) {
            throw new NetworkException(
                    data.file(), data.line(0), "no frequency is 1 kHz or more; lower ones count as direct current");
        }
        if (first > 0) {
            warnings.add(first + (first == 1 ? " point" : " points") + " of " + data.file()
                    + " below 1 kHz, from line " + data.line(0) + ", "
                    + (first == 1
                            ? "counts as direct current and was left out."
                            : "count as direct current and were left out."));
        }
        warnings.addAll(NetworkChecks.warnings(data));
        double[][] figures = new double[levels.size()][size];
        double[][] re = new double[transmissions.size()][size];
        double[][] im = new double[transmissions.size()][size];
        for (int i = 0; i < size; i++) {
            ComplexMatrix modes = modesAt(first + i);
            for (int k = 0; k < figures.length; k++) {
                figures[k][i] = levels.get(k).figure.applyAsDouble(modes);
            }
            for (int k = 0; k < re.length; k++) {
                Transmission transmission = transmissions.get(k);
                re[k][i] = modes.re(transmission.to, transmission.from);
                im[k][i] = modes.im(transmission.to, transmission.from);
            }
        }
        double[] megahertz = new double[size];
        int[] lines = new int[size];
        for (int i = 0; i < size; i++) {
            megahertz[i] = data.megahertz(first + i);
            lines[i] = data.line(first + i);
        }
        FrequencyGrid grid = FrequencyGrid.ofMegahertz(megahertz);
        List<Sweep> sweeps = new ArrayList<>();
        for (int k = 0; k < figures.length; k++) {
            Level level = levels.get(k);
            sweeps.add(sweep(
                    level.property,
                    level.subject,
                    grid,
                    figures[k],
                    lines,
                    chain(level.modePorts, level.definition, level.property, level.source)));
        }
        for (int k = 0; k < re.length; k++) {
            delays(transmissions.get(k), grid, first, lines, re[k], im[k], span, sweeps, warnings);
        }
        return new DerivedSweeps(sweeps, reachable, warnings);
    }

    private ComplexMatrix modesAt(int index) {
        try {
            return mixedMode.of(data.matrix(index), data.referenceOhm());
        } catch (ArithmeticException e) {
            throw new NetworkException(
                    data.file(),
                    data.line(index),
                    "the matrix cannot be renormalised to other reference impedances; only one that gains power could do"
                            + " that, so the data are wrong");
        }
    }

    private void delays(
            Transmission transmission,
            FrequencyGrid grid,
            int first,
            int[] lines,
            double[] re,
            double[] im,
            CableSpan span,
            List<Sweep> sweeps,
            List<String> warnings) {
        String place = "pair " + transmission.pair;
        PhaseDelay.Found found = PhaseDelay.of(place, data, first, re, im, span);
        if (found.delay().isEmpty()) {
            warnings.add("No delay of " + place + " was derived from " + data.file() + ": " + found.whyNot() + ".");
            return;
        }
        PhaseDelay delay = found.delay().get();
        Subject subject = Subject.ofPair(transmission.pair);
        String how = "the phase of SDD(" + words(transmission.to) + " ← " + words(transmission.from)
                + ") unwrapped for a delay " + delay.words()
                + " at the lowest frequencies, and extrapolated to 0 at 0 Hz";
        List<Integer> both = List.of(transmission.from, transmission.to);
        for (Property property : List.of(Property.PROPAGATION_DELAY, Property.GROUP_DELAY)) {
            if (wanted.contains(property)) {
                boolean group = property == Property.GROUP_DELAY;
                double[] values = new double[re.length];
                Arrays.setAll(values, group ? delay::group : delay::propagation);
                String definition =
                        (group ? "group delay = −dφ/(2π df), φ " : "propagation delay = −φ/(2πf), φ ") + how;
                sweeps.add(sweep(
                        property,
                        subject,
                        grid,
                        values,
                        lines,
                        chain(both, definition, property, PhaseDelay.CITATION)));
            }
        }
    }

    private Sweep sweep(
            Property property,
            Subject subject,
            FrequencyGrid grid,
            double[] values,
            int[] lines,
            List<Origin.Network.Link> chain) {
        return Sweep.of(
                property,
                subject,
                grid,
                values,
                ReadingUnit.parse(property.canonicalUnit()),
                new Origin.Network(data.file(), lines, chain));
    }

    private List<Origin.Network.Link> chain(
            List<Integer> modePorts, String definition, Property property, String source) {
        List<Origin.Network.Link> chain = new ArrayList<>();
        List<Integer> distinct = modePorts.stream().distinct().sorted().toList();
        chain.add(new Origin.Network.Link(
                "network file",
                data.file() + " (" + data.words() + "), " + data.ports() + " ports; here "
                        + String.join(
                                "; ",
                                distinct.stream()
                                        .map(index -> map.modePorts().get(index).words())
                                        .toList()),
                (double) data.ports(),
                "ports",
                FORMAT));
        chain.add(new Origin.Network.Link(
                "renormalised", renormalised(), mixedMode.portOhm(), "ohm", Renormalisation.CITATION));
        chain.add(new Origin.Network.Link(
                "mixed mode",
                "each pair to its differential mode, reference " + terms.differentialOhm()
                        + " ohm, and its common mode, reference " + terms.commonOhm() + " ohm",
                terms.differentialOhm(),
                "ohm",
                MixedMode.CITATION));
        chain.add(new Origin.Network.Link("definition", definition, null, property.canonicalUnit(), source));
        return chain;
    }

    private String renormalised() {
        double[] references = data.referenceOhm();
        double least = Arrays.stream(references).min().orElseThrow();
        double most = Arrays.stream(references).max().orElseThrow();
        String file = least == most ? least + " ohm" : least + " to " + most + " ohm, port by port";
        return "all ports from the file's " + file + " to " + mixedMode.portOhm() + " ohm"
                + (least == most && least == mixedMode.portOhm() ? ": nothing to do" : "");
    }
}
