package dev.reelproof.app.certificate;

import dev.reelproof.access.Action;
import dev.reelproof.access.Callers;
import dev.reelproof.app.ConflictException;
import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.limits.LimitSets;
import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.certificate.CertificateNumber;
import dev.reelproof.certificate.Circumstances;
import dev.reelproof.certificate.IssuedCertificate;
import dev.reelproof.certificate.IssuedCertificate.Reissue;
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
import org.jspecify.annotations.Nullable;

/**
 * Issues a certificate again: the same number, the next issue, the same stored judgement, with other details of customer, order or
 * consignee. The issue before is superseded. What may have no certificate gets no new issue either.
 */
@ApplicationScoped
public class ReissueCertificate {
    private final Reels reels;
    private final Records records;
    private final Certificates certificates;
    private final MayBeCertified rule;
    private final FindCircumstances circumstances;
    private final LimitSets limitSets;
    private final DraftCertificate drafting;
    private final CertificatesToSign waiting;
    private final SigningOfPlant signing;
    private final SignCertificate completion;
    private final Callers callers;
    private final Clock clock;

    ReissueCertificate(
            Reels reels,
            Records records,
            Certificates certificates,
            MayBeCertified rule,
            FindCircumstances circumstances,
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
        this.limitSets = limitSets;
        this.drafting = drafting;
        this.callers = callers;
        this.waiting = waiting;
        this.signing = signing;
        this.completion = completion;
        this.clock = clock;
    }

    /**
     * What is asked for. What is null stays as in the issue before.
     *
     * @param reason why
     */
    public record Request(
            String reason, @Nullable String customer, @Nullable String order, @Nullable String consignee) {}

    /** What is issued again: the newest issue, and the reel as registered but for the details that the new issue has. */
    private record Candidate(
            IssuedCertificate newest,
            RegisteredReel reel,
            @Nullable String consignee,
            TestRecord record,
            Circumstances circumstances) {}

    /**
     * Issues a certificate again, as the current caller.
     *
     * @param number what may be a number
     * @throws dev.reelproof.access.PermissionDeniedException when the caller may not
     * @throws NothingThereException when the plant issued no such certificate
     * @throws ConflictException when the reel may have no certificate now, when this one is of an earlier test or withdrawn, or when
     *     somebody else issued it again meanwhile
     * @throws dev.reelproof.app.hold.HeldException when the reel is on hold
     * @throws CannotBeSignedException when it cannot be signed now; an issue that is numbered by then waits for its signature
     */
    public IssuedCertificate reissue(String plant, String number, Request request) {
        callers.current().require(Action.REISSUE, plant);
        String known = QuarkusTransaction.joiningExisting()
                .call(() -> newest(plant, number))
                .number();
        completion.completeLeftBehind(plant);
        Candidate candidate = QuarkusTransaction.joiningExisting().call(() -> candidate(plant, known, request));
        signing.requireReady();
        TestRecord record = candidate.record();
        List<CorrectedSweep> sweeps =
                QuarkusTransaction.joiningExisting().call(() -> records.sweeps(plant, record.id()));
        LimitSet limitSet = QuarkusTransaction.joiningExisting().call(() -> limitSets.of(record));
        try (CertificateDraft draft = drafting.draft(
                candidate.reel(), candidate.consignee(), record, candidate.circumstances(), sweeps, limitSet)) {
            ToSign numbered = QuarkusTransaction.joiningExisting().call(() -> number(plant, candidate, request, draft));
            return completion.complete(numbered).orElseGet(() -> QuarkusTransaction.joiningExisting()
                    .call(() -> newest(plant, known)));
        }
    }

    private IssuedCertificate newest(String plant, String number) {
        return CertificateNumber.find(number)
                .flatMap(read ->
                        certificates.issues(plant, read.toString()).stream().findFirst())
                .orElseThrow(() -> FindCertificates.unknown(plant, number));
    }

    /** Finds out whether the number may be issued again; until the transaction ends, nothing changes that. */
    private Candidate candidate(String plant, String number, Request request) {
        String reelNumber = newest(plant, number).reel();
        // Locked before it is read: who waited for the lock must see what the other wrote.
        reels.lock(plant, reelNumber);
        RegisteredReel reel = reels.byId(plant, reelNumber).orElseThrow();
        Optional<TestRecord> newestRecord = records.newestOf(plant, reelNumber);
        // What waits is read first: who signs it takes no lock of the reel, and moves it from there to the
        // certificates.
        Optional<ToSign> toSign = newestRecord.flatMap(record -> waiting.ofRecord(plant, record.id()));
        IssuedCertificate newest = newest(plant, number);
        MayBeCertified.Certifiable certifiable = rule.requireCertifiable(reel, newestRecord, Optional.of(newest));
        TestRecord record = certifiable.record();
        if (!record.id().equals(newest.record())) {
            throw new ConflictException("Certificate " + number + " is of an earlier test of reel " + reelNumber
                    + "; issue the certificate of its newest test instead.");
        }
        if (toSign.isPresent()) {
            throw new ConflictException("Another issue of certificate " + number
                    + " waits for its signature; ask once more when it has it.");
        }
        RegisteredReel detailed = reel.soldTo(
                otherwise(request.customer(), newest.customer()), otherwise(request.order(), newest.order()));
        return new Candidate(
                newest,
                detailed,
                otherwise(request.consignee(), consignee(newest)),
                record,
                circumstances.of(certifiable).replacing(replaced(newest, request.reason())));
    }

    private static @Nullable String consignee(IssuedCertificate certificate) {
        Reissue reissue = certificate.reissue();
        return reissue == null ? null : reissue.consignee();
    }

    private static Circumstances.Replaced replaced(IssuedCertificate certificate, String reason) {
        return new Circumstances.Replaced(
                certificate.issue(), certificate.issued().toLocalDate(), reason);
    }

    private static @Nullable String otherwise(@Nullable String asked, @Nullable String before) {
        return asked == null ? before : asked;
    }

    private ToSign number(String plant, Candidate drafted, Request request, CertificateDraft draft) {
        Candidate now = candidate(plant, drafted.newest().number(), request);
        if (!(now.newest().issue() == drafted.newest().issue()
                && now.record().id().equals(drafted.record().id())
                && now.reel().equals(drafted.reel())
                && now.circumstances().equals(drafted.circumstances()))) {
            throw new ConflictException(
                    "Certificate " + drafted.newest().number()
                            + " was issued again, or its reel was changed, while this issue was drawn; look at it and ask once more.");
        }
        IssuedCertificate before = now.newest();
        Reissue reissue = new Reissue(request.reason(), callers.current().name(), now.consignee());
        OffsetDateTime issued = OffsetDateTime.now(clock);
        CertificateContent content =
                draft.content().numbered(CertificateNumber.parse(before.number()), before.issue() + 1, issued);
        ToSign certificate = new ToSign(plant, drafted.record().id(), content, issued, draft.finish(content), reissue);
        waiting.add(certificate);
        return certificate;
    }
}
