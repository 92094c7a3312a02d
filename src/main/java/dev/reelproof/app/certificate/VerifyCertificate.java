package dev.reelproof.app.certificate;

import dev.reelproof.app.ConflictException;
import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.Plants;
import dev.reelproof.certificate.CertificateNumber;
import dev.reelproof.certificate.IssuedCertificate;
import dev.reelproof.certificate.IssuedCollective;
import dev.reelproof.certificate.life.CertificateLife;
import dev.reelproof.certificate.life.CertificateState;
import dev.reelproof.certificate.life.Difference;
import dev.reelproof.certificate.life.FileParts;
import dev.reelproof.digest.Sha256;
import dev.reelproof.pdf.file.CertificateParts;
import dev.reelproof.pdf.file.StatedNumber;
import dev.reelproof.store.certificate.Certificates;
import dev.reelproof.store.certificate.CollectiveCertificates;
import dev.reelproof.store.result.RecordSummaries;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Semaphore;

/** Tells anyone who has a certificate, or its number, whether it is genuine and what it is worth now. */
@ApplicationScoped
public class VerifyCertificate {
    /** How many files of strangers are looked into at the same time. */
    private static final int MOST_AT_ONCE = 2;

    private final Certificates certificates;
    private final CollectiveCertificates collectives;
    private final FindCollectives collectiveLives;
    private final RecordSummaries records;
    private final FindLives lives;
    private final Plants plants;
    private final Semaphore looking = new Semaphore(MOST_AT_ONCE);

    VerifyCertificate(
            Certificates certificates,
            CollectiveCertificates collectives,
            FindCollectives collectiveLives,
            RecordSummaries records,
            FindLives lives,
            Plants plants) {
        this.certificates = certificates;
        this.collectives = collectives;
        this.collectiveLives = collectiveLives;
        this.records = records;
        this.lives = lives;
        this.plants = plants;
    }

    /**
     * A certificate that was issued here.
     *
     * @param certificate the issue whose PDF was asked about; the newest where none of them was
     * @param life what became of it
     * @param product the code of the product that it certifies
     */
    public record Known(IssuedCertificate certificate, CertificateLife life, String product) {}

    /**
     * What is known of what somebody holds.
     *
     * @param number the number that it states; empty when a file states none
     * @param known the certificate of that number; empty when none was issued here for a single reel
     * @param collective the collective certificate of that number; empty when none was issued here
     * @param matches whether the file or digest asked about is that of an issued PDF; empty when none was asked about
     * @param differences in what a file is not as issued; none where no file was given
     */
    public record Verified(
            Optional<String> number,
            Optional<Known> known,
            Optional<LivingCollective> collective,
            Optional<Boolean> matches,
            List<Difference> differences) {

        /** What the certificate is worth, whether or not what is held is it; empty when none was issued here. */
        public Optional<CertificateState> state() {
            return known.map(one -> one.life().state())
                    .or(() -> collective.map(one -> one.life().state()));
        }

        /** Whether what is held was issued here, as far as it was shown. */
        public boolean isGenuine() {
            return state().isPresent() && matches.orElse(true);
        }

        /** Whether it may be relied on. */
        public boolean isCurrent() {
            return isGenuine() && state().equals(Optional.of(CertificateState.CURRENT));
        }
    }

    /**
     * Verifies a number, whatever plant issued it.
     *
     * @param number what may be a number
     * @param sha256 digest of a PDF, 64 hexadecimal digits in lower case; empty when none is asked about
     * @throws NothingThereException when no certificate of that number was issued here
     */
    @Transactional
    public Verified verify(String number, Optional<String> sha256) {
        Optional<CertificateNumber> asNumber = CertificateNumber.find(number);
        Optional<IssuedCollective> collective = asNumber.flatMap(this::collective);
        if (collective.isPresent()) {
            return verified(
                    collective.get(),
                    sha256.map(digest -> collective.get().pdfSha256().equals(digest)),
                    List.of());
        }
        List<IssuedCertificate> issues = asNumber.map(this::issues)
                .filter(found -> !found.isEmpty())
                .orElseThrow(() -> new NothingThereException("No certificate of this number was issued here."));
        Optional<IssuedCertificate> asked = sha256.flatMap(digest -> issues.stream()
                .filter(issue -> issue.pdfSha256().equals(digest))
                .findFirst());
        return verified(asked.orElse(issues.get(0)), sha256.map(digest -> asked.isPresent()), List.of());
    }

