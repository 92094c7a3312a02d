package dev.reelproof.app.certificate;

import dev.reelproof.access.Action;
import dev.reelproof.access.Callers;
import dev.reelproof.app.ConflictException;
import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.limits.LimitSets;
import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.certificate.CertificateNumber;
import dev.reelproof.certificate.IssuedCertificate;
import dev.reelproof.certificate.IssuedCertificate.Reissue;
import dev.reelproof.judgement.CorrectedSweep;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.pdf.CertificateDraft;
import dev.reelproof.record.RegisteredReel;
import dev.reelproof.record.TestRecord;
import dev.reelproof.record.concession.ConcessionStanding;
import dev.reelproof.store.access.AuditTrail;
import dev.reelproof.store.certificate.Certificates;
import dev.reelproof.store.reel.Reels;
import dev.reelproof.store.result.Records;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
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
    private final LimitSets limitSets;
    private final DraftCertificate drafting;
    private final Callers callers;
    private final AuditTrail audit;
    private final Clock clock;

    ReissueCertificate(
            Reels reels,
            Records records,
            Certificates certificates,
            MayBeCertified rule,
            LimitSets limitSets,
            DraftCertificate drafting,
            Callers callers,
            AuditTrail audit,
            Clock clock) {
        this.reels = reels;
        this.records = records;
        this.certificates = certificates;
        this.rule = rule;
        this.limitSets = limitSets;
        this.drafting = drafting;
        this.callers = callers;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * What is asked for. What is null stays as in the issue before.
     *
     * @param reason why
     */
    public record Request(
            String reason, @Nullable String customer, @Nullable String order, @Nullable String consignee) {}

    /**
     * What is issued again: the newest issue, the reel as registered but for the details that the new issue has, and the record with what
     * the reel's concessions mean for it.
     */
    private record Candidate(
            IssuedCertificate newest, RegisteredReel reel, TestRecord record, ConcessionStanding standing) {

        boolean isSameAs(Candidate other) {
            return newest.issue() == other.newest.issue()
                    && reel.equals(other.reel)
                    && record.id().equals(other.record.id())
                    && standing.equals(other.standing);
        }
    }

    /**
     * Issues a certificate again, as the current caller.
     *
     * @param number what may be a number
     * @throws dev.reelproof.access.PermissionDeniedException when the caller may not
     * @throws NothingThereException when the plant issued no such certificate
     * @throws ConflictException when the reel may have no certificate now, when this one is of an earlier test or withdrawn, or when
     *     somebody else issued it again meanwhile
     * @throws dev.reelproof.app.hold.HeldException when the reel is on hold
     */
    public IssuedCertificate reissue(String plant, String number, Request request) {
        callers.current().require(Action.REISSUE, plant);
        String known = QuarkusTransaction.joiningExisting()
                .call(() -> newest(plant, number))
                .number();
        Candidate candidate = QuarkusTransaction.joiningExisting().call(() -> candidate(plant, known, request));
        TestRecord record = candidate.record();
        List<CorrectedSweep> sweeps =
                QuarkusTransaction.joiningExisting().call(() -> records.sweeps(plant, record.id()));
        LimitSet limitSet = QuarkusTransaction.joiningExisting().call(() -> limitSets.of(record));
        try (CertificateDraft draft =
                drafting.draft(candidate.reel(), record, sweeps, limitSet, candidate.standing())) {
            return QuarkusTransaction.joiningExisting().call(() -> keep(plant, candidate, request, draft));
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
        IssuedCertificate newest = newest(plant, number);
        RegisteredReel reel = reels.byId(plant, reelNumber).orElseThrow();
        Optional<TestRecord> newestRecord = records.newestOf(plant, reelNumber);
        MayBeCertified.Certifiable certifiable = rule.requireCertifiable(reel, newestRecord, Optional.of(newest));
        TestRecord record = certifiable.record();
        if (!record.id().equals(newest.record())) {
            throw new ConflictException("Certificate " + number + " is of an earlier test of reel " + reelNumber
                    + "; issue the certificate of its newest test instead.");
        }
        RegisteredReel detailed = reel.soldTo(
                otherwise(request.customer(), newest.customer()), otherwise(request.order(), newest.order()));
        return new Candidate(newest, detailed, record, certifiable.standing());
    }

    private static @Nullable String otherwise(@Nullable String asked, @Nullable String before) {
        return asked == null ? before : asked;
    }

    private IssuedCertificate keep(String plant, Candidate drafted, Request request, CertificateDraft draft) {
        Candidate now = candidate(plant, drafted.newest().number(), request);
        if (!now.isSameAs(drafted)) {
            throw new ConflictException(
                    "Certificate " + drafted.newest().number()
                            + " was issued again, or its reel was changed, while this issue was drawn; look at it and ask once more.");
        }
        IssuedCertificate before = now.newest();
        Reissue reissue = new Reissue(
                request.reason(),
                callers.current().name(),
                otherwise(
                        request.consignee(),
                        before.reissue() == null ? null : before.reissue().consignee()));
        OffsetDateTime issued = OffsetDateTime.now(clock);
        CertificateContent content =
                draft.content().numbered(CertificateNumber.parse(before.number()), before.issue() + 1, issued);
        IssuedCertificate certificate =
                certificates.keep(plant, drafted.record().id(), content, issued, draft.finish(content), reissue);
        audit.write(
                plant,
                "certificate-reissued",
                WithdrawCertificate.subject(certificate.number()),
                request.reason(),
                details(before, certificate));
        return certificate;
    }

    private static Map<String, Object> details(IssuedCertificate before, IssuedCertificate now) {
        Map<String, Object> details = new TreeMap<>(Map.of(
                "issue", now.issue(),
                "reel", now.reel(),
                "record", now.record().toString(),
                "pdfSha256", now.pdfSha256()));
        putChange(details, "customer", before.customer(), now.customer());
        putChange(details, "order", before.order(), now.order());
        putChange(
                details,
                "consignee",
                before.reissue() == null ? null : before.reissue().consignee(),
                now.reissue() == null ? null : now.reissue().consignee());
        return details;
    }

    private static void putChange(
            Map<String, Object> details, String name, @Nullable String before, @Nullable String now) {
        if (!Objects.equals(before, now)) {
            details.put(name, String.valueOf(before) + " → " + now);
        }
    }
}
