package dev.reelproof.app.concession;

import dev.reelproof.access.Action;
import dev.reelproof.access.Caller;
import dev.reelproof.access.Callers;
import dev.reelproof.access.Role;
import dev.reelproof.app.ConflictException;
import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.Plants;
import dev.reelproof.app.certificate.FindLives;
import dev.reelproof.app.result.JudgeAgain;
import dev.reelproof.certificate.IssuedCertificate;
import dev.reelproof.measurement.LengthMarks;
import dev.reelproof.measurement.Product;
import dev.reelproof.record.RegisteredReel;
import dev.reelproof.record.TestRecord;
import dev.reelproof.record.concession.Concession;
import dev.reelproof.record.concession.ConcessionRule;
import dev.reelproof.record.concession.Terms;
import dev.reelproof.store.access.AuditTrail;
import dev.reelproof.store.certificate.Certificates;
import dev.reelproof.store.concession.Concessions;
import dev.reelproof.store.reel.Products;
import dev.reelproof.store.reel.Reels;
import dev.reelproof.store.result.JudgedUpload;
import dev.reelproof.store.result.Records;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Approves a concession, and does what it concedes in the same transaction: a reel used as it is may have a certificate from then on; a
 * regraded one gets its new product and a record that judges its test again; a shortened one its new length, loses its length marks, and must
 * be tested again.
 *
 * <p>A shortened reel is never judged from the test of the whole: what a piece would measure is advice, which takes the cable to be
 * uniform, and where a fault sits is not known.
 */
@ApplicationScoped
public class ApproveConcession {
    private final Concessions concessions;
    private final Reels reels;
    private final Products products;
    private final Records records;
    private final Certificates certificates;
    private final FindLives lives;
    private final JudgeAgain judgeAgain;
    private final Plants plants;
    private final Callers callers;
    private final AuditTrail audit;
    private final Clock clock;

    ApproveConcession(
            Concessions concessions,
            Reels reels,
            Products products,
            Records records,
            Certificates certificates,
            FindLives lives,
            JudgeAgain judgeAgain,
            Plants plants,
            Callers callers,
            AuditTrail audit,
            Clock clock) {
        this.concessions = concessions;
        this.reels = reels;
        this.products = products;
        this.records = records;
        this.certificates = certificates;
        this.lives = lives;
        this.judgeAgain = judgeAgain;
        this.plants = plants;
        this.callers = callers;
        this.audit = audit;
        this.clock = clock;
    }

    /** A test judged as another product, and the record that it is of. */
    private record Regraded(JudgedUpload judged, TestRecord of) {}

    /**
     * Approves, as the current caller.
     *
     * @param plantNamed the plant; the caller's when none is named
     * @return the concession as it stands now
     * @throws dev.reelproof.access.PermissionDeniedException when the caller may not, or is no person
     * @throws NothingThereException when the plant has none of that number
     * @throws dev.reelproof.record.concession.ConcessionRefusedException when the rule forbids it; nothing was changed
     */
    public Concession approve(@Nullable String plantNamed, long id, String reason) {
        String plant = plants.forAction(Action.DECIDE_CONCESSION, plantNamed, "plant");
        callers.current().requirePerson();
        Concession asked = concessions.byId(plant, id).orElseThrow(() -> FindConcessions.unknown(plant, id));
        requireMayDecide(plant, asked);
        // It takes long: judged before the transaction, which finds out whether it still holds.
        Optional<Regraded> regraded = asked.terms() instanceof Terms.Regrade regrade
                ? Optional.of(judged(plant, asked, regrade))
                : Optional.empty();
        return QuarkusTransaction.joiningExisting().call(() -> approve(plant, id, reason, regraded));
    }

    private void requireMayDecide(String plant, Concession concession) {
        ConcessionRule.requireMayDecide(
                concession,
                records.newestIdOf(plant, concession.reel()).orElseThrow(),
                callers.current().isPerson(concession.requestedBy().name()));
    }

    private Regraded judged(String plant, Concession concession, Terms.Regrade regrade) {
        TestRecord record = records.byId(plant, concession.record()).orElseThrow();
        Product product = products.byId(plant, regrade.product()).orElseThrow();
        ConcessionRule.requireSameCable(record.product(), product);
        JudgedUpload judged = judgeAgain.as(record, product, OffsetDateTime.now(clock));
        ConcessionRule.requireAccepted(product, judged.judgement());
        return new Regraded(judged, record);
    }

    private Concession approve(String plant, long id, String reason, Optional<Regraded> regraded) {
        concessions.lockForDecision(plant, id);
        Concession asked = concessions.byId(plant, id).orElseThrow();
        reels.lockForChange(plant, asked.reel());
        requireMayDecide(plant, asked);
        RegisteredReel reel = reels.byId(plant, asked.reel()).orElseThrow();
        ConcessionRule.requireUnchanged(asked, RequestConcession.registration(reel));
        ConcessionRule.requireNoCertificate(
                reel.id(), certificates.ofRecord(plant, asked.record()).map(IssuedCertificate::number));
        UUID newRecord = regraded.map(one -> keep(plant, one)).orElse(null);
        changed(reel, asked.terms()).ifPresent(reels::put);
        Caller caller = callers.current();
        Concession approved = asked.decided(new Concession.Decision(
                true,
                new Concession.Person(caller.name(), Role.QUALITY_MANAGER.word()),
                OffsetDateTime.now(clock),
                reason,
                newRecord));
        concessions.keep(plant, asked, approved.approval());
        Map<String, Object> details = ConcessionAudit.details(asked, questioned(plant, asked));
        if (newRecord != null) {
            details.put("newRecord", newRecord.toString());
        }
        LengthMarks marks = reel.lengthMarks();
        if (marks != null && asked.terms() instanceof Terms.Shorten) {
            details.put("lengthMarksRemoved", marks.first() + " to " + marks.last() + " " + marks.unit());
        }
        audit.write(plant, "concession-approved", ConcessionAudit.subject(id), reason, details);
        return approved;
    }

    /** What was issued before a reel was changed describes it no longer. */
    private List<String> questioned(String plant, Concession approved) {
        return approved.terms() instanceof Terms.UseAsIs
                ? List.of()
                : lives.standing(plant, List.of(approved.reel())).stream()
                        .map(IssuedCertificate::number)
                        .toList();
    }

    private UUID keep(String plant, Regraded regraded) {
        Product judgedAs = regraded.judged().product();
        if (!products.byId(plant, judgedAs.id()).equals(Optional.of(judgedAs))) {
            throw new ConflictException("Product " + judgedAs.id() + " was changed just now; approve once more.");
        }
        return records.keepJudgedAgain(regraded.judged(), regraded.of()).id();
    }

    /** The reel as it is registered from now on; empty when it stays as it is. */
    private static Optional<RegisteredReel> changed(RegisteredReel reel, Terms terms) {
        if (terms instanceof Terms.Regrade regrade) {
            return Optional.of(reel.as(regrade.product()));
        }
        if (terms instanceof Terms.Shorten shorten) {
            return Optional.of(reel.cutTo(shorten.value(), shorten.unit()));
        }
        return Optional.empty();
    }
}