    /**
     * Verifies a file by itself: by its digest when it was issued here, else by the number that it states. Its name, and a number that
     * somebody typed, do not matter.
     *
     * @throws ConflictException when too many are being verified
     */
    public Verified verifyFile(byte[] pdf) {
        Optional<IssuedCertificate> issued =
                QuarkusTransaction.joiningExisting().call(() -> certificates.ofPdf(Sha256.hex(pdf)));
        if (issued.isPresent()) {
            return QuarkusTransaction.joiningExisting()
                    .call(() -> verified(issued.get(), Optional.of(true), List.of()));
        }
        Optional<IssuedCollective> collective =
                QuarkusTransaction.joiningExisting().call(() -> collectives.ofPdf(Sha256.hex(pdf)));
        if (collective.isPresent()) {
            return QuarkusTransaction.joiningExisting()
                    .call(() -> verified(collective.get(), Optional.of(true), List.of()));
        }
        Optional<CertificateNumber> stated = StatedNumber.in(pdf);
        Optional<IssuedCollective> likely =
                QuarkusTransaction.joiningExisting().call(() -> stated.flatMap(this::collective));
        if (likely.isPresent()) {
            return compared(likely.get(), pdf);
        }
        List<IssuedCertificate> issues = QuarkusTransaction.joiningExisting()
                .call(() -> stated.map(this::issues).orElse(List.of()));
        if (issues.isEmpty()) {
            return new Verified(
                    stated.map(CertificateNumber::toString),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.of(false),
                    List.of());
        }
        IssuedCertificate newest = issues.get(0);
        List<byte[]> pdfs = QuarkusTransaction.joiningExisting().call(() -> issues.stream()
                .flatMap(issue -> certificates.pdf(issue.plant(), issue.number(), issue.issue()).stream())
                .toList());
        List<Difference> differences = differences(pdfs, pdf);
        return QuarkusTransaction.joiningExisting().call(() -> verified(newest, Optional.of(false), differences));
    }

    private Verified compared(IssuedCollective certificate, byte[] pdf) {
        List<byte[]> issued = QuarkusTransaction.joiningExisting()
                .call(() -> collectives.pdf(certificate.plant(), certificate.number()).stream()
                        .toList());
        List<Difference> differences = differences(issued, pdf);
        return QuarkusTransaction.joiningExisting().call(() -> verified(certificate, Optional.of(false), differences));
    }

    /** In what a file differs from the issue that it is most like: the fewest differences, of equals the newest issue. */
    private List<Difference> differences(List<byte[]> issued, byte[] found) {
        if (!looking.tryAcquire()) {
            throw new ConflictException("Others have their files verified; send yours again in a moment.");
        }
        try {
            Optional<FileParts> parts = CertificateParts.of(found);
            List<Difference> fewest = List.of(new Difference.Unreadable());
            boolean isFirst = true;
            for (byte[] pdf : issued) {
                Optional<FileParts> original = CertificateParts.of(pdf);
                if (original.isPresent()) {
                    List<Difference> differences = Difference.between(original.get(), parts, appended(pdf, found));
                    if (isFirst || differences.size() < fewest.size()) {
                        fewest = differences;
                    }
                    isFirst = false;
                }
            }
            return fewest;
        } finally {
            looking.release();
        }
    }

    /** How many bytes follow in a file that begins as issued; zero when it does not. */
    private static int appended(byte[] issued, byte[] found) {
        return found.length > issued.length && Arrays.equals(issued, 0, issued.length, found, 0, issued.length)
                ? found.length - issued.length
                : 0;
    }

    private Verified verified(IssuedCertificate certificate, Optional<Boolean> matches, List<Difference> differences) {
        return new Verified(
                Optional.of(certificate.number()),
                Optional.of(new Known(
                        certificate,
                        lives.of(certificate),
                        records.productOf(certificate.plant(), certificate.record())
                                .orElseThrow())),
                Optional.empty(),
                matches,
                differences);
    }

    private Verified verified(IssuedCollective certificate, Optional<Boolean> matches, List<Difference> differences) {
        return new Verified(
                Optional.of(certificate.number()),
                Optional.empty(),
                Optional.of(collectiveLives.living(certificate)),
                matches,
                differences);
    }

    private Optional<IssuedCollective> collective(CertificateNumber number) {
        return plants.served().stream()
                .flatMap(plant -> collectives.of(plant, number.toString()).stream())
                .findFirst();
    }

    private List<IssuedCertificate> issues(CertificateNumber number) {
        return plants.served().stream()
                .map(plant -> certificates.issues(plant, number.toString()))
                .filter(found -> !found.isEmpty())
                .findFirst()
                .orElse(List.of());
    }
}
