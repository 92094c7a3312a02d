package dev.reelproof.store.reel;

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
        @Nullable String orderNumber,
        @Nullable String customer,
        Instant registered) {
    static final String COLUMNS =
            "r.plant, r.id, r.product, r.length_m, r.length_sent, r.length_unit, r.order_number, r.customer, r.registered";

    RegisteredReel reel() {
        return new RegisteredReel(
                plant,
                id,
                product,
                Length.ofMetres(lengthMetres),
                lengthSent,
                lengthUnit,
                orderNumber,
                customer,
                UtcTimes.utc(registered));
    }
}
