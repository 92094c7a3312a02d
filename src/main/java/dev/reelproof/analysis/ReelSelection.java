package dev.reelproof.analysis;

import dev.reelproof.measurement.Property;
import java.time.OffsetDateTime;
import java.util.Objects;

/**
 * Which reels are asked about, and what of them.
 *
 * @param plant the plant
 * @param property the property
 * @param from the earliest end of a test; null for any
 * @param to the latest end of a test, itself included; null for any; not before {@code from}
 * @param product the one product; null for all
 */
public record ReelSelection(String plant, Property property, OffsetDateTime from, OffsetDateTime to, String product) {

    public ReelSelection {
        Objects.requireNonNull(plant, "reels are selected at a plant");
        Objects.requireNonNull(property, "reels are selected for a property");
        if (from != null && to != null && from.isAfter(to)) {
            throw new IllegalArgumentException(
                    "the time begins at " + from + ", after its end at " + to + "; exchange 'from' and 'to'");
        }
    }
}
