package dev.reelproof.network;

import dev.reelproof.measurement.End;
import dev.reelproof.measurement.NetworkTerms;
import dev.reelproof.measurement.Origin;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;

/**
 * The fitted characteristic impedance and the structural return loss of each pair at each end: gathers the impedances while the
 * matrices are formed, then fits. A pair that is connected at both ends gives √(Zoc Zsc), which a mismatch at the other end does not
 * change; otherwise the input impedance is taken, as it is with the other end in its termination.
 */
final class FittedImpedances {
    static final Set<Property> PROPERTIES =
            Collections.unmodifiableSet(EnumSet.of(Property.CHARACTERISTIC_IMPEDANCE, Property.STRUCTURAL_RETURN_LOSS));

    /** What they take of a file. */
    static final String NEEDS = "it takes a pair in differential mode, and " + ImpedanceFit.LEAST_POINTS
            + " frequencies or more from 1 MHz on, the last at least " + ImpedanceFit.LEAST_SPAN + " times the first";

    /** The limits of these properties begin here, and the fit with them. Common practice, no source. */
    private static final double FROM_MEGAHERTZ = 1;

    private final PortMap map;
    private final NetworkTerms terms;
    private final double[] megahertz;
    private final int from;
    private final List<Pair> pairs = new ArrayList<>();

    /** What is gathered of one pair at one end. */
    private static final class Pair {
        private final int here;
        private final int mode;
        private final OptionalInt there;
        private final OptionalInt otherMode;
        private final double[] re;
        private final double[] im;

        Pair(int here, int mode, OptionalInt there, OptionalInt otherMode, int size) {
            this.here = here;
            this.mode = mode;
            this.there = there;
            this.otherMode = otherMode;
            this.re = new double[size];
            this.im = new double[size];
        }

        List<Integer> modePorts() {
            return there.isPresent() ? List.of(here, there.getAsInt()) : List.of(here);
        }
    }

    /**
     * A sweep of this kind, from {@link #from()} on.
     *
     * @param property what it is
     * @param subject whose
     * @param values its values
     * @param modePorts the pairs at their ends that it takes
     * @param more the links of its chain between the modes and the definition
     * @param definition its equation, for people
     * @param source where that comes from
     */
    record Fitted(
            Property property,
            Subject subject,
            List<Double> values,
            List<Integer> modePorts,
            List<Origin.Network.Link> more,
            String definition,
            String source) {}

    /**
     * What can be fitted of a file.
     *
     * @param megahertz the frequencies of the sweeps, ascending
     */
    FittedImpedances(PortMap map, NetworkTerms terms, MixedMode mixedMode, double[] megahertz) {
        this.map = map;
        this.terms = terms;
        int first = 0;
        while (first < megahertz.length && !(megahertz[first] >= FROM_MEGAHERTZ)) {
            first++;
        }
        this.from = first;
        this.megahertz = Arrays.copyOfRange(megahertz, first, megahertz.length);
        if (ImpedanceFit.whyNot(this.megahertz).isPresent()) {
            return;
        }
        for (int here = 0; here < map.modePorts().size(); here++) {
            ModePort port = map.modePorts().get(here);
            OptionalInt mode = mixedMode.differential(here);
            if (mode.isPresent()) {
                int there = map.indexOf(port.end() == End.NEAR ? End.FAR : End.NEAR, port.pair())
                        .filter(index -> map.modePorts().get(index).hasDifferential())
                        .orElse(-1);
                pairs.add(new Pair(
                        here,
                        mode.getAsInt(),
                        there < 0 ? OptionalInt.empty() : OptionalInt.of(there),
                        there < 0 ? OptionalInt.empty() : mixedMode.differential(there),
                        this.megahertz.length));
            }
        }
    }

    /** The index of the first frequency that counts. */
    int from() {
        return from;
    }

