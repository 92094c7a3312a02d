package dev.reelproof.store.lot;

import dev.reelproof.genealogy.Amount;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.genealogy.Pedigree;
import dev.reelproof.genealogy.RunId;
import dev.reelproof.store.UtcTimes;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A row of {@code lot}, without what went into the lot. */
public record LotRow(
        String id,
        String kind,
        double value,
        String unit,
        Instant made,
        @Nullable String step,
        @Nullable String machine,
        @Nullable String run) {
    /** The columns of table l that make a row. */
    public static final String COLUMNS =
            "l.id, l.kind, l.quantity_value, l.quantity_unit, l.made, l.step, l.machine, l.run";

    public LotId lotId() {
        return new LotId(id);
    }

    public LotKind lotKind() {
        return LotKind.named(kind);
    }

    public Amount quantity() {
        return new Amount(value, unit);
    }

    /** The run of which the lot is an output, if any. */
    public @Nullable RunId runId() {
        return run == null ? null : new RunId(run);
    }

    Pedigree.Member member(String plant) {
        return new Pedigree.Member(
                lotId(), plant, lotKind(), quantity(), UtcTimes.utc(made), step, machine, runId(), List.of());
    }
}
