package dev.reelproof.store.result;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;

@Entity
@Table(name = "sweep_block")
@IdClass(SweepBlockRow.Key.class)
class SweepBlockRow {
    record Key(String plant, UUID recordId, Instant received) {}

    @Id
    public String plant;

    @Id
    @Column(name = "record_id")
    public UUID recordId;

    @Id
    public Instant received;

    public byte[] block;
}
