package dev.reelproof.store.certificate;

import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.certificate.CertificateFilter;
import dev.reelproof.certificate.IssuedCertificate;
import dev.reelproof.digest.Sha256;
import dev.reelproof.seal.LeafKind;
import dev.reelproof.search.Searched;
import dev.reelproof.store.UtcTimes;
import dev.reelproof.store.seal.Sealing;
import dev.reelproof.store.search.SearchIndex;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.OffsetDateTime;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.hibernate.Session;
import org.hibernate.query.NativeQuery;
import org.jspecify.annotations.Nullable;

/** The certificates of each plant. What was issued is kept as it was issued. */
@ApplicationScoped
public class Certificates {
    private static final String SELECT = "select " + CertificateSummaryRow.COLUMNS + " from certificate ";

    private final Session session;
    private final SearchIndex searched;
    private final Sealing sealing;

    Certificates(Session session, SearchIndex searched, Sealing sealing) {
        this.session = session;
        this.searched = searched;
        this.sealing = sealing;
    }

    /**
     * Takes the next serial number of a plant's certificates of a year, from 1. Until this transaction ends nobody else at the plant
     * takes one; when it fails, the number is given back, so that no number is left out.
     */
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

    /**
     * The serials of a plant's year that do not fit the certificates that are kept.
     *
     * @param last the serial given last
     * @param issued how many numbers were issued
     * @param lastIssued the highest serial among them; zero when there is none
     */
    public record Misfit(String plant, int year, int last, long issued, int lastIssued) {}

    /**
     * Where the serial given last is not the number of certificates kept, or not the highest serial among them; those that wait for their
     * signature count.
     */
    @Transactional
    public List<Misfit> serialMisfits() {
        return session.createNativeQuery(
                        """
                        with kept as (
                            select plant, cast(split_part(number, '-', 2) as int) as year, count(*) as issued,
                                   max(cast(split_part(number, '-', 3) as int)) as last
                            from (select plant, number from certificate where issue = 1
                                  union all
                                  select plant, number from certificate_to_sign where issue = 1
                                  union all
                                  select plant, number from collective_certificate
                                  union all
                                  select plant, number from collective_to_sign) numbered
                            group by 1, 2)
                        select plant, year, coalesce(s.last, 0), coalesce(k.issued, 0), coalesce(k.last, 0)
                        from certificate_serial s full join kept k using (plant, year)
                        where (s.last, cast(s.last as bigint)) is distinct from (k.last, k.issued)
                        order by plant, year""",
                        Misfit.class)
                .getResultList();
    }

    /**
     * Whether this number was given to a certificate of a reel or of several, also to one that waits for its signature.
     *
     * @param number the number as printed
     */
    @Transactional
    public boolean isIssued(String plant, String number) {
        return session.createNativeQuery(
                        """
                        select exists (select from certificate where plant = :plant and number = :number)
                            or exists (select from certificate_to_sign where plant = :plant and number = :number)
                            or exists (select from collective_certificate where plant = :plant and number = :number)
                            or exists (select from collective_to_sign where plant = :plant and number = :number)""",
                        Boolean.class)
                .setParameter("plant", plant)
                .setParameter("number", number)
                .getSingleResult();
    }

    /**
     * Keeps a certificate.
     *
     * @param record the record that it certifies
     * @param content what it says
     * @param issued when it is issued, as the content says
     * @param pdf how it looks
     * @param reissue why and by whom it is issued again; null for the first issue
     */
    @Transactional(Transactional.TxType.MANDATORY)
    public IssuedCertificate keep(
            String plant,
            UUID record,
            CertificateContent content,
            OffsetDateTime issued,
            byte[] pdf,
            IssuedCertificate.@Nullable Reissue reissue) {
        CertificateRow row = new CertificateRow();
        row.plant = plant;
        row.number = content.number();
        row.issue = content.issue();
        row.recordId = record;
        row.reel = content.reel();
        row.issued = issued.toInstant();
        row.orderNumber = content.order();
        row.customer = content.customer();
        row.content = CertificateJson.write(content);
        row.pdf = pdf.clone();
        row.pdfSha256 = Sha256.hex(pdf);
        if (reissue != null) {
            row.reissueReason = reissue.reason();
            row.reissuedBy = reissue.by();
            row.consignee = reissue.consignee();
        }
        session.persist(row);
        session.flush();
        searched.put(plant, Searched.CERTIFICATE, row.number, row.issued);
        searched.put(plant, Searched.ORDER, row.orderNumber, row.issued);
        searched.put(plant, Searched.CUSTOMER, row.customer, row.issued);
        sealing.seal(LeafKind.CERTIFICATE, plant, List.of(row.number + "/" + row.issue));
        return new IssuedCertificate(
                row.plant,
                row.number,
                row.issue,
                row.recordId,
                row.reel,
                UtcTimes.utc(row.issued),
                row.orderNumber,
                row.customer,
                row.pdfSha256,
                reissue);
    }

    /** The newest issue for a record; empty when it has none. */
    @Transactional
    public Optional<IssuedCertificate> ofRecord(String plant, UUID record) {
        return certificates(find("where plant = :plant and record_id = :record order by issue desc limit 1", plant)
                        .setParameter("record", record))
                .stream()
                .findFirst();
    }

