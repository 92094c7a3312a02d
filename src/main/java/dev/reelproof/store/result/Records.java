package dev.reelproof.store.result;

import dev.reelproof.intake.Part;
import dev.reelproof.intake.result.Upload;
import dev.reelproof.judgement.CorrectedSweep;
import dev.reelproof.judgement.Finding;
import dev.reelproof.record.Attempt;
import dev.reelproof.record.KeptOriginal;
import dev.reelproof.record.TestRecord;
import dev.reelproof.seal.LeafKind;
import dev.reelproof.store.UtcTimes;
import dev.reelproof.store.limits.LimitSetArchive;
import dev.reelproof.store.limits.UncertaintyModelArchive;
import dev.reelproof.store.reel.Reels;
import dev.reelproof.store.seal.Sealing;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.hibernate.Session;

/** The records of each plant. A record is taken once and never changes. */
@ApplicationScoped
public class Records {
    private static final int REELS_NAMED = 3;

    private final Session session;
    private final Reels reels;
    private final LimitSetArchive limitSets;
    private final UncertaintyModelArchive models;
    private final Sealing sealing;

    Records(Session session, Reels reels, LimitSetArchive limitSets, UncertaintyModelArchive models, Sealing sealing) {
        this.session = session;
        this.reels = reels;
        this.limitSets = limitSets;
        this.models = models;
        this.sealing = sealing;
    }

    /**
     * What came of taking an upload.
     *
     * @param record the record
     * @param first false when the same upload had been taken before, whose record this is
     */
    public record Taken(TestRecord record, boolean first) {}

    /** A part of an upload, its bytes compressed. */
    private record PartRow(String name, String mediaType, byte[] bytes) {
        Part part() {
            return new Part(name, mediaType, Gzip.restored(bytes));
        }
    }

    /** A record that judges an upload again, and the record that the upload made. */
    private record AgainRow(UUID record, UUID ofRecord) {}

    /** A block of sweeps. */
    private record BlockRow(byte[] block) {}

    /** The record of an upload of a reel; empty when it was not taken yet. */
    @Transactional
    public Optional<TestRecord> ofUpload(String plant, String reel, String sha256) {
        return session.createNativeQuery(
                        "select record_id from upload where plant = :plant and reel = :reel and sha256 = :sha256",
                        UUID.class)
                .setParameter("plant", plant)
                .setParameter("reel", reel)
                .setParameter("sha256", sha256)
                .uniqueResultOptional()
                .flatMap(record -> byId(plant, record));
    }

    /**
     * Takes an upload into the archive, whole or not at all.
     *
     * <p>Uploads of one reel are taken one after the other, so that of two equal ones sent at once the later finds the record of
     * the first, and attempts are numbered without gap or repeat, in the order of arrival.
     *
     * @throws IllegalArgumentException when the reel is not registered
     * @throws IllegalStateException when the file of the limit set or uncertainty model was edited after it was used
     */
    @Transactional
    public Taken take(JudgedUpload upload) {
        String plant = upload.plant();
        reels.lock(plant, upload.reel());
        Optional<TestRecord> before =
                ofUpload(plant, upload.reel(), upload.upload().sha256());
        if (before.isPresent()) {
            return new Taken(before.get(), false);
        }
        Instant received = upload.received().toInstant().truncatedTo(ChronoUnit.MILLIS);
        limitSets.use(upload.limitSet(), received);
        upload.uncertaintyModel().ifPresent(model -> models.use(model, received));
        UUID id = RecordIds.at(received);
        int attempt = attemptsOf(plant, upload.reel()) + 1;
        List<String> warnings = new ArrayList<>(upload.warnings());
        otherReels(upload).ifPresent(warnings::add);
        keepUpload(upload, id, received, attempt);
        session.persist(TestRecordRow.of(upload, id, received, attempt, warnings));
        keepFindings(upload, id, received);
        keepSweeps(upload, id, received);
        session.flush();
        session.clear();
        sealing.seal(LeafKind.UPLOAD, plant, List.of(id.toString()));
        sealing.seal(LeafKind.RECORD, plant, List.of(id.toString()));
        return new Taken(byId(plant, id).orElseThrow(), true);
    }

