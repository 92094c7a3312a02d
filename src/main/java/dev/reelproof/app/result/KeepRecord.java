package dev.reelproof.app.result;

import dev.reelproof.app.certificate.FindLives;
import dev.reelproof.record.TestRecord;
import dev.reelproof.store.access.AuditTrail;
import dev.reelproof.store.result.JudgedUpload;
import dev.reelproof.store.result.Records;
import dev.reelproof.store.result.Records.Taken;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Keeps what was judged, with its entry in the audit trail, in one transaction. Reading and judging take a while; they are done
 * before, without a connection to the database. The entry names the certificates that the test puts in question.
 */
@ApplicationScoped
class KeepRecord {
    private final Records records;
    private final FindLives lives;
    private final AuditTrail audit;

    KeepRecord(Records records, FindLives lives, AuditTrail audit) {
        this.records = records;
        this.lives = lives;
        this.audit = audit;
    }

    /** Keeps an upload; one that was taken meanwhile gives its first record and writes nothing. */
    @Transactional
    Taken keep(JudgedUpload upload) {
        Taken taken = records.take(upload);
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
            audit.write(record.plant(), "test-taken", "reel/" + record.reel(), null, details);
        }
        return taken;
    }
}
