package dev.reelproof.app.result;

import dev.reelproof.limit.LimitSet;
import dev.reelproof.record.AttemptHistory;
import dev.reelproof.record.TestRecord;

/**
 * A record with what it was judged by, among the tests of its reel.
 *
 * @param record the record
 * @param limitSet the revision of the limit set, as it was then
 * @param history all tests of the reel
 * @param awaitsEngineer whether it is the newest and passed, but counts only once an engineer has accepted it
 */
public record JudgedRecord(TestRecord record, LimitSet limitSet, AttemptHistory history, boolean awaitsEngineer) {}
