package dev.reelproof.store.reel;

import dev.reelproof.measurement.LengthMarks;
import dev.reelproof.quantity.Length;
import dev.reelproof.record.RegisteredReel;
import dev.reelproof.store.UtcTimes;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** A row of {@code reel}, its columns in the order of {@link #COLUMNS}. */
record ReelRow(
        String plant,
        String id,
        String product,
        double lengthMetres,
        double lengthSent,
        String lengthUnit,
        @Nullable Double firstMark,
        @Nullable Double lastMark,
        @Nullable String markUnit,
        @Nullable String orderNumber,
        @Nullable String customer,
        Instant registered) {
    static final String COLUMNS =
            "r.plant, r.id, r.product, r.length_m, r.length_sent, r.length_unit, r.first_mark, r.last_mark, r.mark_unit,"
                    + " r.order_number, r.customer, r.registered";

    RegisteredReel reel() {
        return new RegisteredReel(
                plant,
                id,
                product,
                Length.ofMetres(lengthMetres),
                lengthSent,
                lengthUnit,
                marks(),
                orderNumber,
                customer,
                UtcTimes.utc(registered));
    }

    /** All three are there or none: the table sees to it. */
    private @Nullable LengthMarks marks() {
        return firstMark == null || lastMark == null || markUnit == null
                ? null
                : new LengthMarks(firstMark, lastMark, markUnit);
    }
}
