package dev.reelproof.app.result;

import dev.reelproof.limit.LimitSet;
import dev.reelproof.record.TestRecord;

/**
 * A record with what it was judged by.
 *
 * @param record the record
 * @param limitSet the revision of the limit set, as it was then
 */
public record JudgedRecord(TestRecord record, LimitSet limitSet) {}
