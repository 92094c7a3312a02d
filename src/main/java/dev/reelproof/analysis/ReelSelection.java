package dev.reelproof.analysis;

import dev.reelproof.measurement.Property;
import java.time.OffsetDateTime;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * Which reels are asked about, and what of them.
 *
 * @param plant the plant
 * @param property the property
 * @param from the earliest end of a test, if any
 * @param to the latest end of a test, itself included, if any; not before {@code from}
 * @param product the one product; absent for all
 */
public record ReelSelection(
        String plant,
        Property property,
        @Nullable OffsetDateTime from,
        @Nullable OffsetDateTime to,
        @Nullable String product) {

    public ReelSelection {
        Objects.requireNonNull(plant, "reels are selected at a plant");
        Objects.requireNonNull(property, "reels are selected for a property");
        if (from != null && to != null && from.isAfter(to)) {
            throw new IllegalArgumentException(
                    "the time begins at " + from + ", after its end at " + to + "; exchange 'from' and 'to'");
        }
    }
}
