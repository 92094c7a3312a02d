package dev.reelproof.network;

import dev.reelproof.measurement.Sweep;
import java.util.List;

/**
 * What follows from one network file.
 *
 * @param sweeps the sweeps, each property and subject once
 * @param warnings what the readers of the result should know, as sentences
 */
public record DerivedSweeps(List<Sweep> sweeps, List<String> warnings) {

    public DerivedSweeps {
        sweeps = List.copyOf(sweeps);
        warnings = List.copyOf(warnings);
    }
}
