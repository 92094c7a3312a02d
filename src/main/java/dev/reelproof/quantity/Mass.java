package dev.reelproof.quantity;

/**
 * A mass of material, held in kilograms.
 *
 * @param kilograms the mass in kg; positive and finite
 */
public record Mass(double kilograms) {

    public Mass {
        if (!(kilograms > 0 && Double.isFinite(kilograms))) {
            throw new IllegalArgumentException("mass must be positive and finite, not " + kilograms + " kg");
        }
    }

    /**
     * A mass as written: a number and one of kg, g, t, lb.
     *
     * @throws IllegalArgumentException when the unit is not one of mass or the value is not positive and finite
     */
    public static Mass of(double value, String unit) {
        return new Mass(Units.toBase(value, unit, Kind.MASS));
    }
}
