package dev.reelproof.store.limits;

import java.time.Instant;

/**
 * A revision of a file that was judged by, as it stood then.
 *
 * @param sha256 its digest
 * @param text the file
 * @param used when it was first judged by
 */
record UsedRevision(String sha256, String text, Instant used) {}
