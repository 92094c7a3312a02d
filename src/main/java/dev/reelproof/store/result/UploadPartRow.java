package dev.reelproof.store.result;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.util.UUID;

@Entity
@Table(name = "upload_part")
@IdClass(UploadPartRow.Key.class)
class UploadPartRow extends PanacheEntityBase {
    record Key(String plant, UUID recordId, int ordinal) {}

    @Id
    public String plant;

    @Id
    @Column(name = "record_id")
    public UUID recordId;

    @Id
    public int ordinal;

    public String name;

    @Column(name = "media_type")
    public String mediaType;

    public String sha256;

    public int size;

    /** gzip. */
    public byte[] bytes;
}
