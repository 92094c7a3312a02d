package dev.reelproof.app.certificate;

import dev.reelproof.app.NothingThereException;
import dev.reelproof.certificate.CertificateNumber;
import dev.reelproof.certificate.IssuedCertificate;
import dev.reelproof.store.certificate.Certificates;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.List;

/** Finds certificates that were issued. */
@ApplicationScoped
public class FindCertificates {
    private final Certificates certificates;
    private final FindLives lives;

    FindCertificates(Certificates certificates, FindLives lives) {
        this.certificates = certificates;
        this.lives = lives;
    }

    /** Certificates whose number, reel, order or customer contains the text, whatever its case; newest first. */
    @Transactional
    public List<LivingCertificate> search(String plant, String text, int limit) {
        return lives.of(plant, certificates.search(plant, text, limit));
    }

    /** A certificate with what became of it. */
    @Transactional
    public LivingCertificate living(IssuedCertificate certificate) {
        return new LivingCertificate(certificate, lives.of(certificate));
    }

    /**
     * The PDF of the newest issue of a number, the same bytes each time.
     *
     * @param number what may be a number
     * @throws NothingThereException when the plant issued none
     */
    @Transactional
    public byte[] pdf(String plant, String number) {
        return CertificateNumber.find(number)
                .flatMap(read -> certificates.pdf(plant, read.toString()))
                .orElseThrow(() -> unknown(plant, number));
    }

    /** What is said of a certificate that was not issued. */
    static NothingThereException unknown(String plant, String number) {
        return new NothingThereException("Plant " + plant + " issued no certificate '" + number + "'.");
    }
}
