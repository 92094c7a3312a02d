package dev.reelproof.store.certificate;

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
@Table(name = "certificate")
@IdClass(CertificateRow.Key.class)
class CertificateRow extends PanacheEntityBase {
    record Key(String plant, String number, int issue) {}

    @Id
    public String plant;

    @Id
    public String number;

    @Id
    public int issue;

    @Column(name = "record_id")
    public UUID recordId;

    public String reel;

    public Instant issued;

    @Column(name = "order_number")
    public String orderNumber;

    public String customer;

    @Column(columnDefinition = "jsonb")
    @ColumnTransformer(read = "content::text", write = "?::jsonb")
    public String content;

    public byte[] pdf;

    @Column(name = "pdf_sha256")
    public String pdfSha256;

    /** Made by the database for the search. */
    @Column(insertable = false, updatable = false)
    public String searched;
}
