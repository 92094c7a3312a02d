package dev.reelproof.quantity;

/**
 * A cable length, held in metres.
 *
 * @param metres the length in metres; positive and finite
 */
public record Length(double metres) {

    public Length {
        if (!(metres > 0 && Double.isFinite(metres))) {
            throw new IllegalArgumentException("length must be positive and finite, not " + metres + " m");
        }
    }

    public static Length ofMetres(double metres) {
        return new Length(metres);
    }

    /**
     * A length as written: a number and one of m, km, ft, kft, mile, mm, in.
     *
     * @throws IllegalArgumentException when the unit is not one of length or the value is not positive and finite
     */
    public static Length of(double value, String unit) {
        return new Length(Units.toBase(value, unit, Kind.LENGTH) / Units.MILLIMETRES_PER_METRE);
    }
}