    /**
     * Keeps the upload of a record judged once more, as another product: a record beside the old one, of the same attempt. The caller
     * has locked the reel.
     *
     * @param of the record that is judged again
     * @throws IllegalStateException when the file of the limit set or uncertainty model was edited after it was used
     */
    @Transactional(Transactional.TxType.MANDATORY)
    public TestRecord keepJudgedAgain(JudgedUpload judged, TestRecord of) {
        Instant received = judged.received().toInstant().truncatedTo(ChronoUnit.MILLIS);
        limitSets.use(judged.limitSet(), received);
        judged.uncertaintyModel().ifPresent(model -> models.use(model, received));
        UUID id = RecordIds.at(received);
        session.persist(TestRecordRow.of(judged, id, received, of.attempt(), judged.warnings()));
        keepFindings(judged, id, received);
        keepSweeps(judged, id, received);
        session.flush();
        session.clear();
        session.createNativeMutationQuery(
                        """
                        insert into judged_again (plant, record_id, reel, of_record, received)
                        values (:plant, :record, :reel, :of, :received)""")
                .setParameter("plant", judged.plant())
                .setParameter("record", id)
                .setParameter("reel", judged.reel())
                .setParameter("of", recordOfUpload(judged.plant(), of.id()))
                .setParameter("received", received)
                .executeUpdate();
        sealing.seal(LeafKind.RECORD, judged.plant(), List.of(id.toString()));
        sealing.seal(LeafKind.JUDGED_AGAIN, judged.plant(), List.of(id.toString()));
        return byId(judged.plant(), id).orElseThrow();
    }

    /** The record that an upload made: the same, unless it is that of an upload that was judged again. */
    private UUID recordOfUpload(String plant, UUID record) {
        return session.createNativeQuery(
                        "select of_record from judged_again where plant = :plant and record_id = :record", UUID.class)
                .setParameter("plant", plant)
                .setParameter("record", record)
                .uniqueResultOptional()
                .orElse(record);
    }

    private Optional<String> otherReels(JudgedUpload upload) {
        List<String> others = session.createNativeQuery(
                        "select reel from upload where plant = :plant and sha256 = :sha256 order by received",
                        String.class)
                .setParameter("plant", upload.plant())
                .setParameter("sha256", upload.upload().sha256())
                .getResultList();
        if (others.isEmpty()) {
            return Optional.empty();
        }
        String named = others.stream().limit(REELS_NAMED).collect(Collectors.joining(", "));
        int more = others.size() - REELS_NAMED;
        return Optional.of("The same upload was taken for reel " + named + (more > 0 ? " and " + more + " more" : "")
                + " too; one of them may be the wrong reel.");
    }

    private int attemptsOf(String plant, String reel) {
        return Math.toIntExact(session.createNativeQuery(
                        "select count(*) from upload where plant = :plant and reel = :reel", Long.class)
                .setParameter("plant", plant)
                .setParameter("reel", reel)
                .getSingleResult());
    }

    private void keepUpload(JudgedUpload upload, UUID id, Instant received, int attempt) {
        UploadRow row = new UploadRow();
        row.plant = upload.plant();
        row.reel = upload.reel();
        row.sha256 = upload.upload().sha256();
        row.recordId = id;
        row.attempt = attempt;
        row.received = received;
        row.tested = UtcTimes.instant(Attempt.timeOfTest(upload.result().finished(), UtcTimes.utc(received)));
        session.persist(row);
        int ordinal = 0;
        for (Part part : upload.upload().parts()) {
            session.persist(UploadPartRow.of(upload.plant(), id, ordinal++, part));
        }
    }

    private void keepFindings(JudgedUpload upload, UUID id, Instant received) {
        int ordinal = 0;
        for (Finding finding : upload.judgement().findings()) {
            session.persist(FindingRow.of(upload.plant(), id, received, ordinal++, finding));
        }
    }

    private void keepSweeps(JudgedUpload upload, UUID id, Instant received) {
        SweepBlockRow row = new SweepBlockRow();
        row.plant = upload.plant();
        row.recordId = id;
        row.received = received;
        row.block = SweepBlock.write(upload.judgement().sweeps());
        session.persist(row);
    }

    /** A record; empty when the plant has none of that id. */
    @Transactional
    public Optional<TestRecord> byId(String plant, UUID id) {
        return RecordIds.received(id)
                .map(received -> session.find(TestRecordRow.class, new TestRecordRow.Key(plant, id, received)))
                .map(row -> row.toRecord(findings(row), originals(plant, id)));
    }

    private List<Finding> findings(TestRecordRow row) {
        return session
                .createSelectionQuery(
                        """
                        from FindingRow where plant = :plant and recordId = :record and received = :received
                        order by ordinal""",
                        FindingRow.class)
                .setParameter("plant", row.plant)
                .setParameter("record", row.id)
                .setParameter("received", row.received)
                .getResultList()
                .stream()
                .map(FindingRow::toFinding)
                .toList();
    }

