package dev.reelproof.store.reel;

import dev.reelproof.judgement.Verdict;
import java.time.OffsetDateTime;
import java.util.UUID;

/**
 * A reel in a list, with what its newest test came to; all but the reel is null when it was never tested.
 *
 * @param reel the reel
 * @param record the newest record
 * @param verdict its verdict
 * @param received when it was received
 * @param finished when its test ended
 */
public record ReelLine(
        RegisteredReel reel, UUID record, Verdict verdict, OffsetDateTime received, OffsetDateTime finished) {}
