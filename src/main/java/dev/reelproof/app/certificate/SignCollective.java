package dev.reelproof.app.certificate;

import dev.reelproof.certificate.IssuedCollective;
import dev.reelproof.store.access.AuditTrail;
import dev.reelproof.store.certificate.CollectiveCertificates;
import dev.reelproof.store.certificate.CollectiveCertificates.ToSign;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.Map;
import java.util.Optional;
import org.jboss.logging.Logger;

/** Completes collective certificates that have their number, as {@link SignCertificate} does those of single reels. */
@ApplicationScoped
public class SignCollective {
    private static final Logger LOG = Logger.getLogger(SignCollective.class);

    /** One that waits longer than any device takes was left behind. */
    private static final Duration LEFT_BEHIND = Duration.ofMinutes(5);

    private static final int MOST_AT_ONCE = 10;

    private final SigningOfPlant signing;
    private final CollectiveCertificates collectives;
    private final AuditTrail audit;
    private final Clock clock;

    SignCollective(SigningOfPlant signing, CollectiveCertificates collectives, AuditTrail audit, Clock clock) {
        this.signing = signing;
        this.collectives = collectives;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * Signs and keeps one that waits.
     *
     * @return the certificate; empty when somebody else completed it meanwhile
     * @throws CannotBeSignedException when it cannot be signed now; it goes on waiting
     */
    public Optional<IssuedCollective> complete(ToSign waiting) {
        byte[] signed = signing.sign(waiting.pdf());
        return QuarkusTransaction.joiningExisting()
                .call(() -> collectives.remove(waiting) ? Optional.of(keep(waiting, signed)) : Optional.empty());
    }

    private IssuedCollective keep(ToSign waiting, byte[] pdf) {
        IssuedCollective issued = collectives.keep(waiting, pdf);
        audit.write(
                issued.plant(),
                "collective-certificate-issued",
                WithdrawCertificate.subject(issued.number()),
                null,
                Map.of(
                        "order", issued.content().order(),
                        "reels", issued.content().lines().size(),
                        "namesSha256", issued.content().namesSha256(),
                        "pdfSha256", issued.pdfSha256()));
        return issued;
    }

    /** Completes what a crash or a silent device left behind at a plant; what still cannot be signed goes on waiting. */
    public void completeLeftBehind(String plant) {
        OffsetDateTime before = OffsetDateTime.now(clock).minus(LEFT_BEHIND);
        for (ToSign left : collectives.waitingSince(plant, before, MOST_AT_ONCE)) {
            try {
                complete(left);
            } catch (CannotBeSignedException e) {
                LOG.warn("Collective certificate " + left.content().number() + " still waits for its signature: "
                        + e.getMessage());
                return;
            } catch (RuntimeException e) {
                // One that cannot be kept must not hold up who issues another.
                LOG.error("Collective certificate " + left.content().number() + " cannot be kept", e);
            }
        }
    }
}
