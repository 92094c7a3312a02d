package dev.reelproof.app.result;

import dev.reelproof.access.Action;
import dev.reelproof.access.Callers;
import dev.reelproof.app.ConflictException;
import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.Plants;
import dev.reelproof.judgement.Verdict;
import dev.reelproof.record.AttemptHistory;
import dev.reelproof.record.RetestAcceptance;
import dev.reelproof.record.TestRecord;
import dev.reelproof.store.access.AuditTrail;
import dev.reelproof.store.reel.Reels;
import dev.reelproof.store.result.AttemptHistories;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.Map;
import java.util.UUID;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** Lets a pass after a failure count, where the plant asks an engineer to look at it first. */
@ApplicationScoped
public class AcceptRetest {
    private final Plants plants;
    private final Callers callers;
    private final ReadRecords readRecords;
    private final Reels reels;
    private final AttemptHistories histories;
    private final TestRules rules;
    private final AuditTrail audit;
    private final Clock clock;

    AcceptRetest(
            Plants plants,
            Callers callers,
            ReadRecords readRecords,
            Reels reels,
            AttemptHistories histories,
            TestRules rules,
            AuditTrail audit,
            Clock clock) {
        this.plants = plants;
        this.callers = callers;
        this.readRecords = readRecords;
        this.reels = reels;
        this.histories = histories;
        this.rules = rules;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * Accepts the newest test of a reel.
     *
     * @param plantNamed the plant; the caller's when none is named
     * @param id the record's id, as it stands in the address
     * @param sentReason gives why it may count; asked only once the caller may accept
     * @return the record as it stands now
     * @throws dev.reelproof.access.PermissionDeniedException when the caller may not, or is no person
     * @throws NothingThereException when the plant has no such record
     * @throws ConflictException when the record waits for nobody
     */
    @Transactional
    public JudgedRecord accept(@Nullable String plantNamed, String id, Supplier<String> sentReason) {
        String plant = plants.forAction(Action.ACCEPT_RETEST, plantNamed, "plant");
        callers.current().requirePerson();
        String reason = sentReason.get();
        TestRecord record = readRecords.record(plant, id).record();
        reels.lock(plant, record.reel());
        AttemptHistory history = histories.of(plant, record.reel());
        requireAwaited(record, history);
        UUID accepted = history.of(record.id()).record();
        histories.accept(
                plant,
                record.reel(),
                accepted,
                new RetestAcceptance(callers.current().name(), OffsetDateTime.now(clock), reason));
        audit.write(
                plant,
                "retest-accepted",
                "reel/" + record.reel(),
                reason,
                Map.of(
                        "record",
                        accepted.toString(),
                        "attempt",
                        record.attempt(),
                        "earlierVerdicts",
                        history.earlierVerdicts(accepted).stream()
                                .map(Verdict::word)
                                .toList()));
        return readRecords.record(plant, id);
    }

    private void requireAwaited(TestRecord record, AttemptHistory history) {
        if (!history.isNewest(record.id())) {
            throw new ConflictException("Attempt " + record.attempt() + " of reel " + record.reel()
                    + " is not its newest test; only the newest can be accepted.");
        }
        if (!rules.retests(record.plant()).awaitsEngineer(history)) {
            throw new ConflictException(
                    "Attempt " + record.attempt() + " of reel " + record.reel()
                            + " waits for no acceptance: it is no pass after a failure, was accepted before, or this plant asks for none.");
        }
    }
}