    /** The properties that grid and ports can give. */
    Set<Property> reachable() {
        return pairs.isEmpty() ? Set.of() : PROPERTIES;
    }

    /** Takes the matrix of the modes at a frequency. */
    void take(int index, ComplexMatrix modes) {
        if (index < from) {
            return;
        }
        for (Pair pair : pairs) {
            double[] z = pair.otherMode.isPresent()
                    ? InputImpedance.openShort(modes, pair.mode, pair.otherMode.getAsInt(), terms.differentialOhm())
                    : InputImpedance.terminated(modes, pair.mode, terms.differentialOhm());
            pair.re[index - from] = z[0];
            pair.im[index - from] = z[1];
        }
    }

    /**
     * The sweeps of all pairs.
     *
     * @param wanted the properties that are
     * @param file the file's name
     * @param warnings where is said of which pair there is none
     */
    List<Fitted> sweeps(Set<Property> wanted, String file, List<String> warnings) {
        List<Fitted> sweeps = new ArrayList<>();
        for (Pair pair : pairs) {
            try {
                ImpedanceFit fit = ImpedanceFit.of(megahertz, pair.re, pair.im);
                add(sweeps, wanted, pair, fit);
            } catch (IllegalArgumentException e) {
                warnings.add("No characteristic impedance was fitted for the " + map.words(pair.here) + " from " + file
                        + ": " + e.getMessage() + ".");
            }
        }
        return sweeps;
    }

    private void add(List<Fitted> sweeps, Set<Property> wanted, Pair pair, ImpedanceFit fit) {
        ModePort port = map.modePorts().get(pair.here);
        Subject subject = Subject.ofPair(port.pair()).at(port.end());
        boolean openShort = pair.otherMode.isPresent();
        String measured = openShort ? "√(Zoc Zsc)" : "the input impedance";
        List<Origin.Network.Link> more = List.of(
                new Origin.Network.Link(
                        "impedance",
                        openShort
                                ? "Zin = √(Zoc Zsc) at the " + map.words(pair.here)
                                        + ", the other end open and shorted, both by calculation from SDD of both ends"
                                : "Zin = Z (1 + SDD)/(1 − SDD) at the " + map.words(pair.here)
                                        + ", the other end as it was terminated",
                        null,
                        "ohm",
                        openShort ? InputImpedance.OPEN_SHORT_CITATION : Levels.IMPEDANCE_CITATION),
                new Origin.Network.Link(
                        "function fit",
                        fit.words() + "; least squares over " + megahertz.length + " frequencies from " + megahertz[0]
                                + " to " + megahertz[megahertz.length - 1] + " MHz, and of the angle alike",
                        fit.coefficients()[0],
                        "ohm",
                        ImpedanceFit.CITATION));
        List<Double> magnitudes = new ArrayList<>();
        List<Double> structural = new ArrayList<>();
        for (int i = 0; i < megahertz.length; i++) {
            magnitudes.add(fit.magnitude(megahertz[i]));
            structural.add(fit.structuralReturnLoss(megahertz[i], pair.re[i], pair.im[i]));
        }
        if (wanted.contains(Property.CHARACTERISTIC_IMPEDANCE)) {
            sweeps.add(new Fitted(
                    Property.CHARACTERISTIC_IMPEDANCE,
                    subject,
                    magnitudes,
                    pair.modePorts(),
                    more,
                    "characteristic impedance = the fit of " + measured + " at this frequency",
                    ImpedanceFit.CITATION));
        }
        if (wanted.contains(Property.STRUCTURAL_RETURN_LOSS)) {
            sweeps.add(new Fitted(
                    Property.STRUCTURAL_RETURN_LOSS,
                    subject,
                    structural,
                    pair.modePorts(),
                    more,
                    "structural return loss = −20 log10 |(Zin − Z)/(Zin + Z)|, Zin " + measured + ", Z the fit of it",
                    StructuralReturnLoss.CITATION));
        }
    }
}
