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

    FindCertificates(Certificates certificates) {
        this.certificates = certificates;
    }

    /** Certificates whose number, reel, order or customer contains the text, whatever its case; newest first. */
    @Transactional
    public List<IssuedCertificate> search(String plant, String text, int limit) {
        return certificates.search(plant, text, limit);
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
                .orElseThrow(
                        () -> new NothingThereException("Plant " + plant + " issued no certificate '" + number + "'."));
    }
}
