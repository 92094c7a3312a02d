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
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

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
    private final SignCollective collectives;
    private final AuditTrail audit;
    private final Clock clock;

    SignCertificate(
            SigningOfPlant signing,
            CertificatesToSign waiting,
            Certificates certificates,
            SignCollective collectives,
            AuditTrail audit,
            Clock clock) {
        this.signing = signing;
        this.waiting = waiting;
        this.certificates = certificates;
        this.collectives = collectives;
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
        Optional<IssuedCertificate> before = certificates
                .issues(signed.plant(), signed.content().number())
                .stream()
                .findFirst();
        IssuedCertificate certificate = certificates.keep(
                signed.plant(), signed.record(), signed.content(), signed.issued(), pdf, signed.reissue());
        IssuedCertificate.Reissue reissue = signed.reissue();
        audit.write(
                signed.plant(),
                reissue == null ? "certificate-issued" : "certificate-reissued",
                WithdrawCertificate.subject(certificate.number()),
                reissue == null ? null : reissue.reason(),
                details(before, certificate));
        return certificate;
    }

    private static Map<String, Object> details(Optional<IssuedCertificate> before, IssuedCertificate now) {
        Map<String, Object> details = new TreeMap<>(Map.of(
                "issue", now.issue(),
                "reel", now.reel(),
                "record", now.record().toString(),
                "pdfSha256", now.pdfSha256()));
        before.ifPresent(earlier -> {
            putChange(details, "customer", earlier.customer(), now.customer());
            putChange(details, "order", earlier.order(), now.order());
            putChange(details, "consignee", consignee(earlier), consignee(now));
        });
        return details;
    }

    private static @Nullable String consignee(IssuedCertificate certificate) {
        IssuedCertificate.Reissue reissue = certificate.reissue();
        return reissue == null ? null : reissue.consignee();
    }

    private static void putChange(
            Map<String, Object> details, String name, @Nullable String before, @Nullable String now) {
        if (!Objects.equals(before, now)) {
            details.put(name, before + " → " + now);
        }
    }

    /** Completes what a crash or a silent device left behind at a plant; what still cannot be signed goes on waiting. */
    public void completeLeftBehind(String plant) {
        collectives.completeLeftBehind(plant);
        OffsetDateTime before = OffsetDateTime.now(clock).minus(LEFT_BEHIND);
        for (ToSign left : waiting.olderThan(plant, before, MOST_AT_ONCE)) {
            try {
                complete(left);
            } catch (CannotBeSignedException e) {
                LOG.warn(
                        "Certificate " + left.content().number() + " still waits for its signature: " + e.getMessage());
                return;
            } catch (RuntimeException e) {
                // Whatever it is, it must not keep the plant from issuing others; each of them tells of it again.
                LOG.error("Certificate " + left.content().number() + " was left behind and cannot be kept", e);
            }
        }
    }
}
