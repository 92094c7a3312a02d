package dev.reelproof.store.certificate;

import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.certificate.IssuedCertificate;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.Session;
import org.jspecify.annotations.Nullable;

/** Certificates that are numbered and drawn and wait for their signature. */
@ApplicationScoped
public class CertificatesToSign {
    private static final String SELECT =
            "select plant, record_id, issued, content::text as content, pdf, reissue_reason, reissued_by, consignee"
                    + " from certificate_to_sign ";

    private final Session session;

    CertificatesToSign(Session session) {
        this.session = session;
    }

    /**
     * A certificate that waits.
     *
     * @param record the record that it certifies
     * @param content what it says
     * @param issued when it was issued, as the content says
     * @param pdf its pages, not yet signed
     * @param reissue why and by whom its number is issued again; null for the first issue
     */
    public record ToSign(
            String plant,
            UUID record,
            CertificateContent content,
            OffsetDateTime issued,
            byte[] pdf,
            IssuedCertificate.@Nullable Reissue reissue) {}

    /** A row as it is read. */
    record Row(
            String plant,
            UUID recordId,
            Instant issued,
            String content,
            byte[] pdf,
            @Nullable String reissueReason,
            @Nullable String reissuedBy,
            @Nullable String consignee) {

        ToSign toSign() {
            return new ToSign(
                    plant,
                    recordId,
                    CertificateJson.read(content),
                    issued.atOffset(ZoneOffset.UTC),
                    pdf,
                    reissueReason == null || reissuedBy == null
                            ? null
                            : new IssuedCertificate.Reissue(reissueReason, reissuedBy, consignee));
        }
    }

    @Transactional(Transactional.TxType.MANDATORY)
    public void add(ToSign certificate) {
        IssuedCertificate.Reissue reissue = certificate.reissue();
        session.createNativeMutationQuery(
                        """
                        insert into certificate_to_sign (plant, number, issue, record_id, issued, content, pdf,
                                                         reissue_reason, reissued_by, consignee)
                        values (:plant, :number, :issue, :record, :issued, cast(:content as jsonb), :pdf,
                                :reason, :by, :consignee)""")
                .setParameter("reason", reissue == null ? null : reissue.reason(), String.class)
                .setParameter("by", reissue == null ? null : reissue.by(), String.class)
                .setParameter("consignee", reissue == null ? null : reissue.consignee(), String.class)
                .setParameter("plant", certificate.plant())
                .setParameter("number", certificate.content().number())
                .setParameter("issue", certificate.content().issue())
                .setParameter("record", certificate.record())
                .setParameter("issued", certificate.issued())
                .setParameter("content", CertificateJson.write(certificate.content()))
                .setParameter("pdf", certificate.pdf())
                .executeUpdate();
    }

    /** Takes it out; false when another did. Who else takes it out waits until this transaction ends. */
    @Transactional(Transactional.TxType.MANDATORY)
    public boolean remove(ToSign certificate) {
        return session.createNativeMutationQuery(
                                "delete from certificate_to_sign where plant = :plant and number = :number and issue = :issue")
                        .setParameter("plant", certificate.plant())
                        .setParameter("number", certificate.content().number())
                        .setParameter("issue", certificate.content().issue())
                        .executeUpdate()
                == 1;
    }

    /** The one that waits for this record. */
    @Transactional
    public Optional<ToSign> ofRecord(String plant, UUID record) {
        return session
                .createNativeQuery(
                        SELECT + "where plant = :plant and record_id = :record order by issue limit 1", Row.class)
                .setParameter("plant", plant)
                .setParameter("record", record)
                .getResultList()
                .stream()
                .map(Row::toSign)
                .findFirst();
    }

    /** Those that wait since before a time, oldest first. */
    @Transactional
    public List<ToSign> olderThan(String plant, OffsetDateTime time, int limit) {
        return session
                .createNativeQuery(
                        SELECT + "where plant = :plant and issued < :time order by issued, number limit :limit",
                        Row.class)
                .setParameter("plant", plant)
                .setParameter("time", time)
                .setParameter("limit", limit)
                .getResultList()
                .stream()
                .map(Row::toSign)
                .toList();
    }
}
