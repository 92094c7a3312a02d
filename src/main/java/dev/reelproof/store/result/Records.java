package dev.reelproof.store.result;

import dev.reelproof.intake.Part;
import dev.reelproof.intake.result.Upload;
import dev.reelproof.judgement.CorrectedSweep;
import dev.reelproof.judgement.Judgement;
import dev.reelproof.judgement.Verdict;
import dev.reelproof.measurement.ReelResult;
import dev.reelproof.quantity.Length;
import dev.reelproof.quantity.Temperature;
import dev.reelproof.store.Gzip;
import dev.reelproof.store.RowJson;
import dev.reelproof.store.UtcTimes;
import dev.reelproof.store.access.AuditTrail;
import dev.reelproof.store.limits.LimitSetArchive;
import dev.reelproof.store.limits.UncertaintyModelArchive;
import dev.reelproof.store.reel.Reels;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.hibernate.Session;

/** The records of each plant. A record is taken once and never changes. */
@ApplicationScoped
public class Records {
    private static final int REELS_NAMED = 3;

    private final Session session;
    private final Reels reels;
    private final LimitSetArchive limitSets;
    private final UncertaintyModelArchive models;
    private final AuditTrail audit;

    Records(Session session, Reels reels, LimitSetArchive limitSets, UncertaintyModelArchive models, AuditTrail audit) {
        this.session = session;
        this.reels = reels;
        this.limitSets = limitSets;
        this.models = models;
        this.audit = audit;
    }

    /**
     * What came of taking an upload.
     *
     * @param record the record
     * @param first false when the same upload had been taken before, whose record this is
     */
    public record Taken(StoredRecord record, boolean first) {}

    /** The record of an upload of a reel; empty when it was not taken yet. */
    @Transactional
    public Optional<StoredRecord> ofUpload(String plant, String reel, String sha256) {
        return UploadRow.<UploadRow>find("plant = ?1 and reel = ?2 and sha256 = ?3", plant, reel, sha256)
                .firstResultOptional()
                .flatMap(upload -> byId(plant, upload.recordId));
    }

    /**
     * Takes an upload into the archive, whole or not at all.
     *
     * <p>Uploads of one reel are taken one after the other, so that of two equal ones sent at once the later finds the record of
     * the first, and attempts are numbered without gap or repeat.
     *
     * @throws IllegalArgumentException when the reel is not registered
     * @throws IllegalStateException when the file of the limit set or uncertainty model was edited after it was used
     */
    @Transactional
    public Taken take(JudgedUpload upload) {
        reels.lock(upload.plant(), upload.reel());
        Optional<StoredRecord> before =
                ofUpload(upload.plant(), upload.reel(), upload.upload().sha256());
        if (before.isPresent()) {
            return new Taken(before.get(), false);
        }
        Instant received = upload.received().toInstant().truncatedTo(ChronoUnit.MILLIS);
        limitSets.use(upload.limitSet(), received);
        upload.uncertaintyModel().ifPresent(model -> models.use(model, received));
        UUID id = RecordIds.at(received);
        List<String> warnings = new ArrayList<>(upload.warnings());
        otherReels(upload).ifPresent(warnings::add);
        keepUpload(upload, id, received);
        keepRecord(upload, id, received, warnings);
        keepFindings(upload, id, received);
        keepSweeps(upload, id, received);
        session.flush();
        session.clear();
        StoredRecord record = byId(upload.plant(), id).orElseThrow();
        audit.write(
                upload.plant(),
                "test-taken",
                "reel/" + upload.reel(),
                null,
                Map.of(
                        "record", id.toString(),
                        "attempt", record.attempt(),
                        "verdict", record.judgement().verdict().word(),
                        "sha256", record.sourceSha256()));
        return new Taken(record, true);
    }

