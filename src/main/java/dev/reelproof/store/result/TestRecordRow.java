package dev.reelproof.store.result;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.hibernate.annotations.ColumnTransformer;

@Entity
@Table(name = "test_record")
@IdClass(TestRecordRow.Key.class)
class TestRecordRow extends PanacheEntityBase {
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
    public String uncertaintyModel;

    @Column(name = "uncertainty_model_revision")
    public Integer uncertaintyModelRevision;

    @Column(name = "uncertainty_model_sha256")
    public String uncertaintyModelSha256;

    public String engine;

    public String verdict;

    @Column(name = "length_m")
    public double lengthMetres;

    @Column(name = "temperature_c")
    public double celsius;

    public String station;

    public String technician;

    public Instant started;

    public Instant finished;

    @Column(columnDefinition = "jsonb")
    @ColumnTransformer(read = "equipment::text", write = "?::jsonb")
    public String equipment;

    @Column(columnDefinition = "jsonb")
    @ColumnTransformer(read = "warnings::text", write = "?::jsonb")
    public String warnings;

    @Column(name = "source_sha256")
    public String sourceSha256;
}
