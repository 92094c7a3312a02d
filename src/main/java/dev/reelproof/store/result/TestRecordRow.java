package dev.reelproof.store.result;

import dev.reelproof.judgement.Finding;
import dev.reelproof.judgement.Judgement;
import dev.reelproof.judgement.Verdict;
import dev.reelproof.measurement.ReelResult;
import dev.reelproof.quantity.Length;
import dev.reelproof.quantity.Temperature;
import dev.reelproof.record.KeptOriginal;
import dev.reelproof.record.TestRecord;
import dev.reelproof.store.RowJson;
import dev.reelproof.store.UtcTimes;
import dev.reelproof.store.reel.ProductJson;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.hibernate.annotations.ColumnTransformer;
import org.jspecify.annotations.Nullable;

@Entity
@Table(name = "test_record")
@IdClass(TestRecordRow.Key.class)
class TestRecordRow {
    record Key(String plant, UUID id, Instant received) {}

    @Id
    public String plant;

    @Id
    public UUID id;

    @Id
    public Instant received;

    public String reel;

    public String product;

    @Column(name = "product_snapshot", columnDefinition = "jsonb")
    @ColumnTransformer(read = "product_snapshot::text", write = "?::jsonb")
    public String productSnapshot;

    public int attempt;

    @Column(name = "limit_set")
    public String limitSet;

    @Column(name = "limit_set_revision")
    public int limitSetRevision;

    @Column(name = "limit_set_sha256")
    public String limitSetSha256;

    @Column(name = "uncertainty_model")
    public @Nullable String uncertaintyModel;

    @Column(name = "uncertainty_model_revision")
    public @Nullable Integer uncertaintyModelRevision;

    @Column(name = "uncertainty_model_sha256")
    public @Nullable String uncertaintyModelSha256;

    public String engine;

    public String verdict;

    @Column(name = "length_m")
    public double lengthMetres;

    @Column(name = "temperature_c")
    public double celsius;

    public @Nullable String station;

    public @Nullable String technician;

    public @Nullable Instant started;

    public Instant finished;

    @Column(columnDefinition = "jsonb")
    @ColumnTransformer(read = "equipment::text", write = "?::jsonb")
    public String equipment;

    @Column(columnDefinition = "jsonb")
    @ColumnTransformer(read = "warnings::text", write = "?::jsonb")
    public String warnings;

    @Column(name = "source_sha256")
    public String sourceSha256;

    @Column(name = "retest_reason")
    public @Nullable String retestReason;

    static TestRecordRow of(JudgedUpload upload, UUID id, Instant received, int attempt, List<String> warnings) {
        ReelResult result = upload.result();
        Judgement judgement = upload.judgement();
        TestRecordRow row = new TestRecordRow();
        row.plant = upload.plant();
        row.id = id;
        row.received = received;
        row.reel = upload.reel();
        row.product = upload.product().id();
        row.productSnapshot = ProductJson.write(upload.product());
        row.attempt = attempt;
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
        row.started = UtcTimes.instantOrNull(result.started());
        row.finished = UtcTimes.instant(result.finished());
        row.equipment = EquipmentJson.write(result.equipment());
        row.warnings = RowJson.sentences(warnings);
        row.sourceSha256 = upload.upload().sha256();
        row.retestReason = upload.retestReason();
        return row;
    }

    TestRecord toRecord(List<Finding> findings, List<KeptOriginal> originals) {
        return new TestRecord(
                plant,
                id,
                UtcTimes.utc(received),
                reel,
                ProductJson.read(product, productSnapshot),
                attempt,
                new Judgement(
                        limitSet,
                        limitSetRevision,
                        limitSetSha256,
                        engine,
                        Verdict.valueOf(verdict.toUpperCase(Locale.ROOT)),
                        findings,
                        List.of(),
                        model()),
                Length.ofMetres(lengthMetres),
                Temperature.ofCelsius(celsius),
                station,
                technician,
                UtcTimes.utcOrNull(started),
                UtcTimes.utc(finished),
                EquipmentJson.read(equipment),
                RowJson.sentences(warnings),
                sourceSha256,
                originals,
                retestReason);
    }

    /** The database holds all three columns of a model, or none. */
    private Judgement.@Nullable Model model() {
        return uncertaintyModel == null || uncertaintyModelRevision == null || uncertaintyModelSha256 == null
                ? null
                : new Judgement.Model(uncertaintyModel, uncertaintyModelRevision, uncertaintyModelSha256);
    }
}
