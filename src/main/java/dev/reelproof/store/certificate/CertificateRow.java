package dev.reelproof.store.certificate;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.hibernate.annotations.ColumnTransformer;
import org.jspecify.annotations.Nullable;

/** A certificate as it is inserted. */
@Entity
@Table(name = "certificate")
@IdClass(CertificateRow.Key.class)
class CertificateRow {
    record Key(String plant, String number, int issue) {}

    @Id
    String plant;

    @Id
    String number;

    @Id
    int issue;

    @Column(name = "record_id")
    UUID recordId;

    String reel;

    Instant issued;

    @Column(name = "order_number")
    @Nullable
    String orderNumber;

    @Nullable
    String customer;

    @Column(columnDefinition = "jsonb")
    @ColumnTransformer(read = "content::text", write = "?::jsonb")
    String content;

    byte[] pdf;

    @Column(name = "pdf_sha256")
    String pdfSha256;

    /** Of a later issue alone. */
    @Column(name = "reissue_reason")
    @Nullable
    String reissueReason;

    @Column(name = "reissued_by")
    @Nullable
    String reissuedBy;

    @Nullable
    String consignee;
}
