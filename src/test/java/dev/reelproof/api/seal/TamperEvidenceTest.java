package dev.reelproof.api.seal;

import static dev.reelproof.api.seal.DatabaseEdits.ask;
import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.api.TestPlant;
import dev.reelproof.api.access.SignedIn;
import dev.reelproof.api.result.SampleResult;
import dev.reelproof.app.seal.KeepLog;
import dev.reelproof.digest.Sha256;
import dev.reelproof.pdf.InclusionProofJson;
import dev.reelproof.seal.CarriedProof;
import dev.reelproof.seal.Hash;
import dev.reelproof.seal.InclusionProof;
import dev.reelproof.seal.LeafKind;
import dev.reelproof.seal.PublicSealKey;
import dev.reelproof.seal.SignedHead;
import dev.reelproof.seal.TreeHead;
import dev.reelproof.store.DatabaseOwner;
import dev.reelproof.store.seal.HeadsFile;
import dev.reelproof.store.seal.LogCheck;
import dev.reelproof.store.seal.LogCheck.Difference;
import dev.reelproof.store.seal.LogSequence;
import dev.reelproof.store.seal.LogSetBackException;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The database's owner edits what was recorded, with the triggers off, and the check finds it. Each edit is in a transaction that is
 * rolled back.
 */
@QuarkusTest
@TestProfile(TamperEvidenceTest.OwnDatabase.class)
@ExtendWith(SignedIn.class)
class TamperEvidenceTest {

    /** Starts on an empty database: other tests write rows past the service. */
    public static class OwnDatabase implements QuarkusTestProfile {
        private static final Path FOLDER = Path.of("target", "test-data", "log-" + UUID.randomUUID());

        @Override
        public Map<String, String> getConfigOverrides() {
            return Map.of(
                    "reelproof.seal.key",
                    FOLDER.resolve("key.pem").toString(),
                    "reelproof.seal.heads",
                    FOLDER.resolve("heads.jsonl").toString());
        }
    }

    private static final int AT_ONCE = 20;

    @Inject
    KeepLog log;

    @Inject
    LogSequence sequence;

    @TempDir
    Path folder;

    private record Certified(String record, String number) {}

    private static String tested() {
        String reel = TestPlant.newReel(100);
        return TestPlant.test(reel, new SampleResult().json())
                .statusCode(201)
                .extract()
                .path("id");
    }

    private Certified certified() {
        String reel = TestPlant.newReel(100);
        String record = TestPlant.test(reel, new SampleResult().json())
                .statusCode(201)
                .extract()
                .path("id");
        String number = given().post("/api/v1/reels/" + reel + "/certificates")
                .then()
                .statusCode(201)
                .extract()
                .path("number");
        log.sign("north");
        return new Certified(record, number);
    }

    private LogCheck.Result checkAfter(HeadsFile heads, String... edits) throws SQLException {
        return DatabaseEdits.checkAfter(log.key().open(), heads, edits);
    }

    private Difference found(String... edits) throws SQLException {
        return checkAfter(log.heads(), edits).first().orElseThrow();
    }

    @Test
    void whatNobodyTouchedIsWhole() throws SQLException {
        certified();
        LogCheck.Result result = checkAfter(log.heads());
        assertEquals(Optional.empty(), result.first());
        LogCheck.WholePlant north = result.whole().stream()
                .filter(plant -> plant.plant().equals("north"))
                .findFirst()
                .orElseThrow();
        // The note, and at least upload, record, certificate, and the audit entries of test and certificate.
        assertTrue(north.leaves() >= 6, "leaves: " + north.leaves());
        assertTrue(north.outside() >= 1, "heads outside: " + north.outside());
    }

    @Test
    void whatWaitsForItsPlaceIsCheckedToo() throws SQLException {
        certified();
        String record = tested();
        LogCheck.Result whole = checkAfter(log.heads());
        assertEquals(Optional.empty(), whole.first());
        Difference changed = found("update test_record set engine = 'another' where id = '" + record + "'");
        assertEquals("test_record", changed.table());
        assertEquals("north " + record, changed.key());
        Difference stuck = found("update seal_pending set written = written - interval '2 hours'");
        assertEquals("seal_pending", stuck.table());
    }

