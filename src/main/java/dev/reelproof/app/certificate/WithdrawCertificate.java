package dev.reelproof.app.certificate;

import dev.reelproof.access.Action;
import dev.reelproof.access.Approval;
import dev.reelproof.access.Callers;
import dev.reelproof.app.ConflictException;
import dev.reelproof.app.access.ApprovalEffect;
import dev.reelproof.certificate.CertificateNumber;
import dev.reelproof.certificate.IssuedCertificate;
import dev.reelproof.certificate.life.Withdrawal;
import dev.reelproof.store.access.AuditTrail;
import dev.reelproof.store.certificate.Certificates;
import dev.reelproof.store.certificate.Withdrawals;
import dev.reelproof.store.reel.Reels;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/** Takes a certificate back, with all its issues: one person asks, the approval of another does it. */
@ApplicationScoped
public class WithdrawCertificate implements ApprovalEffect {
    private static final String KIND = "certificate/";

    private final Certificates certificates;
    private final Withdrawals withdrawals;
    private final Reels reels;
    private final Callers callers;
    private final AuditTrail audit;

    WithdrawCertificate(
            Certificates certificates, Withdrawals withdrawals, Reels reels, Callers callers, AuditTrail audit) {
        this.certificates = certificates;
        this.withdrawals = withdrawals;
        this.reels = reels;
        this.callers = callers;
        this.audit = audit;
    }

    /** The subject of an approval to withdraw a number. */
    static String subject(String number) {
        return KIND + number;
    }

    @Override
    public Action action() {
        return Action.WITHDRAW;
    }

    @Override
    @Transactional(Transactional.TxType.MANDATORY)
    public void requireSubject(String plant, String subject) {
        callers.current().require(Action.WITHDRAW, plant);
        requireNotWithdrawn(plant, newest(plant, subject).number());
    }

    @Override
    @Transactional(Transactional.TxType.MANDATORY)
    public void take(String plant, Approval given) {
        IssuedCertificate newest = newest(plant, given.subject());
        // A reissue locks the reel too: of the two, one sees the other.
        reels.lock(plant, newest.reel());
        requireNotWithdrawn(plant, newest.number());
        Withdrawal withdrawal = new Withdrawal(
                given.reason(),
                given.requestedBy(),
                Objects.requireNonNull(given.decidedBy(), "a given approval has a person"),
                Objects.requireNonNull(given.decided(), "a given approval has a time"));
        withdrawals.keep(plant, newest.number(), withdrawal, given.id());
        audit.write(
                plant,
                "certificate-withdrawn",
                subject(newest.number()),
                given.reason(),
                Map.of("reel", newest.reel(), "askedBy", given.requestedBy(), "approval", given.id()));
    }

    private IssuedCertificate newest(String plant, String subject) {
        String number = subject.startsWith(KIND) ? subject.substring(KIND.length()) : subject;
        return CertificateNumber.find(number)
                .flatMap(read ->
                        certificates.issues(plant, read.toString()).stream().findFirst())
                .filter(found -> subject.startsWith(KIND))
                .orElseThrow(() -> FindCertificates.unknown(plant, number));
    }

    private void requireNotWithdrawn(String plant, String number) {
        Optional<Withdrawal> before = withdrawals.of(plant, number);
        if (before.isPresent()) {
            throw new ConflictException("Certificate " + number + " was withdrawn on "
                    + before.get().at().toLocalDate() + " already: "
                    + before.get().reason());
        }
    }
}
