package dev.reelproof.store.limits;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.time.Instant;

@Entity
@Table(name = "limit_set_revision")
@IdClass(LimitSetRevisionRow.Key.class)
class LimitSetRevisionRow extends PanacheEntityBase {
    record Key(String id, int revision) {}

    @Id
    public String id;

    @Id
    public int revision;

    public String sha256;

    public String text;

    public Instant used;
}
