package dev.reelproof.app.certificate;

import dev.reelproof.access.Action;
import dev.reelproof.access.Callers;
import dev.reelproof.app.ConflictException;
import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.hold.HeldException;
import dev.reelproof.app.limits.LimitSets;
import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.certificate.CertificateNumber;
import dev.reelproof.certificate.Circumstances;
import dev.reelproof.certificate.IssuedCertificate;
import dev.reelproof.judgement.CorrectedSweep;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.pdf.CertificateDraft;
import dev.reelproof.record.RegisteredReel;
import dev.reelproof.record.TestRecord;
import dev.reelproof.store.certificate.Certificates;
import dev.reelproof.store.certificate.CertificatesToSign;
import dev.reelproof.store.certificate.CertificatesToSign.ToSign;
import dev.reelproof.store.reel.Reels;
import dev.reelproof.store.result.Records;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;

/**
 * Issues certificates: for the newest record of a reel, when it is accepted, or conceded and approved, and not on hold, once.
 *
 * <p>A first transaction finds out whether the reel may have one. What it says is read and its pages are laid out with no lock held. A
 * second, short transaction looks again, takes the next number of the plant and puts it on the pages: it alone keeps others from their
 * numbers, and gives its number back when it fails, so that none is left out. With it the certificate is issued. The signature, for
 * which a device may take long, follows with no lock held; see {@link SignCertificate}.
 */
@ApplicationScoped
public class IssueCertificate {
    /** How often the pages are laid out when the reel changes meanwhile. */
    private static final int MOST_DRAFTS = 3;

    private final Reels reels;
    private final Records records;
    private final Certificates certificates;
    private final MayBeCertified rule;
    private final FindCircumstances circumstances;
    private final NumberCertificates numbers;
    private final LimitSets limitSets;
    private final DraftCertificate drafting;
    private final CertificatesToSign waiting;
    private final SigningOfPlant signing;
    private final SignCertificate completion;
    private final Callers callers;
    private final Clock clock;

    IssueCertificate(
            Reels reels,
            Records records,
            Certificates certificates,
            MayBeCertified rule,
            FindCircumstances circumstances,
            NumberCertificates numbers,
            LimitSets limitSets,
            DraftCertificate drafting,
            CertificatesToSign waiting,
            SigningOfPlant signing,
            SignCertificate completion,
            Callers callers,
            Clock clock) {
        this.reels = reels;
        this.records = records;
        this.certificates = certificates;
        this.rule = rule;
        this.circumstances = circumstances;
        this.numbers = numbers;
        this.limitSets = limitSets;
        this.drafting = drafting;
        this.waiting = waiting;
        this.signing = signing;
        this.completion = completion;
        this.callers = callers;
        this.clock = clock;
    }

    /**
     * What came of asking for a certificate.
     *
     * @param certificate the certificate
     * @param first false when the record had it before
     */
    public record Issued(IssuedCertificate certificate, boolean first) {}

    /**
     * What is to be certified: a reel as registered, its newest record, what is to be said besides, and the certificate that this has or
     * is about to have.
     */
    private record Candidate(
            RegisteredReel reel,
            TestRecord record,
            Circumstances circumstances,
            Optional<IssuedCertificate> certificate,
            Optional<ToSign> waiting) {

        boolean isSameAs(Candidate other) {
            return reel.equals(other.reel)
                    && record.id().equals(other.record.id())
                    && circumstances.equals(other.circumstances);
        }
    }

    /** What a draft needs besides: the record's sweeps, and the limit set that it was judged by. */
    private record Material(List<CorrectedSweep> sweeps, LimitSet limitSet) {}

