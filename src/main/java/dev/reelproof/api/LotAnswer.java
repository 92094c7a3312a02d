package dev.reelproof.api;

import dev.reelproof.genealogy.Amount;
import dev.reelproof.genealogy.Lot;
import dev.reelproof.intake.Identifier;
import dev.reelproof.store.RegisteredLot;
import java.time.OffsetDateTime;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** A registered lot, as the HTTP contract has it. */
record LotAnswer(
        String id,
        String plant,
        String kind,
        Quantity quantity,
        OffsetDateTime made,
        String step,
        String machine,
        List<Input> inputs,
        OffsetDateTime registered) {

    /** What went into the lot. */
    record Input(String lot, Quantity quantity) {}

    static Quantity asSent(Amount amount) {
        return new Quantity(amount.value(), amount.unit());
    }

    static LotAnswer of(RegisteredLot registered) {
        Lot lot = registered.lot();
        return new LotAnswer(
                lot.id().value(),
                lot.plant(),
                lot.kind().word(),
                asSent(lot.quantity()),
                lot.made(),
                lot.step(),
                lot.machine(),
                lot.inputs().stream()
                        .map(input -> new Input(input.lot().value(), asSent(input.quantity())))
                        .toList(),
                registered.registered());
    }

    /** The report that registers a lot, for the description of the API; {@link LotReader} reads it. */
    @Schema(name = "LotReport")
    record Report(
            @Schema(required = true, pattern = Identifier.PATTERN) String id,
            @Schema(pattern = Identifier.PATTERN, description = "the home plant when left out") String plant,
            @Schema(required = true, examples = "insulated-conductor") String kind,
            @Schema(required = true) Quantity quantity,
            @Schema(required = true) OffsetDateTime made,
            String step,
            String machine,
            List<Input> inputs) {}
}
