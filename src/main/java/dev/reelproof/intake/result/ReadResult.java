package dev.reelproof.intake.result;

import dev.reelproof.measurement.ReelResult;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A result that was read.
 *
 * @param result what was measured
 * @param networks network-analyser files, from which more is to be derived once the limit set is known
 * @param warnings what its readers should know, as sentences
 * @param reels the reels that its parts say they are of; none where no part says it
 * @param retestReason why the reel is tested again, where the document says it
 */
public record ReadResult(
        ReelResult result,
        List<SentNetwork> networks,
        List<String> warnings,
        List<StatedReel> reels,
        @Nullable String retestReason) {

    public ReadResult {
        networks = List.copyOf(networks);
        reels = List.copyOf(reels);
        warnings = List.copyOf(warnings);
    }
}