    /** The edit, the table and what of the key is expected; RECORD and NUMBER stand for what was recorded. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "update test_record set verdict = 'incomplete' where id = 'RECORD' | test_record | RECORD",
                "update test_record set station = concat(station, ' ') where id = 'RECORD' | test_record | RECORD",
                "update finding set margin = margin + 1e-12 where record_id = 'RECORD' and ordinal = 2 and margin <> 0"
                        + " | finding | RECORD 2",
                "update upload_part set bytes = set_byte(bytes, 30, get_byte(bytes, 30) # 1) where record_id = 'RECORD'"
                        + " | upload_part | RECORD 0",
                "update upload set received = received + interval '1 microsecond' where record_id = 'RECORD'"
                        + " | upload | RECORD",
                "update sweep_block set block = set_byte(block, 9, get_byte(block, 9) # 1) where record_id = 'RECORD'"
                        + " | sweep_block | RECORD",
                "update certificate set pdf = set_byte(pdf, 99, get_byte(pdf, 99) # 1) where number = 'NUMBER'"
                        + " | certificate | NUMBER/1",
                "update certificate set customer = null where number = 'NUMBER' | certificate | NUMBER/1",
                "delete from finding where record_id = 'RECORD' and ordinal = 1 | finding | RECORD 1",
                "delete from test_record where id = 'RECORD' | test_record | RECORD",
                "delete from certificate where number = 'NUMBER' | certificate | NUMBER/1",
                "insert into finding select (jsonb_populate_record(f, '{\"ordinal\": 999}')).* from finding f"
                        + " where record_id = 'RECORD' and ordinal = 0 | finding | RECORD 999"
            })
    void anEditByTheOwnerIsFoundAndNamed(String edit, String table, String key) throws SQLException {
        Certified certified = certified();
        Difference found = found(edit.replace("RECORD", certified.record()).replace("NUMBER", certified.number()));
        assertEquals(table, found.table(), found.toString());
        assertEquals(
                "north " + key.replace("RECORD", certified.record()).replace("NUMBER", certified.number()),
                found.key());
    }

    @Test
    void anEditedDeletedOrForgedAuditEntryIsFound() throws SQLException {
        Certified certified = certified();
        String entry = ask("select max(id) from audit_entry where subject = 'certificate/" + certified.number() + "'");
        Difference changed = found("update audit_entry set actor = 'somebody else' where id = " + entry);
        assertEquals(new Difference("audit_entry", "north " + entry, changed.what()), changed);
        assertTrue(changed.what().startsWith("The row was changed"), changed.what());
        Difference gone = found("delete from audit_entry where id = " + entry);
        assertEquals(new Difference("audit_entry", "north " + entry, gone.what()), gone);
        assertTrue(gone.what().startsWith("The row is gone"), gone.what());
        Difference forged = found("insert into audit_entry (plant, actor, actor_kind, action, subject, details)"
                + " values ('north', 'a', 'person', 'forged', 'reel/R-1', '{}')");
        assertEquals("audit_entry", forged.table());
        assertTrue(forged.what().startsWith("The row is not in the log"), forged.what());
    }

    @Test
    void anEditWithItsLeafIsFoundByTheHeads() throws SQLException {
        Certified certified = certified();
        String position = ask(
                "select position from seal_leaf where kind = 'certificate' and id = '" + certified.number() + "/1'");
        String leaf = "position = " + position + " and plant = 'north'";
        String parts =
                "update seal_leaf set parts = regexp_replace(parts, '[0-9a-f]{64}', repeat('0', 64)) where " + leaf;
        String hash =
                "update seal_leaf set hash = encode(sha256('\\x00'::bytea || convert_to('reelproof leaf 1' || chr(10)"
                        + " || kind || chr(10) || plant || chr(10) || id || chr(10) || parts || chr(10), 'UTF8')), 'hex') where "
                        + leaf;
        String row = "delete from certificate where number = '" + certified.number() + "'";
        assertEquals("certificate", found(parts, hash).table());
        Difference leafAlone = found("update seal_leaf set kind = 'note' where " + leaf, parts);
        assertEquals("north " + position, leafAlone.key());
        Difference rewritten = found("update seal_leaf set kind = 'note' where " + leaf, parts, hash, row);
        assertEquals("seal_leaf", rewritten.table());
        assertTrue(rewritten.what().contains("rewritten"), rewritten.what());
        Difference taken = found("delete from seal_leaf where " + leaf, row);
        assertEquals("north " + position, taken.key());
    }

    @Test
    void aLogRestoredFromYesterdayIsKnownByTheHeadOutside() throws Exception {
        certified();
        long yesterday = log.newestHead("north").orElseThrow().head().size();
        Path copy = folder.resolve("yesterday.jsonl");
        Files.copy(log.heads().path(), copy);
        TestPlant.newReel(100);
        long today = log.sign("north").orElseThrow().head().size();
        assertTrue(today > yesterday);
        // Exactly what was there yesterday.
        List<String> restore = new ArrayList<>(List.of(
                "delete from audit_entry a using seal_leaf l where l.plant = a.plant and l.kind = 'audit-entry'"
                        + " and l.id = a.id::text and l.position >= " + yesterday,
                "delete from seal_head where size > " + yesterday,
                "delete from seal_leaf where position >= " + yesterday));
        if (!ask("select count(*) from seal_node where (position + 1) * 2 ^ level > " + yesterday)
                .equals("0")) {
            restore.add("delete from seal_node where (position + 1) * 2 ^ level > " + yesterday);
        }
        String[] edits = restore.toArray(String[]::new);
        assertEquals(Optional.empty(), checkAfter(new HeadsFile(copy), edits).first(), "whole in itself");
        Difference found = checkAfter(log.heads(), edits).first().orElseThrow();
        assertEquals("north " + yesterday, found.key());
        assertTrue(found.what().contains("the database is older than that head"), found.what());
    }

    /** Whoever takes the last row takes what the log says of it too; no later leaf leans on that one. */
    @Test
    void theLastRowTakenWithItsLeafIsFoundByTheHeadOutside() throws SQLException {
        certified();
        String last = ask("select max(position) from seal_leaf where plant = 'north'");
        String entry =
                ask("select id from seal_leaf where kind = 'audit-entry' and plant = 'north' and position = " + last);
        String row = "delete from audit_entry where id = " + entry;
        assertEquals(new Difference("audit_entry", "north " + entry, found(row).what()), found(row), "the row alone");
        List<String> all =
                new ArrayList<>(List.of(row, "delete from seal_leaf where plant = 'north' and position = " + last));
        if (Long.parseLong(last) % 2 == 1) {
            all.add("delete from seal_node where plant = 'north' and (position + 1) * 2 ^ level > " + last);
        }
        all.add("delete from seal_head where plant = 'north' and size > " + last);
        Difference found = found(all.toArray(String[]::new));
        assertEquals("north " + last, found.key());
        assertTrue(found.what().contains("leaves were removed"), found.what());
    }