    /**
     * The certificate of a reel's newest record, issued now when it has none yet.
     *
     * @throws dev.reelproof.access.PermissionDeniedException when the caller may not
     * @throws NothingThereException when the reel is not registered
     * @throws ConflictException when the reel may not have one
     * @throws HeldException when the reel is on hold, also when it has one already
     * @throws CannotBeSignedException when it cannot be signed now; a number that it has by then is kept for it
     */
    public Issued issue(String plant, String reel) {
        callers.current().require(Action.ISSUE, plant);
        QuarkusTransaction.joiningExisting().run(() -> requireRegistered(plant, reel));
        completion.completeLeftBehind(plant);
        for (int i = 0; i < MOST_DRAFTS; i++) {
            Candidate candidate = QuarkusTransaction.joiningExisting().call(() -> candidate(plant, reel));
            if (candidate.certificate().isPresent()) {
                return new Issued(candidate.certificate().get(), false);
            }
            if (candidate.waiting().isPresent()) {
                return complete(candidate.waiting().get());
            }
            signing.requireReady();
            Material material = QuarkusTransaction.joiningExisting().call(() -> material(candidate.record()));
            try (CertificateDraft draft = drafting.draft(
                    candidate.reel(),
                    null,
                    candidate.record(),
                    candidate.circumstances(),
                    material.sweeps(),
                    material.limitSet())) {
                Candidate numbered = QuarkusTransaction.joiningExisting().call(() -> number(plant, candidate, draft));
                if (numbered.certificate().isPresent()) {
                    return new Issued(numbered.certificate().get(), false);
                }
                if (numbered.waiting().isPresent()) {
                    return complete(numbered.waiting().get());
                }
            }
        }
        throw new ConflictException(
                "Reel " + reel + " was changed or tested again while its certificate was drawn; ask once more.");
    }

    private Material material(TestRecord record) {
        return new Material(records.sweeps(record.plant(), record.id()), limitSets.of(record));
    }

    private void requireRegistered(String plant, String reel) {
        if (reels.byId(plant, reel).isEmpty()) {
            throw new NothingThereException("Reel '" + reel + "' is not registered at plant " + plant + ".");
        }
    }

    /** Finds out whether the reel may have a certificate; until the transaction ends, nothing changes that. */
    private Candidate candidate(String plant, String number) {
        // Locked before it is read: who waited for the lock must see what the other wrote.
        reels.lock(plant, number);
        RegisteredReel reel = reels.byId(plant, number).orElseThrow();
        Optional<TestRecord> newest = records.newestOf(plant, reel.id());
        // What waits is read first: who signs it takes no lock of the reel, and moves it from there to the
        // certificates.
        Optional<ToSign> toSign = newest.flatMap(record -> waiting.ofRecord(plant, record.id()));
        Optional<IssuedCertificate> certificate = newest.flatMap(record -> certificates.ofRecord(plant, record.id()));
        MayBeCertified.Certifiable certifiable = rule.requireCertifiable(reel, newest, certificate);
        TestRecord record = certifiable.record();
        return new Candidate(reel, record, circumstances.of(certifiable), certificate, toSign);
    }

    /** Signs and keeps what has its number. */
    private Issued complete(ToSign certificate) {
        return completion
                .complete(certificate)
                .map(issued -> new Issued(issued, true))
                .orElseGet(() -> new Issued(
                        certificates
                                .ofRecord(certificate.plant(), certificate.record())
                                .orElseThrow(),
                        false));
    }

    /** Numbers a draft, so that it waits for its signature only; nothing waits when the reel is no longer what was drafted. */
    private Candidate number(String plant, Candidate drafted, CertificateDraft draft) {
        Candidate now = candidate(plant, drafted.reel().id());
        if (now.certificate().isPresent() || now.waiting().isPresent() || !now.isSameAs(drafted)) {
            return now;
        }
        OffsetDateTime issued = OffsetDateTime.now(clock);
        CertificateNumber number = numbers.next(plant, issued.getYear());
        CertificateContent content = draft.content().numbered(number, DraftCertificate.FIRST_ISSUE, issued);
        ToSign certificate = new ToSign(plant, drafted.record().id(), content, issued, draft.finish(content), null);
        waiting.add(certificate);
        return new Candidate(now.reel(), now.record(), now.circumstances(), Optional.empty(), Optional.of(certificate));
    }
}
