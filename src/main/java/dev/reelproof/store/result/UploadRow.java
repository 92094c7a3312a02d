package dev.reelproof.store.result;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;

@Entity
@Table(name = "upload")
@IdClass(UploadRow.Key.class)
class UploadRow {
    record Key(String plant, String reel, String sha256) {}

    @Id
    public String plant;

    @Id
    public String reel;

    @Id
    public String sha256;

    @Column(name = "record_id")
    public UUID recordId;

    public int attempt;

    public Instant received;

    public Instant tested;
}
