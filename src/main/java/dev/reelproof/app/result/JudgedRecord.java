package dev.reelproof.app.result;

import dev.reelproof.limit.LimitSet;
import dev.reelproof.store.result.StoredRecord;

/**
 * A record with what it was judged by.
 *
 * @param record the record
 * @param limitSet the revision of the limit set, as it was then
 */
public record JudgedRecord(StoredRecord record, LimitSet limitSet) {}
