package dev.reelproof.app.lot;

import dev.reelproof.access.Action;
import dev.reelproof.access.Callers;
import dev.reelproof.app.ConflictException;
import dev.reelproof.app.Plants;
import dev.reelproof.genealogy.Lot;
import dev.reelproof.genealogy.LotFault;
import dev.reelproof.genealogy.RegisteredLot;
import dev.reelproof.genealogy.admission.AdmissionTerms;
import dev.reelproof.genealogy.admission.LotOutcome;
import dev.reelproof.genealogy.admission.LotReport;
import dev.reelproof.intake.Faults;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.intake.lot.LotReader;
import dev.reelproof.intake.result.Upload;
import dev.reelproof.store.lot.Lots;
import dev.reelproof.store.lot.admission.WaitingReports;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.List;

/** Registers one lot, whose parents must be registered; the same lot again changes nothing. */
@ApplicationScoped
public class RegisterLot {
    private final AdmitLots admit;
    private final WaitingReports waiting;
    private final Lots lots;
    private final Plants plants;
    private final Callers callers;
    private final Clock clock;

    RegisterLot(AdmitLots admit, WaitingReports waiting, Lots lots, Plants plants, Callers callers, Clock clock) {
        this.admit = admit;
        this.waiting = waiting;
        this.lots = lots;
        this.plants = plants;
        this.callers = callers;
        this.clock = clock;
    }

    /**
     * A lot that is registered.
     *
     * @param isNew whether it was not before
     */
    public record Registered(RegisteredLot lot, boolean isNew) {}

    /**
     * Registers the lot of a report, as the current caller.
     *
     * @param report JSON, as the HTTP contract shapes a lot
     * @throws IntakeException when it is no report, or the lot cannot be so; nothing is kept
     * @throws ConflictException when another lot has its identifier, or its run was told otherwise; nothing is kept
     */
    public Registered register(byte[] report) {
        callers.current().require(Action.REGISTER);
        Lot lot = LotReader.read(report, () -> plants.named(null, "/plant"), plants.served());
        callers.current().requirePlant(lot.plant());
        LotOutcome outcome = take(new LotReport(lot, Upload.ofDocument(report).sha256()), OffsetDateTime.now(clock));
        boolean isNew =
                switch (outcome.fate()) {
                    case REGISTERED -> true;
                    case KNOWN -> false;
                    case CONFLICT -> throw new ConflictException(
                            outcome.faults().get(0).message());
                    case REFUSED, WAITING -> throw refusal(outcome.faults());
                };
        return new Registered(lots.byId(lot.plant(), lot.id()).orElseThrow(), isNew);
    }

    private static RuntimeException refusal(List<LotFault> found) {
        Faults faults = new Faults();
        found.forEach(fault -> faults.add(fault.where(), fault.message()));
        faults.refuseIfAny();
        return new IllegalStateException("a lot was not registered, and nothing is wrong with it");
    }

    /** Takes a report beside others, or with the plant's lots to itself when reports wait for its lot. */
    LotOutcome take(LotReport report, OffsetDateTime now) {
        Lot lot = report.lot();
        if (!waiting.isWaitedFor(lot.plant(), lot.id())) {
            try {
                return admit.one(report, now);
            } catch (OthersWaitException e) {
                // Rolled back; once more, with the lots to itself.
            }
        }
        return admit.many(lot.plant(), List.of(report), AdmissionTerms.ALONE, now)
                .outcomes()
                .get(0);
    }
}