    private static Optional<String> otherReels(JudgedUpload upload) {
        List<UploadRow> others = UploadRow.list(
                "plant = ?1 and sha256 = ?2 order by received",
                upload.plant(),
                upload.upload().sha256());
        if (others.isEmpty()) {
            return Optional.empty();
        }
        String named = others.stream().limit(REELS_NAMED).map(row -> row.reel).collect(Collectors.joining(", "));
        int more = others.size() - REELS_NAMED;
        return Optional.of("The same upload was taken for reel " + named + (more > 0 ? " and " + more + " more" : "")
                + " too; one of them may be the wrong reel.");
    }

    private static void keepUpload(JudgedUpload upload, UUID id, Instant received) {
        UploadRow row = new UploadRow();
        row.plant = upload.plant();
        row.reel = upload.reel();
        row.sha256 = upload.upload().sha256();
        row.recordId = id;
        row.attempt = attemptsOf(upload.plant(), upload.reel()) + 1;
        row.received = received;
        row.persist();
        int ordinal = 0;
        for (Part part : upload.upload().parts()) {
            UploadPartRow partRow = new UploadPartRow();
            partRow.plant = upload.plant();
            partRow.recordId = id;
            partRow.ordinal = ordinal++;
            partRow.name = part.name();
            partRow.mediaType = part.mediaType();
            partRow.sha256 = part.sha256();
            partRow.size = part.size();
            partRow.bytes = Gzip.compressed(part.bytes());
            partRow.persist();
        }
    }

    private static int attemptsOf(String plant, String reel) {
        return Math.toIntExact(UploadRow.count("plant = ?1 and reel = ?2", plant, reel));
    }

    private static void keepRecord(JudgedUpload upload, UUID id, Instant received, List<String> warnings) {
        ReelResult result = upload.result();
        Judgement judgement = upload.judgement();
        TestRecordRow row = new TestRecordRow();
        row.plant = upload.plant();
        row.id = id;
        row.received = received;
        row.reel = upload.reel();
        row.product = upload.product().id();
        row.productSnapshot = RowJson.product(upload.product());
        row.attempt = attemptsOf(upload.plant(), upload.reel());
        row.limitSet = judgement.limitSet();
        row.limitSetRevision = judgement.revision();
        row.limitSetSha256 = judgement.limitSetSha256();
        if (judgement.uncertaintyModel() != null) {
            row.uncertaintyModel = judgement.uncertaintyModel().id();
            row.uncertaintyModelRevision = judgement.uncertaintyModel().revision();
            row.uncertaintyModelSha256 = judgement.uncertaintyModel().sha256();
        }
        row.engine = judgement.engine();
        row.verdict = judgement.verdict().word();
        row.lengthMetres = result.length().metres();
        row.celsius = result.temperature().celsius();
        row.station = result.station();
        row.technician = result.technician();
        row.started = UtcTimes.instant(result.started());
        row.finished = UtcTimes.instant(result.finished());
        row.equipment = RowJson.equipment(result.equipment());
        row.warnings = RowJson.sentences(warnings);
        row.sourceSha256 = upload.upload().sha256();
        row.persist();
    }

    private static void keepFindings(JudgedUpload upload, UUID id, Instant received) {
        int ordinal = 0;
        for (var finding : upload.judgement().findings()) {
            FindingRow.of(upload.plant(), id, received, ordinal++, finding).persist();
        }
    }

    private static void keepSweeps(JudgedUpload upload, UUID id, Instant received) {
        SweepBlockRow row = new SweepBlockRow();
        row.plant = upload.plant();
        row.recordId = id;
        row.received = received;
        row.block = SweepBlock.write(upload.judgement().sweeps());
        row.persist();
    }

    /** A record; empty when the plant has none of that id. */
    @Transactional
    public Optional<StoredRecord> byId(String plant, UUID id) {
        return RecordIds.received(id)
                .flatMap(received -> TestRecordRow.find("plant = ?1 and id = ?2 and received = ?3", plant, id, received)
                        .<TestRecordRow>firstResultOptional())
                .map(Records::toRecord);
    }

