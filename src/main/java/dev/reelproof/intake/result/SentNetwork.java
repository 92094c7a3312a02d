package dev.reelproof.intake.result;

import dev.reelproof.measurement.Property;
import dev.reelproof.network.NetworkData;
import dev.reelproof.network.Port;
import dev.reelproof.network.PortMap;
import java.util.List;
import java.util.Set;

/**
 * A network-analyser file as sent.
 *
 * @param pointer the place of its entry in the document
 * @param data what the file holds
 * @param ports where its ports are connected, in the order sent
 * @param map the same, checked
 * @param derive what is to be derived; empty for all that its ports give
 */
public record SentNetwork(String pointer, NetworkData data, List<Port> ports, PortMap map, Set<Property> derive) {

    public SentNetwork {
        ports = List.copyOf(ports);
        derive = Set.copyOf(derive);
    }
}