    @Test
    void noHeadIsSignedOverALogThatWasSetBack() {
        SignedHead head = log.sign("north").orElseThrow();
        HeadsFile newer = new HeadsFile(folder.resolve("newer.jsonl"));
        newer.append(log.key()
                .sign(new TreeHead("north", head.head().size() + 5, head.head().root(), Instant.EPOCH)));
        LogSetBackException older =
                assertThrows(LogSetBackException.class, () -> sequence.sign("north", log.key(), newer, Instant.EPOCH));
        assertTrue(older.getMessage().contains("older than that head"), older.getMessage());
        HeadsFile other = new HeadsFile(folder.resolve("other.jsonl"));
        other.append(log.key()
                .sign(new TreeHead("north", head.head().size(), Hash.of(Sha256.of(new byte[0])), Instant.EPOCH)));
        LogSetBackException rewritten =
                assertThrows(LogSetBackException.class, () -> sequence.sign("north", log.key(), other, Instant.EPOCH));
        assertTrue(rewritten.getMessage().contains("rewritten"), rewritten.getMessage());
        HeadsFile ofAnother = new HeadsFile(folder.resolve("another.jsonl"));
        ofAnother.append(log.key().sign(new TreeHead("emptied", 3, head.head().root(), Instant.EPOCH)));
        assertThrows(LogSetBackException.class, () -> sequence.begin("emptied", ofAnother));
    }

    @Test
    void aHeadByAnotherKeyIsRefused() throws SQLException {
        certified();
        HeadsFile foreign = new HeadsFile(folder.resolve("foreign.jsonl"));
        SignedHead own = log.newestHead("north").orElseThrow();
        foreign.append(new SignedHead(own.head(), own.keyId(), "00".repeat(64)));
        Difference found = checkAfter(foreign).first().orElseThrow();
        assertTrue(found.what().contains("was not signed by the key"), found.what());
    }

    @Test
    void rowsFromBeforeTheLogAreTakenInOnceAndTheLogSaysSo() throws SQLException {
        try (Connection owner = DatabaseOwner.connect();
                Statement statement = owner.createStatement()) {
            for (int i = 0; i < 3; i++) {
                statement.executeUpdate("insert into audit_entry (plant, actor, actor_kind, action, subject, details)"
                        + " values ('older', 'a', 'person', 'tried', 's/1', '{}')");
            }
        }
        log.begin();
        assertEquals("note", ask("select kind from seal_leaf where plant = 'older' and position = 0"));
        assertEquals(
                "taken in as they were found: 3",
                ask("select parts from seal_leaf where plant = 'older' and position = 0"));
        assertEquals("4", ask("select count(*) from seal_leaf where plant = 'older'"));
        assertEquals(Optional.empty(), sequence.begin("older", log.heads()), "once");
        assertEquals(Optional.empty(), checkAfter(log.heads()).first());
    }

