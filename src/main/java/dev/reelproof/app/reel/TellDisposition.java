package dev.reelproof.app.reel;

import dev.reelproof.access.Action;
import dev.reelproof.access.Callers;
import dev.reelproof.app.ConflictException;
import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.Plants;
import dev.reelproof.app.concession.ConcessionCheck;
import dev.reelproof.app.hold.HeldException;
import dev.reelproof.app.hold.HoldCheck;
import dev.reelproof.app.result.TestRules;
import dev.reelproof.genealogy.Disposition;
import dev.reelproof.genealogy.Disposition.State;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.hold.Hold;
import dev.reelproof.record.ScannedCode;
import dev.reelproof.store.access.AuditTrail;
import dev.reelproof.store.lot.Lots;
import dev.reelproof.store.reel.Dispositions;
import dev.reelproof.store.result.AttemptHistories;
import dev.reelproof.wording.Wording;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * Takes down where reels went. What is on hold, waits for an engineer to accept a retest, or for a concession to be decided and done, must
 * not leave; but what left before is taken down, with the reason: a recall needs it.
 */
@ApplicationScoped
public class TellDisposition {
    private final Plants plants;
    private final Callers callers;
    private final Lots lots;
    private final Dispositions dispositions;
    private final HoldCheck holds;
    private final ConcessionCheck concessions;
    private final AttemptHistories histories;
    private final TestRules rules;
    private final AuditTrail audit;
    private final Clock clock;

    TellDisposition(
            Plants plants,
            Callers callers,
            Lots lots,
            Dispositions dispositions,
            HoldCheck holds,
            ConcessionCheck concessions,
            AttemptHistories histories,
            TestRules rules,
            AuditTrail audit,
            Clock clock) {
        this.plants = plants;
        this.callers = callers;
        this.lots = lots;
        this.dispositions = dispositions;
        this.holds = holds;
        this.concessions = concessions;
        this.histories = histories;
        this.rules = rules;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * What is told of where a reel is.
     *
     * @param state where it is
     * @param recipient to whom; given when it was shipped, and only then
     * @param reason why, where it is said
     * @param plant the plant; the caller's when none is named
     */
    public record Report(State state, @Nullable String recipient, @Nullable String reason, @Nullable String plant) {}

    /**
     * All that was told of where a reel is.
     *
     * @param reel its number
     * @param entries newest first
     */
    public record History(LotId reel, List<Disposition> entries) {}

    /**
     * Tells where a reel is.
     *
     * @param number its number, as it stands in the address
     * @param sent gives the report; asked only once the caller may dispatch
     * @throws NothingThereException when the reel is not registered
     * @throws HeldException when it was shipped, is on hold, and no reason says why all the same
     * @throws ConflictException when it was shipped, waits for an engineer, a concession of it is open or not done, and no reason says why all the same
     */
    @Transactional
    public Disposition tell(String number, Supplier<Report> sent) {
        plants.forAction(Action.DISPATCH, null, "plant");
        Report report = sent.get();
        String plant = plants.named(report.plant(), "/plant");
        LotId reel = reel(plant, number);
        List<Hold> held = report.state() == State.SHIPPED ? holds.openOf(plant, reel.value()) : List.of();
        if (!held.isEmpty() && report.reason() == null) {
            throw HeldException.notToBeShipped(reel.value(), held);
        }
        if (report.state() == State.SHIPPED
                && report.reason() == null
                && rules.retests(plant).awaitsEngineer(histories.of(plant, reel.value()))) {
            throw new ConflictException("Reel " + reel + " passed after a failure and must not leave until an engineer"
                    + " accepts the retest; or, if it left already, say so in 'reason'.");
        }
        if (report.state() == State.SHIPPED && report.reason() == null) {
            concessions
                    .unfinished(plant, reel.value())
                    .flatMap(Wording.english()::notToBeShipped)
                    .ifPresent(sentence -> {
                        throw new ConflictException(sentence + " If it left already, say so in 'reason'.");
                    });
        }
        Disposition entry = new Disposition(
                reel,
                report.state(),
                report.recipient(),
                report.reason(),
                callers.current().name(),
                OffsetDateTime.now(clock));
        dispositions.add(plant, entry);
        audit.write(plant, "reel-" + entry.state().word(), "reel/" + reel, entry.reason(), details(entry, held));
        return entry;
    }

    private static Map<String, Object> details(Disposition entry, List<Hold> held) {
        Map<String, Object> details =
                new TreeMap<>(Map.of("state", entry.state().word()));
        if (entry.recipient() != null) {
            details.put("to", entry.recipient());
        }
        if (!held.isEmpty()) {
            details.put(
                    "held", held.stream().map(hold -> Long.toString(hold.id())).toList());
        }
        return details;
    }

    /**
     * What was told of where a reel is; nothing for a reel that never left.
     *
     * @param plantNamed the plant; the caller's when none is named
     * @throws NothingThereException when the reel is not registered
     */
    public History history(@Nullable String plantNamed, String number) {
        String plant = plants.named(plantNamed, "plant");
        LotId reel = reel(plant, number);
        return new History(reel, dispositions.of(plant, reel));
    }

    private LotId reel(String plant, String number) {
        return LotId.named(ScannedCode.of(number))
                .flatMap(id -> lots.reelId(plant, id))
                .orElseThrow(() -> new NothingThereException(
                        "The reel '" + number + "' is not registered at plant " + plant + "."));
    }
}
