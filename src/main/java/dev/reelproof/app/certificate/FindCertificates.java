package dev.reelproof.app.certificate;

import dev.reelproof.app.NothingThereException;
import dev.reelproof.certificate.CertificateFilter;
import dev.reelproof.certificate.CertificateNumber;
import dev.reelproof.certificate.IssuedCertificate;
import dev.reelproof.store.certificate.Certificates;
import dev.reelproof.store.certificate.CollectiveCertificates;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Optional;

/** Finds certificates that were issued. */
@ApplicationScoped
public class FindCertificates {
    private final Certificates certificates;
    private final CollectiveCertificates collectives;
    private final FindLives lives;

    FindCertificates(Certificates certificates, CollectiveCertificates collectives, FindLives lives) {
        this.certificates = certificates;
        this.collectives = collectives;
        this.lives = lives;
    }

    /**
     * Some certificates, and the first that follow them.
     *
     * @param certificates with what became of them, the newest first
     * @param isMore whether others follow
     */
    public record Page(List<LivingCertificate> certificates, boolean isMore) {}

    /** Certificates that a list shows, the newest first. */
    @Transactional
    public Page list(String plant, CertificateFilter filter, int limit) {
        List<IssuedCertificate> found = certificates.list(plant, filter, limit + 1);
        return new Page(lives.of(plant, found.subList(0, Math.min(limit, found.size()))), found.size() > limit);
    }

    /** A certificate with what became of it. */
    @Transactional
    public LivingCertificate living(IssuedCertificate certificate) {
        return new LivingCertificate(certificate, lives.of(certificate));
    }

    /**
     * The certificate that a list is to go on behind.
     *
     * @param place its number, a slash, its issue
     */
    @Transactional
    public Optional<IssuedCertificate> at(String plant, String place) {
        String number = place.substring(0, Math.max(0, place.lastIndexOf('/')));
        return certificates.issues(plant, number).stream()
                .filter(issue -> place.equals(place(issue)))
                .findFirst();
    }

    /** The place of a certificate in a list, as {@link #at} takes it. */
    public static String place(IssuedCertificate certificate) {
        return certificate.number() + "/" + certificate.issue();
    }

    /**
     * The PDF of the newest issue of a number, also of a collective certificate, the same bytes each time.
     *
     * @param number what may be a number
     * @throws NothingThereException when the plant issued none
     */
    @Transactional
    public byte[] pdf(String plant, String number) {
        return CertificateNumber.find(number)
                .flatMap(read ->
                        certificates.pdf(plant, read.toString()).or(() -> collectives.pdf(plant, read.toString())))
                .orElseThrow(() -> unknown(plant, number));
    }

    /** What is said of a certificate that was not issued. */
    static NothingThereException unknown(String plant, String number) {
        return new NothingThereException("Plant " + plant + " issued no certificate '" + number + "'.");
    }
}