    @Test
    void uploadsAtOnceAllComeIntoTheLogWithProofs() throws Exception {
        List<String> reels = IntStream.range(0, AT_ONCE)
                .mapToObj(i -> TestPlant.newReel(100))
                .toList();
        List<String> records = new ArrayList<>();
        AtomicBoolean uploading = new AtomicBoolean(true);
        ExecutorService threads = Executors.newFixedThreadPool(AT_ONCE + 1);
        try {
            Future<?> sequencing = threads.submit(() -> {
                while (uploading.get()) {
                    log.append();
                    log.signAll();
                }
            });
            List<Future<String>> uploads = reels.stream()
                    .map(reel -> threads.submit(() -> TestPlant.test(reel, new SampleResult().json())
                            .statusCode(201)
                            .extract()
                            .<String>path("id")))
                    .toList();
            for (Future<String> upload : uploads) {
                records.add(upload.get(60, TimeUnit.SECONDS));
            }
            uploading.set(false);
            sequencing.get(60, TimeUnit.SECONDS);
        } finally {
            threads.shutdownNow();
        }
        PublicSealKey key = log.key().open();
        for (String record : records) {
            for (LeafKind kind : List.of(LeafKind.UPLOAD, LeafKind.RECORD)) {
                InclusionProof proof = log.prove("north", kind, record).orElseThrow();
                assertEquals(Optional.empty(), proof.fault(key));
            }
        }
        assertEquals("0", ask("select count(*) from seal_pending where plant = 'north'"));
        assertEquals(
                "t", ask("select max(position) + 1 = count(*) from seal_leaf where plant = 'north'"), "without gaps");
        assertEquals(Optional.empty(), checkAfter(log.heads()).first());
    }

    @Test
    void aProofIsCheckedAloneWithTheServedKey() {
        Certified certified = certified();
        String text = given().queryParam("kind", "certificate")
                .queryParam("id", certified.number() + "/1")
                .get("/api/v1/log/proof")
                .then()
                .statusCode(200)
                .extract()
                .asString();
        PublicSealKey key = PublicSealKey.ofBase64(SignedIn.nobody()
                .get("/api/v1/log")
                .then()
                .statusCode(200)
                .extract()
                .path("key.publicKey"));
        InclusionProof proof = InclusionProofJson.read(text).proof();
        assertEquals(Optional.empty(), proof.fault(key));
        assertEquals("north", proof.leaf().plant());
        String forged = text.replace("certificate " + digest(proof), "certificate " + "0".repeat(64));
        assertTrue(InclusionProofJson.read(forged).fault().isPresent());
    }

    private static String digest(InclusionProof proof) {
        return proof.leaf().parts().get(0).split(" ")[1];
    }

    @Test
    void anAttachmentHasOneLeafAndOneProof() {
        String sha256 = Sha256.hex("what a certificate carries");
        int outside = log.heads().all().size();
        InclusionProof proof = log.proveAttachment("north", sha256);
        assertEquals(outside, log.heads().all().size(), "no head outside for each certificate");
        assertEquals(Optional.empty(), proof.fault(log.key().open()));
        assertEquals(List.of("sha256 " + sha256), proof.leaf().parts());
        certified();
        assertEquals(proof, log.proveAttachment("north", sha256));
        byte[] carried = log.proofToCarry("north", sha256);
        CarriedProof read = InclusionProofJson.read(new String(carried, StandardCharsets.UTF_8));
        assertEquals(proof, read.proof());
        assertEquals(Optional.empty(), read.faultAsTo(sha256));
        assertTrue(read.faultAsTo(Sha256.hex("another file")).isPresent());
    }

    @Test
    void aHeadIsSignedOnRequestAndStandsOutsideTheDatabase() {
        String root = given().post("/api/v1/log/heads")
                .then()
                .statusCode(201)
                .body("plant", equalTo("north"))
                .extract()
                .path("root");
        assertEquals(
                root,
                new HeadsFile(log.heads().path())
                        .newest("north")
                        .orElseThrow()
                        .head()
                        .root()
                        .hex());
    }

    @Test
    void whatIsNotInTheLogHasNoProof() {
        given().queryParam("kind", "record")
                .queryParam("id", UUID.randomUUID())
                .get("/api/v1/log/proof")
                .then()
                .statusCode(404);
        given().queryParam("kind", "lot")
                .queryParam("id", "1")
                .get("/api/v1/log/proof")
                .then()
                .statusCode(422)
                .body("errors[0].message", containsString("must be one of upload, record"));
        given().queryParam("kind", "record").get("/api/v1/log/proof").then().statusCode(422);
    }

    @Test
    void theKeyIsItsOwnersAlone() throws Exception {
        log.key();
        Path file = TamperEvidenceTest.OwnDatabase.FOLDER.resolve("key.pem");
        assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(file)));
    }
}
