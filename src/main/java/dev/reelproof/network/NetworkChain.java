package dev.reelproof.network;

import dev.reelproof.measurement.NetworkTerms;
import dev.reelproof.measurement.Origin;
import dev.reelproof.measurement.Property;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Writes down how a file of S-parameters became a sweep, for the explanation of a finding. */
final class NetworkChain {
    private static final String FORMAT = "Touchstone File Format Specification (secondary texts and memory)";

    private final NetworkData data;
    private final PortMap map;
    private final NetworkTerms terms;
    private final MixedMode mixedMode;
    private final double[] referenceOhm;

    /**
     * The chains of a file.
     *
     * @param map what the rows of its matrix are connected to
     * @param referenceOhm the reference of each row, ohm
     */
    NetworkChain(NetworkData data, PortMap map, NetworkTerms terms, MixedMode mixedMode, double[] referenceOhm) {
        this.data = data;
        this.map = map;
        this.terms = terms;
        this.mixedMode = mixedMode;
        this.referenceOhm = referenceOhm.clone();
    }

    /**
     * The chain of a sweep: file, renormalising, mixed mode, definition.
     *
     * @param modePorts the pairs at their ends that it takes
     * @param definition its equation, for people
     * @param property what it is
     * @param source where the definition comes from
     */
    List<Origin.Network.Link> of(List<Integer> modePorts, String definition, Property property, String source) {
        return of(modePorts, List.of(), definition, property, source);
    }

    /** The chain of a sweep that has more links between the modes and its definition. */
    List<Origin.Network.Link> of(
            List<Integer> modePorts,
            List<Origin.Network.Link> more,
            String definition,
            Property property,
            String source) {
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
        boolean formed =
                distinct.stream().anyMatch(index -> map.modePorts().get(index).isOfConductors());
        chain.add(new Origin.Network.Link(
                "renormalised",
                renormalised(),
                isOfConductorsAlone() ? mixedMode.portOhm() : terms.differentialOhm(),
                "ohm",
                Renormalisation.CITATION));
        String references = "reference " + terms.differentialOhm() + " ohm, and its common mode, reference "
                + terms.commonOhm() + " ohm";
        chain.add(
                formed
                        ? new Origin.Network.Link(
                                "mixed mode",
                                "each pair to its differential mode, " + references,
                                terms.differentialOhm(),
                                "ohm",
                                MixedMode.CITATION)
                        : new Origin.Network.Link(
                                "mixed mode",
                                "measured as modes: each pair's differential mode, " + references,
                                terms.differentialOhm(),
                                "ohm",
                                FORMAT));
        chain.addAll(more);
        chain.add(new Origin.Network.Link("definition", definition, null, property.canonicalUnit(), source));
        return chain;
    }

    private boolean isOfConductorsAlone() {
        return map.modePorts().stream().allMatch(ModePort::isOfConductors);
    }

    private String renormalised() {
        double least = Arrays.stream(referenceOhm).min().orElseThrow();
        double most = Arrays.stream(referenceOhm).max().orElseThrow();
        String file = (Arrays.equals(referenceOhm, data.referenceOhm()) ? "the file's " : "")
                + (least == most ? least + " ohm" : least + " to " + most + " ohm, port by port")
                + (Arrays.equals(referenceOhm, data.referenceOhm()) ? "" : ", which the file states otherwise,");
        String to = isOfConductorsAlone()
                ? mixedMode.portOhm() + " ohm"
                : "those of their modes, " + terms.differentialOhm() + " ohm differential and " + terms.commonOhm()
                        + " ohm common"
                        + (map.modePorts().stream().anyMatch(ModePort::isOfConductors)
                                ? ", or of a conductor, " + mixedMode.portOhm() + " ohm"
                                : "");
        return "all ports from " + file + " to " + to
                + (Arrays.equals(referenceOhm, mixedMode.rowOhm()) ? ": nothing to do" : "");
    }
}
