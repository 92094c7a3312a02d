package dev.reelproof.app.lot;

import dev.reelproof.genealogy.Lot;
import dev.reelproof.genealogy.admission.LotOutcome;
import dev.reelproof.genealogy.admission.LotReport;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.OffsetDateTime;

/** Registers the lots that a test is about, as the service itself. */
@ApplicationScoped
public class RegisterForTests {
    private static final OffsetDateTime RECEIVED = OffsetDateTime.parse("2026-02-11T09:00:00Z");
    private static final String SHA256 = "0".repeat(64);

    private final RegisterLot registration;

    RegisterForTests(RegisterLot registration) {
        this.registration = registration;
    }

    /** What becomes of a lot's report. */
    public LotOutcome take(Lot lot) {
        return registration.take(new LotReport(lot, SHA256), RECEIVED);
    }

    /** Registers a lot, which can be so. */
    public void register(Lot lot) {
        LotOutcome outcome = take(lot);
        if (!outcome.faults().isEmpty()) {
            throw new AssertionError("lot " + lot.id() + " was not registered: " + outcome.reason());
        }
    }
}
