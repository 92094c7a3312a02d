package dev.reelproof.intake;

import dev.reelproof.measurement.ReelResult;
import java.util.List;

/**
 * A result that was read.
 *
 * @param result what was measured
 * @param warnings what its readers should know, as sentences
 */
public record ReadResult(ReelResult result, List<String> warnings) {

    public ReadResult {
        warnings = List.copyOf(warnings);
    }
}
