package dev.reelproof.app.result;

import dev.reelproof.app.limits.LimitSets;
import dev.reelproof.record.AttemptHistory;
import dev.reelproof.record.TestRecord;
import dev.reelproof.store.result.AttemptHistories;
import jakarta.inject.Singleton;
import java.util.List;

/** Puts beside records what they were judged by and the other tests of their reel. */
@Singleton
public class JudgedRecords {
    private final LimitSets limitSets;
    private final AttemptHistories histories;
    private final TestRules rules;

    JudgedRecords(LimitSets limitSets, AttemptHistories histories, TestRules rules) {
        this.limitSets = limitSets;
        this.histories = histories;
        this.rules = rules;
    }

    /** A record with what belongs to it. */
    public JudgedRecord of(TestRecord record) {
        return of(record, histories.of(record.plant(), record.reel()));
    }

    /** Records of one reel with what belongs to each. */
    public List<JudgedRecord> ofReel(List<TestRecord> records, AttemptHistory history) {
        return records.stream().map(record -> of(record, history)).toList();
    }

    private JudgedRecord of(TestRecord record, AttemptHistory history) {
        return new JudgedRecord(
                record,
                limitSets.of(record),
                history,
                history.isNewest(record.id()) && rules.retests(record.plant()).awaitsEngineer(history));
    }
}
