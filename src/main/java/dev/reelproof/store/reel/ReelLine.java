package dev.reelproof.store.reel;

import java.time.OffsetDateTime;
import java.util.UUID;

/**
 * A reel in a list, with what its newest test came to.
 *
 * @param reel the reel
 * @param record the newest record; null when not tested
 * @param verdict its verdict in the words of the HTTP contract; null when not tested
 * @param tested when it was received; null when not tested
 */
public record ReelLine(RegisteredReel reel, UUID record, String verdict, OffsetDateTime tested) {}
