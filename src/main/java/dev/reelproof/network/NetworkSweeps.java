package dev.reelproof.network;

import dev.reelproof.measurement.NetworkTerms;
import dev.reelproof.measurement.Origin;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import dev.reelproof.measurement.Sweep;
import dev.reelproof.network.SweepDefinitions.Level;
import dev.reelproof.network.SweepDefinitions.Transmission;
import dev.reelproof.quantity.FrequencyGrid;
import dev.reelproof.quantity.ReadingUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.function.IntToDoubleFunction;

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
 *       output, = X − the loss of the disturbing pair; fitted characteristic impedance and structural return loss in {@link
 *       ImpedanceFit} and {@link StructuralReturnLoss}
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
            Property.CHARACTERISTIC_IMPEDANCE,
            Property.STRUCTURAL_RETURN_LOSS,
            Property.TCL,
            Property.TCTL,
            Property.EL_TCTL,
            Property.PROPAGATION_DELAY,
            Property.GROUP_DELAY));

    /** Points below 1 kHz count as direct current. Common practice, no source. */
    private static final double LEAST_MEGAHERTZ = 1e-3;

    private final NetworkData data;
    private final PortMap map;
    private final double[] referenceOhm;
    private final MixedMode mixedMode;
    private final NetworkChain chain;
    /** The first frequency that is not left out, as an index of the data. */
    private final int first;

    private final FrequencyGrid grid;
    private final int[] lines;
    private final List<Sweep> sweeps = new ArrayList<>();
    private final List<String> warnings;

    private NetworkSweeps(NetworkData data, PortMap map, NetworkTerms terms) {
        ModeReferences references = ModeReferences.of(data, map, terms);
        this.data = data;
        this.map = map;
        this.referenceOhm = references.ohm();
        this.mixedMode = new MixedMode(map, terms);
        this.chain = new NetworkChain(data, map, terms, mixedMode, referenceOhm);
        this.first = firstWithAPlace(data);
        this.grid = grid(data, first);
        this.lines = new int[grid.size()];
        Arrays.setAll(lines, i -> data.line(first + i));
        this.warnings = new ArrayList<>(data.warnings());
        warnings.addAll(references.warnings());
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
        NetworkSweeps sweeps = new NetworkSweeps(data, map.rowsOf(data), terms);
        SweepDefinitions definitions = new SweepDefinitions(sweeps.map, terms, sweeps.mixedMode);
        FittedImpedances fitted =
                new FittedImpedances(sweeps.map, terms, sweeps.mixedMode, frequencies(data, sweeps.first));
        sweeps.warnOfPointsLeftOut();
        sweeps.warnings.addAll(NetworkChecks.warnings(data));
        sweeps.warnings.addAll(SingleEndedChecks.warnings(data, sweeps.map, sweeps.first, span));
        sweeps.derive(definitions.levels(wanted), definitions.transmissions(wanted), fitted, span, wanted);
        Set<Property> reachable = definitions.reachable();
        reachable.addAll(fitted.reachable());
        return new DerivedSweeps(sweeps.sweeps, reachable, sweeps.warnings);
    }

    /** What a property that a file does not reach would need. */
    public static String needs(Property property) {
        return FittedImpedances.PROPERTIES.contains(property)
                ? FittedImpedances.NEEDS
                : "its ports do not reach both ends, or the pairs, that it takes";
    }

    private static int firstWithAPlace(NetworkData data) {
        int first = 0;
        while (first < data.size() && !(data.megahertz(first) >= LEAST_MEGAHERTZ)) {
            first++;
        }
        if (first == data.size()) {
            throw new NetworkException(
                    data.file(), data.line(0), "no frequency is 1 kHz or more; lower ones count as direct current");
        }
        return first;
    }

    private static FrequencyGrid grid(NetworkData data, int first) {
        return FrequencyGrid.ofMegahertz(frequencies(data, first));
    }

    private static double[] frequencies(NetworkData data, int first) {
        double[] megahertz = new double[data.size() - first];
        Arrays.setAll(megahertz, i -> data.megahertz(first + i));
        return megahertz;
    }

    private void warnOfPointsLeftOut() {
        if (first > 0) {
            warnings.add(first + (first == 1 ? " point" : " points") + " of " + data.file()
                    + " below 1 kHz, from line " + data.line(0) + ", "
                    + (first == 1
                            ? "counts as direct current and was left out."
                            : "count as direct current and were left out."));
        }
    }

    /** Reads all figures off each frequency's matrix, which is formed once, and makes sweeps of them. */
    private void derive(
            List<Level> levels,
            List<Transmission> transmissions,
            FittedImpedances fitted,
            CableSpan span,
            Set<Property> wanted) {
        boolean fits = FittedImpedances.PROPERTIES.stream().anyMatch(wanted::contains);
        int size = grid.size();
        double[][] figures = new double[levels.size()][size];
        double[][] re = new double[transmissions.size()][size];
        double[][] im = new double[transmissions.size()][size];
        for (int i = 0; i < size; i++) {
            ComplexMatrix modes = modesAt(first + i);
            for (int k = 0; k < figures.length; k++) {
                figures[k][i] = levels.get(k).figure().applyAsDouble(modes);
            }
            for (int k = 0; k < re.length; k++) {
                Transmission transmission = transmissions.get(k);
                re[k][i] = modes.re(transmission.leaves(), transmission.enters());
                im[k][i] = modes.im(transmission.leaves(), transmission.enters());
            }
            if (fits) {
                fitted.take(i, modes);
            }
        }
        for (int k = 0; k < figures.length; k++) {
            Level level = levels.get(k);
            add(
                    level.property(),
                    level.subject(),
                    figures[k],
                    chain.of(level.modePorts(), level.definition(), level.property(), level.source()));
        }
        for (int k = 0; k < re.length; k++) {
            addDelays(transmissions.get(k), re[k], im[k], span, wanted);
        }
        if (fits) {
            addFitted(fitted, wanted);
        }
    }

    private void addFitted(FittedImpedances fitted, Set<Property> wanted) {
        int from = fitted.from();
        for (FittedImpedances.Fitted sweep : fitted.sweeps(wanted, data.file(), warnings)) {
            sweeps.add(Sweep.of(
                    sweep.property(),
                    sweep.subject(),
                    from == 0 ? grid : grid(data, first + from),
                    sweep.values().stream().mapToDouble(Double::doubleValue).toArray(),
                    ReadingUnit.parse(sweep.property().canonicalUnit()),
                    new Origin.Network(
                            data.file(),
                            Arrays.copyOfRange(lines, from, lines.length),
                            chain.of(
                                    sweep.modePorts(),
                                    sweep.more(),
                                    sweep.definition(),
                                    sweep.property(),
                                    sweep.source()))));
        }
    }

    private ComplexMatrix modesAt(int index) {
        try {
            return mixedMode.of(data.matrix(index), referenceOhm);
        } catch (ArithmeticException e) {
            throw new NetworkException(
                    data.file(),
                    data.line(index),
                    "the matrix cannot be renormalised to other reference impedances; only one that gains power could do"
                            + " that, so the data are wrong");
        }
    }

    private void addDelays(Transmission transmission, double[] re, double[] im, CableSpan span, Set<Property> wanted) {
        String place = "pair " + transmission.pair();
        PhaseDelay.Found found = PhaseDelay.of(place, data, first, re, im, span);
        if (found.delay().isEmpty()) {
            warnings.add("No delay of " + place + " was derived from " + data.file() + ": " + found.whyNot() + ".");
            return;
        }
        PhaseDelay delay = found.delay().get();
        String how = "the phase of SDD(" + map.words(transmission.to()) + " ← " + map.words(transmission.from())
                + ") unwrapped for a delay " + delay.words()
                + " at the lowest frequencies, and extrapolated to 0 at 0 Hz";
        if (wanted.contains(Property.PROPAGATION_DELAY)) {
            addDelay(
                    Property.PROPAGATION_DELAY,
                    transmission,
                    delay::propagation,
                    "propagation delay = −φ/(2πf), φ " + how);
        }
        if (wanted.contains(Property.GROUP_DELAY)) {
            addDelay(Property.GROUP_DELAY, transmission, delay::group, "group delay = −dφ/(2π df), φ " + how);
        }
    }

    private void addDelay(
            Property property, Transmission transmission, IntToDoubleFunction delayAt, String definition) {
        double[] values = new double[grid.size()];
        Arrays.setAll(values, delayAt);
        List<Integer> both = List.of(transmission.from(), transmission.to());
        add(
                property,
                Subject.ofPair(transmission.pair()),
                values,
                chain.of(both, definition, property, PhaseDelay.CITATION));
    }

    private void add(Property property, Subject subject, double[] values, List<Origin.Network.Link> links) {
        sweeps.add(Sweep.of(
                property,
                subject,
                grid,
                values,
                ReadingUnit.parse(property.canonicalUnit()),
                new Origin.Network(data.file(), lines, links)));
    }
}
