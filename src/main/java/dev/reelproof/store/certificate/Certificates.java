package dev.reelproof.store.certificate;

import dev.reelproof.intake.Part;
import dev.reelproof.store.UtcTimes;
import dev.reelproof.store.access.AuditTrail;
import dev.reelproof.store.reel.Reels;
import dev.reelproof.store.result.StoredRecord;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.Session;

/** The certificates of each plant. What was issued is kept as it was issued. */
@ApplicationScoped
public class Certificates {
    private final Session session;
    private final AuditTrail audit;

    Certificates(Session session, AuditTrail audit) {
        this.session = session;
        this.audit = audit;
    }

    /** The next serial number of a plant's certificates of a year, from 1; given back when the transaction fails. */
    @Transactional(Transactional.TxType.MANDATORY)
    public int nextSerial(String plant, int year) {
        return session.createNativeQuery(
                        """
                        insert into certificate_serial (plant, year, last) values (:plant, :year, 1)
                        on conflict (plant, year) do update set last = certificate_serial.last + 1
                        returning last""",
                        Integer.class)
                .setParameter("plant", plant)
                .setParameter("year", year)
                .getSingleResult();
    }

    /** Keeps a certificate with what it says and how it looks. */
    @Transactional(Transactional.TxType.MANDATORY)
    public StoredCertificate keep(
            StoredRecord record,
            String number,
            int issue,
            OffsetDateTime issued,
            String order,
            String customer,
            String contentJson,
            byte[] pdf) {
        CertificateRow row = new CertificateRow();
        row.plant = record.plant();
        row.number = number;
        row.issue = issue;
        row.recordId = record.id();
        row.reel = record.reel();
        row.issued = issued.toInstant();
        row.orderNumber = order;
        row.customer = customer;
        row.content = contentJson;
        row.pdf = pdf.clone();
        row.pdfSha256 = new Part("pdf", "application/pdf", pdf).sha256();
        row.persistAndFlush();
        audit.write(
                row.plant,
                "certificate-issued",
                "certificate/" + number,
                null,
                Map.of(
                        "issue",
                        issue,
                        "reel",
                        row.reel,
                        "record",
                        row.recordId.toString(),
                        "pdfSha256",
                        row.pdfSha256));
        return toCertificate(row);
    }

    /** The newest issue for a record; empty when it has none. */
    @Transactional
    public Optional<StoredCertificate> ofRecord(String plant, UUID record) {
        return CertificateRow.<CertificateRow>find("plant = ?1 and recordId = ?2 order by issue desc", plant, record)
                .firstResultOptional()
                .map(Certificates::toCertificate);
    }

    /** The certificates of a reel, newest first. */
    @Transactional
    public List<StoredCertificate> ofReel(String plant, String reel) {
        return CertificateRow.<CertificateRow>find("plant = ?1 and reel = ?2 order by issued desc", plant, reel)
                .stream()
                .map(Certificates::toCertificate)
                .toList();
    }

    /** The newest issue of a number; empty when there is none. */
    @Transactional
    public Optional<StoredCertificate> byNumber(String plant, String number) {
        return CertificateRow.<CertificateRow>find("plant = ?1 and number = ?2 order by issue desc", plant, number)
                .firstResultOptional()
                .map(Certificates::toCertificate);
    }

    /** All issues of a number, newest first. */
    @Transactional
    public List<StoredCertificate> issues(String plant, String number) {
        return CertificateRow.<CertificateRow>find("plant = ?1 and number = ?2 order by issue desc", plant, number)
                .stream()
                .map(Certificates::toCertificate)
                .toList();
    }

    /** The PDF of the newest issue of a number, the same bytes each time; empty when there is none. */
    @Transactional
    public Optional<byte[]> pdf(String plant, String number) {
        return CertificateRow.<CertificateRow>find("plant = ?1 and number = ?2 order by issue desc", plant, number)
                .firstResultOptional()
                .map(row -> row.pdf);
    }

    /** Certificates whose number, reel, order or customer contains the text, whatever its case; newest first. */
    @Transactional
    public List<StoredCertificate> search(String plant, String text, int limit) {
        return CertificateRow.<CertificateRow>find(
                        "plant = ?1 and searched like ?2 escape '!' order by issued desc, number",
                        plant,
                        Reels.containing(text))
                .page(0, limit)
                .stream()
                .map(Certificates::toCertificate)
                .toList();
    }

    private static StoredCertificate toCertificate(CertificateRow row) {
        return new StoredCertificate(
                row.plant,
                row.number,
                row.issue,
                row.recordId,
                row.reel,
                UtcTimes.utc(row.issued),
                row.orderNumber,
                row.customer,
                row.pdfSha256);
    }
}
