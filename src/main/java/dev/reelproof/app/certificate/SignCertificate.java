package dev.reelproof.app.certificate;

import dev.reelproof.certificate.IssuedCertificate;
import dev.reelproof.store.access.AuditTrail;
import dev.reelproof.store.certificate.Certificates;
import dev.reelproof.store.certificate.CertificatesToSign;
import dev.reelproof.store.certificate.CertificatesToSign.ToSign;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.Map;
import java.util.Optional;
import org.jboss.logging.Logger;

/**
 * Completes certificates that have their number: signs them, however long the device takes, and keeps them. That they are issued was
 * decided when they got the number, under the lock of the reel; nothing of it is asked again here.
 */
@ApplicationScoped
public class SignCertificate {
    private static final Logger LOG = Logger.getLogger(SignCertificate.class);

    /** One that waits longer than any device takes was left behind. */
    private static final Duration LEFT_BEHIND = Duration.ofMinutes(5);

    private static final int MOST_AT_ONCE = 10;

    private final SigningOfPlant signing;
    private final CertificatesToSign waiting;
    private final Certificates certificates;
    private final AuditTrail audit;
    private final Clock clock;

    SignCertificate(
            SigningOfPlant signing,
            CertificatesToSign waiting,
            Certificates certificates,
            AuditTrail audit,
            Clock clock) {
        this.signing = signing;
        this.waiting = waiting;
        this.certificates = certificates;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * Signs and keeps a certificate that waits.
     *
     * @return the certificate; empty when somebody else completed it meanwhile
     * @throws CannotBeSignedException when it cannot be signed now; it goes on waiting
     */
    public Optional<IssuedCertificate> complete(ToSign certificate) {
        byte[] signed = signing.sign(certificate.pdf());
        return QuarkusTransaction.joiningExisting()
                .call(() -> waiting.remove(certificate) ? Optional.of(keep(certificate, signed)) : Optional.empty());
    }

    private IssuedCertificate keep(ToSign signed, byte[] pdf) {
        IssuedCertificate certificate =
                certificates.keep(signed.plant(), signed.record(), signed.content(), signed.issued(), pdf);
        audit.write(
                signed.plant(),
                "certificate-issued",
                "certificate/" + certificate.number(),
                null,
                Map.of(
                        "issue", certificate.issue(),
                        "reel", certificate.reel(),
                        "record", certificate.record().toString(),
                        "pdfSha256", certificate.pdfSha256()));
        return certificate;
    }

    /** Completes what a crash or a silent device left behind at a plant; what still cannot be signed goes on waiting. */
    public void completeLeftBehind(String plant) {
        OffsetDateTime before = OffsetDateTime.now(clock).minus(LEFT_BEHIND);
        for (ToSign left : waiting.olderThan(plant, before, MOST_AT_ONCE)) {
            try {
                complete(left);
            } catch (CannotBeSignedException e) {
                LOG.warn(
                        "Certificate " + left.content().number() + " still waits for its signature: " + e.getMessage());
                return;
            }
        }
    }
}
