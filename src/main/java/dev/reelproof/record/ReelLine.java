package dev.reelproof.record;

import dev.reelproof.judgement.Verdict;
import java.time.OffsetDateTime;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A reel in a list, with what its newest test came to; all but the reel is absent when it was never tested.
 *
 * @param reel the reel
 * @param record the newest record
 * @param verdict its verdict
 * @param conditional whether it was accepted only conditionally; false when it was never tested
 * @param received when it was received
 * @param finished when its test ended
 */
public record ReelLine(
        RegisteredReel reel,
        @Nullable UUID record,
        @Nullable Verdict verdict,
        boolean conditional,
        @Nullable OffsetDateTime received,
        @Nullable OffsetDateTime finished) {}
