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

    NetworkChain(NetworkData data, PortMap map, NetworkTerms terms, MixedMode mixedMode) {
        this.data = data;
        this.map = map;
        this.terms = terms;
        this.mixedMode = mixedMode;
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
