package dev.reelproof.store.result;

import dev.reelproof.intake.Part;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.util.UUID;

@Entity
@Table(name = "upload_part")
@IdClass(UploadPartRow.Key.class)
class UploadPartRow {
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

    static UploadPartRow of(String plant, UUID recordId, int ordinal, Part part) {
        UploadPartRow row = new UploadPartRow();
        row.plant = plant;
        row.recordId = recordId;
        row.ordinal = ordinal;
        row.name = part.name();
        row.mediaType = part.mediaType();
        row.sha256 = part.sha256();
        row.size = part.size();
        row.bytes = Gzip.compressed(part.bytes());
        return row;
    }
}
