package dev.reelproof.genealogy;

import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * What was measured on a lot while it was made, such as a diameter, an elongation or a strip force.
 *
 * @param property the trade's word in kebab case
 * @param value the figure in {@code unit}; finite
 * @param unit its unit as written
 * @param taken when, in UTC to the microsecond; null when not said
 * @param at where along the lot, in {@code atUnit}, zero or more; null when not said
 * @param atUnit unit of {@code at}, as a lot's quantity has it; null with it
 */
public record Sample(
        String property,
        double value,
        String unit,
        @Nullable OffsetDateTime taken,
        @Nullable Double at,
        @Nullable String atUnit) {
    private static final Pattern PROPERTY = Pattern.compile("[a-z][a-z0-9-]{0,63}");

    public Sample {
        if (!PROPERTY.matcher(property).matches()) {
            throw new IllegalArgumentException(
                    "'" + property + "' cannot name what a sample measures; use a word in small"
                            + " letters, digits and hyphens, such as diameter or strip-force");
        }
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("a sample's value must be finite, not " + value);
        }
        if (unit.isBlank()) {
            throw new IllegalArgumentException("a sample has a unit; a ratio is in %");
        }
        if (taken != null) {
            Lot.checkYear("a sample is taken", taken);
            taken = taken.withOffsetSameInstant(ZoneOffset.UTC).truncatedTo(ChronoUnit.MICROS);
        }
        if ((at == null) != (atUnit == null)) {
            throw new IllegalArgumentException("where a sample was taken is a number with its unit");
        }
        if (at != null) {
            Amount.baseOf(at, atUnit);
            if (!(at >= 0 && Double.isFinite(at))) {
                throw new IllegalArgumentException(
                        "a sample is taken at zero or more " + atUnit + " along its lot, not at " + at);
            }
        }
    }
}
