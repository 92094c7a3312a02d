package dev.reelproof.judgement;

import dev.reelproof.measurement.Subject;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The worst figure of a requirement: where the margin is least.
 *
 * @param subject the pair, combination, conductor or end; the reel for a statistic of all values
 * @param units the unit or units that a statistic was taken of; absent where it was taken of the whole reel
 * @param megahertz the frequency in MHz; absent for a property without one
 * @param measured the raw value there, in {@code measuredUnit}; absent for a statistic over values that were sent in different units
 * @param measuredUnit the unit of the raw value, as sent; absent where that is
 * @param value the value corrected to the reference, in {@code unit}, not rounded
 * @param judged the value that was compared: rounded where the set's rule says so
 * @param limit the limit there, in {@code unit}; of two bounds, the nearer
 * @param margin how far {@code judged} lies on the good side of the limit; negative on the bad side
 * @param unit the unit of value, limit and margin
 * @param derived whether the value was computed from measured parts
 * @param uncertainty how sure the value is, where that is known
 * @param steps the chain from the raw value to the margin
 */
public record Figure(
        Subject subject,
        @Nullable Units units,
        @Nullable Double megahertz,
        @Nullable Double measured,
        @Nullable String measuredUnit,
        double value,
        double judged,
        double limit,
        double margin,
        String unit,
        boolean derived,
        @Nullable Uncertainty uncertainty,
        List<Step> steps) {

    /** @throws IllegalArgumentException when a number is not finite, a frequency not above 0, or a unit is missing */
    public Figure {
        if (!(Double.isFinite(value) && Double.isFinite(judged) && Double.isFinite(limit) && Double.isFinite(margin))) {
            throw new IllegalArgumentException("a figure is of finite numbers, not value " + value + ", judged "
                    + judged + ", limit " + limit + ", margin " + margin);
        }
        if (unit == null || unit.isBlank()) {
            throw new IllegalArgumentException("a figure has a unit");
        }
        if (megahertz != null && !(megahertz > 0 && Double.isFinite(megahertz))) {
            throw new IllegalArgumentException(
                    "the frequency of a figure is above 0 and finite, not " + megahertz + " MHz");
        }
        if (measured != null && !Double.isFinite(measured)) {
            throw new IllegalArgumentException("a raw value is a finite number, not " + measured);
        }
        if ((measured == null) != (measuredUnit == null)) {
            throw new IllegalArgumentException(
                    "a raw value and its unit are both there or both absent, not " + measured + " and " + measuredUnit);
        }
        steps = List.copyOf(steps);
    }
}
