package dev.reelproof.app.certificate;

import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.Plants;
import dev.reelproof.certificate.CertificateNumber;
import dev.reelproof.certificate.IssuedCertificate;
import dev.reelproof.store.certificate.Certificates;
import dev.reelproof.store.result.Records;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Optional;

/** Tells anyone who has a certificate's number whether it is genuine and current. */
@ApplicationScoped
public class VerifyCertificate {
    private final Certificates certificates;
    private final Records records;
    private final Plants plants;

    VerifyCertificate(Certificates certificates, Records records, Plants plants) {
        this.certificates = certificates;
        this.records = records;
        this.plants = plants;
    }

    /**
     * What is known of a certificate.
     *
     * @param certificate the issue whose PDF was asked about; the newest where none of them was
     * @param isNewest whether no later issue of the number exists
     * @param product the code of the product that it certifies
     * @param matches whether the digest asked about is that of an issued PDF; empty when none was asked about
     */
    public record Verified(
            IssuedCertificate certificate, boolean isNewest, String product, Optional<Boolean> matches) {}

    /**
     * Verifies a certificate, whatever plant issued it.
     *
     * @param number what may be a number
     * @param sha256 digest of a PDF, 64 hexadecimal digits in lower case; empty when none is asked about
     * @throws NothingThereException when no certificate of that number was issued here
     */
    @Transactional
    public Verified verify(String number, Optional<String> sha256) {
        List<IssuedCertificate> issues = CertificateNumber.find(number)
                .map(this::issues)
                .filter(found -> !found.isEmpty())
                .orElseThrow(() -> new NothingThereException("No certificate of this number was issued here."));
        IssuedCertificate newest = issues.get(0);
        Optional<IssuedCertificate> asked = sha256.flatMap(digest -> issues.stream()
                .filter(issue -> issue.pdfSha256().equals(digest))
                .findFirst());
        IssuedCertificate meant = asked.orElse(newest);
        return new Verified(
                meant,
                meant.issue() == newest.issue(),
                records.productOf(meant.plant(), meant.record()).orElseThrow(),
                sha256.map(digest -> asked.isPresent()));
    }

    private List<IssuedCertificate> issues(CertificateNumber number) {
        return plants.served().stream()
                .map(plant -> certificates.issues(plant, number.toString()))
                .filter(found -> !found.isEmpty())
                .findFirst()
                .orElse(List.of());
    }
}
