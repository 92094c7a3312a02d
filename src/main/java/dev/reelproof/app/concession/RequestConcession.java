package dev.reelproof.app.concession;

import dev.reelproof.access.Action;
import dev.reelproof.access.Callers;
import dev.reelproof.access.Role;
import dev.reelproof.app.ConflictException;
import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.Plants;
import dev.reelproof.app.certificate.FindLives;
import dev.reelproof.app.result.JudgeAgain;
import dev.reelproof.certificate.IssuedCertificate;
import dev.reelproof.intake.IntakeException;
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
import dev.reelproof.store.result.Records;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** Asks for a concession, which another person approves or refuses. */
@ApplicationScoped
public class RequestConcession {
    /** The number stands in until the store gives one. */
    private static final long NOT_NUMBERED = 0;

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

    RequestConcession(
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

    /**
     * What is asked for.
     *
     * @param terms what is to be conceded
     * @param reason why
     */
    public record Asked(Terms terms, String reason) {}

    /**
     * Asks, as the current caller.
     *
     * @param plantNamed the plant; the caller's when none is named
     * @param number the reel's number
     * @param sent gives what is asked for; read only once the caller may ask
     * @throws dev.reelproof.access.PermissionDeniedException when the caller may not, or is no person
     * @throws NothingThereException when the reel is not registered
     * @throws dev.reelproof.record.concession.ConcessionRefusedException when the rule forbids it
     */
    public Concession request(@Nullable String plantNamed, String number, Supplier<Asked> sent) {
        String plant = plants.forAction(Action.ASK_CONCESSION, plantNamed, "plant");
        callers.current().requirePerson();
        Asked asked = sent.get();
        RegisteredReel reel = reels.byId(plant, number)
                .orElseThrow(() ->
                        new NothingThereException("Reel '" + number + "' is not registered at plant " + plant + "."));
        TestRecord record = newest(plant, reel.id());
        List<String> requirements = ConcessionRule.conceded(record);
        requireMeets(plant, reel, record, asked.terms());
        return QuarkusTransaction.joiningExisting().call(() -> keep(plant, reel, record, requirements, asked));
    }

    private TestRecord newest(String plant, String reel) {
        return records.newestOf(plant, reel)
                .orElseThrow(() ->
                        new ConflictException("Reel " + reel + " was never tested; there is nothing to concede."));
    }

    private void requireMeets(String plant, RegisteredReel reel, TestRecord record, Terms terms) {
        if (terms instanceof Terms.UseAsIs) {
            ConcessionRule.requireMeasured(record);
        } else if (terms instanceof Terms.Regrade regrade) {
            Product product = products.byId(plant, regrade.product())
                    .orElseThrow(() -> IntakeException.of(
                            IntakeException.Kind.CONTENT,
                            "/product",
                            "unknown product '" + regrade.product() + "' at plant " + plant));
            ConcessionRule.requireSameCable(record.product(), product);
            ConcessionRule.requireAccepted(
                    product,
                    judgeAgain.as(record, product, OffsetDateTime.now(clock)).judgement());
        } else if (terms instanceof Terms.Shorten shorten) {
            ConcessionRule.requireShorter(reel.length(), shorten);
        }
    }

    private Concession keep(
            String plant, RegisteredReel reel, TestRecord record, List<String> requirements, Asked asked) {
        reels.lock(plant, reel.id());
        if (!records.newestIdOf(plant, reel.id()).equals(Optional.of(record.id()))) {
            throw new ConflictException("Reel " + reel.id() + " was tested again just now; look at its newest test.");
        }
        ConcessionRule.requireFree(
                record,
                concessions.ofReel(plant, reel.id()),
                certificates.ofRecord(plant, record.id()).map(IssuedCertificate::number));
        Concession kept = concessions.keep(
                plant,
                new Concession(
                        NOT_NUMBERED,
                        reel.id(),
                        record.id(),
                        asked.terms(),
                        requirements,
                        registration(reels.byId(plant, reel.id()).orElseThrow()),
                        asked.reason(),
                        new Concession.Person(callers.current().name(), Role.ENGINEER.word()),
                        OffsetDateTime.now(clock),
                        null));
        audit.write(
                plant,
                "concession-requested",
                ConcessionAudit.subject(kept.id()),
                asked.reason(),
                ConcessionAudit.details(kept, standing(plant, reel)));
        return kept;
    }

    private List<String> standing(String plant, RegisteredReel reel) {
        return lives.standing(plant, List.of(reel.id())).stream()
                .map(IssuedCertificate::number)
                .toList();
    }

    static Concession.Registration registration(RegisteredReel reel) {
        return new Concession.Registration(reel.product(), reel.sentLength(), reel.sentUnit());
    }
}
