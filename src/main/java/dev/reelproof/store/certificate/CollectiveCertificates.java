package dev.reelproof.store.certificate;

import dev.reelproof.certificate.CollectiveContent;
import dev.reelproof.certificate.IssuedCollective;
import dev.reelproof.digest.Sha256;
import dev.reelproof.seal.LeafKind;
import dev.reelproof.search.Searched;
import dev.reelproof.store.UtcTimes;
import dev.reelproof.store.seal.Sealing;
import dev.reelproof.store.search.SearchIndex;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.hibernate.Session;
import org.hibernate.query.NativeQuery;

/** The collective certificates of each plant, kept as they were issued, and those that wait for their signature. */
@ApplicationScoped
public class CollectiveCertificates {
    private static final String SELECT =
            "select plant, content::text as content, issued, pdf_sha256 from collective_certificate ";
    private static final String SELECT_WAITING =
            "select plant, content::text as content, issued, pdf from collective_to_sign ";

    private final Session session;
    private final SearchIndex searched;
    private final Sealing sealing;

    CollectiveCertificates(Session session, SearchIndex searched, Sealing sealing) {
        this.session = session;
        this.searched = searched;
        this.sealing = sealing;
    }

    /**
     * One that has its number and waits for its signature.
     *
     * @param content what it says
     * @param issued when it was issued, as the content says
     * @param pdf its pages, not yet signed
     */
    public record ToSign(String plant, CollectiveContent content, OffsetDateTime issued, byte[] pdf) {}

    /** A row as it is read. */
    record Row(String plant, String content, Instant issued, String pdfSha256) {
        IssuedCollective toIssued() {
            return new IssuedCollective(
                    plant, CertificateJson.readCollective(content), UtcTimes.utc(issued), pdfSha256);
        }
    }

    /** A row that waits, as it is read. */
    record WaitingRow(String plant, String content, Instant issued, byte[] pdf) {
        ToSign toSign() {
            return new ToSign(plant, CertificateJson.readCollective(content), UtcTimes.utc(issued), pdf);
        }
    }

    @Transactional(Transactional.TxType.MANDATORY)
    public void add(ToSign waiting) {
        session.createNativeMutationQuery(
                        """
                        insert into collective_to_sign (plant, number, issued, names_sha256, content, pdf)
                        values (:plant, :number, :issued, :names, cast(:content as jsonb), :pdf)""")
                .setParameter("plant", waiting.plant())
                .setParameter("number", waiting.content().number())
                .setParameter("issued", waiting.issued())
                .setParameter("names", waiting.content().namesSha256())
                .setParameter("content", CertificateJson.write(waiting.content()))
                .setParameter("pdf", waiting.pdf())
                .executeUpdate();
    }

    /** Takes it out; false when another did. Who else takes it out waits until this transaction ends. */
    @Transactional(Transactional.TxType.MANDATORY)
    public boolean remove(ToSign waiting) {
        return session.createNativeMutationQuery(
                                "delete from collective_to_sign where plant = :plant and number = :number")
                        .setParameter("plant", waiting.plant())
                        .setParameter("number", waiting.content().number())
                        .executeUpdate()
                == 1;
    }

    /** Keeps one with its signature. */
    @Transactional(Transactional.TxType.MANDATORY)
    public IssuedCollective keep(ToSign signed, byte[] pdf) {
        CollectiveContent content = signed.content();
        String sha256 = Sha256.hex(pdf);
        session.createNativeMutationQuery(
                        """
                        insert into collective_certificate (plant, number, order_number, customer, issued, names_sha256,
                                                            content, pdf, pdf_sha256)
                        values (:plant, :number, :order, :customer, :issued, :names, cast(:content as jsonb), :pdf, :sha256)""")
                .setParameter("plant", signed.plant())
                .setParameter("number", content.number())
                .setParameter("order", content.order())
                .setParameter("customer", content.customer(), String.class)
                .setParameter("issued", signed.issued())
                .setParameter("names", content.namesSha256())
                .setParameter("content", CertificateJson.write(content))
                .setParameter("pdf", pdf)
                .setParameter("sha256", sha256)
                .executeUpdate();
        Instant at = signed.issued().toInstant();
        searched.put(signed.plant(), Searched.CERTIFICATE, content.number(), at);
        sealing.seal(LeafKind.COLLECTIVE_CERTIFICATE, signed.plant(), List.of(content.number()));
        return new IssuedCollective(signed.plant(), content, UtcTimes.utc(at), sha256);
    }

    /** The one that names exactly the certificates of that digest. */
    @Transactional
    public Optional<IssuedCollective> ofNames(String plant, String namesSha256) {
        return first(
                find("where plant = :plant and names_sha256 = :names", plant).setParameter("names", namesSha256));
    }

    /** The one that names exactly the certificates of that digest, where it waits for its signature. */
    @Transactional
    public Optional<ToSign> waitingOfNames(String plant, String namesSha256) {
        return session
                .createNativeQuery(SELECT_WAITING + "where plant = :plant and names_sha256 = :names", WaitingRow.class)
                .setParameter("plant", plant)
                .setParameter("names", namesSha256)
                .getResultList()
                .stream()
                .map(WaitingRow::toSign)
                .findFirst();
    }

    /** Those that wait since before a time, oldest first. */
    @Transactional
    public List<ToSign> waitingSince(String plant, OffsetDateTime time, int limit) {
        return session
                .createNativeQuery(
                        SELECT_WAITING + "where plant = :plant and issued < :time order by issued, number limit :limit",
                        WaitingRow.class)
                .setParameter("plant", plant)
                .setParameter("time", time)
                .setParameter("limit", limit)
                .getResultList()
                .stream()
                .map(WaitingRow::toSign)
                .toList();
    }

    /** Those of some numbers. */
    @Transactional
    public List<IssuedCollective> of(String plant, Collection<String> numbers) {
        return all(find("where plant = :plant and number = any(cast(:numbers as text[]))", plant)
                .setParameter("numbers", numbers.toArray(String[]::new)));
    }

    /** The one of a number. */
    @Transactional
    public Optional<IssuedCollective> of(String plant, String number) {
        return of(plant, List.of(number)).stream().findFirst();
    }

    /** The one whose PDF has this digest, whatever plant issued it. */
    @Transactional
    public Optional<IssuedCollective> ofPdf(String sha256) {
        return first(session.createNativeQuery(
                        SELECT + "where pdf_sha256 = :sha256 order by plant, number limit 1", Row.class)
                .setParameter("sha256", sha256));
    }

    /** Those of an order, newest first. */
    @Transactional
    public List<IssuedCollective> ofOrder(String plant, String order, int limit) {
        return all(
                find("where plant = :plant and order_number = :order order by issued desc, number limit :limit", plant)
                        .setParameter("order", order)
                        .setParameter("limit", limit));
    }

    /** The PDF of one, the same bytes each time. */
    @Transactional
    public Optional<byte[]> pdf(String plant, String number) {
        return session
                .createNativeQuery(
                        "select pdf from collective_certificate where plant = :plant and number = :number",
                        byte[].class)
                .setParameter("plant", plant)
                .setParameter("number", number)
                .getResultList()
                .stream()
                .findFirst();
    }

    private NativeQuery<Row> find(String which, String plant) {
        return session.createNativeQuery(SELECT + which, Row.class).setParameter("plant", plant);
    }

    private static List<IssuedCollective> all(NativeQuery<Row> query) {
        return query.getResultList().stream().map(Row::toIssued).toList();
    }

    private static Optional<IssuedCollective> first(NativeQuery<Row> query) {
        return all(query).stream().findFirst();
    }
}