    /** The certificates of a reel, newest first. */
    @Transactional
    public List<IssuedCertificate> ofReel(String plant, String reel) {
        return certificates(find("where plant = :plant and reel = :reel order by issued desc", plant)
                .setParameter("reel", reel));
    }

    /** All issues of all numbers of these reels. */
    @Transactional
    public Map<String, List<IssuedCertificate>> ofReels(String plant, Collection<String> reels) {
        return certificates(find("where plant = :plant and reel = any(:reels)", plant)
                        .setParameter("reels", reels.toArray(String[]::new)))
                .stream()
                .collect(Collectors.groupingBy(IssuedCertificate::reel));
    }

    /** The issue whose PDF has this digest, whatever plant issued it; empty when there is none. */
    @Transactional
    public Optional<IssuedCertificate> ofPdf(String sha256) {
        return certificates(session.createNativeQuery(
                                SELECT + "where pdf_sha256 = :sha256 order by plant, number, issue limit 1",
                                CertificateSummaryRow.class)
                        .setParameter("sha256", sha256))
                .stream()
                .findFirst();
    }

    /** All issues of a number, newest first. */
    @Transactional
    public List<IssuedCertificate> issues(String plant, String number) {
        return certificates(find("where plant = :plant and number = :number order by issue desc", plant)
                .setParameter("number", number));
    }

    /** Certificates of a plant that a list shows, the newest first, and of one time by number. */
    @Transactional
    public List<IssuedCertificate> list(String plant, CertificateFilter filter, int limit) {
        NativeQuery<CertificateSummaryRow> query = find(
                "where plant = :plant and " + FilterSql.condition(filter)
                        + " order by issued desc, number, issue limit :limit",
                plant);
        FilterSql.parameters(filter).forEach(query::setParameter);
        return certificates(query.setParameter("limit", limit));
    }

    /** The newest issues of some numbers. */
    @Transactional
    public List<IssuedCertificate> newestOf(String plant, Collection<String> numbers) {
        return certificates(find(
                        "c where plant = :plant and number = any(cast(:numbers as text[])) and not exists (select from"
                                + " certificate l where l.plant = c.plant and l.number = c.number and l.issue > c.issue)",
                        plant)
                .setParameter("numbers", numbers.toArray(String[]::new)));
    }

    private NativeQuery<CertificateSummaryRow> find(String which, String plant) {
        return session.createNativeQuery(SELECT + which, CertificateSummaryRow.class)
                .setParameter("plant", plant);
    }

    private static List<IssuedCertificate> certificates(NativeQuery<CertificateSummaryRow> query) {
        return query.getResultList().stream()
                .map(CertificateSummaryRow::toCertificate)
                .toList();
    }

    /**
     * The numbers of a plant's certificates, not withdrawn, that were judged by a revision of a limit set; in order.
     *
     * @param most how many at most
     */
    @Transactional
    public List<String> judgedBy(String plant, String limitSet, int revision, int most) {
        return session.createNativeQuery(
                        """
                        select distinct c.number from certificate c
                        where c.plant = :plant and c.content #>> '{limits,id}' = :set
                          and c.content #>> '{limits,revision}' = :revision
                          and not exists (select from certificate_withdrawal w
                                          where w.plant = c.plant and w.number = c.number)
                        order by c.number limit :most""",
                        String.class)
                .setParameter("plant", plant)
                .setParameter("set", limitSet)
                .setParameter("revision", String.valueOf(revision))
                .setParameter("most", most)
                .getResultList();
    }

    /** What some certificates say, of exactly these issues. */
    @Transactional
    public List<CertificateContent> contents(String plant, Collection<IssuedCertificate> of) {
        return session
                .createNativeQuery(
                        """
                        select content::text from certificate
                        where plant = :plant and number || '/' || issue = any(cast(:places as text[]))
                          and number = any(cast(:numbers as text[]))""",
                        String.class)
                .setParameter("plant", plant)
                .setParameter(
                        "places",
                        of.stream().map(one -> one.number() + "/" + one.issue()).toArray(String[]::new))
                .setParameter(
                        "numbers", of.stream().map(IssuedCertificate::number).toArray(String[]::new))
                .getResultList()
                .stream()
                .map(CertificateJson::read)
                .toList();
    }

    /** All issues of some numbers. */
    @Transactional
    public List<IssuedCertificate> issuesOf(String plant, Collection<String> numbers) {
        return certificates(find("where plant = :plant and number = any(cast(:numbers as text[]))", plant)
                .setParameter("numbers", numbers.toArray(String[]::new)));
    }

    /** The PDF of one issue of a number; empty when there is none. */
    @Transactional
    public Optional<byte[]> pdf(String plant, String number, int issue) {
        return session
                .createNativeQuery(
                        "select pdf from certificate where plant = :plant and number = :number and issue = :issue",
                        byte[].class)
                .setParameter("plant", plant)
                .setParameter("number", number)
                .setParameter("issue", issue)
                .getResultList()
                .stream()
                .findFirst();
    }

    /** The PDF of the newest issue of a number, the same bytes each time; empty when there is none. */
    @Transactional
    public Optional<byte[]> pdf(String plant, String number) {
        return session
                .createNativeQuery(
                        "select pdf from certificate where plant = :plant and number = :number order by issue desc limit 1",
                        byte[].class)
                .setParameter("plant", plant)
                .setParameter("number", number)
                .getResultList()
                .stream()
                .findFirst();
    }
}
