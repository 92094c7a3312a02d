package dev.reelproof.store.concession;

import dev.reelproof.record.concession.Concession;
import dev.reelproof.record.concession.Terms;
import dev.reelproof.store.RowJson;
import dev.reelproof.store.UtcTimes;
import java.time.Instant;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A concession with its decision, its columns in the order of {@link #COLUMNS}. */
record ConcessionRow(
        long id,
        String reel,
        UUID record,
        String kind,
        String requirements,
        String fromProduct,
        @Nullable String product,
        double fromLength,
        String fromUnit,
        @Nullable Double length,
        @Nullable String lengthUnit,
        String reason,
        String requestedBy,
        String requestedRole,
        Instant requested,
        @Nullable Boolean approved,
        @Nullable String decidedBy,
        @Nullable String decidedRole,
        @Nullable Instant decided,
        @Nullable String decisionReason,
        @Nullable UUID newRecord) {
    static final String COLUMNS =
            """
            c.id, c.reel, c.record_id, c.kind, cast(c.requirements as text), c.from_product, c.product, c.from_length, c.from_unit,
            c.length, c.length_unit, c.reason, c.requested_by, c.requested_role, c.requested,
            d.approved, d.decided_by, d.decided_role, d.decided, d.reason as decision_reason, d.new_record
            from concession c
            left join concession_decision d on d.plant = c.plant and d.concession = c.id""";

    Concession concession() {
        return new Concession(
                id,
                reel,
                record,
                terms(),
                RowJson.sentences(requirements),
                new Concession.Registration(fromProduct, fromLength, fromUnit),
                reason,
                new Concession.Person(requestedBy, requestedRole),
                UtcTimes.utc(requested),
                decision());
    }

    private Terms terms() {
        return switch (Terms.Kind.named(kind)) {
            case USE_AS_IS -> new Terms.UseAsIs();
            case REGRADE -> new Terms.Regrade(kept("product", product));
            case SHORTEN -> new Terms.Shorten(kept("length", length), kept("unit of length", lengthUnit));
        };
    }

    /** The database holds all columns of a decision, or none. */
    private Concession.@Nullable Decision decision() {
        if (approved == null) {
            return null;
        }
        return new Concession.Decision(
                approved,
                new Concession.Person(kept("person", decidedBy), kept("role", decidedRole)),
                UtcTimes.utc(kept("time of the decision", decided)),
                kept("reason of the decision", decisionReason),
                newRecord);
    }

    private <T> T kept(String what, @Nullable T value) {
        return Objects.requireNonNull(value, () -> "concession " + id + " was kept without its " + what);
    }
}
