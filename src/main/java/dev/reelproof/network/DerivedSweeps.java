package dev.reelproof.network;

import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Sweep;
import java.util.List;
import java.util.Set;

/**
 * What follows from one network file.
 *
 * @param sweeps the sweeps, each property and subject once
 * @param reachable the properties that the ports of the file reach; of a delay among them there may be no sweep, with a warning
 * @param warnings what the reader of the result should know, as sentences
 */
public record DerivedSweeps(List<Sweep> sweeps, Set<Property> reachable, List<String> warnings) {

    public DerivedSweeps {
        sweeps = List.copyOf(sweeps);
        reachable = Set.copyOf(reachable);
        warnings = List.copyOf(warnings);
    }
}
