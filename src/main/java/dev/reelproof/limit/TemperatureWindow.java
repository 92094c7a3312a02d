package dev.reelproof.limit;

import dev.reelproof.quantity.Temperature;

/**
 * The temperatures at which a requirement may be judged when no law corrects for temperature.
 *
 * @param at the middle, °C
 * @param within half the width, K
 * @param warmerPassStands whether a value measured above the window that meets the limit is accepted: only for a quantity that is
 *     known to fall as it gets warmer and is limited from below, so that inside the window it could only have been better
 */
public record TemperatureWindow(Temperature at, double within, boolean warmerPassStands) {

    public TemperatureWindow {
        if (!(within >= 0 && Double.isFinite(within))) {
            throw new IllegalArgumentException(
                    "half the width of a temperature window must not be negative: " + within);
        }
    }

    /** A window outside of which nothing is judged. */
    public TemperatureWindow(Temperature at, double within) {
        this(at, within, false);
    }

    /** Whether a temperature lies above the window. */
    public boolean isBelow(Temperature temperature) {
        return temperature.celsius() - at.celsius() > within;
    }

    public boolean holds(Temperature temperature) {
        return Math.abs(temperature.celsius() - at.celsius()) <= within;
    }
}
