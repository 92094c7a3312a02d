package dev.reelproof.intake.result;

import dev.reelproof.measurement.ReelResult;
import java.util.List;

/**
 * A result that was read.
 *
 * @param result what was measured
 * @param networks network-analyser files, from which more is to be derived once the limit set is known
 * @param warnings what its readers should know, as sentences
 */
public record ReadResult(ReelResult result, List<SentNetwork> networks, List<String> warnings) {

    public ReadResult {
        networks = List.copyOf(networks);
        warnings = List.copyOf(warnings);
    }
}