    private List<KeptOriginal> originals(String plant, UUID id) {
        return session.createNativeQuery(
                        """
                        select ordinal, name, media_type, sha256, size from upload_part
                        where plant = :plant and record_id = :record order by ordinal""",
                        KeptOriginal.class)
                .setParameter("plant", plant)
                .setParameter("record", recordOfUpload(plant, id))
                .getResultList();
    }

    /** All records of a reel, the newest in the order of test first; before that of an upload those that judge it again. */
    @Transactional
    public List<TestRecord> ofReel(String plant, String reel) {
        Map<UUID, List<AgainRow>> again = judgedAgain(plant, reel);
        return ids(plant, reel, Integer.MAX_VALUE).stream()
                .flatMap(id -> withJudgedAgain(id, again))
                .map(id -> byId(plant, id).orElseThrow())
                .toList();
    }

    /** The newest record of a reel in the order of test; empty when it was never tested. */
    @Transactional
    public Optional<TestRecord> newestOf(String plant, String reel) {
        return newestIdOf(plant, reel).flatMap(id -> byId(plant, id));
    }

    /** The id of the newest record of a reel; empty when it was never tested. */
    @Transactional
    public Optional<UUID> newestIdOf(String plant, String reel) {
        List<UUID> newest = ids(plant, reel, 1);
        return newest.isEmpty()
                ? Optional.empty()
                : withJudgedAgain(newest.get(0), judgedAgain(plant, reel)).findFirst();
    }

    private Map<UUID, List<AgainRow>> judgedAgain(String plant, String reel) {
        return session
                .createNativeQuery(
                        """
                        select record_id, of_record from judged_again where plant = :plant and reel = :reel
                        order by received desc""",
                        AgainRow.class)
                .setParameter("plant", plant)
                .setParameter("reel", reel)
                .getResultList()
                .stream()
                .collect(Collectors.groupingBy(AgainRow::ofRecord));
    }

    private static Stream<UUID> withJudgedAgain(UUID record, Map<UUID, List<AgainRow>> again) {
        return Stream.concat(again.getOrDefault(record, List.of()).stream().map(AgainRow::record), Stream.of(record));
    }

    private List<UUID> ids(String plant, String reel, int most) {
        return session.createNativeQuery(
                        """
                        select record_id from upload where plant = :plant and reel = :reel
                        order by tested desc, attempt desc limit :most""",
                        UUID.class)
                .setParameter("plant", plant)
                .setParameter("reel", reel)
                .setParameter("most", most)
                .getResultList();
    }

    /** The sweeps of a record with their corrected values; none when there is no such record. */
    @Transactional
    public List<CorrectedSweep> sweeps(String plant, UUID id) {
        return RecordIds.received(id)
                .flatMap(received -> session.createNativeQuery(
                                """
                                select block from sweep_block
                                where plant = :plant and record_id = :record and received = :received""",
                                BlockRow.class)
                        .setParameter("plant", plant)
                        .setParameter("record", id)
                        .setParameter("received", received)
                        .uniqueResultOptional())
                .map(row -> SweepBlock.read(row.block()))
                .orElse(List.of());
    }

    /** A part of a record's upload as received; empty when there is none. */
    @Transactional
    public Optional<Part> original(String plant, UUID id, int ordinal) {
        return session.createNativeQuery(
                        """
                        select name, media_type, bytes from upload_part
                        where plant = :plant and record_id = :record and ordinal = :ordinal""",
                        PartRow.class)
                .setParameter("plant", plant)
                .setParameter("record", recordOfUpload(plant, id))
                .setParameter("ordinal", ordinal)
                .uniqueResultOptional()
                .map(PartRow::part);
    }

    /** A record's upload as received, its parts in their order; empty when there is none. */
    @Transactional
    public Optional<Upload> upload(String plant, UUID id) {
        List<Part> parts = session
                .createNativeQuery(
                        """
                        select name, media_type, bytes from upload_part
                        where plant = :plant and record_id = :record order by ordinal""",
                        PartRow.class)
                .setParameter("plant", plant)
                .setParameter("record", recordOfUpload(plant, id))
                .getResultList()
                .stream()
                .map(PartRow::part)
                .toList();
        return parts.isEmpty() ? Optional.empty() : Optional.of(new Upload(parts));
    }
}
