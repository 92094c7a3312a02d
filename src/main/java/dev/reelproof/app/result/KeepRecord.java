package dev.reelproof.app.result;

import dev.reelproof.access.Action;
import dev.reelproof.access.Caller;
import dev.reelproof.access.Callers;
import dev.reelproof.app.ConflictException;
import dev.reelproof.app.certificate.FindLives;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.intake.result.SentTest;
import dev.reelproof.record.Attempt;
import dev.reelproof.record.AttemptHistory;
import dev.reelproof.record.RetestRule;
import dev.reelproof.record.TestRecord;
import dev.reelproof.store.access.AuditTrail;
import dev.reelproof.store.reel.Reels;
import dev.reelproof.store.result.AttemptHistories;
import dev.reelproof.store.result.JudgedUpload;
import dev.reelproof.store.result.Records;
import dev.reelproof.store.result.Records.Taken;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Keeps what was judged, with its entry in the audit trail, in one transaction. Reading and judging take a while; they are done
 * before, without a connection to the database. The entry names the certificates that the test puts in question.
 */
@ApplicationScoped
class KeepRecord {
    private final Reels reels;
    private final Records records;
    private final AttemptHistories histories;
    private final TestRules rules;
    private final Callers callers;
    private final FindLives lives;
    private final AuditTrail audit;

    KeepRecord(
            Reels reels,
            Records records,
            AttemptHistories histories,
            TestRules rules,
            Callers callers,
            FindLives lives,
            AuditTrail audit) {
        this.reels = reels;
        this.records = records;
        this.histories = histories;
        this.rules = rules;
        this.callers = callers;
        this.lives = lives;
        this.audit = audit;
    }

    /**
     * Keeps an upload; one that was taken meanwhile gives its first record and writes nothing.
     *
     * @throws IntakeException when the plant asks why the reel is tested again, and nothing says it
     * @throws ConflictException when the reel was tested as often as the plant allows
     */
    @Transactional
    Taken keep(JudgedUpload upload) {
        // Locked before the tests so far are read: who waited for the lock must see what the other wrote.
        reels.lock(upload.plant(), upload.reel());
        Optional<TestRecord> before =
                records.ofUpload(upload.plant(), upload.reel(), upload.upload().sha256());
        if (before.isPresent()) {
            return new Taken(before.get(), false);
        }
        AttemptHistory history = histories.of(upload.plant(), upload.reel());
        OffsetDateTime tested = Attempt.timeOfTest(upload.result().finished(), upload.received());
        requireAllowed(upload, history, tested);
        Taken taken = records.take(
                history.lateWarning(tested).map(upload::withWarning).orElse(upload));
        if (taken.first()) {
            TestRecord record = taken.record();
            Map<String, Object> details = new TreeMap<>(Map.of(
                    "record", record.id().toString(),
                    "attempt", record.attempt(),
                    "verdict", record.judgement().verdict().word(),
                    "sha256", record.sourceSha256()));
            List<String> questioned = lives.questionedByNewestTest(record.plant(), record.reel());
            if (!questioned.isEmpty()) {
                details.put("questionedCertificates", questioned);
            }
            audit.write(record.plant(), "test-taken", "reel/" + record.reel(), record.retestReason(), details);
        }
        return taken;
    }

    private void requireAllowed(JudgedUpload upload, AttemptHistory history, OffsetDateTime tested) {
        RetestRule rule = rules.retests(upload.plant());
        rule.missingReason(history, upload.retestReason()).ifPresent(fault -> {
            throw IntakeException.of(IntakeException.Kind.CONTENT, "/" + SentTest.RETEST_REASON, fault);
        });
        Caller caller = callers.current();
        boolean isByEngineer = caller.kind() == Caller.Kind.PERSON && Action.ACCEPT_RETEST.isAllowedTo(caller.roles());
        rule.tooMany(history, tested, upload.judgement().verdict(), isByEngineer)
                .ifPresent(fault -> {
                    throw new ConflictException("Reel " + upload.reel() + " " + fault + ".");
                });
    }
}
