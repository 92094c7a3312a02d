package dev.reelproof.genealogy;

import dev.reelproof.quantity.Kind;
import dev.reelproof.quantity.Length;
import dev.reelproof.quantity.Mass;
import java.util.List;

/**
 * How much of a lot: a length or a mass, as it was sent.
 *
 * @param value the number as sent, in {@code unit}; positive and finite
 * @param unit m, km, ft, kft or mile; kg, g, t or lb
 */
public record Amount(double value, String unit) {
    private static final List<String> LENGTHS = List.of("m", "km", "ft", "kft", "mile");
    private static final List<String> MASSES = List.of("kg", "g", "t", "lb");

    public Amount {
        kindOf(unit);
        if (!(value > 0 && Double.isFinite(value))) {
            throw new IllegalArgumentException(
                    "a lot's quantity must be positive and finite, not " + value + " " + unit);
        }
        // A number that is fine as sent may still leave the range of doubles in metres or kilograms.
        base(value, unit);
    }

    private static double base(double value, String unit) {
        return LENGTHS.contains(unit)
                ? Length.of(value, unit).metres()
                : Mass.of(value, unit).kilograms();
    }

    /**
     * Whether a unit is one of length or of mass.
     *
     * @throws IllegalArgumentException when a lot's quantity cannot be in it
     */
    public static Kind kindOf(String unit) {
        if (LENGTHS.contains(unit)) {
            return Kind.LENGTH;
        }
        if (MASSES.contains(unit)) {
            return Kind.MASS;
        }
        throw new IllegalArgumentException("a lot's quantity cannot be in '" + unit + "'; use one of "
                + String.join(", ", LENGTHS) + " for a length, or " + String.join(", ", MASSES) + " for a mass");
    }

    /** A number in a lot's unit, zero included, in metres or kilograms. */
    public static double baseOf(double value, String unit) {
        kindOf(unit);
        return value * base(1, unit);
    }

    /** A number of metres or kilograms, in a lot's unit. */
    public static double inUnit(double base, String unit) {
        kindOf(unit);
        return base / base(1, unit);
    }

    /** Whether it is a length or a mass. */
    public Kind kind() {
        return kindOf(unit);
    }

    /** The amount in metres when it is a length, in kilograms when it is a mass. */
    public double base() {
        return base(value, unit);
    }

    /** An amount of metres or kilograms in words, in this amount's unit and to nine digits. */
    public String inMyUnit(double base) {
        return PlainNumber.of(base / base(1, unit)) + " " + unit;
    }

    @Override
    public String toString() {
        return inMyUnit(base());
    }
}