    /** The code of the product that a record was judged as; empty when the plant has no record of that id. */
    @Transactional
    public Optional<String> productOf(String plant, UUID id) {
        return RecordIds.received(id)
                .flatMap(received -> TestRecordRow.find("plant = ?1 and id = ?2 and received = ?3", plant, id, received)
                        .<TestRecordRow>firstResultOptional())
                .map(row -> row.product);
    }

    /** All records of a reel, newest first. */
    @Transactional
    public List<StoredRecord> ofReel(String plant, String reel) {
        return UploadRow.<UploadRow>find("plant = ?1 and reel = ?2 order by attempt desc", plant, reel).stream()
                .map(upload -> byId(plant, upload.recordId).orElseThrow())
                .toList();
    }

    /** The newest record of a reel; empty when it was never tested. */
    @Transactional
    public Optional<StoredRecord> newestOf(String plant, String reel) {
        return UploadRow.<UploadRow>find("plant = ?1 and reel = ?2 order by attempt desc", plant, reel)
                .firstResultOptional()
                .flatMap(upload -> byId(plant, upload.recordId));
    }

    /** The sweeps of a record with their corrected values; none when there is no such record. */
    @Transactional
    public List<CorrectedSweep> sweeps(String plant, UUID id) {
        return RecordIds.received(id)
                .flatMap(received -> SweepBlockRow.find(
                                "plant = ?1 and recordId = ?2 and received = ?3", plant, id, received)
                        .<SweepBlockRow>firstResultOptional())
                .map(row -> SweepBlock.read(row.block))
                .orElse(List.of());
    }

    /** A part of a record's upload as received; empty when there is none. */
    @Transactional
    public Optional<Part> original(String plant, UUID id, int ordinal) {
        return UploadPartRow.<UploadPartRow>find("plant = ?1 and recordId = ?2 and ordinal = ?3", plant, id, ordinal)
                .firstResultOptional()
                .map(row -> new Part(row.name, row.mediaType, Gzip.restored(row.bytes)));
    }

    /** A record's upload as received, its parts in their order; empty when there is none. */
    @Transactional
    public Optional<Upload> upload(String plant, UUID id) {
        List<Part> parts =
                UploadPartRow.<UploadPartRow>find("plant = ?1 and recordId = ?2 order by ordinal", plant, id).stream()
                        .map(row -> new Part(row.name, row.mediaType, Gzip.restored(row.bytes)))
                        .toList();
        return parts.isEmpty() ? Optional.empty() : Optional.of(new Upload(parts));
    }

    private static StoredRecord toRecord(TestRecordRow row) {
        List<FindingRow> findings = FindingRow.list(
                "plant = ?1 and recordId = ?2 and received = ?3 order by ordinal", row.plant, row.id, row.received);
        return new StoredRecord(
                row.plant,
                row.id,
                UtcTimes.utc(row.received),
                row.reel,
                RowJson.product(row.product, row.productSnapshot),
                row.attempt,
                new Judgement(
                        row.limitSet,
                        row.limitSetRevision,
                        row.limitSetSha256,
                        row.engine,
                        Verdict.valueOf(row.verdict.toUpperCase(Locale.ROOT)),
                        findings.stream().map(FindingRow::toFinding).toList(),
                        List.of(),
                        row.uncertaintyModel == null
                                ? null
                                : new Judgement.Model(
                                        row.uncertaintyModel,
                                        row.uncertaintyModelRevision,
                                        row.uncertaintyModelSha256)),
                Length.ofMetres(row.lengthMetres),
                Temperature.ofCelsius(row.celsius),
                row.station,
                row.technician,
                UtcTimes.utc(row.started),
                UtcTimes.utc(row.finished),
                RowJson.equipment(row.equipment),
                RowJson.sentences(row.warnings),
                row.sourceSha256,
                originals(row.plant, row.id));
    }

    private static List<KeptOriginal> originals(String plant, UUID id) {
        return UploadPartRow.find("plant = ?1 and recordId = ?2 order by ordinal", plant, id)
                .project(KeptOriginal.class)
                .list();
    }
}
